import type { Metre } from '@reedplate/line';
import { requireInteger } from '@reedplate/pitch';
import { type EndingId, withEnding } from './endings.js';
import { type IntroKind, introBars } from './intro.js';
import type { PlannedBar } from './lay-bars.js';
import type { Form, FormBar } from './types.js';
import { type BreakHit, withBreak } from './with-break.js';

/** A break in one chorus of a chart. */
export interface ChartBreak {
  /** Chorus, from 1. */
  readonly chorus: number;
  /** Bars of the chorus, from 1. */
  readonly bars: readonly number[];
  /** Whether the band still strikes the first beat; default `none`. */
  readonly hit?: BreakHit;
}

/** How often the form is played, and what comes before, in and after. */
export interface Plan {
  readonly choruses: number;
  /** The metre that the bars are played in. */
  readonly metre: Metre;
  readonly intro?: IntroKind | undefined;
  readonly ending?: EndingId | undefined;
  readonly breaks?: readonly ChartBreak[] | undefined;
}

/** The bars of a chart in order: introduction, choruses with their breaks, the last with its ending. */
export function planBars(form: Form, plan: Plan): readonly PlannedBar[] {
  const { choruses, metre, intro, ending, breaks = [] } = plan;
  for (const { chorus } of breaks) {
    requireInteger(chorus, { min: 1, max: choruses, what: 'a chorus with a break' });
  }
  const planned: PlannedBar[] = [];
  if (intro !== undefined) {
    const bars = introBars(form, intro);
    addBars(planned, bars, 0, form.bars.length - bars.length);
  }
  for (let chorus = 1; chorus <= choruses; chorus += 1) {
    const closed = chorus === choruses && ending !== undefined ? withEnding(form, ending) : form;
    const ofChorus = breaks.filter((gap) => gap.chorus === chorus);
    addBars(planned, breakBars(closed, ofChorus, metre), chorus, 0);
  }
  return planned;
}

function breakBars(form: Form, breaks: readonly ChartBreak[], metre: Metre): readonly FormBar[] {
  if (breaks.length === 0) return form.bars;
  return breaks.reduce<Form>((broken, { bars, hit = 'none' }) => withBreak(broken, bars, { hit }), {
    ...form,
    metre,
  }).bars;
}

function addBars(
  planned: PlannedBar[],
  bars: readonly FormBar[],
  chorus: number,
  barsBefore: number,
): void {
  for (const [index, chords] of bars.entries()) {
    planned.push({ chords, chorus, barOfForm: barsBefore + index + 1 });
  }
}
