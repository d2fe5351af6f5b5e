import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type BarFrame, type SpelledNote, spellVoice } from './spell-voice.js';
import type { BarEvent } from './write-bars.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const FOUR_FOUR: BarFrame = { beatTicks: 960, length: 3840 };

/** Notes that follow each other, from their lengths; negative ones are rests. */
function events(...lengths: readonly number[]): readonly BarEvent[] {
  let offset = 0;
  return lengths.map((length) => {
    const duration = Math.abs(length);
    const event: BarEvent = {
      offset,
      duration,
      pitches: length < 0 ? [] : [67],
      tiedFrom: false,
      tiedTo: false,
      word: `${offset}`,
    };
    offset += duration;
    return event;
  });
}

/** Names of the values: `eighth/3` of a triplet, `(` and `)` around a tuplet, `-` for a tie. */
function spelling(frame: BarFrame, ...lengths: readonly number[]): string {
  return spellVoice(events(...lengths), frame)
    .map(({ value, tuplet, pitches, tiedTo }) => {
      const name = `${value?.type ?? '?'}${'.'.repeat(value?.dots ?? 0)}`;
      const before = `${tuplet?.at === 0 ? '(' : ''}${pitches.length === 0 ? 'r:' : ''}`;
      const after = `${tiedTo ? '-' : ''}${tuplet && tuplet.at === tuplet.size - 1 ? ')' : ''}`;
      return `${before}${name}${after}`;
    })
    .join(' ');
}

/** Where notes begin and how long they last, their parts joined. */
function joinTies(parts: readonly BarEvent[]): readonly (readonly [number, number])[] {
  const notes: [number, number][] = [];
  for (const { offset, duration, tiedFrom } of parts.filter(({ pitches }) => pitches.length > 0)) {
    const last = notes.at(-1);
    if (tiedFrom && last !== undefined) last[1] += duration;
    else notes.push([offset, duration]);
  }
  return notes;
}

function tupletLengths(spelled: readonly SpelledNote[]): readonly number[] {
  const lengths: number[] = [];
  for (const { duration, tuplet } of spelled) {
    if (tuplet?.at === 0) lengths.push(duration);
    else if (tuplet !== undefined) lengths.push((lengths.pop() ?? 0) + duration);
  }
  return lengths;
}

describe('spellVoice', () => {
  test.each([
    [[960, 2880], 'quarter half.'],
    [[480, 1920, 1440], 'eighth half quarter.'],
    [[320, 320, 320, 2880], '(eighth eighth eighth) half.'],
    [[640, 320, 2880], '(quarter eighth) half.'],
    [[640, 640, 640, 1920], '(quarter quarter quarter) half'],
    [[160, 160, 160, 480, 2880], '(16th 16th 16th) eighth half.'],
    [[160, 160, 160, 160, 160, 160, 2880], '(16th 16th 16th) (16th 16th 16th) half.'],
    [[320, 640, 2880], '(eighth quarter) half.'],
  ])('spellVoice of lengths %j is %s', (lengths, expected) => {
    expect(spelling(FOUR_FOUR, ...lengths)).toBe(expected);
  });

  test.each([
    [[640, 800, 2400], '(quarter eighth-) eighth half- eighth'],
    [[320, -640, 2880], '(eighth r:quarter) half.'],
    [[320, 3520], '(eighth quarter-) half.'],
    [[1280, 2560], '(half quarter-) half'],
    [[1440, 320, 2080], 'quarter. (eighth 16th-) half'],
  ])('spellVoice ties a note of lengths %j at the edge of a triplet: %s', (lengths, expected) => {
    expect(spelling(FOUR_FOUR, ...lengths)).toBe(expected);
  });

  test('spellVoice counts the beats of a pickup from its end', () => {
    expect(spelling({ beatTicks: 960, length: 1440 }, 480, 320, 640)).toBe(
      'eighth (eighth quarter)',
    );
    expect(spelling({ beatTicks: 960, length: 640 }, 320, 320)).toBe('(eighth eighth)');
  });

  test('spellVoice divides the dotted beats of a compound metre without tuplets', () => {
    expect(spelling({ beatTicks: 1440, length: 2880 }, 480, 480, 480, 960, 480)).toBe(
      'eighth eighth eighth quarter eighth',
    );
    expect(spelling({ beatTicks: 1440, length: 1440 }, 160, 160, 160, 960)).toBe(
      '(16th 16th 16th) quarter',
    );
  });

  test('spellVoice leaves a length without a value whole, and names none', () => {
    expect(spelling(FOUR_FOUR, 901, 2939)).toBe('? ?');
  });

  test('spellVoice puts a word under the first part of a note alone', () => {
    const words = spellVoice(events(320, 3520), FOUR_FOUR).map(({ word }) => word);
    expect(words).toEqual(['0', '320', undefined]);
  });

  const voices = fc
    .record({
      beatTicks: fc.constantFrom(480, 960, 1440, 1920),
      unit: fc.constantFrom(30, 40, 60, 160, 240, 320, 1, 7),
      lengths: fc.array(fc.tuple(fc.integer({ min: 1, max: 24 }), fc.boolean()), { minLength: 1 }),
    })
    .map(({ beatTicks, unit, lengths }) => {
      const signed = lengths.map(([length, isRest]) => (isRest ? -length : length) * unit);
      const length = signed.reduce((sum, each) => sum + Math.abs(each), 0);
      return { frame: { beatTicks, length }, voice: events(...signed) };
    });

  test('spellVoice fills the same time with the same notes, without gaps', () => {
    fc.assert(
      fc.property(voices, ({ frame, voice }) => {
        let at = 0;
        for (const { offset, duration, value } of spellVoice(voice, frame)) {
          expect(offset).toBe(at);
          expect(value?.ticks ?? duration).toBe(duration);
          at += duration;
        }
        expect(at).toBe(frame.length);
      }),
    );
  });

  test('spellVoice ties the parts of a note, which join back to what was given', () => {
    fc.assert(
      fc.property(voices, ({ frame, voice }) => {
        expect(joinTies(spellVoice(voice, frame))).toEqual(joinTies(voice));
      }),
    );
  });

  test('spellVoice makes tuplets whole on every grid of triplets that fills its bar', () => {
    const grid = fc
      .array(fc.integer({ min: 1, max: 24 }), { minLength: 1, maxLength: 12 })
      .map((lengths) => {
        const sum = lengths.reduce((total, each) => total + each, 0);
        // The last note fills the bar: 12 thirds of a beat are one.
        return [...lengths, 12 - (sum % 12)].map((thirds) => thirds * 320);
      });
    fc.assert(
      fc.property(grid, (lengths) => {
        const length = lengths.reduce((sum, each) => sum + each, 0);
        const spelled = spellVoice(events(...lengths), { beatTicks: 960, length });
        for (const { value } of spelled) expect(value).toBeDefined();
        // Three thirds of an eighth, in ticks.
        for (const ticks of tupletLengths(spelled)) expect(ticks % 480).toBe(0);
      }),
    );
  });
});
