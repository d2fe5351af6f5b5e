import { type FormId, formById, makeChart, makeForm, readChart } from '@reedplate/form';
import { type KeyLike, randomFrom, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlainBand, playPlainly } from './band.fixture.js';
import { hearBand } from './hear-band.js';
import type { HeardBand } from './heard-band.js';

const TEMPO = 140;
const BAR = (4 * 60) / TEMPO;

function heard(form: FormId, key: KeyLike, look: PlainBand = {}): HeardBand {
  return hearBand(playPlainly(makeChart(form, key, { tempo: TEMPO }), look));
}

const chordsOf = ({ chart }: HeardBand): readonly string[] =>
  chart.spans.map(({ chord }) => chord?.root ?? '');

const QUICK_CHANGE = heard('quick-change', 'G');

describe('hearBand', () => {
  test('hearBand tells the form, the key, the tempo and where bars begin', () => {
    const { form, alike, chart, tempo, bars, differences } = QUICK_CHANGE;
    expect([form, ...alike].map((each) => each?.form)).toContain('quick-change');
    expect(chart.key).toBe('G');
    expect(Math.abs(tempo / TEMPO - 1)).toBeLessThan(0.02);
    expect(differences).toEqual([]);
    expect(bars.length).toBeGreaterThanOrEqual(12);
    for (const [at, { start }] of bars.slice(0, 12).entries())
      expect(Math.abs(start - at * BAR)).toBeLessThan(0.07);
  });

  test('hearBand hears the same at the rate of a compact disc', () => {
    const fine = heard('quick-change', 'G', { sampleRate: 44_100 });
    expect([fine.form?.form, fine.chart.key]).toEqual([
      QUICK_CHANGE.form?.form,
      QUICK_CHANGE.chart.key,
    ]);
    expect(chordsOf(fine)).toEqual(chordsOf(QUICK_CHANGE));
    expect(Math.abs(fine.tempo / QUICK_CHANGE.tempo - 1)).toBeLessThan(0.01);
  });

  test('hearBand gives a chart that readChart takes, the chords that were played', () => {
    expect(readChart(JSON.stringify(QUICK_CHANGE.chart))).toEqual(QUICK_CHANGE.chart);
    expect(chordsOf(QUICK_CHANGE).slice(0, 12).join(' ')).toBe('G C G G C C G G D C G D');
  });

  test('hearBand gives a second for each beat of the chart and for its end', () => {
    const { beats, chart, bars } = QUICK_CHANGE;
    expect(beats.length).toBe(4 * chart.bars + 1);
    expect(beats.filter((_, at) => at % 4 === 0)).toEqual([
      ...bars.map(({ start }) => start),
      bars.at(-1)?.end,
    ]);
    expect(bars.map(({ chords }) => chords).slice(0, 2)).toEqual(['G7', 'C7']);
  });

  test('hearBand says how the band is tuned, in cents and as A4', () => {
    const sharp = heard('basic', 'A', { reference: 446 });
    expect(Math.abs(sharp.reference - 446)).toBeLessThan(1);
    expect(Math.abs(sharp.cents - 1200 * Math.log2(446 / 440))).toBeLessThan(4);
    expect(sharp.chart.key).toBe('A');
  });

  test('hearBand hears a minor blues as minor', () => {
    expect(heard('minor', 'Am').chart.key).toBe('Am');
  });

  test('hearBand says how sure it is, from 0 to 1', () => {
    for (const chance of Object.values(QUICK_CHANGE.confidence)) {
      expect(chance).toBeGreaterThan(0.5);
      expect(chance).toBeLessThanOrEqual(1);
    }
    expect(QUICK_CHANGE.bars.every(({ confidence }) => confidence >= 0 && confidence <= 1)).toBe(
      true,
    );
  });

  test('hearBand follows a form whose bars are left out or added, and says which', () => {
    const { bars } = formById('basic');
    const twice = [...bars, ...bars];
    const without = twice.filter((_, at) => at !== 9);
    const short = hearBand(playPlainly(makeChart(makeForm(without), 'E', { tempo: TEMPO })));
    expect(short.differences).toContainEqual(
      expect.objectContaining({ kind: 'missing', barOfForm: 10 }),
    );
    expect(chordsOf(short).slice(8, 11)).toEqual(['B', 'E', 'B']);
  });

  test('hearBand says which chords are others than those of the form', () => {
    const { bars } = formById('basic-two-bars-of-v');
    const other = bars.map((bar, at) => (at === 3 ? [{ numeral: 'bVI7', weight: 1 }] : bar));
    const { differences, chart } = hearBand(
      playPlainly(makeChart(makeForm([...other, ...bars]), 'C', { tempo: TEMPO })),
    );
    expect(chart.spans[3]?.chord?.root).toBe('Ab');
    expect(differences).toEqual([
      expect.objectContaining({ kind: 'root', bar: 4, barOfForm: 4, given: 'Ab7', expected: 'C7' }),
    ]);
  });

  test('hearBand says where no form of the catalogue fits, and still gives the chords', () => {
    const loop = makeForm([
      'I',
      'V',
      'vi',
      'IV',
      'I',
      'V',
      'vi',
      'IV',
      'I',
      'V',
      'vi',
      'IV',
      'I',
      'V',
      'vi',
      'IV',
    ]);
    const song = hearBand(playPlainly(makeChart(loop, 'D', { tempo: TEMPO })));
    expect(song.form).toBeNull();
    expect(song.chart.form).toBe('heard');
    expect(song.chart.key).toBe('D');
    expect(chordsOf(song).slice(0, 4)).toEqual(['D', 'A', 'B', 'G']);
  });

  test('hearBand chooses among the forms and the key that are given', () => {
    const sound = playPlainly(makeChart('quick-change', 'G', { tempo: TEMPO }));
    const { form } = hearBand(sound, { forms: ['basic', 'quick-change'], key: 'G' });
    expect(form?.form).toBe('quick-change');
  });

  test('hearBand hears the same however loud, and after a silence that much later', () => {
    const late = heard('quick-change', 'G', { gain: 0.05, silence: 2 });
    expect(late.chart).toEqual(QUICK_CHANGE.chart);
    expect(late.form).toEqual(QUICK_CHANGE.form);
    for (const [at, beat] of late.beats.entries())
      expect(Math.abs(beat - 2 - (QUICK_CHANGE.beats[at] ?? 0))).toBeLessThan(0.011);
  });

  test('hearBand moves its key and its chords with the music', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 11 }), (tonic) => {
        const key = TWELVE_KEYS[tonic]?.tonic ?? 'C';
        const { chart } = heard('quick-change', key);
        expect(chart.key).toBe(key);
        expect(chart.spans.map(({ numeral }) => numeral)).toEqual(
          QUICK_CHANGE.chart.spans.map(({ numeral }) => numeral),
        );
      }),
      { numRuns: 3 },
    );
  });

  test('hearBand answers noise without conviction, and any samples in bounded time', () => {
    const random = randomFrom(3);
    const noise = Float32Array.from({ length: 11_025 * 12 }, () => random() - 0.5);
    const { confidence } = hearBand({ sampleRate: 11_025, samples: noise });
    expect(Math.min(confidence.tempo, confidence.downbeat)).toBeLessThan(0.8);
  });

  test('hearBand refuses silence, what is too short or long, and what is no sound', () => {
    const failure = (details: object) =>
      expect.objectContaining({ code: 'SOUND_INVALID', ...details });
    const silent = (seconds: number) => ({
      sampleRate: 8000,
      samples: new Float32Array(8000 * seconds),
    });
    expect(() => hearBand(silent(10))).toThrow(failure({ value: 10 }));
    expect(() => hearBand(silent(2))).toThrow(failure({ value: 2 }));
    expect(() => hearBand(silent(601))).toThrow(failure({ value: 601 }));
    expect(() => hearBand(null as never)).toThrow(failure({}));
  });

  test('hearBand refuses options that there are not, and forms and keys that are none', () => {
    const sound = { sampleRate: 8000, samples: new Float32Array(80_000) };
    expect(() => hearBand(sound, { kee: 'G' } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'key' }),
    );
    expect(() => hearBand(sound, { forms: [] })).toThrow(
      expect.objectContaining({ code: 'FORM_INVALID' }),
    );
    expect(() => hearBand(sound, { forms: ['none such'] })).toThrow(
      expect.objectContaining({ code: 'FORM_UNKNOWN' }),
    );
    expect(() => hearBand(sound, { key: 'H' as never })).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
  });
});
