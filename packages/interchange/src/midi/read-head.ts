import { type Line, type Metre, parseMetre, type TempoChange } from '@reedplate/line';
import { isReedplateError, type KeyName, keySignature, TONICS } from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import { barsOfMarker } from './count-in-marker.js';
import type { MidiEvent } from './events.js';

/** What a file says of the whole piece. */
export interface MidiHead {
  readonly metre: Metre;
  /** Ticks before bar 1: a short first bar is a pickup. */
  readonly pickup: number;
  /** Bars counted in: a marker at the beginning says how many. */
  readonly countIn?: number;
  /** Felt beats a minute. */
  readonly tempo?: number;
  readonly tempoChanges?: readonly TempoChange[];
  readonly key?: KeyName;
}

const FASTEST_TEMPO = 1000;

/** Reads metre, pickup, tempo and key from the events of all tracks. */
export function readHead(
  events: readonly MidiEvent[],
  scale: number,
  warnings: WarningList,
): MidiHead {
  const { metre, pickup } = readMetres(events, scale, warnings);
  const countIn = readCountIn(events, pickup, warnings);
  const key = events.find((event) => event.kind === 'key');
  const name = key?.kind === 'key' ? keyOfSignature(key.fifths, key.isMinor) : undefined;
  return {
    metre,
    pickup,
    ...(countIn === undefined ? {} : { countIn }),
    ...readTempos(events, { scale, metre, warnings }),
    ...(name === undefined ? {} : { key: name }),
  };
}

interface MetreAt {
  readonly tick: number;
  readonly barTicks: number;
  /** Undefined for a metre that a line cannot have, such as 5/64. */
  readonly metre: Metre | undefined;
}

const WHOLE_TICKS = 3840;

function readMetres(
  events: readonly MidiEvent[],
  scale: number,
  warnings: WarningList,
): Pick<MidiHead, 'metre' | 'pickup'> {
  const metres = events.flatMap((event): readonly MetreAt[] => {
    if (event.kind !== 'metre') return [];
    const { tick, numerator, denominator } = event;
    if (numerator === 0) {
      warnings.add('field-unknown', {}, `a metre of 0/${denominator}`);
      return [];
    }
    const barTicks = (WHOLE_TICKS * numerator) / denominator;
    return [{ tick: Math.round(tick * scale), barTicks, metre: asMetre(numerator, denominator) }];
  });
  const [first, second] = metres;
  const pickup = first && second && pickupBefore(first, second);
  for (const { metre, barTicks } of metres.slice(pickup === undefined ? 0 : 1)) {
    if (metre === undefined) warnings.add('field-unknown', {}, `a metre of ${barTicks} ticks`);
  }
  const usable = metres
    .slice(pickup === undefined ? 0 : 1)
    .flatMap(({ metre }) => (metre === undefined ? [] : [metre]));
  const [metre = '4/4'] = usable;
  for (const later of usable) if (later !== metre) warnings.add('metre-change', {}, later);
  return { metre, pickup: pickup ?? 0 };
}

/** A 64th note: a first metre may be longer than the pickup by less, since it counts no finer. */
const FINEST = 60;

/** Ticks of a pickup: one bar of a first metre that is shorter than the real one. */
function pickupBefore(first: MetreAt, second: MetreAt): number | undefined {
  const over = first.barTicks - second.tick;
  const isOneBar = first.tick === 0 && second.tick > 0 && over >= 0 && over < FINEST;
  const isShort = second.metre !== undefined && second.tick < second.barTicks;
  return isOneBar && isShort ? second.tick : undefined;
}

/** A metre in smaller units is written in larger ones where that is the same length. */
function asMetre(numerator: number, denominator: number): Metre | undefined {
  if (denominator > 16 && numerator % 2 === 0) return asMetre(numerator / 2, denominator / 2);
  try {
    parseMetre(`${numerator}/${denominator}`);
    return `${numerator}/${denominator}` as Metre;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return undefined;
  }
}

/** A pickup leaves no room for bars before it. */
function readCountIn(
  events: readonly MidiEvent[],
  pickup: number,
  warnings: WarningList,
): number | undefined {
  const markers = events.filter((event) => event.kind === 'marker' && event.tick === 0);
  const bars = markers.flatMap((event) =>
    event.kind === 'marker' ? (barsOfMarker(event.text) ?? []) : [],
  )[0];
  if (bars !== undefined && pickup > 0) warnings.add('field-unknown', {}, 'a count-in');
  return pickup > 0 ? undefined : bars;
}

const QUARTER_TICKS = 960;
const MICROSECONDS_A_MINUTE = 60_000_000;
/** What holds before the first tempo of a file that comes late: 120 quarters a minute. */
const USUAL_MICROSECONDS = 500_000;

/** The tempo of the beginning and its changes; of several at one tick the last. */
function readTempos(
  events: readonly MidiEvent[],
  {
    scale,
    metre,
    warnings,
  }: { readonly scale: number; readonly metre: Metre; readonly warnings: WarningList },
): Pick<Line, 'tempo' | 'tempoChanges'> {
  const { beatTicks } = parseMetre(metre);
  const tempoAt = new Map<number, number>();
  for (const event of events) {
    if (event.kind !== 'tempo') continue;
    const tempo = tempoOf(event.microsecondsPerQuarter, beatTicks);
    if (tempo === undefined) warnings.add('field-unknown', {}, 'a tempo');
    else tempoAt.set(Math.round(event.tick * scale), tempo);
  }
  if (tempoAt.size === 0) return {};
  const tempo = tempoAt.get(0) ?? tempoOf(USUAL_MICROSECONDS, beatTicks);
  let before = tempo;
  const tempoChanges: TempoChange[] = [];
  for (const [start, next] of tempoAt) {
    if (next !== before && start > 0) tempoChanges.push({ start, tempo: next });
    before = next;
  }
  return { ...(tempo === undefined ? {} : { tempo }), tempoChanges };
}

/** A file counts whole microseconds, which is good for two places of beats a minute. */
function tempoOf(microseconds: number, beatTicks: number): number | undefined {
  if (!(microseconds > 0)) return undefined;
  const quarters = MICROSECONDS_A_MINUTE / microseconds;
  const tempo = Math.round(((quarters * QUARTER_TICKS) / beatTicks) * 100) / 100;
  return tempo > 0 && tempo <= FASTEST_TEMPO ? tempo : undefined;
}

/** Beyond seven sharps or flats there is no signature to write. */
const MOST_SIGNS = 7;

/** The key of a signature: sharps above 0, flats below. */
export function keyOfSignature(fifths: number, isMinor: boolean): KeyName | undefined {
  if (Math.abs(fifths) > MOST_SIGNS) return undefined;
  const names = TONICS.map((tonic): KeyName => (isMinor ? `${tonic}m` : tonic));
  return names.find((name) => keySignature(name) === fifths);
}

/** Sharps (above 0) or flats (below) in the signature of a key; 0 for one out of use. */
export function signatureOfKey(key: KeyName): number {
  const signs = keySignature(key);
  return Math.abs(signs) > MOST_SIGNS ? 0 : signs;
}
