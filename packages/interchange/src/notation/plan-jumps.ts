import type { Jump, JumpKind, Measure } from './measure.js';

/** A jump back, and how the music goes on from there; measures by index. */
export interface JumpPlan {
  /** The measure after which playing jumps back. */
  readonly from: number;
  readonly to: number;
  /** The measure that playing ends after, once it has jumped. */
  readonly stop?: number;
  /** The measure that playing leaves after, once it has jumped, and where it goes on. */
  readonly coda?: { readonly after: number; readonly to: number };
}

/** A sign and the measure it stands in. */
interface PlacedJump extends Jump {
  readonly at: number;
  readonly measure: Measure;
}

/**
 * What the signs of a piece ask for, if they can mean one thing only: one D.C. or D.S., at the end of a
 * measure; its segno before it; one fine, or one way to one coda, where it says so or there is one.
 *
 * @returns `none` where there is no jump, `unclear` where the signs do not say which
 */
export function planJumps(measures: readonly Measure[]): JumpPlan | 'none' | 'unclear' {
  const signs = measures.flatMap((measure, at) =>
    (measure.jumps ?? []).map((jump): PlacedJump => ({ ...jump, at, measure })),
  );
  const of = (kind: JumpKind): readonly PlacedJump[] => signs.filter((each) => each.kind === kind);
  const jumpsBack = [...of('da-capo'), ...of('dal-segno')];
  const [back] = jumpsBack;
  if (back === undefined) return leadsNowhere(signs, measures.length) ? 'none' : 'unclear';
  const to = back.kind === 'da-capo' ? 0 : segnoOf(back, of('segno'));
  if (jumpsBack.length > 1 || to === undefined || !endsMeasure(back)) return 'unclear';
  return planEnd({ from: back.at, to }, back, signs);
}

/** A segno or coda that nothing jumps to, or `fine` at the end, changes nothing. */
function leadsNowhere(signs: readonly PlacedJump[], count: number): boolean {
  return signs.every(
    ({ kind, at }) => kind === 'segno' || kind === 'coda' || (kind === 'fine' && at === count - 1),
  );
}

/** Parts of a tick that a sum of lengths may be off. */
const ROUNDING = 1e-3;

function endsMeasure({ offset, end, measure }: PlacedJump): boolean {
  const isLast = offset > 0 && measure.notes.every((note) => note.offset <= offset + ROUNDING);
  return end >= measure.length - ROUNDING || isLast;
}

const beginsMeasure = ({ offset }: PlacedJump): boolean => offset <= ROUNDING;

function segnoOf(back: PlacedJump, segnos: readonly PlacedJump[]): number | undefined {
  const named = segnos.filter(({ name }) => name === back.name);
  const [segno, ...others] = named.length > 0 ? named : segnos;
  const isRight =
    segno !== undefined && others.length === 0 && segno.at <= back.at && beginsMeasure(segno);
  return isRight ? segno.at : undefined;
}

/** How the music goes on after the jump: to the fine, over to the coda, or on past the jump. */
function planEnd(
  jump: Pick<JumpPlan, 'from' | 'to'>,
  { until }: PlacedJump,
  signs: readonly PlacedJump[],
): JumpPlan | 'unclear' {
  const fines = signs.filter(({ kind }) => kind === 'fine');
  const { ways, codas } = waysToCoda(signs);
  const wants = until ?? wantedBy(fines.length, ways.length);
  if (wants === 'unclear') return 'unclear';
  if (wants === 'fine') {
    const [fine, ...others] = fines;
    const isRight = fine !== undefined && others.length === 0 && endsMeasure(fine);
    return isRight && isBetween(fine.at, jump) ? { ...jump, stop: fine.at } : 'unclear';
  }
  if (wants === 'coda') {
    const [way, ...otherWays] = ways;
    const [coda, ...otherCodas] = codas;
    if (way === undefined || coda === undefined) return 'unclear';
    const isRight = endsMeasure(way) && beginsMeasure(coda) && coda.at > way.at;
    const isOne = otherWays.length + otherCodas.length === 0;
    return isRight && isOne && isBetween(way.at, jump)
      ? { ...jump, coda: { after: way.at, to: coda.at } }
      : 'unclear';
  }
  return jump;
}

function wantedBy(fines: number, ways: number): 'fine' | 'coda' | 'past' | 'unclear' {
  if (fines > 0 && ways > 0) return 'unclear';
  if (fines > 0) return 'fine';
  return ways > 0 ? 'coda' : 'past';
}

/** Of two coda signs and nothing else that says where to leave, the first says it. */
function waysToCoda(signs: readonly PlacedJump[]): {
  readonly ways: readonly PlacedJump[];
  readonly codas: readonly PlacedJump[];
} {
  const ways = signs.filter(({ kind }) => kind === 'to-coda');
  const codas = signs.filter(({ kind }) => kind === 'coda');
  const isTwice = ways.length === 0 && codas.length === 2;
  return isTwice ? { ways: codas.slice(0, 1), codas: codas.slice(1) } : { ways, codas };
}

function isBetween(at: number, { from, to }: Pick<JumpPlan, 'from' | 'to'>): boolean {
  return at >= to && at <= from;
}
