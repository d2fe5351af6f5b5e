import { type Chart, makeChart } from '@reedplate/form';
import { makeHarp, TUNINGS, transposeHarp } from '@reedplate/layout';
import { type Line, makeLine, type TimedNote, transposeLine } from '@reedplate/line';
import { parseKey, spell, TWELVE_KEYS, toPitchClass, transposeKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyChord, anyMelody, anyNotes, anyTonic } from './arbitraries.fixture.js';
import {
  chordAvailability,
  chordFamily,
  chordShapes,
  PLAYING_STYLES,
  scoreLine,
  targetsOf,
} from './index.js';

const anyHarp = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS.map(({ id }) => id)),
    key: fc.constantFrom(...TWELVE_KEYS.map(({ tonic }) => tonic)),
  })
  .map(({ tuning, key }) => makeHarp(key, { tuning }));

/** The same form in a key so many semitones higher. */
function moveChart({ form, key, choruses }: Chart, semitones: number): Chart {
  const moved = transposeKey(parseKey(key), semitones);
  return makeChart(form, moved, { choruses });
}

describe('targetsOf', () => {
  it('gives soundings of chord tones only, and every tone that the harp has', () => {
    fc.assert(
      fc.property(anyChord, anyHarp, (chord, harp) => {
        const tones = new Map(chord.tones.map((tone) => [tone.pitchClass, tone]));
        for (const { sounding, degree, name } of targetsOf(chord, harp)) {
          const tone = tones.get(toPitchClass(sounding.pitch));
          expect(tone?.degree).toBe(degree);
          expect(name.startsWith(tone?.name ?? '?')).toBe(true);
        }
      }),
    );
  });

  it('gives the same holes when chord and harp move together', () => {
    fc.assert(
      fc.property(anyTonic, fc.integer({ min: 1, max: 11 }), (tonic, semitones) => {
        const harp = makeHarp('C');
        const moved = spell(toPitchClass(parseKey(tonic).pitchClass + semitones));
        const holesOf = (chord: string, on: typeof harp): unknown =>
          targetsOf(chord, on).map(({ sounding, degree }) => [
            sounding.hole,
            sounding.breath,
            sounding.technique,
            sounding.depth,
            degree,
          ]);
        expect(holesOf(`${moved}7`, transposeHarp(harp, semitones))).toEqual(
          holesOf(`${tonic}7`, harp),
        );
      }),
    );
  });

  it('gives more as the level rises', () => {
    fc.assert(
      fc.property(anyChord, anyHarp, (chord, harp) => {
        const counts = (['natural', 'bends', 'overbends'] as const).map(
          (level) => targetsOf(chord, harp, { level }).length,
        );
        expect(counts).toEqual([...counts].sort((a, b) => a - b));
      }),
    );
  });
});

describe('chordShapes', () => {
  it('judges every shape by what it sounds, lacks, adds and contradicts', () => {
    fc.assert(
      fc.property(anyChord, anyHarp, fc.constantFrom(...PLAYING_STYLES), (chord, harp, style) => {
        for (const shape of chordShapes(chord, harp, { style })) {
          const sounded = new Set(shape.tones.flatMap(({ degree }) => degree ?? []));
          const all = new Set(chord.tones.map(({ degree }) => degree));
          expect(new Set([...sounded, ...shape.lacks])).toEqual(all);
          expect(shape.lacks.some((degree) => sounded.has(degree))).toBe(false);
          const isForeign = shape.adds.length + shape.clashes.length > 0;
          expect(isForeign).toBe(shape.tones.some(({ degree }) => degree === null));
          expect(shape.completeness === 'clashing').toBe(shape.clashes.length > 0);
          expect(shape.completeness === 'complete').toBe(!isForeign && shape.lacks.length === 0);
        }
      }),
    );
  });

  it('gives the same shapes when chord and harp move together', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 11 }), (semitones) => {
        const harp = makeHarp('C');
        const root = spell(toPitchClass(2 + semitones));
        const plain = (chord: string, on: typeof harp): unknown =>
          chordShapes(chord, on).map(({ breath, holes, completeness, lacks, adds, clashes }) => ({
            breath,
            holes,
            completeness,
            lacks,
            adds,
            clashes,
          }));
        expect(plain(`${root}7`, transposeHarp(harp, semitones))).toEqual(plain('D7', harp));
      }),
    );
  });
});

describe('chordAvailability', () => {
  it('warns of no whole chord exactly where no shape sounds the triad or all tones cleanly', () => {
    fc.assert(
      fc.property(anyChord, anyHarp, (chord, harp) => {
        const { whole, warnings } = chordAvailability(chord, harp);
        const isWarned = warnings.some(({ code }) => code === 'NO_WHOLE_CHORD');
        expect(isWarned).toBe(whole.length === 0 && chordFamily(chord) !== 'open');
        for (const { triad, lacks, clashes } of whole) {
          expect((triad || lacks.length === 0) && clashes.length === 0).toBe(true);
        }
      }),
    );
  });
});

describe('scoreLine', () => {
  it('keeps every number in range, whatever is played', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, fc.constantFrom(...PLAYING_STYLES), (line, chart, style) => {
        const score = scoreLine(line, chart, { style });
        expect(score.total).toBeGreaterThanOrEqual(0);
        expect(score.total).toBeLessThanOrEqual(100);
        expect(score.confidence).toBeGreaterThanOrEqual(0.5);
        expect(score.confidence).toBeLessThanOrEqual(1);
        const shares = [
          ...Object.values(score.measures),
          ...score.notes.map(({ credit }) => credit),
          ...score.notes.map(({ metre }) => metre),
          ...score.changes.map(({ landing }) => landing),
          ...score.bars.map(({ chordFit }) => chordFit),
        ].filter((value) => value !== null);
        for (const share of shares) expect(share >= 0 && share <= 1 + 1e-12).toBe(true);
      }),
    );
  });

  it('does not change when line and chart move together', () => {
    fc.assert(
      fc.property(
        anyMelody,
        anyChart,
        fc.integer({ min: -11, max: 11 }),
        (line, chart, semitones) => {
          const before = scoreLine(line, chart);
          const after = scoreLine(transposeLine(line, semitones), moveChart(chart, semitones));
          expect(after.total).toBeCloseTo(before.total, 9);
          expect(after.notes.map((note) => note.class)).toEqual(
            before.notes.map((note) => note.class),
          );
        },
      ),
    );
  });

  it('does not change when a held note is split in two tied parts', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.nat(), fc.nat(), (line, chart, which, where) => {
        const at = which % line.notes.length;
        const note = line.notes[at];
        if (note === undefined) throw new Error('no note');
        const first = 1 + (where % (note.duration - 1));
        const rest = { ...note, start: note.start + first, duration: note.duration - first };
        const split = line.notes.flatMap((other, index) =>
          index === at ? [{ ...other, duration: first }, rest] : [other],
        );
        const before = scoreLine(line, chart);
        const after = scoreLine(makeLine(split), chart);
        expect(after.measures).toEqual(before.measures);
        expect(after.total).toBe(before.total);
      }),
    );
  });

  it('does not change when the same playing is added for another chorus', () => {
    fc.assert(
      fc.property(
        anyTonic,
        anyMelody,
        fc.constantFrom('basic', 'quick-change'),
        (key, line, form) => {
          const once = makeChart(form, key, { choruses: 1 });
          const within: readonly TimedNote[] = line.notes.filter(
            ({ start, duration }) => start + duration < CHORUS - BEAT,
          );
          fc.pre(within.length > 0);
          const again = within.map((note) => ({ ...note, start: note.start + CHORUS }));
          const twice = makeChart(form, key, { choruses: 2 });
          const before = scoreLine(makeLine(within), once);
          const after = scoreLine(makeLine([...within, ...again]), twice);
          expect(after.measures.chordFit).toBeCloseTo(before.measures.chordFit ?? -1, 9);
          expect(after.measures.chordToneShare).toBeCloseTo(
            before.measures.chordToneShare ?? -1,
            9,
          );
          expect(after.measures.resolution ?? -1).toBeCloseTo(before.measures.resolution ?? -1, 9);
        },
      ),
    );
  });

  it('never lowers the chord fit when a clash within one chord is turned into the root of that chord', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const before = scoreLine(line, chart);
        const heldOn = new Set(before.notes.filter(({ held }) => held).map(({ index }) => index));
        const clash = before.notes.find(
          (note) => note.class === 'clash' && !heldOn.has(note.index),
        );
        fc.pre(clash !== undefined);
        const after = scoreLine(withRoot(line, chart, clash.index, clash.chord), chart);
        const [was, is] = [before, after].map(({ measures }) => measures.chordFit ?? 0);
        expect(is).toBeGreaterThanOrEqual((was ?? 0) - 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('gives full landing for roots on every change', () => {
    fc.assert(
      fc.property(anyChart, fc.integer({ min: 1, max: 3 }), (chart, beats) => {
        const notes = chart.spans.flatMap(({ start, end, chord }) =>
          chord === null
            ? []
            : [
                {
                  start,
                  duration: Math.min(beats * BEAT, end - start),
                  pitch: 60 + (chord.tones[0]?.pitchClass ?? 0),
                },
              ],
        );
        expect(scoreLine(makeLine(notes), chart).measures.landing).toBe(1);
      }),
    );
  });

  it('judges a note without looking at later ones, but for its resolution', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.nat(), (line, chart, cut) => {
        const kept = line.notes.slice(0, 1 + (cut % line.notes.length));
        const whole = scoreLine(line, chart, { swing: 1 });
        const part = scoreLine(makeLine(kept), chart, { swing: 1 });
        const last = kept.at(-1)?.start ?? 0;
        const settled = part.notes.filter(({ start, held }) => !held && start <= last - BEAT);
        for (const { index, class: noteClass } of settled) {
          const same = whole.notes.find((note) => note.index === index && !note.held);
          expect(same?.class).toBe(noteClass);
        }
      }),
    );
  });

  it('gives plain data that reads back equal', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const score = scoreLine(line, chart, { harp: makeHarp('C') });
        expect(JSON.parse(JSON.stringify(score))).toEqual(score);
        expect(scoreLine(line, JSON.parse(JSON.stringify(chart)))).toEqual(scoreLine(line, chart));
      }),
      { numRuns: 30 },
    );
  });
});

const BEAT = 960;
const CHORUS = 12 * 4 * BEAT;

/** The line with one note moved to the nearest root of a chord. */
function withRoot(line: Line, chart: Chart, index: number, symbol: string | null): Line {
  const chord = chart.spans.find((span) => span.chord?.symbol === symbol)?.chord;
  const root = chord?.tones[0]?.pitchClass ?? 0;
  const notes = line.notes.map((note, at) => {
    if (at !== index) return note;
    const up = toPitchClass(root - note.pitch);
    return { ...note, pitch: note.pitch + (up > 6 ? up - 12 : up) };
  });
  return makeLine(notes);
}
