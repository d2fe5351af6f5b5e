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
  const played = Array.from({ length: choruses }, (_, index): readonly FormBar[] => {
    const isLast = index === choruses - 1;
    const closed = isLast && ending !== undefined ? withEnding(form, ending) : form;
    return breaks
      .filter(({ chorus }) => chorus === index + 1)
      .reduce((broken, { bars, hit = 'none' }) => withBreak(broken, bars, { hit }), {
        ...closed,
        metre,
      }).bars;
  });
  return [...planIntro(form, intro), ...played.flatMap((bars, index) => numbered(bars, index + 1))];
}

function planIntro(form: Form, intro: IntroKind | undefined): readonly PlannedBar[] {
  if (intro === undefined) return [];
  const bars = introBars(form, intro);
  return numbered(bars, 0, form.bars.length - bars.length);
}

function numbered(bars: readonly FormBar[], chorus: number, barsBefore = 0): readonly PlannedBar[] {
  return bars.map((chords, index) => ({ chords, chorus, barOfForm: barsBefore + index + 1 }));
}
