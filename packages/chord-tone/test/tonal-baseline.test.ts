import { scoreLine, styleOfKey, targetsOf } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import { noteNameWithOctave, parseKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NamedChart, NamedTime } from '../bench/tonal-line.js';
import { type Compare, keepChords, keepPairs, type Song } from '../bench/tonal-names.js';
import { namedScore } from '../bench/tonal-score.js';
import { namedTargets } from '../bench/tonal-targets.js';
import { anyChart, anyChord, anyMelody, anyNotes, anyTonic } from '../src/arbitraries.fixture.js';

// What the bench compares gives equal output: the baseline names, spells, classes, weighs and
// measures as scoreLine does, and was written apart from it, on note names with tonal 6.4.3.

const KEEPERS: readonly (readonly [string, (song: Song) => Compare])[] = [
  ['chords kept', keepChords],
  ['pairs kept', keepPairs],
];

function namedLine({ notes }: Line): readonly NamedTime[] {
  return notes.map(({ pitch, ...time }) => ({ ...time, name: noteNameWithOctave(pitch) }));
}

function namedChart({ spans, metre, pickup }: Chart): NamedChart {
  return {
    ...parseMetre(metre),
    pickup,
    spans: spans.map(({ chord, ...span }) => ({ ...span, symbol: chord?.symbol ?? '' })),
  };
}

function songOf({ key }: Chart): Song {
  return { tonic: parseKey(key).tonic, style: styleOfKey(key) };
}

describe.each(KEEPERS)('scoreLine against tonal on note names, %s', (_, keep) => {
  it('scoreLine gives the same notes, changes and measures for any line and chart', () => {
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, (any, chart) => {
        // A longer line goes round, which the baseline does not.
        const end = chart.spans.at(-1)?.end ?? 0;
        const within = makeLine(
          any.notes
            .filter(({ start }) => start < end)
            // An octave from the ends of MIDI, where the readings of other harps have no names.
            .map((note) => ({ ...note, pitch: 16 + (note.pitch % 96) })),
        );
        fc.pre(within.notes.length > 0);
        const ours = scoreLine(within, chart, { swing: 1 });
        const song = songOf(chart);
        const theirs = namedScore(namedLine(within), namedChart(chart), keep(song), song.tonic);
        expect(theirs.notes).toEqual(ours.notes);
        expect(theirs.changes).toEqual(ours.changes);
        expect(theirs.shuffled ?? -1).toBeCloseTo(ours.following?.shuffled ?? -1, 9);
        expect(theirs.blind ?? -1).toBeCloseTo(ours.following?.blind ?? -1, 9);
        expect(theirs.readings.map(({ kind, by }) => `${kind} ${by}`)).toEqual(
          ours.readings.map(({ kind, by }) => `${kind} ${by}`),
        );
        theirs.readings.forEach(({ chordFit }, at) => {
          expect(chordFit).toBeCloseTo(ours.readings[at]?.chordFit ?? -1, 9);
        });
        expect(theirs.total).toBeCloseTo(ours.total, 6);
        for (const [name, value] of Object.entries(ours.measures)) {
          const other = theirs.measures[name as keyof typeof ours.measures];
          if (value === null || other === null) expect([name, other]).toEqual([name, value]);
          else expect(other, name).toBeCloseTo(value, 9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('targetsOf gives the same targets for any chord and harp', () => {
    fc.assert(
      fc.property(anyChord, anyTonic, (chord, tonic) => {
        const harp = makeHarp(tonic);
        const named = soundings(harp).map(({ pitch, hole }) => ({
          name: noteNameWithOctave(pitch),
          hole,
        }));
        const compare = keep({ tonic: 'C', style: 'blues' });
        const theirs = namedTargets(chord.symbol, named, compare);
        const ours = targetsOf(chord, harp).map(({ name, sounding }) => [name, sounding.hole]);
        expect(theirs.map(({ name, hole }) => [name, hole])).toEqual(ours);
      }),
    );
  });

  it('namedScore refuses what scoreLine refuses', () => {
    const compare = keep({ tonic: 'G', style: 'blues' });
    const chart = { ...parseMetre('4/4'), pickup: 0, spans: [] };
    for (const wrong of [{ name: 'H4' }, { start: -1 }, { start: 0.5 }, { duration: 0 }]) {
      const note = { name: 'G4', start: 0, duration: 960, ...wrong };
      expect(() => namedScore([note], chart, compare, 'G')).toThrow(Error);
    }
  });
});
