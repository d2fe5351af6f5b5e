import {
  deepFreeze,
  type OptionNames,
  ReedplateError,
  readJson,
  requireFields,
  requireInteger,
  requireOneOf,
  requireOptions,
} from '@reedplate/pitch';
import type { Player, PlayerSkill, SplitWidth } from './player.js';
import { SPLIT_WIDTHS } from './players.js';
import { BREATHS, type Hole, TECHNIQUES, type Technique } from './sounding.js';

/** What {@link makePlayer} adds to the soundings. */
export type PlayerDetails = Partial<Omit<Player, 'skills'>>;

const DETAILS: OptionNames<PlayerDetails> = {
  id: true,
  name: true,
  splits: true,
  holdsTwoDraw: true,
  model: true,
};
const PLAYER_FIELDS = ['id', 'name', 'skills', 'splits', 'holdsTwoDraw', 'model'] as const;
const SKILL_FIELDS = ['technique', 'breath', 'holes', 'depths'] as const;
const CODE = 'PLAYER_INVALID';
const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/u;
/** A bend deeper than two octaves is no bend of any harp. */
const DEEPEST = 24;

/**
 * A player from the soundings they have: each technique on all holes, or on some. Splits default to
 * all, 2 draw is held unless told otherwise.
 *
 * @param skills at least one: a technique, or one with its holes, breath and depths
 * @throws ReedplateError `PLAYER_INVALID` with the field, `OPTION_UNKNOWN` for a detail there is not
 * @example
 * ```ts
 * import { makePlayer, soundings } from '@reedplate/layout';
 *
 * // Plays unbent notes and the bend on 4 draw.
 * const level = makePlayer(['natural', { technique: 'bend', holes: [4], breath: 'draw' }]);
 * soundings('C', { level }).length; // => 21
 * makePlayer([{ technique: 'bend', holes: [0 as 1] }]); // throws PLAYER_INVALID
 * ```
 */
export function makePlayer(
  skills: readonly (Technique | PlayerSkill)[],
  details: PlayerDetails = {},
): Player {
  const {
    id = 'own',
    name = id,
    splits = SPLIT_WIDTHS,
  } = requireOptions(details, DETAILS, 'makePlayer');
  const { holdsTwoDraw = true, model } = details;
  if (typeof id !== 'string' || !ID.test(id)) {
    throw invalid(id, 'lower-case words joined by hyphens', 'id');
  }
  if (typeof holdsTwoDraw !== 'boolean') {
    throw invalid(holdsTwoDraw, 'true or false', 'holdsTwoDraw');
  }
  return deepFreeze({
    id,
    name: requireText(name, 'name'),
    skills: requireList(skills, 'skills').map(checkSkill),
    splits: checkSplits(splits),
    holdsTwoDraw,
    ...(model === undefined ? {} : { model: requireText(model, 'model') }),
  });
}

/**
 * A player from parsed JSON, or from JSON text: the shape of {@link Player}, checked and frozen. A
 * field of another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, or `PLAYER_INVALID` with the field
 * @example
 * ```ts
 * import { PLAYERS, readPlayer } from '@reedplate/layout';
 *
 * readPlayer(JSON.stringify(PLAYERS.bends)).id; // => 'bends'
 * readPlayer({ skills: [] }); // throws PLAYER_INVALID
 * ```
 */
export function readPlayer(json: unknown): Player {
  const { skills, ...details } = requireFields(readJson(json), PLAYER_FIELDS, { code: CODE });
  // makePlayer checks each value; here only the names of the fields are known to be right.
  return makePlayer(skills as readonly PlayerSkill[], details as PlayerDetails);
}

function checkSkill(skill: unknown, index: number): PlayerSkill {
  const path = `skills[${index}]`;
  const given = typeof skill === 'string' ? { technique: skill } : skill;
  const { technique, breath, holes, depths } = requireFields(given, SKILL_FIELDS, {
    code: CODE,
    path,
  });
  const choice = (value: string) => ({ what: value, code: CODE, where: { path } }) as const;
  return {
    technique: requireOneOf(technique, TECHNIQUES, choice('a technique')),
    ...(breath === undefined ? {} : { breath: requireOneOf(breath, BREATHS, choice('a breath')) }),
    ...(holes === undefined
      ? {}
      : { holes: numbers(holes, 16, 'a hole', `${path}.holes`) as Hole[] }),
    ...(depths === undefined
      ? {}
      : { depths: numbers(depths, DEEPEST, 'semitones', `${path}.depths`) }),
  };
}

function numbers(list: unknown, max: number, what: string, path: string): number[] {
  return requireList(list, path).map((value, at) =>
    requireInteger(value, { min: 1, max, what, code: CODE, where: { path: `${path}[${at}]` } }),
  );
}

function checkSplits(splits: unknown): readonly SplitWidth[] {
  if (!Array.isArray(splits)) throw invalid(splits, 'a list of widths', 'splits');
  return splits.map((width: unknown, at) => {
    const found = SPLIT_WIDTHS.find((known) => known === width);
    if (found === undefined) throw invalid(width, 'a width of 3, 4 or 5 holes', `splits[${at}]`);
    return found;
  });
}

function requireList(list: unknown, path: string): readonly unknown[] {
  if (Array.isArray(list) && list.length > 0) return list;
  throw invalid(list, 'a list with something in it', path);
}

function requireText(text: unknown, path: string): string {
  if (typeof text === 'string' && text !== '') return text;
  throw invalid(text, 'text', path);
}

function invalid(value: unknown, expected: string, path: string): ReedplateError {
  return new ReedplateError({ code: CODE, value, expected, where: { path } });
}
