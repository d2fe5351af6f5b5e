import { expect, test } from 'vitest';
import * as pitch from './index.js';

test('the package exports these names, so that a change is seen', () => {
  expect(Object.keys(pitch).sort()).toMatchInlineSnapshot(`
    [
      "ERROR_CODES",
      "HIGHEST_MIDI",
      "LETTERS",
      "LOWEST_MIDI",
      "NOTE_NAMES",
      "PITCH_CLASSES",
      "ReedplateError",
      "SCALE_DEGREES",
      "TONICS",
      "TWELVE_KEYS",
      "asErrorOf",
      "centsBetween",
      "chordOfNumeral",
      "chordSuffixes",
      "deepFreeze",
      "degreeAbove",
      "frequency",
      "isReedplateError",
      "midi",
      "nearestOf",
      "noteName",
      "noteNameWithOctave",
      "numeralOfChord",
      "parseChord",
      "parseJson",
      "parseKey",
      "parseNoteName",
      "parseNumeral",
      "parseScale",
      "plainName",
      "requireFields",
      "requireInteger",
      "requireOneOf",
      "requirePositive",
      "requireSome",
      "scaleNames",
      "spell",
      "spellAbove",
      "spellOnStep",
      "toKey",
      "toPitchClass",
      "transposeKey",
      "triadOf",
    ]
  `);
});

test('every table that the package exports is frozen', () => {
  for (const [name, value] of Object.entries(pitch)) {
    if (typeof value === 'object') expect(Object.isFrozen(value), name).toBe(true);
  }
});
