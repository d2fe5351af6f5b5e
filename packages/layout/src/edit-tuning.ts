import {
  deepFreeze,
  requireInteger,
  requireOneOf,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import type { HoleReeds } from './harp.js';
import { invalidTuning, makeTuning, TUNING_OPTIONS, type TuningSpec } from './make-tuning.js';
import { requireReed } from './require-reed.js';
import type { Breath, Hole } from './sounding.js';
import { type TuningLike, toTuning } from './to-tuning.js';
import type { Tuning } from './tuning.js';

/** One reed raised or lowered. */
export interface ReedEdit {
  readonly hole: Hole;
  readonly breath: Breath;
  /** Semitones; negative lowers. */
  readonly by: number;
}

/** What {@link editTuning} names the new tuning; all but `id` default to those of the old one. */
export type EditedTuningSpec = Pick<TuningSpec, 'id'> & Partial<Omit<TuningSpec, 'blow' | 'draw'>>;

const { blow: _blow, draw: _draw, ...EDIT_OPTIONS } = TUNING_OPTIONS;
const EDITS = { what: 'a list of edits such as 5 draw up 1', code: 'TUNING_INVALID' } as const;

/**
 * A tuning made from another by raising and lowering reeds.
 *
 * @param tuning the tuning to begin with, or its id in the catalogue
 * @param edits each as data or as text: `5 draw up 1`, `hole 3 blow down 2`
 * @throws ReedplateError `TUNING_UNKNOWN`, or `TUNING_INVALID` naming hole and breath
 * @example
 * ```ts
 * import { editTuning } from '@reedplate/layout';
 *
 * const tuning = editTuning('standard', ['5 draw up 1'], { id: 'bright-fifth' });
 * tuning.holes[4]; // => { hole: 5, blow: 76, draw: 78 }
 * editTuning('standard', ['11 draw up 1'], { id: 'eleventh' }); // throws TUNING_INVALID
 * ```
 */
export function editTuning(
  tuning: TuningLike,
  edits: readonly (string | ReedEdit)[],
  spec: EditedTuningSpec,
): Tuning {
  const from = toTuning(tuning);
  requireOptions(spec, EDIT_OPTIONS, 'editTuning');
  requireShape({ edits }, { edits: 'list' }, EDITS);
  const holes = edits.reduce((edited, edit) => applyEdit(edited, parseReedEdit(edit)), from.holes);
  return makeTuning({
    label: from.label,
    labelPosition: from.labelPosition,
    use: from.use,
    source: 'own construction',
    ...spec,
    blow: holes.map(({ blow }) => blow),
    draw: holes.map(({ draw }) => draw),
  });
}

function applyEdit(
  holes: readonly HoleReeds[],
  { hole, breath, by }: ReedEdit,
): readonly HoleReeds[] {
  const reeds = holes[hole - 1];
  if (reeds === undefined) {
    throw invalidTuning(hole, `a hole from 1 to ${holes.length}`, { hole, breath });
  }
  const pitch = requireReed(reeds[breath] + by, 'TUNING_INVALID', { hole, breath });
  return holes.with(hole - 1, { ...reeds, [breath]: pitch });
}

const EDIT = /^(?:hole\s+)?(\d{1,2})\s+(blow|draw)\s+(up|down)\s+(\d{1,2})$/iu;

/**
 * Reads an edit of one reed: `5 draw up 1` raises it by a semitone.
 *
 * @throws ReedplateError `TUNING_INVALID`
 * @example
 * ```ts
 * import { parseReedEdit } from '@reedplate/layout';
 *
 * parseReedEdit('hole 3 blow up 2'); // => { hole: 3, breath: 'blow', by: 2 }
 * parseReedEdit('3 up'); // throws TUNING_INVALID
 * ```
 */
export function parseReedEdit(edit: string | ReedEdit): ReedEdit {
  if (typeof edit === 'object' && edit !== null) return checkEdit(edit);
  const [, hole, breath, way, semitones] =
    (typeof edit === 'string' && EDIT.exec(edit.trim())) || [];
  if (hole === undefined || breath === undefined) {
    throw invalidTuning(edit, 'an edit such as 5 draw up 1', {});
  }
  const by = way?.toLowerCase() === 'up' ? Number(semitones) : -Number(semitones);
  return checkEdit({ hole: Number(hole) as Hole, breath: breath.toLowerCase() as Breath, by });
}

/**
 * An edit of one reed as text: the inverse of {@link parseReedEdit}.
 *
 * @throws ReedplateError `TUNING_INVALID`
 * @example
 * ```ts
 * import { formatReedEdit } from '@reedplate/layout';
 *
 * formatReedEdit({ hole: 5, breath: 'draw', by: 1 }); // => '5 draw up 1'
 * ```
 */
export function formatReedEdit(edit: ReedEdit): string {
  const { hole, breath, by } = checkEdit(edit);
  return `${hole} ${breath} ${by < 0 ? 'down' : 'up'} ${Math.abs(by)}`;
}

function checkEdit(edit: ReedEdit): ReedEdit {
  const code = 'TUNING_INVALID';
  const { hole, breath, by } = requireShape(edit, {}, { what: 'an edit of a reed', code });
  requireOneOf(breath, ['blow', 'draw'], { what: 'a breath', code });
  requireInteger(hole, { min: 1, max: 16, what: 'a hole', code, where: { breath } });
  const where = { hole, breath };
  requireInteger(by, { min: -127, max: 127, what: 'semitones', code, where });
  return deepFreeze({ hole, breath, by: by === 0 ? 0 : by });
}
