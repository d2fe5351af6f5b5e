import type { Key } from '@reedplate/pitch';
import type { ExplainedStep, PathExplanation, TermEfforts } from '@reedplate/playability';
import type { Page } from '../../shared/print.js';
import { notesOf, placeOf, round, tabOf } from '../../shared/say-grips.js';

const HEAD = ['bar', 'tab', 'notes', 'effort', 'made of', 'air', 'why'] as const;

/** A path move by move, with what each is made of and why it is chosen. */
export function showMoves(
  { path, terms, steps }: PathExplanation,
  key: Key,
  { paint, table }: Page,
): readonly string[] {
  const rows = steps.map((step) => [
    placeOf(step),
    tabOf([step.soundings]),
    notesOf(step.soundings, key),
    round(step.effort),
    sayTerms(step.terms),
    sayAir(step.air),
    sayWhy(step),
  ]);
  return [
    ...table({ head: HEAD, rows }),
    '',
    `effort ${round(path.effort)} points, worst ${round(path.worst)}: ${sayTerms(terms) || 'none'}`,
    '',
    paint('aside', 'a point is a move to the next hole at leisure; the figures are assumptions'),
  ];
}

const TERM_NAMES: Readonly<Record<keyof TermEfforts, string>> = {
  technique: 'bending',
  chord: 'chord',
  hold: 'holding',
  reach: 'reach',
  breath: 'breath change',
  bendMove: 'into and out of bends',
  repeat: 'repeat',
  hurry: 'hurry',
  air: 'air',
};

function sayTerms(terms: TermEfforts): string {
  return (Object.keys(TERM_NAMES) as (keyof TermEfforts)[])
    .flatMap((term) => {
      const points = terms[term];
      return points === undefined ? [] : [`${TERM_NAMES[term]} ${round(points)}`];
    })
    .join(', ');
}

function sayAir(seconds: number): string {
  if (seconds === 0) return 'even';
  return seconds > 0 ? `${round(seconds)} s in` : `${round(-seconds)} s out`;
}

function sayWhy({ reason, others: [nearest] }: ExplainedStep): string {
  if (reason === 'only-way' || nearest === undefined) return 'the only way';
  const tab = tabOf([nearest.soundings]);
  if (reason === 'first-of-equals') return `as easy as ${tab}, which stands later`;
  return `${tab} would cost ${round(nearest.more)} more`;
}
