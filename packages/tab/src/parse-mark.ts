import type { Breath, Hole } from '@reedplate/layout';
import type { TabDialectId } from './dialects.js';
import { BEND_SIGNS, DRAW_SIGNS, MARK_PATTERNS } from './mark-patterns.js';
import type { TabMark } from './tab-mark.js';

/** Marks read at a place of a text, and where the text goes on. */
export interface ReadMarks {
  /** One, or several where the digits of a chord stand together. */
  readonly marks: readonly TabMark[];
  readonly end: number;
}

/** Reads the mark at a place of a text; `undefined` where none stands there. */
export function parseMarkAt(
  text: string,
  at: number,
  dialect: TabDialectId,
  mostHoles: number,
): ReadMarks | undefined {
  const { marks, overbends } = MARK_PATTERNS[dialect];
  const over = firstMatch(overbends, text, at);
  const found = over ?? firstMatch(marks, text, at);
  if (found?.groups === undefined) return undefined;
  const read = toMarks(found.groups, dialect, { isOver: over !== undefined, mostHoles });
  return read === undefined ? undefined : { marks: read, end: at + found[0].length };
}

function firstMatch(
  patterns: readonly RegExp[],
  text: string,
  at: number,
): RegExpExecArray | undefined {
  for (const pattern of patterns) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found !== null) return found;
  }
  return undefined;
}

function toMarks(
  groups: Readonly<Record<string, string>>,
  dialect: TabDialectId,
  { isOver, mostHoles }: { readonly isOver: boolean; readonly mostHoles: number },
): readonly TabMark[] | undefined {
  const written = groups.holes ?? '';
  const breath = breathOf(groups.breath, written, dialect);
  const bend = [...(groups.bend ?? '')].reduce((sum, sign) => sum + (BEND_SIGNS.get(sign) ?? 0), 0);
  const over = isOver || (groups.over ?? '') !== '';
  const holes = holesOf(written.replaceAll('\u0332', ''), mostHoles);
  const isChord = holes.length > 1;
  if (breath === undefined || holes.length === 0 || (over && bend > 0)) return undefined;
  // A bend or overbend of holes played together would leave open which of them it bends.
  if (isChord && (over || bend > 0)) return undefined;
  return holes.map((hole) => Object.freeze({ hole: hole as Hole, breath, bend, over }));
}

/** Underlined digits all say draw; a number with some of each says nothing. */
function breathOf(
  sign: string | undefined,
  written: string,
  dialect: TabDialectId,
): Breath | undefined {
  if (sign !== undefined && sign !== '') return DRAW_SIGNS.has(sign) ? 'draw' : 'blow';
  const digits = written.replaceAll('\u0332', '').length;
  const underlined = written.length - digits;
  if (dialect === 'plus-only') return 'draw';
  if (underlined === 0) return 'blow';
  return underlined === digits ? 'draw' : undefined;
}

/**
 * The holes that digits together name: one hole where the harp has it, else neighbours of a chord,
 * `10` being one of them. None where they name no neighbours.
 */
function holesOf(digits: string, mostHoles: number): readonly number[] {
  const whole = Number(digits);
  if (!digits.startsWith('0') && whole <= mostHoles) return [whole];
  const holes = (digits.match(/10|[1-9]/gu) ?? []).map(Number);
  const areNeighbours = holes.every((hole, at) => hole === (holes[0] ?? 0) + at);
  const isWhole = holes.join('') === digits && holes.length > 1;
  return isWhole && areNeighbours && (holes.at(-1) ?? 0) <= mostHoles ? holes : [];
}
