import { makeChart } from '@reedplate/form';
import { makeHarp, transposeHarp } from '@reedplate/layout';
import { SCALE_DEGREES, TWELVE_KEYS } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allPhrases } from '../catalogue/phrases.js';
import { formatPhrase } from './format-phrase.js';
import { phraseChart } from './harmony.js';
import { makePhrase, readPhrase } from './make-phrase.js';
import { parsePhrase } from './parse-phrase.js';
import type { Phrase, PhraseNote } from './phrase.js';
import { placePhrase } from './place-phrase.js';

const phrases = fc.constantFrom(...allPhrases());
const levels = fc.constantFrom('natural', 'bends', 'overbends');

/** Notes one after the other, within the compass of a standard harp in second position. */
const notes: fc.Arbitrary<readonly PhraseNote[]> = fc
  .array(
    fc.record({
      length: fc.constantFrom(240, 320, 480, 640, 960),
      degree: fc.constantFrom(...SCALE_DEGREES),
      rest: fc.boolean(),
      bend: fc.option(
        fc.record({
          shape: fc.constantFrom('scoop', 'fall', 'dip'),
          cents: fc.integer({ min: 1, max: 300 }),
        }),
        { nil: undefined },
      ),
      accent: fc.boolean(),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((given) => {
    let at = 0;
    return given.map(({ length, degree, rest, bend, accent }): PhraseNote => {
      if (rest) at += 480;
      const note = {
        at,
        length,
        degree,
        octave: 0,
        ...(bend ? { bend } : {}),
        ...(accent ? { accent } : {}),
      } as PhraseNote;
      at += length;
      return note;
    });
  });

const without = ({ notes: _, ...details }: Phrase) => details;

describe('laws of phrases', () => {
  it('degrees -> tab -> degrees is the identity, for the catalogue', () => {
    for (const phrase of allPhrases()) {
      expect(parsePhrase(formatPhrase(phrase), without(phrase)), phrase.id).toEqual(phrase);
    }
  });

  it('degrees -> tab -> degrees is the identity, for any notes on any key of harp', () => {
    fc.assert(
      fc.property(notes, fc.constantFrom(...TWELVE_KEYS), (given, harp) => {
        const phrase = makePhrase(given, { harmony: '| I7 | I7 | I7 |' });
        // The octave above 2 draw has every semitone with overbends.
        expect(parsePhrase(formatPhrase(phrase, { harp }), { ...without(phrase), harp })).toEqual(
          phrase,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('JSON of a phrase reads back to it', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        expect(readPhrase(JSON.stringify(phrase))).toEqual(phrase);
      }),
    );
  });

  it('placing commutes with transposition of song and harp', () => {
    fc.assert(
      fc.property(phrases, levels, fc.integer({ min: -5, max: 6 }), (phrase, level, semitones) => {
        const harp = makeHarp('C');
        const moved = transposeHarp(harp, semitones);
        const at = (on: typeof harp) =>
          placePhrase(phrase, {
            chart: phraseChart(phrase, songKeyOf(on, phrase.position).tonic),
            harp: on,
            level,
          });
        const [here, there] = [at(harp), at(moved)];
        if (!here.playable || !there.playable)
          throw new Error('a phrase in its own position has its chords');
        expect(there.line.notes).toEqual(
          here.line.notes.map((note) => ({ ...note, pitch: note.pitch + semitones })),
        );
        expect([there.tab, there.octave, there.effort]).toEqual([
          here.tab,
          here.octave,
          here.effort,
        ]);
        expect(there.changes.map(({ wanted }) => wanted - semitones)).toEqual(
          here.changes.map(({ wanted }) => wanted),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('every phrase in every key, on any harp at any level, is playable or says why', () => {
    fc.assert(
      fc.property(
        phrases,
        fc.constantFrom(...TWELVE_KEYS),
        fc.constantFrom(...TWELVE_KEYS),
        levels,
        (phrase, key, harp, level) => {
          const chart = phraseChart(phrase, key.tonic);
          const answer = placePhrase(phrase, { chart, harp, level });
          if (!answer.playable) {
            expect(answer.without.length).toBeGreaterThan(0);
            return;
          }
          const changed = new Set(answer.changes.map(({ note }) => note));
          const dropped = answer.changes.filter(({ played }) => played === null).length;
          expect(answer.line.notes.length).toBe(phrase.notes.length - dropped);
          // The rhythm stays: every time at which the phrase begins a note is kept.
          expect(new Set(answer.line.notes.map(({ start }) => start))).toEqual(
            new Set(phrase.notes.map(({ at }) => at)),
          );
          if (changed.size === 0) expect(answer.line.notes.length).toBe(phrase.notes.length);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('a phrase placed anywhere in a form keeps what it is relative to its bar', () => {
    const chart = makeChart('basic', 'G', { choruses: 2 });
    fc.assert(
      fc.property(
        fc.constantFrom('stair', 'hinge', 'low-seat'),
        fc.integer({ min: 1, max: 12 }),
        (id, bar) => {
          const [first, second] = [bar, bar + 12].map((at) =>
            placePhrase(id, { chart, bar: at, harp: 'C' }),
          );
          if (!first?.playable || !second?.playable) throw new Error('playable');
          expect(second.line.notes.map(({ start, pitch }) => [start - 12 * 3840, pitch])).toEqual(
            first.line.notes.map(({ start, pitch }) => [start, pitch]),
          );
        },
      ),
      { numRuns: 10 },
    );
  });
});
