import type { Harp } from '@reedplate/layout';
import { type KeyLike, type KeyName, parseNoteName, toKey, toPitchClass } from '@reedplate/pitch';
import {
  type ChordFit,
  type HarpPick,
  type LineFit,
  type PickOptions,
  type PositionNumber,
  pickHarps,
  positionByNumber,
  type ScaleFit,
  type WholeChord,
} from '@reedplate/position';

/** A harp for a song, with the reasons as sentences and as data. */
export interface PickEntry {
  readonly harp: Harp;
  readonly position: PositionNumber;
  /** What the trade calls the position: `cross harp`; empty where it has no name. */
  readonly positionName: string;
  /** How well it suits, 0 to 1. */
  readonly weight: number;
  /** The reasons in English, the strongest first. */
  readonly reasons: readonly string[];
  readonly chords: readonly ChordFit[];
  readonly scale: ScaleFit;
  /** Present where a line was given. */
  readonly line?: LineFit;
}

/** What `reedplate pick --json` prints. */
export interface PickReport {
  readonly key: KeyName;
  /** The best first. */
  readonly picks: readonly PickEntry[];
}

/**
 * Which harp to pick up for a song, by position, with the reasons.
 *
 * @throws ReedplateError as `pickHarps`
 */
export function pickReport(songKey: KeyLike, options: PickOptions = {}): PickReport {
  const key = toKey(songKey);
  return { key: key.name, picks: pickHarps(key, options).map(describePick) };
}

function describePick({ harp, position, weight, chords, scale, line }: HarpPick): PickEntry {
  return {
    harp,
    position,
    positionName: positionByNumber(position).tradeName ?? '',
    weight: Math.round(weight * 1000) / 1000,
    reasons: [sayLine(line), sayWhole(harp, chords), sayTones(chords), sayScale(scale)].flat(),
    chords,
    scale,
    ...(line === undefined ? {} : { line }),
  };
}

function sayLine(line: LineFit | undefined): readonly string[] {
  if (line === undefined) return [];
  const { natural, bent, overbent, missing, octaves } = line;
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  const moved = octaves === 0 ? '' : ` ${sayOctaves(octaves)}`;
  const shares = `${percent(natural)} natural, ${percent(bent)} bent, ${percent(overbent)} overbent`;
  return [`the line${moved}: ${shares}, ${percent(missing)} missing`];
}

function sayOctaves(octaves: number): string {
  const distance = Math.abs(octaves) === 1 ? 'an octave' : `${Math.abs(octaves)} octaves`;
  return `${distance} ${octaves > 0 ? 'up' : 'down'}`;
}

/** Degrees of a chord that a run of holes leaves out, the seventh mostly. */
function sayLacks(harp: Harp, tones: ChordFit['tones'], run: WholeChord): string {
  const sounding = new Set(
    harp.holes.slice(run.from - 1, run.to).map((reeds) => toPitchClass(reeds[run.breath])),
  );
  const lacks = tones.filter(({ name }) => !sounding.has(parseNoteName(name).pitchClass));
  return lacks.length === 0 ? '' : ` (no ${lacks.map(({ degree }) => degree).join(' ')})`;
}

function sayWhole(harp: Harp, chords: readonly ChordFit[]): readonly string[] {
  const whole = chords.flatMap(({ symbol, tones, whole: run }) =>
    run === null
      ? []
      : [`${symbol} on ${run.breath} ${run.from}-${run.to}${sayLacks(harp, tones, run)}`],
  );
  const none = chords.filter(({ whole: run }) => run === null).map(({ symbol }) => symbol);
  return [
    ...(whole.length === 0 ? [] : [`whole chords: ${whole.join(', ')}`]),
    ...(none.length === 0 ? [] : [`no whole ${none.join(' or ')}`]),
  ];
}

function sayTones(chords: readonly ChordFit[]): readonly string[] {
  const tones = chords.flatMap(({ symbol, tones: all }) =>
    all.map(({ degree, best }) => ({ name: `${degree} of ${symbol}`, best })),
  );
  const natural = tones.filter(({ best }) => best === 'natural').length;
  const bent = tones.filter(({ best }) => best !== 'natural' && best !== 'missing');
  const missing = tones.filter(({ best }) => best === 'missing');
  return [
    `${natural} of ${tones.length} chord tones are natural notes`,
    ...(bent.length === 0 ? [] : [`bent: ${bent.map(({ name }) => name).join(', ')}`]),
    ...(missing.length === 0 ? [] : [`missing: ${missing.map(({ name }) => name).join(', ')}`]),
  ];
}

function sayScale({ name, coverage, missing }: ScaleFit): readonly string[] {
  const percent = Math.round(coverage * 100);
  const without = missing.length === 0 ? '' : `, without ${missing.join(' ')}`;
  return [`${percent} % of the ${name} scale${without}`];
}
