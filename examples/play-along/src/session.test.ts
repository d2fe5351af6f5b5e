import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eventsBetween, lastSecond, placeAt } from './place.js';
import { makeSession } from './session.js';
import { FIRST_SET_UP, readSetUp } from './set-up.js';

const session = makeSession({ ...FIRST_SET_UP, tempo: 120, choruses: 2 });
const loop = makeSession({ ...FIRST_SET_UP, tempo: 120, loopFrom: 5, loopTo: 6 });

describe('readSetUp', () => {
  test('readSetUp gives back what was kept', () => {
    const chosen = { ...FIRST_SET_UP, key: 'A', tempo: 80, mute: ['bass'] };
    expect(readSetUp(JSON.stringify(chosen))).toEqual(chosen);
  });

  test('readSetUp takes nothing that is no longer right, whatever was kept', () => {
    const odd = { tempo: 9999, groove: 'polka', mute: ['choir'], look: 'large', key: 3 };
    expect(readSetUp(JSON.stringify(odd))).toEqual({ ...FIRST_SET_UP, look: 'large' });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (kept) => {
        expect(
          makeSession({ ...readSetUp(kept), key: 'G', tuning: 'standard', harp: '', ownBars: '' })
            .bars[0],
        ).toBeGreaterThan(0);
      }),
      { numRuns: 20 },
    );
    expect(readSetUp(null)).toEqual(FIRST_SET_UP);
  });
});

describe('makeSession', () => {
  test('makeSession takes the best harp, a bar of count-in and the choruses', () => {
    expect(session.harp.key).toBe('C');
    expect([session.countIn, session.secondsOfBar, session.passSeconds]).toEqual([2, 2, 24]);
    expect([session.passes, session.bars]).toEqual([2, [1, 12]]);
    // 1 bar of count-in, 24 of choruses; the last chord comes in the bar after them.
    expect(lastSecond(session)).toBe(50);
  });

  test('makeSession plays own bars, variations and another harp', () => {
    const own = makeSession({
      ...FIRST_SET_UP,
      ownBars: '| I | IV | V | I |',
      variations: ['sevenths'],
      harp: 'F',
    });
    expect(own.song.spans.map(({ chord }) => chord?.symbol)).toEqual(['G7', 'C7', 'D7', 'G7']);
    expect([own.harp.key, own.bars]).toEqual(['F', [1, 4]]);
  });

  test.each([{ ownBars: '| H7 |' }, { key: 'H' }, { harp: 'X' }, { tuning: 'no-such' }])(
    'makeSession refuses %j in words',
    (wrong) => {
      expect(() => makeSession({ ...FIRST_SET_UP, ...wrong })).toThrow(
        expect.objectContaining({ code: expect.any(String), message: expect.any(String) }),
      );
    },
  );
});

describe('placeAt', () => {
  test('placeAt counts in, goes from bar to bar and from chorus to chorus, and ends', () => {
    expect(placeAt(session, 0)).toMatchObject({ at: 'count-in', beatsLeft: 4 });
    expect(placeAt(session, 1.9)).toMatchObject({ at: 'count-in', beatsLeft: 1 });
    expect(placeAt(session, 2)).toMatchObject({ at: 'bar', pass: 1, bar: 1 });
    expect(placeAt(session, 3.5)).toMatchObject({ bar: 1, beatsLeft: 1, next: { numeral: 'IV7' } });
    expect(placeAt(session, 4)).toMatchObject({ bar: 2, now: { numeral: 'IV7' } });
    expect(placeAt(session, 26)).toMatchObject({ pass: 2, bar: 1 });
    expect(placeAt(session, 50)).toEqual({ at: 'end' });
  });

  test('placeAt stays within the bars of a loop', () => {
    expect(placeAt(loop, 2)).toMatchObject({ pass: 1, bar: 5 });
    expect(placeAt(loop, 4)).toMatchObject({ pass: 1, bar: 6 });
    expect(placeAt(loop, 6)).toMatchObject({ pass: 2, bar: 5 });
    expect(placeAt(loop, 2 + 4 * 1000)).toMatchObject({ pass: 1001, bar: 5 });
  });
});

describe('eventsBetween', () => {
  test('eventsBetween gives every event once, however the time is cut', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(session, loop),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (of, step) => {
          const cuts = Array.from({ length: Math.ceil(60 / step) }, (_, at) => at * step);
          const cut = cuts.flatMap((from, at) => eventsBetween(of, from, cuts[at + 1] ?? 60));
          const whole = eventsBetween(of, 0, 60);
          const sorted = (events: typeof whole) =>
            events.map(({ start, sound, pitch }) => `${start.toFixed(6)} ${sound} ${pitch}`).sort();
          expect(sorted(cut)).toEqual(sorted(whole));
        },
      ),
      { numRuns: 20 },
    );
  });

  test('eventsBetween plays a loop over and over, alike each time', () => {
    const pass = (number: number) =>
      eventsBetween(loop, 2 + number * 4 - 1e-9, 2 + (number + 1) * 4 - 1e-9)
        .map(({ start, sound, pitch }) => `${(start - number * 4).toFixed(6)} ${sound} ${pitch}`)
        .sort();
    expect(pass(0).length).toBeGreaterThan(10);
    expect(pass(7)).toEqual(pass(0));
    expect(lastSecond(loop)).toBe(Number.POSITIVE_INFINITY);
  });
});
