/**
 * Are the chords of a band to be heard? Every groove in six forms and four keys is played by fluidsynth; of
 * each bar under one chord, the twelve pitch classes are summed from the spectrum, and the chord of the chart
 * must fit them better than the same kind of chord on any other root.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/backing/chroma.ts
 *
 * It needs fluidsynth and a sound font (`scripts/interchange/install-outside.sh`), and ends with 1 where a
 * groove has fewer than 95 % of its bars right.
 */
import { GROOVES, makeBacking } from '@reedplate/backing';
import { type Chart, type FormId, makeChart } from '@reedplate/form';
import { writeMidi } from '@reedplate/interchange';
import { parseMetre, secondsAt, tickAt } from '@reedplate/line';
import type { Sound } from '@reedplate/listen';
import { frequency } from '@reedplate/pitch';
import { soundOfMidi } from '../lib/render-midi.js';

const FORMS_HEARD: readonly FormId[] = [
  'basic',
  'quick-change',
  'eight-bar',
  'minor',
  'jazz',
  'sixteen-bar',
];
const KEYS = ['G', 'C', 'E', 'Bb'] as const;
const LEAST = 0.95;
const RATE = 11_025;
const TEMPO = 132;
const PITCHES = Array.from({ length: 45 }, (_, at) => 36 + at);

/** Power of each pitch class between two seconds, by Goertzel's sum at every semitone. */
function chromaOf({ samples, sampleRate }: Sound, from: number, to: number): readonly number[] {
  const part = samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate));
  const chroma = new Array<number>(12).fill(0);
  for (const pitch of PITCHES) {
    const factor = 2 * Math.cos((2 * Math.PI * frequency(pitch)) / sampleRate);
    let [once, twice] = [0, 0];
    for (const [at, sample] of part.entries()) {
      const window = Math.sin((Math.PI * at) / part.length);
      const now = sample * window + factor * once - twice;
      twice = once;
      once = now;
    }
    const power = once * once + twice * twice - factor * once * twice;
    chroma[pitch % 12] = (chroma[pitch % 12] ?? 0) + Math.sqrt(Math.max(0, power));
  }
  return chroma;
}

/** The root, in semitones above that of the chart, on which a kind of chord fits best. */
function bestRoot(chroma: readonly number[], tones: readonly number[]): number {
  const fits = Array.from({ length: 12 }, (_, by) =>
    tones.reduce(
      (sum, tone, at) => sum + (at === 0 ? 1.5 : 1) * (chroma[(tone + by) % 12] ?? 0),
      0,
    ),
  );
  return fits.indexOf(Math.max(...fits));
}

/** Bars under one chord that are heard as the chart has them, of all such bars. */
function heardBars(
  chart: Chart,
  groove: (typeof GROOVES)[number]['id'],
): readonly [number, number] {
  const backing = makeBacking(chart, { groove, countIn: 1, ending: false });
  const sound = soundOfMidi(writeMidi(backing), { rate: RATE });
  const { barTicks } = parseMetre(chart.metre);
  const timing = { tempo: TEMPO, metre: chart.metre };
  const bars = chart.spans.filter(
    ({ start, end, chord }) => chord !== null && end - start === barTicks,
  );
  const right = bars.filter(({ bar, chord }) => {
    const from = secondsAt(tickAt({ bar, beat: 1 }, chart) + barTicks, timing);
    const to = from + secondsAt(barTicks, timing);
    const tones = chord?.tones.map(({ pitchClass }) => pitchClass) ?? [];
    return bestRoot(chromaOf(sound, from, to), tones) === 0;
  });
  return [right.length, bars.length];
}

let isWorse = false;
for (const { id, parts } of GROOVES) {
  let [right, all] = [0, 0];
  for (const form of FORMS_HEARD) {
    for (const key of KEYS) {
      const metre = parts === 3 ? ({ metre: '12/8' } as const) : {};
      const chart = makeChart(form, form === 'minor' ? (`${key}m` as 'Gm') : key, {
        tempo: TEMPO,
        ...metre,
      });
      const [found, of] = heardBars(chart, id);
      right += found;
      all += of;
    }
  }
  isWorse ||= right < LEAST * all;
  console.log(`${id.padEnd(20)} ${right} of ${all} bars, ${((100 * right) / all).toFixed(1)} %`);
}
process.exitCode = isWorse ? 1 : 0;
