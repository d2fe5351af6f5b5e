import { describe, expect, it } from 'vitest';
import { makePhrase, readPhrase } from './make-phrase.js';
import type { PhraseNote } from './phrase.js';

const ROOT: PhraseNote = { at: 0, length: 960, degree: '1', octave: 0 };
const codeOf = (run: () => unknown): string => {
  try {
    run();
    return 'nothing';
  } catch (error) {
    const { code, where } = error as { code: string; where: { path?: string } };
    return `${code} ${where.path ?? ''}`.trim();
  }
};

describe('makePhrase', () => {
  it('makePhrase fills in what is not said', () => {
    expect(makePhrase([ROOT])).toEqual({
      id: 'own',
      name: 'own',
      kind: 'lick',
      from: 'key',
      harmony: '| I7 |',
      metre: '4/4',
      feel: 'shuffle',
      pickup: 0,
      position: 2,
      level: 'natural',
      grade: 1,
      trains: '',
      source: 'not stated',
      notes: [ROOT],
    });
  });

  it('makePhrase writes its chords in one line, repeats written out', () => {
    expect(makePhrase([ROOT], { harmony: 'I7|%|IV7 V7' }).harmony).toBe('| I7 | I7 | IV7 V7 |');
  });

  it('makePhrase sorts notes by time, then by pitch, and leaves false out', () => {
    const later = { ...ROOT, at: 960, accent: false };
    const above = { ...ROOT, degree: '3' } as const;
    const { notes } = makePhrase([later, above, ROOT]);
    expect(notes.map(({ at, degree }) => `${at} ${degree}`)).toEqual(['0 1', '0 3', '960 1']);
    expect(notes[2]).not.toHaveProperty('accent');
  });

  it('makePhrase gives frozen data to the last note', () => {
    const phrase = makePhrase([ROOT]);
    expect(Object.isFrozen(phrase) && Object.isFrozen(phrase.notes[0])).toBe(true);
  });

  it.each([
    ['no notes', () => makePhrase([]), 'PHRASE_INVALID notes'],
    [
      'a degree there is not',
      () => makePhrase([{ ...ROOT, degree: '8' as '1' }]),
      'PHRASE_INVALID notes[0].degree',
    ],
    [
      'a note longer than the chords',
      () => makePhrase([{ ...ROOT, length: 3841 }]),
      'PHRASE_INVALID notes[0].length',
    ],
    [
      'two notes at once of other length',
      () => makePhrase([ROOT, { ...ROOT, degree: '3', length: 480 }]),
      'PHRASE_INVALID notes[1]',
    ],
    [
      'a note before the one before it ends',
      () => makePhrase([ROOT, { ...ROOT, at: 480 }]),
      'PHRASE_INVALID notes[1]',
    ],
    ['chords that are none', () => makePhrase([ROOT], { harmony: 'H7' }), 'PHRASE_INVALID harmony'],
    ['an id with spaces', () => makePhrase([ROOT], { id: 'My phrase' }), 'PHRASE_INVALID id'],
    ['a grade of 6', () => makePhrase([ROOT], { grade: 6 as 5 }), 'PHRASE_INVALID grade'],
    [
      'a bend of no shape',
      () => makePhrase([{ ...ROOT, bend: { shape: 'up' as 'dip', cents: 50 } }]),
      'PHRASE_INVALID notes[0].bend.shape',
    ],
    [
      'an accent that is no yes or no',
      () => makePhrase([{ ...ROOT, accent: 'loud' as unknown as true }]),
      'PHRASE_INVALID notes[0].accent',
    ],
    [
      'a purpose that is no text',
      () => makePhrase([ROOT], { trains: 3 as unknown as string }),
      'PHRASE_INVALID trains',
    ],
    ['a detail there is not', () => makePhrase([ROOT], { tempo: 90 } as object), 'OPTION_UNKNOWN'],
    [
      'a pickup of a whole bar',
      () => makePhrase([ROOT], { pickup: 3840 }),
      'PHRASE_INVALID pickup',
    ],
  ])('makePhrase refuses %s', (_, run, expected) => {
    expect(codeOf(run)).toBe(expected);
  });
});

describe('readPhrase', () => {
  it('readPhrase reads what JSON makes of a phrase', () => {
    const phrase = makePhrase([{ ...ROOT, accent: true, bend: { shape: 'scoop', cents: 80 } }], {
      kind: 'riff',
    });
    expect(readPhrase(JSON.stringify(phrase))).toEqual(phrase);
  });

  it('readPhrase refuses a field of another name', () => {
    expect(codeOf(() => readPhrase({ notes: [ROOT], nmae: 'x' }))).toBe('PHRASE_INVALID nmae');
    expect(codeOf(() => readPhrase('{'))).toBe('JSON_MALFORMED');
    expect(codeOf(() => readPhrase(7))).toBe('PHRASE_INVALID');
  });
});
