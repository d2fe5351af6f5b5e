import { type Harp, harpName } from '@reedplate/layout';
import type { Chord, Key } from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';
import { type Bracket, EXTENT_WORDS } from './brackets.js';
import type { PlacedCell } from './harp-cells.js';

/** What a picture of a harp shows. */
export interface HarpSubject {
  readonly harp: Harp;
  readonly chord?: Chord | undefined;
  readonly key?: Key | undefined;
  readonly cells: readonly PlacedCell[];
  readonly brackets: readonly Bracket[];
}

/** The title of a picture of a harp where the caller gives none. */
export function harpTitle(harp: Harp, chord?: Chord, key?: Key): string {
  const song = key === undefined ? '' : `, song in ${key.name}`;
  return `${harpName(harp)} harp${song}${chord === undefined ? '' : `: ${chord.symbol}`}`;
}

/** What a picture of a harp shows, in a sentence or two. */
export function describeHarp({ harp, chord, brackets }: HarpSubject): string {
  const rows = `The holes of a ${harpName(harp)} harp, blow above and draw below the numbers.`;
  if (chord === undefined) return rows;
  const most = brackets.filter(({ extent }) => extent !== 'part');
  const called = most.some(({ extent }) => extent === 'whole') ? 'Whole' : 'Its triad';
  const together =
    most.length === 0
      ? 'No neighbouring holes sound the whole chord'
      : `${called}: ${most.map(holesInWords).join('; ')}`;
  return `${rows} The tones of ${chord.symbol} are marked by degree and shape. ${together}.`;
}

function holesInWords({ breath, from, to }: Bracket): string {
  return `${breath} ${from} to ${to}`;
}

/** All that a picture of a harp shows: a line a hole, then what sounds together. */
export function harpInText(title: string, { harp, cells, brackets }: HarpSubject): string {
  const holes = harp.holes.map(({ hole }) => {
    const here = cells.filter((cell) => cell.hole === hole).map(cellInText);
    return `hole ${hole}: ${here.join(', ')}`;
  });
  const together = brackets.map(
    (bracket) => `${EXTENT_WORDS[bracket.extent]}: ${holesInWords(bracket)}`,
  );
  return [title, ...holes, ...together].join('\n');
}

function cellInText({ sounding, name, tone }: PlacedCell): string {
  const how = `${formatSounding(sounding)} ${name}`;
  return tone === null ? how : `${how} (${tone} of the chord)`;
}
