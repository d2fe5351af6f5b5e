import type { ChordAvailability, ChordShape, Completeness } from '@reedplate/chord-tone';
import { BREATHS } from '@reedplate/layout';
import { itemAt } from '@reedplate/pitch';
import type { Page } from '../../shared/print.js';

const FITS: readonly Completeness[] = ['complete', 'partial', 'with-added-tones', 'clashing'];

const SHAPE_MARKS =
  'in brackets what a shape lacks (-), adds (+) or clashes with (!); 4,6 is a split';

/** For each chord, fit and breath, the shapes worth playing, or worth a warning. */
export function showShapes(
  chords: readonly ChordAvailability[],
  { paint, table }: Page,
): readonly string[] {
  const rows = chords.flatMap(({ chord, shapes = [] }) =>
    FITS.flatMap((fit) =>
      BREATHS.map((breath) => {
        const found = shapes.filter(
          (shape) => shape.completeness === fit && shape.breath === breath,
        );
        return [chord.symbol, fit, breath, found.filter(isWorthShowing).map(sayShape).join('  ')];
      }),
    ).filter(([, , , holes]) => holes !== ''),
  );
  const head = ['chord', 'fit', 'breath', 'holes'];
  return ['', ...table({ head, rows }), '', paint('aside', SHAPE_MARKS)];
}

/** Half of a chord at least; of what contradicts it, only what holds its root. */
function isWorthShowing({ completeness, tones }: ChordShape): boolean {
  const degrees = new Set(tones.map(({ degree }) => degree));
  if (completeness === 'clashing') return degrees.has('1');
  return [...degrees].filter((degree) => degree !== null).length >= 2;
}

function sayShape({ gesture, holes, lacks, adds, clashes }: ChordShape): string {
  const marks = [
    ...lacks.map((degree) => `-${degree}`),
    ...adds.map((degree) => `+${degree}`),
    ...clashes.map(({ above }) => `!${above}`),
  ];
  const place = holes.join(gesture === 'split' ? ',' : '-');
  return marks.length === 0 ? place : `${place} (${marks.join(' ')})`;
}

/**
 * Neighbouring holes, joined where they overlap and lack the same: any three neighbours of
 * `draw 1-4` sound the chord. What they lack stands after them.
 */
export function sayWhole(shapes: readonly ChordShape[]): string {
  const runs = shapes.filter(({ gesture, adds }) => gesture !== 'split' && adds.length === 0);
  const groups = new Map<string, ChordShape[]>();
  for (const run of runs) {
    const label = `${run.breath}/${run.lacks.join(' ')}`;
    groups.set(label, [...(groups.get(label) ?? []), run]);
  }
  return [...groups.values()].flatMap(joinRuns).map(sayStretch).join(', ') || 'none';
}

/** Neighbouring holes, from the lowest to the highest. */
interface Stretch {
  readonly run: ChordShape;
  readonly from: number;
  readonly to: number;
}

function joinRuns(runs: readonly ChordShape[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const run of [...runs].sort((a, b) => itemAt(a.holes, 0) - itemAt(b.holes, 0))) {
    const [from, to] = [itemAt(run.holes, 0), itemAt(run.holes, -1)];
    const last = stretches.at(-1);
    if (last === undefined || from > last.to) stretches.push({ run, from, to });
    else stretches.splice(-1, 1, { ...last, to: Math.max(last.to, to) });
  }
  return stretches;
}

function sayStretch({ run, from, to }: Stretch): string {
  const without = run.lacks.length === 0 ? '' : ` (no ${run.lacks.join(' ')})`;
  return `${run.breath} ${from}-${to}${without}`;
}
