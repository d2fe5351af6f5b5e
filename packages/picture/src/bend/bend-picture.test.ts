import { describe, expect, it } from 'vitest';
import { bendPicture } from './bend-picture.js';

const BEND = {
  start: 0.5,
  duration: 0.5,
  pitch: 70,
  cents: -20,
  curve: [
    { at: 0, cents: 150 },
    { at: 0.3, cents: -20 },
  ],
};

describe('bendPicture', () => {
  it('bendPicture says every note: when, which, how far off it is held and where it began', () => {
    const steady = { start: 0, duration: 0.4, pitch: 67 };
    const { text, description } = bendPicture([steady, BEND], { title: 'Two notes' });
    expect(text.split('\n')).toEqual([
      'Two notes',
      '0 s: G4 for 0.4 s',
      '0.5 s: B♭4 for 0.5 s, held 20 cents flat; 150 cents sharp at first',
    ]);
    expect(description).toBe(
      '2 notes, 1 of them with a pitch that moves; held at most 20 cents from their semitone.',
    );
  });

  it('bendPicture draws the curve through its points and holds its last', () => {
    const { svg } = bendPicture([BEND]);
    const [curve = ''] =
      /<path d="[^"]*" fill="none" stroke="[^"]*" stroke-width="2"/u.exec(svg) ?? [];
    const ys = [...curve.matchAll(/[ML][\d.]+ ([\d.]+)/gu)].map(([, y]) => Number(y));
    expect(ys).toHaveLength(3);
    const [first = 0, second = 0, third] = ys;
    expect(third).toBe(second);
    // 170 cents lie between them; rows are 1.6 times the small text, three quarters of 15 pixels.
    expect(second - first).toBeCloseTo(1.7 * 15 * 0.75 * 1.6, 1);
  });

  it('bendPicture names a row above and one below, at the ends of MIDI too', () => {
    const names = (pitch: number) =>
      [...bendPicture([{ start: 0, duration: 1, pitch }]).svg.matchAll(/>([A-G][♯♭]?-?\d)</gu)].map(
        ([, name]) => name,
      );
    expect(names(60)).toEqual(['D♭4', 'C4', 'B3']);
    expect(names(127)).toEqual(['G9', 'G♭9']);
    expect(names(0)).toEqual(['D♭-1', 'C-1']);
  });

  it.each([
    [[], 'LIST_EMPTY'],
    ['notes', 'LINE_INVALID'],
    [[{ start: 0, duration: 1, pitch: 1e9 }], 'LINE_INVALID'],
    [[{ start: -1, duration: 1, pitch: 60 }], 'LINE_INVALID'],
    [[null], 'LINE_INVALID'],
  ])('bendPicture refuses %j', (notes, code) => {
    expect(() => bendPicture(notes as never)).toThrow(expect.objectContaining({ code }));
  });
});
