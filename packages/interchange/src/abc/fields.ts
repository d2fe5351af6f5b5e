import { type Metre, parseMetre, TICKS_PER_QUARTER } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';

const WHOLE = 4 * TICKS_PER_QUARTER;
const FRACTION = /^(\d{1,4})\/(\d{1,4})$/u;

/** An `M:` field. */
export interface MetreField {
  /** Undefined for free metre, and for one that cannot be kept. */
  readonly metre?: Metre;
  /** Bar length as part of a whole note; undefined for free metre. */
  readonly size?: number;
}

const SUM =
  /^\(?\s{0,2}(\d{1,3}(?:\s{0,2}\+\s{0,2}\d{1,3}){0,9})\s{0,2}(?:\)\s{0,2})?\/\s{0,2}(\d{1,3})/u;

/** Reads an `M:` field, sums such as `(2+3)/8` included; `undefined` where it is no metre. */
export function readMetreField(text: string): MetreField | undefined {
  const field = text.trim();
  if (field === '' || /^none$/iu.test(field)) return {};
  if (field === 'C') return { metre: '4/4', size: 1 };
  if (field === 'C|') return { metre: '2/2', size: 1 };
  const [, sum = '', unit = ''] = SUM.exec(field) ?? [];
  const units = sum.split('+').reduce((total, part) => total + Number(part), 0);
  if (unit === '' || !(units > 0) || Number(unit) === 0) return undefined;
  const size = units / Number(unit);
  try {
    parseMetre(`${units}/${unit}`);
    return { metre: `${units}/${unit}` as Metre, size };
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return { size };
  }
}

/** Reads an `L:` field: ticks of the unit note length, or `undefined`. */
export function readUnitField(text: string): number | undefined {
  if (text.trim() === '1') return WHOLE;
  const [, upper = '', lower = ''] = FRACTION.exec(text.trim()) ?? [];
  const ticks = (WHOLE * Number(upper)) / Number(lower);
  return Number.isFinite(ticks) && ticks > 0 ? ticks : undefined;
}

/** Unit note length where no `L:` stands: a sixteenth in a bar shorter than 3/4, else an eighth. */
export function defaultUnit({ size }: MetreField): number {
  return size !== undefined && size < 0.75 ? WHOLE / 16 : WHOLE / 8;
}

/** A `Q:` field: so many beats of so many ticks a minute. */
export interface TempoField {
  readonly beatTicks: number;
  readonly perMinute: number;
}

/** Beats stand apart, so that digits can be shared out among them in one way only. */
const TEMPO = /^(\d{1,3}\/\d{1,3}(?:\s+\d{1,3}\/\d{1,3})*)\s*=\s*(\d{1,4}(?:\.\d{1,4})?)$/u;

/**
 * Reads a `Q:` field; `undefined` where it gives no number. A number alone counts unit notes, as
 * older files have it.
 */
export function readTempoField(text: string, unitTicks: number): TempoField | undefined {
  const field = text.replaceAll(/"[^"]*"/gu, ' ').trim();
  if (/^\d{1,4}$/u.test(field)) return usable({ beatTicks: unitTicks, perMinute: Number(field) });
  const [, beats = '', perMinute = ''] = TEMPO.exec(field) ?? [];
  const ticks = beats.split(/\s+/u).map((beat) => readUnitField(beat) ?? 0);
  const beatTicks = ticks.reduce((sum, beat) => sum + beat, 0);
  return usable({ beatTicks, perMinute: Number(perMinute) });
}

/** Quarter notes a minute of a tempo. */
export function quartersOf({ perMinute, beatTicks }: TempoField): number {
  return (perMinute * beatTicks) / TICKS_PER_QUARTER;
}

function usable(tempo: TempoField): TempoField | undefined {
  return tempo.beatTicks > 0 && tempo.perMinute > 0 ? tempo : undefined;
}
