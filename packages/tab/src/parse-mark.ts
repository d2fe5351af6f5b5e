import type { Breath, Hole } from '@reedplate/layout';
import { itemAt } from '@reedplate/pitch';
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
  if (found === undefined) return undefined;
  const groups = found.groups as unknown as MarkGroups;
  const read = toMarks(groups, dialect, { isOver: over !== undefined, mostHoles });
  return read === undefined ? undefined : { marks: read, end: at + found[0].length };
}

/** What a pattern of marks names; each part of it takes part in every match, empty where it says nothing. */
interface MarkGroups {
  readonly holes: string;
  /** Not there where the dialect marks the digits themselves. */
  readonly breath?: string;
  readonly bend: string;
  readonly over: string;
}

/** The patterns of bends hold these signs and no others. */
const semitonesOf = (sign: string): number => BEND_SIGNS.get(sign) as number;

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
  groups: MarkGroups,
  dialect: TabDialectId,
  { isOver, mostHoles }: { readonly isOver: boolean; readonly mostHoles: number },
): readonly TabMark[] | undefined {
  const { holes: written, bend: bends, over: overbend } = groups;
  const breath = breathOf(groups.breath, written, dialect);
  const bend = Array.from(bends, semitonesOf).reduce((sum, semitones) => sum + semitones, 0);
  const over = isOver || overbend !== '';
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
  if (holes.length < 2 || holes.join('') !== digits) return [];
  const areNeighbours = holes.every((hole, at) => hole === itemAt(holes, 0) + at);
  return areNeighbours && itemAt(holes, -1) <= mostHoles ? holes : [];
}
