import type { CatalogueRow } from './catalogue-row.js';
import { readPlainReeds } from './plain-reeds.js';
import type { Tuning } from './tuning.js';
import { TUNING_ROWS } from './tuning-rows.js';

/** Id of a tuning in the catalogue. */
export type TuningId = (typeof TUNING_ROWS)[number][0];

/** Id of a tuning as a user may write it: an editor completes those of the catalogue. */
export type TuningName = TuningId | (string & Record<never, never>);

/** The catalogue of tunings, the standard one first. */
export const TUNINGS: readonly Tuning[] = /* @__PURE__ */ (() =>
  Object.freeze(TUNING_ROWS.map(readRow)))();

function readRow(row: CatalogueRow): Tuning {
  const [id, name, use, source, blow, draw, more] = row;
  const { aliases, label = 'C', labelPosition = 1 } = more ?? {};
  const others = aliases === undefined ? {} : { aliases: Object.freeze(aliases) };
  const holes = readPlainReeds(blow, draw);
  return Object.freeze({ id, ...others, name, use, source, label, labelPosition, holes });
}

/** The catalogue by id, and after the ids by alias. */
export const TUNINGS_BY_ID: ReadonlyMap<string, Tuning> = /* @__PURE__ */ (() =>
  new Map([
    ...TUNINGS.map((tuning) => [tuning.id, tuning] as const),
    ...TUNINGS.flatMap((tuning) => (tuning.aliases ?? []).map((alias) => [alias, tuning] as const)),
  ]))();
