import { type Harp, toHarp } from '@reedplate/layout';
import { parseNoteName, requireShape, requireShapes, toPitchClass } from '@reedplate/pitch';
import type { ChordShare } from './chord-share.js';
import type { LineShares } from './line-shares.js';
import type { HarpPick } from './pick.js';
import type { ScaleShare } from './scale-share.js';
import type { WholeChord } from './whole-chord.js';

const PICK = { what: 'a pick, as pickHarps gives it', code: 'HARP_INVALID' } as const;

/**
 * Why a harp suits a song, in English: what it has of the line, which chords it has whole, how it has
 * their tones, and how much of the scale. One clause each, without a capital or a full stop.
 *
 * @throws ReedplateError `HARP_INVALID` for what is no pick
 * @example
 * ```ts
 * import { describePick, pickHarps } from '@reedplate/position';
 *
 * const [best] = pickHarps('G');
 * if (best === undefined) throw new Error('no harp');
 * describePick(best)[1]; // => 'no whole D7'
 * describePick(best).at(-1); // => '89 % of the minor blues scale'
 * ```
 */
export function describePick(pick: HarpPick): readonly string[] {
  const shape = { harp: 'object', chords: 'list', scale: 'object' } as const;
  const { harp, chords, scale, line } = requireShape(pick, shape, PICK);
  requireShapes(chords, { symbol: 'text', tones: 'list' }, PICK);
  requireShape(
    scale,
    { name: 'text', coverage: 'number', missing: 'list' },
    { ...PICK, path: 'scale' },
  );
  return Object.freeze(
    [sayLine(line), sayWhole(toHarp(harp), chords), sayTones(chords), sayScale(scale)].flat(),
  );
}

function sayLine(line: LineShares | undefined): readonly string[] {
  if (line === undefined) return [];
  const { natural, bent, overbent, missing, octaves } = line;
  const moved = octaves === 0 ? '' : ` ${sayOctaves(octaves)}`;
  const shares = `${percent(natural)} unbent, ${percent(bent)} bent, ${percent(overbent)} overbent`;
  return [`the line${moved}: ${shares}, ${percent(missing)} missing`];
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function sayOctaves(octaves: number): string {
  const distance = Math.abs(octaves) === 1 ? 'an octave' : `${Math.abs(octaves)} octaves`;
  return `${distance} ${octaves > 0 ? 'up' : 'down'}`;
}

function sayWhole(harp: Harp, chords: readonly ChordShare[]): readonly string[] {
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

/** Degrees of a chord that a run of holes leaves out, the seventh mostly. */
function sayLacks(harp: Harp, tones: ChordShare['tones'], run: WholeChord): string {
  const sounding = new Set(
    harp.holes.slice(run.from - 1, run.to).map((reeds) => toPitchClass(reeds[run.breath])),
  );
  const lacks = tones.filter(({ name }) => !sounding.has(parseNoteName(name).pitchClass));
  return lacks.length === 0 ? '' : ` (no ${lacks.map(({ degree }) => degree).join(' ')})`;
}

function sayTones(chords: readonly ChordShare[]): readonly string[] {
  const tones = chords.flatMap(({ symbol, tones: all }) =>
    all.map(({ degree, best }) => ({ name: `${degree} of ${symbol}`, best })),
  );
  const natural = tones.filter(({ best }) => best === 'natural').length;
  const bent = tones.filter(({ best }) => best !== 'natural' && best !== 'missing');
  const missing = tones.filter(({ best }) => best === 'missing');
  return [
    `${natural} of ${tones.length} chord tones are there unbent`,
    ...(bent.length === 0 ? [] : [`bent: ${bent.map(({ name }) => name).join(', ')}`]),
    ...(missing.length === 0 ? [] : [`missing: ${missing.map(({ name }) => name).join(', ')}`]),
  ];
}

function sayScale({ name, coverage, missing }: ScaleShare): readonly string[] {
  const without = missing.length === 0 ? '' : `, without ${missing.join(' ')}`;
  return [`${percent(coverage)} of the ${name} scale${without}`];
}
