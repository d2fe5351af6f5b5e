import { itemAt } from '@reedplate/pitch';
import { bestReading, type Reading, type Readings, type Wanted } from './choose.js';
import type { BandConfidence } from './heard-band.js';

/** How a lead over the best rival becomes a chance: 1 / (1 + e^-(base + slope * lead)). */
interface Calibration {
  readonly base: number;
  readonly slope: number;
}

/** Set by hand, and not calibrated yet: see docs/listening.md. */
const CALIBRATIONS: Readonly<Record<keyof BandConfidence | 'bar', Calibration>> = {
  form: { base: 0, slope: 33 },
  key: { base: 0, slope: 22 },
  downbeat: { base: 0, slope: 22 },
  tempo: { base: 0, slope: 22 },
  bar: { base: 0, slope: 4 },
};

/** Forms that lose less than this to the best are alike to an ear. Chosen on one half of the tracks. */
export const ALIKE = 0.022;

/** Tempos nearer than this are the same. */
const SAME_TEMPO = 0.02;

/** How much better the best reading is than the best one that differs in a part of the answer. */
export function leadsOf(
  readings: Readings,
  best: Reading,
): Readonly<Record<keyof BandConfidence, number>> {
  const { grids, table } = readings;
  const grid = itemAt(grids, best.grid);
  const lead = (wanted: Wanted): number => {
    const rival = bestReading(readings, wanted);
    return rival === undefined ? 1 : best.score - rival.score;
  };
  const sameTempo = (other: number): boolean =>
    Math.abs(itemAt(grids, other).tempo / grid.tempo - 1) < SAME_TEMPO;
  const modeOf = (form: number | null) => (form === null ? '' : table.forms[form]?.mode);
  const alike = new Set(alikeTo(readings, best));
  return {
    tempo: lead((other) => !sameTempo(other.grid)),
    downbeat: lead(
      (other) =>
        sameTempo(other.grid) &&
        (grids[other.grid]?.phase !== grid?.phase ||
          grids[other.grid]?.beatsPerBar !== grid?.beatsPerBar),
    ),
    key: lead(
      ({ form, tonic }) =>
        form !== null && (tonic !== best.tonic || modeOf(form) !== modeOf(best.form)),
    ),
    form:
      best.form === null
        ? lead(({ form }) => form !== null)
        : lead(({ form }) => form === null || (form !== best.form && !alike.has(form))),
  };
}

/** Forms of the same roots and thirds are alike up to this: what else a chord has is hard to hear in a band. */
const ALIKE_IN_SHAPE = 0.1;

/** Forms that lose less than this are told apart by which is commoner: the catalogue begins with the commonest. */
const EQUAL = 0.01;

/** The best reading, or one that fits as well of a form that stands earlier in the catalogue. */
export function commonestOf(readings: Readings, best: Reading): Reading {
  const { grid, form, tonic, score } = best;
  if (form === null) return best;
  const { shapes } = readings.table;
  const row = readings.scores[grid] as Float64Array;
  const scoreOf = (other: number): number => row[other * 12 + tonic] as number;
  const equal = alikeTo(readings, best).filter(
    (other) => shapes[other] === shapes[form] || score - scoreOf(other) < EQUAL,
  );
  const commonest = Math.min(form, ...equal);
  return { grid, form: commonest, tonic, score: scoreOf(commonest) };
}

/** Other forms on the same tonic and grid that fit as well, the nearest first. */
export function alikeTo({ scores, table }: Readings, reading: Reading): readonly number[] {
  const { grid, form, tonic, score } = reading;
  if (form === null) return [];
  const row = scores[grid] as Float64Array;
  const lossOf = (other: number): number => score - (row[other * 12 + tonic] as number);
  return table.forms
    .map((_, other) => other)
    .filter((other) => {
      const most = table.shapes[other] === table.shapes[form] ? ALIKE_IN_SHAPE : ALIKE;
      return other !== form && lossOf(other) < most;
    })
    .sort((a, b) => lossOf(a) - lossOf(b));
}

/** The leads as chances. */
export function confidencesOf(readings: Readings, best: Reading): BandConfidence {
  const leads = leadsOf(readings, best);
  return {
    form: chanceOf('form', leads.form),
    key: chanceOf('key', leads.key),
    downbeat: chanceOf('downbeat', leads.downbeat),
    tempo: chanceOf('tempo', leads.tempo),
  };
}

/** The chance that an answer is right by how far it leads. */
export function chanceOf(what: keyof typeof CALIBRATIONS, lead: number): number {
  const { base, slope } = CALIBRATIONS[what];
  return Math.round(1000 / (1 + Math.exp(-(base + slope * lead)))) / 1000;
}
