import {
  deepFreeze,
  type KeyName,
  midi,
  type OptionNames,
  parseKey,
  ReedplateError,
  requireInteger,
  requireOptions,
} from '@reedplate/pitch';
import type { HoleReeds } from './harp.js';
import { requireReed } from './require-reed.js';
import type { Breath, Hole } from './sounding.js';
import type { Tuning } from './tuning.js';

/** Fewest and most holes of a harp. */
const FEWEST_HOLES = 1;
export const MOST_HOLES = 16;

/** A row of reeds from hole 1 up: note names with octave, MIDI numbers, or names in one text. */
export type ReedRow = string | readonly (string | number)[];

/** What {@link makeTuning} builds from. */
export interface TuningSpec {
  readonly id: string;
  /** Other names that it goes by, of the shape of an id, at most 16; default none. */
  readonly aliases?: readonly string[];
  /** Default: the id. */
  readonly name?: string;
  /** Default empty. */
  readonly use?: string;
  /** Default `own construction`. */
  readonly source?: string;
  /** Key printed on the harp with these rows; default `C`. */
  readonly label?: string;
  /** Position whose key the label names; default 1. */
  readonly labelPosition?: 1 | 2;
  readonly blow: ReedRow;
  /** As many reeds as `blow`. */
  readonly draw: ReedRow;
}

/** The names of all that a tuning is built from. */
export const TUNING_OPTIONS: OptionNames<TuningSpec> = Object.freeze({
  id: true,
  aliases: true,
  name: true,
  use: true,
  source: true,
  label: true,
  labelPosition: true,
  blow: true,
  draw: true,
});

/** A tuning that goes by more names than this is no tuning that anyone plays. */
const MOST_ALIASES = 16;

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/u;

/**
 * Makes a tuning from its two rows of reeds, 1 to 16 holes.
 *
 * @throws ReedplateError `TUNING_INVALID` naming hole and breath, `KEY_UNKNOWN` for the label, or
 * `OPTION_UNKNOWN` for a field there is not
 * @example
 * ```ts
 * import { makeTuning } from '@reedplate/layout';
 *
 * const tuning = makeTuning({ id: 'tiny', blow: 'C4 E4 G4', draw: ['D4', 'F4', 69] });
 * tuning.holes[2]; // => { hole: 3, blow: 67, draw: 69 }
 * makeTuning({ id: 'tiny', blow: 'C4 E4', draw: 'D4 H4' }); // throws TUNING_INVALID
 * ```
 */
export function makeTuning(spec: TuningSpec): Tuning {
  const given = requireOptions(spec, TUNING_OPTIONS, 'makeTuning');
  const { id, name = spec.id, use = '', source = 'own construction', label = 'C' } = given;
  const blow = readRow(spec.blow, 'blow');
  const draw = readRow(spec.draw, 'draw');
  if (blow.length !== draw.length) {
    const breath = blow.length < draw.length ? 'blow' : 'draw';
    const hole = Math.min(blow.length, draw.length) + 1;
    throw invalidTuning(undefined, 'a reed, as in the other row', { hole, breath });
  }
  return deepFreeze({
    id: requireId(id, 'id'),
    ...(spec.aliases === undefined ? {} : { aliases: requireAliases(spec.aliases) }),
    name: requireText(name, 'name'),
    use: requireText(use, 'use'),
    source: requireText(source, 'source'),
    label: requireLabel(label),
    labelPosition: requireLabelPosition(spec.labelPosition ?? 1),
    holes: blow.map((pitch, index): HoleReeds => {
      return { hole: (index + 1) as Hole, blow: pitch, draw: draw[index] as number };
    }),
  });
}

function readRow(row: unknown, breath: Breath): readonly number[] {
  const reeds: unknown = typeof row === 'string' ? row.trim().split(/\s+/u) : row;
  if (!Array.isArray(reeds)) {
    throw invalidTuning(row, 'a row of note names or MIDI numbers', { breath, path: breath });
  }
  requireInteger(reeds.length, {
    min: FEWEST_HOLES,
    max: MOST_HOLES,
    what: 'a number of holes',
    code: 'TUNING_INVALID',
    where: { breath },
  });
  return reeds.map((reed: unknown, index) => readReed(reed, index + 1, breath));
}

/** A reed's MIDI number from its name or number. */
function readReed(reed: unknown, hole: number, breath: Breath): number {
  const where = { hole, breath };
  const pitch = typeof reed === 'string' ? readReedName(reed, where) : reed;
  return requireReed(pitch, 'TUNING_INVALID', where);
}

interface ReedPlace {
  readonly hole: number;
  readonly breath: Breath;
}

function readReedName(name: string, where: ReedPlace): number {
  try {
    return midi(name);
  } catch {
    throw invalidTuning(name, 'a note with its octave, such as C4 or Bb3', where);
  }
}

function requireId(id: unknown, path: string): string {
  if (typeof id === 'string' && id.length <= 80 && ID.test(id)) return id;
  throw invalidTuning(id, 'lower-case words joined by hyphens', { path });
}

function requireAliases(aliases: unknown): readonly string[] {
  if (Array.isArray(aliases) && aliases.length <= MOST_ALIASES) {
    return aliases.map((alias: unknown, index) => requireId(alias, `aliases[${index}]`));
  }
  throw invalidTuning(aliases, `a list of at most ${MOST_ALIASES} names`, { path: 'aliases' });
}

function requireText(text: unknown, path: string): string {
  if (typeof text === 'string') return text;
  throw invalidTuning(text, 'text', { path });
}

function requireLabel(label: unknown): KeyName {
  if (typeof label === 'string') return parseKey(label).name;
  throw invalidTuning(label, 'a key such as C or Gm', { path: 'label' });
}

function requireLabelPosition(position: unknown): 1 | 2 {
  if (position === 1 || position === 2) return position;
  throw invalidTuning(position, 'position 1 or 2', { path: 'labelPosition' });
}

/** The error of a tuning, with where in it the value stands. */
export function invalidTuning(
  value: unknown,
  expected: string,
  where: ReedplateError['where'],
): ReedplateError {
  return new ReedplateError({ code: 'TUNING_INVALID', value, expected, where });
}
