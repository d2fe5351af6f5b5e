import { scoreLine } from '@reedplate/chord-tone';
import { type Chart, makeChart, readChart } from '@reedplate/form';
import { readMidi, readPiece, writeAbc, writeMidi, writeMusicXml } from '@reedplate/interchange';
import { makeLine, notesInSeconds } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeBacking } from './make-backing.js';
import { bandEvents } from './sound/band-events.js';
import { summariseBacking } from './summarise-backing.js';

const chart = makeChart('quick-change', 'G', { tempo: 120, choruses: 4 });
const symbolOf = ({ spans }: Chart, bar: number) =>
  spans.find((span) => span.bar === bar)?.chord?.symbol;

describe('makeBacking in another key', () => {
  const moved = makeBacking(chart, { keyChange: { after: 2, by: 2 } });

  test('keyChange plays two choruses in G, then goes on in A, and ends there', () => {
    const { spans } = moved.chart as Chart;
    expect([1, 13, 25, 26, 37, 49].map((bar) => symbolOf(moved.chart as Chart, bar))).toEqual([
      'G7', 'G7', 'A7', 'D7', 'A7', 'A7',
    ]); // biome-ignore format: bars side by side
    expect(spans.at(-1)).toMatchObject({ bar: 49, numeral: 'II7' });
    // A bar is counted in: the bass begins the third chorus on A.
    const bass = moved.parts?.find(({ name }) => name === 'Bass')?.line.notes ?? [];
    expect((bass.find(({ start }) => start === 25 * 3840)?.pitch ?? 0) % 12).toBe(9);
  });

  test('keyChange leaves a chart that can be read again, in any key and form', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('basic', 'minor', 'jazz'),
        fc.constantFrom('G', 'Db', 'F#', 'B'),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: -11, max: 11 }),
        (form, key, after, by) => {
          const own = makeChart(form, key === 'Db' && form === 'minor' ? 'C#m' : key, {
            choruses: 4,
          });
          const played = makeBacking(own, { keyChange: { after, by } }).chart as Chart;
          expect(readChart(JSON.stringify(played))).toEqual(played);
          const root = (bar: number) =>
            played.spans.find((span) => span.bar === bar)?.chord?.tones[0]?.pitchClass;
          const times = Math.floor(3 / after);
          const last = (root(3 * (own.bars / 4) + 1) ?? 0) - (root(1) ?? 0) - times * by;
          expect(((last % 12) + 12) % 12).toBe(0);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe('makeBacking up a ladder of tempos', () => {
  const ladder = makeBacking(chart, { ladder: 10 });

  test('ladder makes each chorus faster, in the lines, the sound and the file', () => {
    const starts = [1, 2, 3].map((at) => (1 + at * 12) * 3840);
    const changes = starts.map((start, at) => ({ start, tempo: 130 + at * 10 }));
    expect(ladder.line.tempoChanges).toEqual(changes);
    expect(readMidi(writeMidi(ladder)).line.tempoChanges).toEqual(changes);
    // A bar of count-in and the first chorus, two more, the last with its final bar; a bar has four beats.
    const exact = 13 * 2 + 12 * (240 / 130) + 12 * (240 / 140) + 13 * (240 / 150);
    expect(summariseBacking(ladder).seconds).toBeCloseTo(exact, 2);
    expect(bandEvents(ladder).at(-1)?.start).toBeCloseTo(exact - 240 / 150, 5);
  });
});

describe('makeBacking in swing', () => {
  const offBeats = (swing: number | 'by-tempo' | undefined, tempo: number) => {
    const own = makeChart('basic', 'G', { tempo });
    const line = makeLine([{ start: 480, duration: 480, pitch: 67 }]);
    const options = { groove: 'boogie', countIn: 0, line } as const;
    const backing = makeBacking(own, { ...options, ...(swing === undefined ? {} : { swing }) });
    const beat = 60 / tempo;
    return Object.fromEntries(
      ['Bass', 'Tune'].map((name) => {
        const places = bandEvents(backing)
          .filter(({ part }) => part === name)
          .map(({ start }) => (start % beat) / beat)
          .filter((place) => place > 0.01 && place < 0.99);
        const [place = 0] = places;
        return [name, place / (1 - place)];
      }),
    );
  };

  test.each([
    [undefined, 120, 2, 2],
    [3, 120, 3, 3],
    ['by-tempo', 120, 3.5, 1.3],
    ['by-tempo', 200, 2, 1.3],
    ['by-tempo', 320, 1, 1],
  ] as const)(
    'swing %s at %i is %d to 1 in the band and %d to 1 on top',
    (swing, tempo, band, top) => {
      const { Bass, Tune } = offBeats(swing, tempo);
      expect(Math.abs((Bass ?? 0) - band)).toBeLessThan(0.02);
      expect(Math.abs((Tune ?? 0) - top)).toBeLessThan(0.02);
    },
  );

  test('writeMidi plays each part by its own swing', () => {
    const own = makeChart('basic', 'G', { tempo: 120 });
    const line = makeLine([{ start: 480, duration: 480, pitch: 67 }]);
    const read = readMidi(
      writeMidi(makeBacking(own, { swing: 'by-tempo', countIn: 0, line, groove: 'boogie' })),
    );
    const first = (name: string) =>
      read.parts
        .find((part) => part.name === name)
        ?.line.notes.map(({ start }) => start % 960)
        .find((at) => at > 0);
    expect([first('Tune'), first('Bass')]).toEqual([543, 747]);
  });
});

describe('makeBacking with looseness', () => {
  test('looseness brings notes late, by no more than asked for, and the count-in exactly', () => {
    const exact = makeBacking(chart);
    const loose = makeBacking(chart, { looseness: 20 });
    for (const [at, part] of (exact.parts ?? []).entries()) {
      const before = notesInSeconds(part.line);
      const after = notesInSeconds(loose.parts?.[at]?.line ?? part.line);
      expect(after).toHaveLength(before.length);
      const sum = (notes: typeof before) => notes.reduce((all, { start }) => all + start, 0);
      const mean = (sum(after) - sum(before)) / before.length;
      expect(mean).toBeGreaterThan(0.004);
      expect(mean).toBeLessThan(0.016);
    }
    const clicks = loose.parts?.find(({ percussion }) => percussion)?.line.notes.slice(0, 4);
    expect(clicks?.map(({ start }) => start)).toEqual([0, 960, 1920, 2880]);
    expect(makeBacking(chart, { looseness: 20 })).toEqual(loose);
  });

  test('looseness lets nothing sound in a break', () => {
    const breaks = [{ chorus: 1, bars: [4] }];
    const own = makeChart('basic', 'G', { tempo: 120, breaks });
    const loose = makeBacking(own, { looseness: 30, countIn: 0 });
    for (const { line } of loose.parts ?? []) {
      const heard = line.notes.filter(
        ({ start, duration }) => start + duration > 3 * 3840 && start < 4 * 3840,
      );
      expect(heard).toEqual([]);
    }
  });
});

describe('a count-in that files say', () => {
  const line = makeLine(
    chart.spans.slice(0, 12).map(({ start, chord }) => ({
      start,
      duration: 1920,
      pitch: 60 + (chord?.tones[0]?.pitchClass ?? 0),
    })),
  );
  const own = makeChart('quick-change', 'G', { tempo: 120 });
  const plain = scoreLine(line, own).total;
  const band = makeBacking(own, { countIn: 2, line });

  test.each([
    ['MIDI', () => writeMidi(band)],
    ['MusicXML', () => writeMusicXml(band)],
    ['ABC', () => writeAbc(band)],
  ])('a line that is read from %s together with its band scores as it did alone', (_, write) => {
    const read = readPiece(write());
    expect(read.line.countIn).toBe(2);
    expect(read.chart?.spans[0]?.chord?.symbol).toBe('G7');
    expect(plain).toBeGreaterThan(90);
    expect(Math.abs(scoreLine(read.line, own).total - plain)).toBeLessThan(1);
  });
});

test.each([
  [{ keyChange: { after: 0, by: 2 } }],
  [{ keyChange: { after: 1, by: 12 } }],
  [{ ladder: 41 }],
  [{ ladder: -39 }],
  [{ swing: 0.5 }],
  [{ swing: 'wide' }],
  [{ looseness: 31 }],
])('makeBacking refuses %j', (options) => {
  expect(() => makeBacking(chart, options as never)).toThrow(
    expect.objectContaining({ code: 'NUMBER_RANGE' }),
  );
});
