import { chordAt, FORMS, makeChart, parseForm } from '@reedplate/form';
import type { PiecePart, Sheet } from '@reedplate/interchange';
import { readMidi, writeMidi } from '@reedplate/interchange';
import { lineEnd, makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { DRUMS } from './drums.js';
import type { Groove } from './groove.js';
import { GROOVES } from './grooves.js';
import { type BackingOptions, makeBacking } from './make-backing.js';
import { summariseBacking } from './summarise-backing.js';

const chart = makeChart('basic', 'G', { tempo: 100, choruses: 2 });
const part = (sheet: Sheet, name: string): PiecePart => {
  const found = sheet.parts?.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('summariseBacking', () => {
  test('summariseBacking minds the hearing once, and leaves the rest to those who treat it', () => {
    const { cautions } = summariseBacking(makeBacking(chart));
    expect(cautions).toEqual([expect.stringMatching(/hearing.*ask a doctor or an audiologist/u)]);
  });

  test('summariseBacking counts the notes of each part, and the seconds of all bars', () => {
    const backing = makeBacking(makeChart('basic', 'G', { tempo: 120, choruses: 3 }), {
      countIn: 2,
    });
    const { parts, seconds, bars } = summariseBacking(backing);
    // 2 bars of count-in, 36 and a last one, of 4 beats at 120 a minute.
    expect([bars, seconds]).toEqual([39, 39 * 4 * 0.5]);
    expect(parts).toEqual(
      backing.parts?.map(({ name, line }) => ({ name, notes: line.notes.length })),
    );
  });

  test('summariseBacking takes 96 beats a minute where a chart has no tempo, as writeMidi plays it', () => {
    const backing = makeBacking(makeChart('basic', 'G'));
    const { seconds, tempo } = summariseBacking(backing);
    const midi = readMidi(writeMidi(backing));
    const lasts = (14 * 4 * 60) / 96;
    expect([tempo, seconds]).toEqual([96, lasts]);
    expect(midi.line.tempo).toBe(96);
  });

  test('summariseBacking tells of a sheet without parts that there are none', () => {
    const { parts, bars } = summariseBacking({ line: makeLine([]), chart });
    expect([parts, bars]).toEqual([[], 24]);
  });

  test.each([undefined, null, 'basic', {}, { chart: {} }, { chart: 'basic' }])(
    'summariseBacking refuses %j, which has no chart',
    (sheet) => {
      expect(() => summariseBacking(sheet as unknown as Sheet)).toThrow(
        expect.objectContaining({ code: 'CHART_INVALID' }),
      );
    },
  );
});

describe('makeBacking', () => {
  test('makeBacking counts in, plays the choruses, and ends on the tonic', () => {
    const backing = makeBacking(chart);
    expect(backing.chart).toMatchObject({ bars: 25, pickup: 0, feel: 'shuffle', tempo: 100 });
    expect(backing.chart?.spans[0]).toMatchObject({ start: 0, bar: 1, numeral: 'I7' });
    expect(backing.chart?.spans.at(-1)).toMatchObject({ bar: 25, numeral: 'I7' });
    // The lines say that a bar is counted in: their bar 1 is the chart's.
    expect(backing.line.countIn).toBe(1);
    for (const { line } of backing.parts ?? []) expect(line.countIn).toBe(1);
    const clicks = part(backing, 'Drums').line.notes.filter(({ pitch }) => pitch === DRUMS.click);
    expect(clicks.map(({ start }) => start)).toEqual([0, 960, 1920, 2880]);
    for (const { line } of backing.parts ?? []) expect(lineEnd(line)).toBe(26 * 3840);
  });

  test('makeBacking plays no count-in and no ending where asked', () => {
    const bare = makeBacking(chart, { countIn: 0, ending: false });
    expect(bare.chart).toEqual(chart);
    expect(part(bare, 'Bass').line.notes[0]?.start).toBe(0);
    const last = lineEnd(part(bare, 'Bass').line);
    expect(last).toBeGreaterThan(24 * 3840 - 960);
    expect(last).toBeLessThanOrEqual(24 * 3840);
  });

  test('makeBacking walks from the root of each chord and comes to the next by a semitone', () => {
    // C7 comes in bar 5 of the form, which is bar 6 after a bar of count-in.
    const { notes } = part(makeBacking(chart), 'Bass').line;
    expect(notes.slice(0, 8).map(({ pitch }) => pitch)).toEqual([31, 35, 38, 40, 43, 40, 38, 35]);
    const before = notes.find(({ start }) => start === 5 * 3840 - 960);
    const on = notes.find(({ start }) => start === 5 * 3840);
    expect([before?.pitch, on?.pitch]).toEqual([35, 36]);
  });

  test('makeBacking comps chord tones alone, within its range', () => {
    for (const form of FORMS) {
      const own = makeChart(form, form.mode === 'minor' ? 'Bbm' : 'Bb');
      const options = { countIn: 0, ending: false, groove: 'driving-shuffle' } as const;
      const backing = makeBacking(own, options);
      for (const { start, pitch } of part(backing, 'Comping').line.notes) {
        const tones = chordAt(own, start)?.chord?.tones.map(({ pitchClass }) => pitchClass);
        expect(tones).toContain(pitch % 12);
        expect(pitch).toBeGreaterThanOrEqual(52);
        expect(pitch).toBeLessThanOrEqual(72);
      }
    }
  });

  test.each([
    ['4/4', [0, 480, 960, 1440]],
    ['12/8', [0, 480, 960, 1440]],
    ['6/8', [0, 480, 960, 1440]],
    ['2/2', [0, 960, 1920, 2880]],
  ] as const)('makeBacking keeps time on the parts of each beat of %s', (metre, starts) => {
    const own = makeChart('basic', 'G', { metre });
    const { notes } = part(makeBacking(own, { countIn: 0 }), 'Drums').line;
    const time = notes.filter(({ pitch }) => pitch === DRUMS.ride || pitch === DRUMS.hat);
    expect(time.slice(0, 4).map(({ start }) => start)).toEqual(starts);
  });

  test.each(['4/4', '12/8', '3/4'] as const)(
    'makeBacking plays every form in %s, and rests in its breaks',
    (metre) => {
      for (const form of FORMS) {
        const own = makeChart(form, form.mode === 'minor' ? 'Am' : 'A', { metre });
        const backing = makeBacking(own);
        const bass = new Set(part(backing, 'Bass').line.notes.map(({ start }) => start));
        const breaks = backing.chart?.spans.filter(({ chord }) => chord === null) ?? [];
        expect(breaks.filter(({ start }) => bass.has(start))).toEqual([]);
        expect(bass.size).toBeGreaterThan(own.bars);
      }
    },
  );

  test('makeBacking puts a line and its pickup over the chart', () => {
    const line = makeLine(
      [
        { start: 0, duration: 480, pitch: 67 },
        { start: 480, duration: 960, pitch: 70 },
      ],
      { pickup: 480, title: 'Riff' },
    );
    const backing = makeBacking(chart, { line });
    expect(backing.line.notes.map(({ start }) => start)).toEqual([3360, 3840]);
    expect(backing.parts?.[0]).toMatchObject({ name: 'Tune', program: 23 });
    expect(makeBacking(chart, { line, countIn: 0 }).line.notes[0]?.start).toBe(0);
  });

  test('writeMidi plays a backing in its feel: the offbeat comes after two thirds of the beat', () => {
    const drums = readMidi(writeMidi(makeBacking(chart))).parts.find(
      ({ percussion }) => percussion === true,
    );
    const rides = drums?.line.notes.filter(({ pitch }) => pitch === DRUMS.ride) ?? [];
    expect(rides.slice(0, 3).map(({ start }) => start - 3840)).toEqual([0, 640, 960]);
  });

  test('readMidi takes a line of two notes over its backing for the tune, and never a bass alone', () => {
    const line = makeLine([
      { start: 0, duration: 480, pitch: 67 },
      { start: 480, duration: 960, pitch: 70 },
    ]);
    const { choice, line: found } = readMidi(writeMidi(makeBacking(chart, { line })));
    expect(found.notes.map(({ pitch }) => pitch)).toEqual([67, 70]);
    expect(choice).toMatchObject({ name: 'Tune', ties: [], doubtful: false });
    const alone = readMidi(writeMidi(makeBacking(chart)));
    expect(alone.choice?.name).not.toBe('Bass');
  });

  test('makeBacking refuses a count-in of nine bars', () => {
    expect(() => makeBacking(chart, { countIn: 9 })).toThrowError(/bars counted in/u);
  });

  test('makeBacking rests with the chart in a break, and aims at no chord that a break follows', () => {
    const stops = makeChart(parseForm('I7 | N.C. | IV7 | I7'), 'G');
    const { parts = [] } = makeBacking(stops, { countIn: 0, ending: false, groove: 'boogie' });
    for (const { line } of parts) {
      const inBreak = line.notes.filter(({ start }) => start >= 3840 && start < 2 * 3840);
      expect(inBreak).toEqual([]);
      expect(line.notes.some(({ start }) => start >= 2 * 3840)).toBe(true);
    }
    const [bass] = parts;
    // The boogie over G goes on to its sixth, E, and does not lead elsewhere.
    const last = bass?.line.notes.filter(({ start }) => start < 3840).at(-1);
    expect((last?.pitch ?? 0) % 12).toBe(4);
  });

  test.each([
    ['its first tonic', 'IV7 | I7 | V7 | IV7', 'I7'],
    ['its first chord, where it has no tonic', 'ii7 | V7 | ii7 | V7', 'ii7'],
    ['its first chord, after a break', 'N.C. | IV7 | V7 | IV7', 'IV7'],
  ])('makeBacking ends a form on %s', (_, bars, numeral) => {
    const { chart: played, parts = [] } = makeBacking(makeChart(parseForm(bars), 'G'));
    expect(played?.spans.at(-1)?.numeral).toBe(numeral);
    // A bar is counted in before the chart.
    const end = 3840 + (played?.spans.at(-1)?.start ?? 0);
    const root = played?.spans.at(-1)?.chord?.tones[0]?.pitchClass;
    const last = parts[0]?.line.notes.filter(({ start }) => start === end) ?? [];
    expect(last.map(({ pitch }) => pitch % 12)).toEqual([root]);
  });

  test('makeBacking of nothing but breaks is a count-in alone', () => {
    const { chart: played, parts = [] } = makeBacking(makeChart(parseForm('N.C. | N.C.'), 'G'));
    expect(played?.spans.at(-1)).toMatchObject({ numeral: null, chord: null });
    const counts = parts.map(({ name, line }) => [name, line.notes.length > 0]);
    expect(counts).toEqual([
      ['Bass', false],
      ['Comping', false],
      ['Drums', true],
    ]);
  });

  test('makeBacking gives each part the program that is asked for, and drums none', () => {
    const programs = (options: BackingOptions) =>
      makeBacking(chart, options).parts?.map(({ program }) => program);
    expect(programs({})).toEqual([34, 28, undefined]);
    expect(programs({ bass: { program: 33 }, comping: { program: 17 } })).toEqual([
      33,
      17,
      undefined,
    ]);
    for (const name of ['bass', 'comping', 'drums']) {
      expect(() => makeBacking(chart, { [name]: { program: 129 } })).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE', value: 129 }),
      );
    }
  });

  test.each([
    ['a pattern that is no text', { kick: 5 }],
    ['a pattern with a sign that is none', { kick: 'X. o! X. x.' }],
    ['beats of another number of parts', { kick: 'X.. x..' }],
    ['a pattern of nothing', { snare: ' ' }],
  ])('makeBacking refuses a groove with %s', (_, drums) => {
    const groove = { ...GROOVES[0], id: 'ours', drums } as unknown as Groove;
    expect(() => makeBacking(chart, { groove })).toThrow(
      expect.objectContaining({ code: 'GROOVE_INVALID' }),
    );
  });
});
