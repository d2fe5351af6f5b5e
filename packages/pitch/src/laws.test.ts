import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Chord,
  centsBetween,
  chordOfNumeral,
  chordSuffixes,
  frequency,
  isReedplateError,
  type KeyName,
  midi,
  NOTE_NAMES,
  type Numeral,
  nearestOf,
  noteName,
  noteNameWithOctave,
  numeralOfChord,
  PITCH_CLASSES,
  parseChord,
  parseKey,
  parseNoteName,
  parseNumeral,
  parseScale,
  scaleNames,
  spell,
  TONICS,
  TWELVE_KEYS,
  toPitchClass,
  transposeKey,
} from './index.js';

const KEY_NAMES = TONICS.flatMap((tonic): KeyName[] => [tonic, `${tonic}m`]);
const QUALITIES = [...new Set(chordSuffixes().map((suffix) => parseChord(`C${suffix}`).quality))];

const keyName = fc.constantFrom(...KEY_NAMES);
const pitch = fc.integer({ min: 0, max: 127 });
const pitchClass = fc.constantFrom(...PITCH_CLASSES);
const semitones = fc.integer({ min: -1000, max: 1000 });
const symbol = fc
  .tuple(
    fc.constantFrom(...NOTE_NAMES),
    fc.constantFrom(...chordSuffixes()),
    fc.option(fc.constantFrom(...NOTE_NAMES)),
  )
  .map(([root, suffix, bass]) => `${root}${suffix}${bass === null ? '' : `/${bass}`}`);
const degree = fc
  .tuple(
    fc.constantFrom('b', '', '#'),
    fc.constantFrom('I', 'II', 'III', 'IV', 'V', 'VI', 'VII'),
    fc.boolean(),
  )
  .map(([sign, letters, small]) => `${sign}${small ? letters.toLowerCase() : letters}`);
/** Numerals as they might be typed: not every suffix fits small letters, so some are left out. */
const numeral = fc
  .tuple(degree, fc.constantFrom(...chordSuffixes()), fc.option(degree))
  .map(([head, suffix, of]) => `${head}${suffix}${of === null ? '' : `/${of}`}`)
  .filter(isNumeral);

function isNumeral(text: string): boolean {
  try {
    return parseNumeral(text).text !== '';
  } catch {
    return false;
  }
}

const throughJson = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value)) as Value;
const classesOf = (chord: Chord): readonly number[] => chord.tones.map((tone) => tone.pitchClass);

describe('spelling', () => {
  test('never changes a pitch: midi undoes noteNameWithOctave in every key', () => {
    fc.assert(
      fc.property(pitch, keyName, (number, key) => {
        expect(midi(noteNameWithOctave(number, { key }))).toBe(number);
        expect(parseNoteName(noteName(number, { key })).pitchClass).toBe(number % 12);
      }),
    );
  });

  test('gives the twelve pitch classes of a key twelve names', () => {
    for (const key of KEY_NAMES) {
      const names = PITCH_CLASSES.map((pc) => spell(pc, key));
      expect(new Set(names).size, key).toBe(12);
      expect(names.map((name) => parseNoteName(name).pitchClass)).toEqual(PITCH_CLASSES);
    }
  });

  test('gives the tonic its own name', () => {
    fc.assert(
      fc.property(keyName, (name) => {
        const key = parseKey(name);
        expect(spell(key.pitchClass, key)).toBe(key.tonic);
      }),
    );
  });

  test('keeps what frequency and centsBetween measure: a semitone is 100 cents anywhere', () => {
    fc.assert(
      fc.property(pitch, pitch, fc.double({ min: 100, max: 1000, noNaN: true }), (a, b, a4) => {
        const cents = centsBetween(frequency(a, { a4 }), frequency(b, { a4 }));
        expect(cents).toBeCloseTo(100 * (b - a), 6);
      }),
    );
  });
});

describe('transposeKey', () => {
  test('moves the pitch class by the semitones and keeps the mode', () => {
    fc.assert(
      fc.property(keyName, semitones, fc.constantFrom('plain', 'alike'), (key, up, spelling) => {
        const moved = transposeKey(key, up, { spelling });
        const from = parseKey(key);
        expect(moved.pitchClass).toBe(toPitchClass(from.pitchClass + up));
        expect(moved.mode).toBe(from.mode);
      }),
    );
  });

  test('is a group on plain keys: zero stays, moves add, a move undoes itself', () => {
    const plain = fc.constantFrom(...TWELVE_KEYS, ...TWELVE_KEYS.map(minorOf));
    fc.assert(
      fc.property(plain, semitones, semitones, (key, a, b) => {
        expect(transposeKey(key, 0)).toBe(key);
        expect(transposeKey(transposeKey(key, a), b)).toBe(transposeKey(key, a + b));
        expect(transposeKey(transposeKey(key, a), -a)).toBe(key);
      }),
    );
  });

  test('keeps the sharps of a sharp key and the flats of a flat one wherever a key has them', () => {
    fc.assert(
      fc.property(keyName, semitones, (name, up) => {
        const sign = parseKey(name).tonic.slice(1);
        const moved = transposeKey(name, up, { spelling: 'alike' });
        const alike = TONICS.some(
          (tonic) => tonic.slice(1) === sign && parseKey(tonic).pitchClass === moved.pitchClass,
        );
        if (sign !== '' && alike) expect(moved.tonic.slice(1)).toBe(sign);
      }),
    );
  });

  function minorOf(key: (typeof TWELVE_KEYS)[number]) {
    return transposeKey(transposeKey(`${key.tonic}m` as KeyName, 1), -1);
  }
});

describe('numerals and chords', () => {
  test('give each other back in all keys and qualities as far as double accidentals reach', () => {
    const all = KEY_NAMES.flatMap((key) => NUMERALS.map((text) => ({ key, text })));
    const reached = all.filter(({ key, text }) => isSpelledOnItsStep(text, key));
    const lost = reached.filter(({ key, text }) => {
      return numeralOfChord(chordOfNumeral(text, key), key).text !== text;
    });
    expect(lost).toEqual([]);
    expect(reached.length).toBeGreaterThan(0.98 * all.length);
  });

  const NUMERALS = ['b', '', '#'].flatMap((sign) =>
    ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'].flatMap((letters) =>
      QUALITIES.map((quality) => parseNumeral(`${sign}${letters}${quality}`).text),
    ),
  );

  /** Off its step, a root that needs a third sharp or flat has taken its plain name. */
  function isSpelledOnItsStep(text: string, key: KeyName): boolean {
    const root = parseNoteName(chordOfNumeral(text, key).root);
    const tonic = parseNoteName(parseKey(key).tonic);
    return (tonic.step + parseNumeral(text).step - 1) % 7 === root.step;
  }

  test('realising commutes with transposition', () => {
    fc.assert(
      fc.property(numeral, keyName, semitones, (text, key, up) => {
        const moved = classesOf(chordOfNumeral(text, transposeKey(key, up)));
        const here = classesOf(chordOfNumeral(text, key));
        expect(moved).toEqual(here.map((pc) => toPitchClass(pc + up)));
      }),
    );
  });

  test('chordOfNumeral roots a chord as many semitones above the tonic as the numeral says', () => {
    fc.assert(
      fc.property(numeral, keyName, (text, key) => {
        const above = parseNoteName(chordOfNumeral(text, key).root).pitchClass;
        const tonic = parseKey(key).pitchClass;
        expect(toPitchClass(above - tonic)).toBe(parseNumeral(text).semitones);
      }),
    );
  });

  test('capitals never stand for a minor third, small letters always', () => {
    fc.assert(
      fc.property(numeral, (text) => {
        const [, letters = ''] = /^[b#]?([IV]+|[iv]+)/.exec(parseNumeral(text).text) ?? [];
        const above = classesOf(chordOfNumeral(text, 'C'));
        const thirds = above.map((pc) => toPitchClass(pc - (above[0] ?? 0)));
        if (letters === letters.toLowerCase()) expect(thirds).toContain(3);
        else
          expect(
            thirds.includes(3) && !thirds.includes(4) && !QUARTAL_OR_SHARP_NINE.test(text),
          ).toBe(false);
      }),
    );
  });

  /** A third an octave up, and the sharp ninth, sound three semitones without being the third. */
  const QUARTAL_OR_SHARP_NINE = /quartal|#9/;
});

describe('canonical text', () => {
  test('of a chord reads back as the same chord', () => {
    fc.assert(
      fc.property(symbol, (text) => {
        const chord = parseChord(text);
        expect(parseChord(chord.symbol)).toEqual(chord);
      }),
    );
  });

  test('of a numeral reads back as the same numeral', () => {
    fc.assert(
      fc.property(numeral, (text) => {
        const parsed = parseNumeral(text);
        expect(parseNumeral(parsed.text)).toEqual(parsed);
      }),
    );
  });

  test('of a key and of a note name reads back as the same', () => {
    for (const name of KEY_NAMES) expect(parseKey(name).name).toBe(name);
    for (const name of NOTE_NAMES) expect(parseNoteName(name).name).toBe(name);
  });
});

describe('JSON', () => {
  test('gives back equal keys, chords, numerals and scales, and every function takes them', () => {
    fc.assert(
      fc.property(symbol, numeral, keyName, fc.constantFrom(...scaleNames()), (c, n, k, s) => {
        const [chord, parsed, key] = [parseChord(c), parseNumeral(n), parseKey(k)];
        expect(throughJson(chord)).toEqual(chord);
        expect(throughJson(parsed)).toEqual(parsed);
        expect(throughJson(key)).toEqual(key);
        expect(throughJson(parseScale(s))).toEqual(parseScale(s));
        const copies: [Numeral, Chord] = [throughJson(parsed), throughJson(chord)];
        expect(chordOfNumeral(copies[0], throughJson(key))).toEqual(chordOfNumeral(n, k));
        expect(numeralOfChord(copies[1], throughJson(key))).toEqual(numeralOfChord(c, k));
      }),
    );
  });
});

describe('arbitrary input', () => {
  const parsers: Readonly<Record<string, (text: string) => unknown>> = {
    midi,
    parseNoteName,
    parseKey,
    parseChord,
    parseNumeral,
    parseScale,
    chordOfNumeral: (text) => chordOfNumeral(text, 'C'),
    numeralOfChord: (text) => numeralOfChord(text, 'C'),
  };
  const musical = fc
    .array(fc.constantFrom(...'ABCDEFGHIVabcdimxIVv#♯♭𝄫/790+-() \uD834'), { maxLength: 12 })
    .map((parts) => parts.join(''));
  const nasty = fc.constantFrom(
    'valueOf',
    '__proto__',
    'constructor',
    'toString',
    'hasOwnProperty',
    '\uD800',
    '\uDC00b',
    '\u0000',
    'A'.repeat(1_000_000),
    `C${'#'.repeat(1_000_000)}`,
    `G${'/G'.repeat(500_000)}`,
    `V${'/'.repeat(1_000_000)}`,
    `${'1'.repeat(1_000_000)}x`,
    `A${' '.repeat(1_000_000)}m`,
  );
  const anything = fc.oneof(
    musical,
    nasty,
    fc.string({ unit: 'binary' }),
    symbol,
    numeral,
    fc.anything() as fc.Arbitrary<string>,
  );

  test.each(Object.keys(parsers))('%s gives a frozen value or a ReedplateError', (name) => {
    const parse = parsers[name] as (text: string) => unknown;
    fc.assert(
      fc.property(anything, (text) => {
        try {
          const value = parse(text);
          expect(typeof value === 'number' || Object.isFrozen(value)).toBe(true);
        } catch (error) {
          if (!isReedplateError(error)) throw error;
          expect(error.value).toBe(text);
          expect(error.message.length).toBeLessThan(1000);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('a suggestion, where there is one, is read', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('midi', 'parseNoteName', 'parseKey', 'parseChord', 'parseNumeral'),
        musical,
        (name, text) => {
          const parse = parsers[name] as (text: string) => unknown;
          try {
            parse(text);
          } catch (error) {
            if (!isReedplateError(error)) throw error;
            if (error.nearest !== undefined) expect(parse(error.nearest)).toBeDefined();
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('nearestOf answers with one of the choices or with nothing, the same each time', () => {
    const choices = fc.array(fc.string(), { maxLength: 8 });
    fc.assert(
      fc.property(fc.string(), choices, (text, list) => {
        const nearest = nearestOf(text, list);
        expect(nearest === undefined || list.includes(nearest)).toBe(true);
        expect(nearestOf(text, list)).toBe(nearest);
        if (list.includes(text) && text.length <= 64) {
          expect(nearest?.toLowerCase()).toBe(text.toLowerCase());
        }
      }),
    );
  });

  test('what sounds does not depend on who asked before: pitchClass tables cannot be changed', () => {
    fc.assert(
      fc.property(symbol, pitchClass, (text, other) => {
        const chord = parseChord(text);
        expect(() => Object.assign(chord.tones[0] as object, { pitchClass: other })).toThrow(
          TypeError,
        );
        expect(parseChord(text)).toEqual(chord);
      }),
    );
  });
});
