import type { PlayedAs } from '../notation/measure.js';
import { element } from './xml-text.js';

/** The default forte of MusicXML is velocity 90, and dynamics are percents of it. */
const FORTE = 90;

/** Loudness as an attribute of `<note>`; none where it is not known. */
export function dynamicsOf({ velocity }: PlayedAs): Readonly<Record<string, number>> {
  return velocity === undefined ? {} : { dynamics: rounded((100 * velocity) / FORTE, 2) };
}

/** The velocity of a loudness in percent of the default forte, as a whole number from 1 to 127. */
export function velocityOf(dynamics: number): number {
  return Math.min(127, Math.max(1, Math.round((dynamics * FORTE) / 100)));
}

/**
 * The bends of a note: a pre-bend for where it begins, then one for each stretch of its curve, from and
 * to a percentage of the note's length. A note that lies beside its pitch as a whole is a pre-bend alone.
 */
export function writeBends({ cents, curve }: PlayedAs): readonly string[] {
  const [first, ...others] = curve ?? [];
  if (first === undefined) return cents === undefined ? [] : [writePreBend(cents, 0)];
  let before = first;
  return [
    writePreBend(first.cents, first.share),
    ...others.map((point) => {
      const from = semitones(before.cents);
      const by = rounded(semitones(point.cents) - from, 3);
      const isRelease = from !== 0 && Math.sign(by) === -Math.sign(from);
      const beats = { 'first-beat': percent(before.share), 'last-beat': percent(point.share) };
      before = point;
      const bend = [element('bend-alter', `${by}`), ...(isRelease ? [element('release')] : [])];
      return element('bend', bend, beats);
    }),
  ];
}

function writePreBend(cents: number, share: number): string {
  const alter = element('bend-alter', `${semitones(cents)}`);
  const beats = share === 0 ? {} : { 'first-beat': percent(share) };
  return element('bend', [alter, element('pre-bend')], beats);
}

/** To a tenth of a cent. */
function semitones(cents: number): number {
  return rounded(cents / 100, 3);
}

function percent(share: number): number {
  return rounded(100 * share, 6);
}

function rounded(value: number, places: number): number {
  return Number(value.toFixed(places)) + 0;
}
