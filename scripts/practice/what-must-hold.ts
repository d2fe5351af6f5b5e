import type { Chart } from '@reedplate/form';
import type { ComposedLine } from '@reedplate/practice';

type Step = ComposedLine['steps'][number];

/** Bars of a phrase of the plan AAB over twelve. */
const PHRASE_BARS = 4;

function isTone(chart: Chart, { start, sounding }: Step, at = start): boolean {
  const span = chart.spans.find((each) => each.start <= at && at < each.end);
  const tones = span?.chord?.tones;
  return tones?.some(({ pitchClass }) => pitchClass === sounding.pitch % 12) ?? true;
}

/** What a composed twelve-bar chorus breaks of what it was asked, told from its notes alone. */
export function brokenIn(
  { steps }: ComposedLine,
  chart: Chart,
  { leap, resolve }: { readonly leap: number; readonly resolve: number },
): readonly string[] {
  const broken: string[] = [];
  for (const { start, end } of chart.spans) {
    const first = steps.find((step) => step.start < end && step.start + step.duration > start);
    if (first && !isTone(chart, first, Math.max(first.start, start))) {
      broken.push(`no chord tone at the change at tick ${start}`);
    }
  }
  const phrases = [1, 5, 9].map((from) =>
    steps.filter(({ bar }) => bar >= from && bar < from + PHRASE_BARS),
  );
  for (const phrase of phrases) broken.push(...brokenInPhrase(phrase, chart, leap, resolve));
  const last = steps.at(-1);
  if (last === undefined || !isTone(chart, last)) broken.push('no chord tone at the end');
  const rhythm = (phrase: readonly Step[] = []) =>
    phrase.map(({ bar, beat, duration }) => [bar % PHRASE_BARS, beat, duration].join()).join(' ');
  if (rhythm(phrases[0]) !== rhythm(phrases[1])) broken.push('another rhythm in the second A');
  return broken;
}

function brokenInPhrase(
  phrase: readonly Step[],
  chart: Chart,
  leap: number,
  resolve: number,
): readonly string[] {
  const broken: string[] = [];
  let others = 0;
  for (const [at, step] of phrase.entries()) {
    const before = phrase[at - 1] ?? step;
    if (Math.abs(step.sounding.pitch - before.sounding.pitch) > leap) {
      broken.push(`a leap over ${leap} semitones`);
    }
    others = isTone(chart, step) ? 0 : others + 1;
    if (others > resolve) broken.push(`more than ${resolve} notes without a chord tone`);
  }
  if (others > 0) broken.push('a phrase that does not resolve');
  return broken;
}
