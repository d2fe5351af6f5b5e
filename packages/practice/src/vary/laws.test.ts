import { makeHarp } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPhrases, modeOfPhrase } from '../catalogue/find-phrases.js';
import { allPhrases } from '../catalogue/phrases.js';
import { barsOf, phraseChart, rootAbove, soundingChord } from '../phrase/harmony.js';
import { placePhrase } from '../phrase/place-phrase.js';
import { heights } from './degrees.js';
import type { PhraseVariation } from './variation.js';
import { varyPhrase } from './vary-phrase.js';

const phrases = fc.constantFrom(...allPhrases());
const KEEPING: readonly PhraseVariation[] = [
  { way: 'longer' },
  { way: 'shorter' },
  { way: 'thinned' },
  { way: 'answered' },
  { way: 'ornamented', with: 'grace' },
  { way: 'ornamented', with: 'scoop' },
  { way: 'ornamented', with: 'shake' },
  { way: 'displaced', beats: 0 },
];
const keeping = fc.constantFrom(...KEEPING);
const music = ({ notes }: { notes: unknown }) => notes;

describe('laws of variations', () => {
  it('a variation keeps bars and harmony', () => {
    fc.assert(
      fc.property(phrases, fc.array(keeping, { maxLength: 3 }), (phrase, ways) => {
        const { harmony, metre, pickup, from } = varyPhrase(phrase, ways);
        expect({ harmony, metre, pickup, from }).toEqual({
          harmony: phrase.harmony,
          metre: phrase.metre,
          pickup: phrase.pickup,
          from: phrase.from,
        });
      }),
    );
  });

  it('variations compose: two at once are one after the other', () => {
    fc.assert(
      fc.property(phrases, keeping, keeping, (phrase, first, second) => {
        expect(varyPhrase(phrase, [first, second])).toEqual(
          varyPhrase(varyPhrase(phrase, [first]), [second]),
        );
      }),
    );
  });

  it('no variation is the phrase itself', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        expect(varyPhrase(phrase, [])).toBe(phrase);
      }),
    );
  });

  it('thinning twice is thinning once, and adds no note', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        const once = varyPhrase(phrase, [{ way: 'thinned' }]);
        expect(music(varyPhrase(once, [{ way: 'thinned' }]))).toEqual(once.notes);
        expect(phrase.notes).toEqual(expect.arrayContaining([...once.notes]));
      }),
    );
  });

  it('displaced there and back is the phrase, where nothing fell out', () => {
    fc.assert(
      fc.property(phrases, fc.integer({ min: 1, max: 3 }), (phrase, beats) => {
        const there = (): ReturnType<typeof varyPhrase> =>
          varyPhrase(phrase, [{ way: 'displaced', beats }]);
        const last = phrase.notes.at(-1);
        const room = barsOf(phrase) * 4 * (phrase.metre === '12/8' ? 1440 : 960) + phrase.pickup;
        const beat = phrase.metre === '12/8' ? 1440 : 960;
        fc.pre(last !== undefined && last.at + last.length + beats * beat <= room);
        expect(music(varyPhrase(there(), [{ way: 'displaced', beats: -beats }]))).toEqual(
          phrase.notes,
        );
      }),
    );
  });

  it('longer and shorter keep every onset and pitch', () => {
    fc.assert(
      fc.property(phrases, fc.constantFrom('longer', 'shorter'), (phrase, way) => {
        const varied = varyPhrase(phrase, [{ way }]);
        const pitches = (of: typeof phrase) =>
          of.notes.map(({ at, degree, octave }) => [at, degree, octave]);
        expect(pitches(varied)).toEqual(pitches(phrase));
        varied.notes.forEach(({ length }, index) => {
          const before = phrase.notes[index]?.length ?? 0;
          if (way === 'longer') expect(length).toBeGreaterThanOrEqual(before);
          else expect(length).toBeLessThanOrEqual(before);
        });
      }),
    );
  });

  it('a response has the rhythm of its call and ends on the root of the last chord', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        const answer = varyPhrase(phrase, [{ way: 'answered' }]);
        expect([...new Set(answer.notes.map(({ at }) => at))]).toEqual([
          ...new Set(phrase.notes.map(({ at }) => at)),
        ]);
        const chart = phraseChart(answer, 'C');
        const last = answer.notes.at(-1);
        const height = heights(answer, chart).at(-1) ?? 0;
        expect((((height - rootAbove(chart, last?.at ?? 0)) % 12) + 12) % 12).toBe(0);
      }),
    );
  });

  it('minor keeps the rhythm, has minor chords, and leaves minor as it is', () => {
    fc.assert(
      fc.property(phrases, (phrase) => {
        const minor = varyPhrase(phrase, [{ way: 'minor' }]);
        expect(barsOf(minor)).toBe(barsOf(phrase));
        expect([...new Set(minor.notes.map(({ at }) => at))]).toEqual([
          ...new Set(phrase.notes.map(({ at }) => at)),
        ]);
        if (modeOfPhrase(phrase) === 'minor') expect(minor).toBe(phrase);
      }),
    );
  });

  it('a riff sequenced says the same degrees on every chord, a third as the chord has it', () => {
    for (const riff of findPhrases({ kind: 'riff', mode: 'major' })) {
      const harmony = barsOf(riff) === 1 ? 'I7 | IV7 | V7' : 'I7 | % | IV7 | % | V7 | %';
      const through = varyPhrase(riff, [{ way: 'sequenced', harmony }]);
      const count = riff.notes.length;
      const degrees = through.notes.map(({ degree }) => degree);
      expect(degrees.length).toBe(3 * count);
      expect(degrees.slice(count, 2 * count)).toEqual(degrees.slice(0, count));
      const chart = phraseChart(through, 'G');
      expect(soundingChord(chart, through.notes[count]?.at ?? 0)?.symbol).toBe('C7');
    }
  });

  it('every variation can be placed', () => {
    fc.assert(
      fc.property(phrases, keeping, (phrase, way) => {
        const varied = varyPhrase(phrase, [way]);
        const chart = phraseChart(varied, 'G');
        const placed = placePhrase(varied, { chart, harp: makeHarp('C'), level: 'overbends' });
        expect(placed.playable).toBe(true);
      }),
      { numRuns: 15 },
    );
  });
});

describe('varyPhrase', () => {
  it.each([
    [
      'a way there is not',
      () => varyPhrase('stair', [{ way: 'louder' } as never]),
      'OPTION_UNKNOWN',
    ],
    [
      'too few chords',
      () => varyPhrase('stair-and-back', [{ way: 'sequenced', harmony: 'I7' }]),
      'PHRASE_INVALID',
    ],
    [
      'beats that leave nothing',
      () => varyPhrase('stair', [{ way: 'displaced', beats: 9 }]),
      'PHRASE_INVALID',
    ],
    [
      'an ornament there is not',
      () => varyPhrase('stair', [{ way: 'ornamented', with: 'trill' } as never]),
      'OPTION_UNKNOWN',
    ],
    ['what is no list', () => varyPhrase('stair', 'thinned' as never), 'PHRASE_INVALID'],
  ])('varyPhrase refuses %s', (_, run, code) => {
    expect(run).toThrow(expect.objectContaining({ code }));
  });
});
