import { type Chart, chordAt } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { randomFrom } from '@reedplate/pitch';
import type { Sound } from '../sound.js';

/** How a band of the simplest kind plays. */
export interface PlainBand {
  readonly sampleRate?: number;
  readonly gain?: number;
  readonly reference?: number;
  /** Seconds of silence before it begins. */
  readonly silence?: number;
}

/** Strengths of the harmonics of all its instruments. */
const HARMONICS = [1, 0.5, 0.25] as const;

/** A chart as a bass, chords and drums play it, each beat the same: enough to be heard, and quick to make. */
export function playPlainly(
  chart: Chart,
  { sampleRate = 11_025, gain = 0.2, reference = 440, silence = 0 }: PlainBand = {},
): Sound {
  const { beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const beat = 60 / (chart.tempo ?? 120);
  const beats = chart.bars * beatsPerBar;
  const samples = new Float32Array(Math.ceil((silence + beats * beat + 0.3) * sampleRate));
  const random = randomFrom(1);
  const add = (second: number, length: number, wave: (at: number) => number): void => {
    const from = Math.round((silence + second) * sampleRate);
    for (let at = 0; at < length * sampleRate && from + at < samples.length; at += 1)
      samples[from + at] = (samples[from + at] ?? 0) + gain * wave(at / sampleRate);
  };
  const tone = (pitch: number) => {
    const turns = 2 * Math.PI * reference * 2 ** ((pitch - 69) / 12);
    return (at: number): number =>
      Math.exp(-4 * at) *
      HARMONICS.reduce((sum, share, index) => sum + share * Math.sin((index + 1) * turns * at), 0);
  };
  for (let at = 0; at < beats; at += 1) {
    const { chord } = chordAt(chart, at * beatTicks) ?? { chord: null };
    const inBar = at % beatsPerBar;
    if (inBar % 2 === 0)
      add(
        at * beat,
        0.12,
        (second) => 2 * Math.exp(-30 * second) * Math.sin(2 * Math.PI * 55 * second),
      );
    else add(at * beat, 0.08, (second) => Math.exp(-50 * second) * (random() - 0.5));
    if (chord === null) continue;
    const classes = chord.tones.map(({ pitchClass }) => pitchClass);
    add(at * beat, beat, tone(36 + (classes[inBar % 2 === 0 ? 0 : 2] ?? 0)));
    for (const pitchClass of classes) add(at * beat, beat, tone(60 + pitchClass));
  }
  return { sampleRate, samples };
}
