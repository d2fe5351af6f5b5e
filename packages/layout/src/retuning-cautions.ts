import type { ReedRemedy } from './remedy.js';

/** Something to mind at the bench. */
export interface RetuningCaution {
  readonly text: string;
  /** The remedies it goes with. */
  readonly remedies: readonly ReedRemedy[];
}

const caution = (text: string, ...remedies: readonly ReedRemedy[]): RetuningCaution =>
  Object.freeze({ text, remedies: Object.freeze(remedies) });

/** The usual cautions of retuning, each with the work it goes with. Common practice, no source. */
export const RETUNING_CAUTIONS: readonly RetuningCaution[] = /* @__PURE__ */ (() =>
  Object.freeze([
    caution('Weight reeds with lead-free solder only, in a ventilated room.', 'weight-tip'),
    caution(
      'A soldering iron burns: rest it in its stand, and keep it off the reed plate.',
      'weight-tip',
    ),
    caution('Wear eye protection at the bench.', 'file-tip', 'file-base', 'weight-tip', 'replace'),
    caution(
      'Filing dust is not to be breathed or left on the reeds: wipe plates and hands before playing.',
      'file-tip',
      'file-base',
    ),
    caution(
      'A reed cracks sooner each time it is worked: go in small steps, and tune again a day later.',
      'file-tip',
      'file-base',
      'weight-tip',
    ),
    caution(
      'Where in doubt, leave it to a repair technician.',
      'file-tip',
      'file-base',
      'weight-tip',
      'replace',
    ),
  ]))();

/** The cautions that go with the work of a plan, in their order. */
export function cautionsFor(remedies: readonly ReedRemedy[]): readonly string[] {
  return RETUNING_CAUTIONS.filter((known) =>
    known.remedies.some((remedy) => remedies.includes(remedy)),
  ).map(({ text }) => text);
}
