import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { toPitchClass } from '@reedplate/pitch';
import type { ComposedLine, ComposedStep } from './compose-line.js';
import type { ComposeOptions } from './compose-options.js';

type Asked = Pick<ComposeOptions, 'leap' | 'resolve' | 'plan'>;

/**
 * What a composed line breaks of what `composeLine` promises over a chart without an introduction, told from its
 * notes alone.
 */
export function brokenIn(
  { steps }: ComposedLine,
  chart: Chart,
  { leap = 9, resolve = 2, plan = 'AAB' }: Asked = {},
): readonly string[] {
  const phrases = phrasesIn(steps, chart, plan.length);
  return [
    ...(steps.length === 0 ? ['a line of no notes'] : []),
    ...brokenAtChanges(steps, chart),
    ...[...phrases.values()].flatMap((phrase) => brokenInPhrase(phrase, chart, leap, resolve)),
    ...brokenRhythms(phrases, chart, plan),
  ];
}

/** Whether a note is a tone of the chord that lasts at a tick; over none, any is. */
function isTone(chart: Chart, { start, sounding }: ComposedStep, at = start): boolean {
  const chord = chart.spans.find((span) => span.start <= at && at < span.end)?.chord;
  if (!chord) return true;
  return chord.tones.some(({ pitchClass }) => pitchClass === toPitchClass(sounding.pitch));
}

const endOf = ({ start, duration }: ComposedStep): number => start + duration;

/** What sounds as a chord begins, or first after it, is one of its tones: a phrase begins anew and lands too. */
function brokenAtChanges(steps: readonly ComposedStep[], chart: Chart): readonly string[] {
  return chart.spans.flatMap(({ start, end }) => {
    const first = steps.find((step) => step.start < end && endOf(step) > start);
    const lands = first === undefined || isTone(chart, first, Math.max(start, first.start));
    return lands ? [] : [`no chord tone at the change at tick ${start}`];
  });
}

/** Ticks of a phrase of a plan. */
function phraseTicks({ metre, bars, choruses }: Chart, phrases: number): number {
  return ((bars / choruses) * parseMetre(metre).barTicks) / phrases;
}

/** The notes of each phrase by its number in the chart, from 0; one that rests throughout is left out. */
function phrasesIn(steps: readonly ComposedStep[], chart: Chart, count: number) {
  const ticks = phraseTicks(chart, count);
  const phrases = new Map<number, ComposedStep[]>();
  for (const step of steps) {
    const number = Math.floor((step.start - chart.pickup) / ticks);
    phrases.set(number, [...(phrases.get(number) ?? []), step]);
  }
  return phrases;
}

function brokenInPhrase(
  phrase: readonly ComposedStep[],
  chart: Chart,
  leap: number,
  resolve: number,
): readonly string[] {
  const broken: string[] = [];
  let others = 0;
  for (const [at, step] of phrase.entries()) {
    others = isTone(chart, step) ? 0 : others + 1;
    if (others > resolve) broken.push(`more than ${resolve} notes without a chord tone`);
    const before = phrase[at - 1];
    if (before === undefined) continue;
    const width = Math.abs(step.sounding.pitch - before.sounding.pitch);
    if (width > leap) broken.push(`a leap over ${leap} semitones`);
    if (width === 0 && step.sounding !== before.sounding) broken.push('one note in two places');
    if (step.start < endOf(before)) broken.push('two notes at once');
  }
  if (others > 0) broken.push('a phrase that does not resolve');
  return broken;
}

/** A phrase that comes again in its chorus keeps its rhythm. */
function brokenRhythms(
  phrases: ReadonlyMap<number, readonly ComposedStep[]>,
  chart: Chart,
  plan: string,
): readonly string[] {
  const ticks = phraseTicks(chart, plan.length);
  const rhythmOf = (number: number): string =>
    (phrases.get(number) ?? [])
      .map(({ start, duration }) => `${start - chart.pickup - number * ticks} ${duration}`)
      .join(', ');
  return Array.from({ length: chart.choruses * plan.length }, (_, number) => {
    const inPlan = number % plan.length;
    const first = number - inPlan + plan.indexOf(plan.charAt(inPlan));
    return rhythmOf(number) === rhythmOf(first) ? [] : [`another rhythm in phrase ${number + 1}`];
  }).flat();
}
