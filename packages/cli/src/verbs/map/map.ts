import type { Breath, Harp, Technique } from '@reedplate/layout';
import { type KeyName, parseKey, ReedplateError } from '@reedplate/pitch';
import {
  type HarpMap,
  harpMap,
  type MappedHole,
  positionByNumber,
  positionOf,
} from '@reedplate/position';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type MaybeHarpWords, readHarp, withMaybeHarpOptions } from '../../shared/harp-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import {
  readSongKey,
  type SongKeyWords,
  withSongKeyOptions,
} from '../../shared/song-key-options.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate map --json` prints. */
export type MapAnswer = HarpMap;

interface MapWords extends MaybeHarpWords, SongKeyWords, PrintWords {
  readonly valved: boolean;
}

/** Gives `reedplate map` its options and what it does. */
export function setUpMap(verb: Command, terminal: Terminal): void {
  withJsonOfHarps(withSongKeyOptions(withMaybeHarpOptions(verb, HARP)))
    .option('--valved', 'the harp is half-valved', false)
    .addHelpText(
      'after',
      examples(
        'reedplate map --harp C',
        'reedplate map --harp A --position 2',
        'reedplate map --tuning natural-minor --key Am',
      ),
    )
    .action((words: MapWords) => {
      const harp = mappedHarp(words, terminal);
      const key = readSongKey(words, harp);
      const { valved } = words;
      const answer: MapAnswer = harpMap(harp, {
        level: 'overbends',
        valved,
        ...(key && { key }),
      });
      printAnswer(answer, words, terminal, showMap);
    });
}

const HARP = 'key printed on the harp; without it that of --key';

/** The harp that is asked for; where only a song's key is given, the harp labelled by its tonic. */
function mappedHarp({ harp, key, ...kind }: MapWords, terminal: Terminal): Harp {
  const label = harp ?? (key === undefined ? undefined : parseKey(key).tonic);
  if (label === undefined) {
    throw new ReedplateError({ code: 'USAGE', value: 'map', expected: '--harp or --key' });
  }
  return readHarp({ ...kind, harp: label }, terminal);
}

function showMap(answer: MapAnswer, { paint, table }: Page): readonly string[] {
  const { harp, key, holes, shadings, caveats } = answer;
  const title =
    key === null ? sayHarp(harp) : `${sayHarp(harp)}, song in ${key}: ${sayPosition(harp, key)}`;
  const aside = `' is a semitone of bend; ${key === null ? 'give --key or --position for degrees' : 'degree of the song after each note'}`;
  return [
    paint('heading', title),
    '',
    ...table({
      head: ['hole', ...holes.map(({ hole }) => `${hole}`)],
      rows: rowsOf(holes),
      wrap: 'columns',
    }),
    '',
    paint('aside', aside),
    ...(shadings.length === 0 ? [] : [paint('aside', sayShadings(shadings))]),
    ...caveats.map(({ text }) => paint('warning', text)),
  ];
}

/** One figure serves all: every shading of a harp goes as far. */
function sayShadings(shadings: MapAnswer['shadings']): string {
  const notes = shadings.map(({ hole, breath }) => `${hole} ${breath}`).join(' and ');
  const [{ usual, most } = { usual: 0, most: 0 }] = shadings;
  const [shade, they] = shadings.length === 1 ? ['shades', 'it has'] : ['shade', 'they have'];
  return `${notes} ${shade} down by about ${usual} cents, ${most} at most, and ${they} no semitone of bend`;
}

interface Row {
  readonly label: string;
  readonly breath: Breath;
  readonly technique: Technique;
  readonly depth: number;
}

function sayPosition(harp: Harp, key: KeyName): string {
  return `${positionByNumber(positionOf(harp, key)).ordinal} position`;
}

/** Blow above draw, as a player holds the harp: each breath's bends and overbend outside it. */
function rowsOf(holes: readonly MappedHole[]): readonly (readonly string[])[] {
  const rows = [...outward('blow', holes).reverse(), ...outward('draw', holes)];
  return rows
    .map(({ label, ...wanted }) => [label, ...holes.map((hole) => cellOf(hole, wanted))])
    .filter(([, ...cells]) => cells.some((cell) => cell !== ''));
}

/** The rows of a breath from its unbent notes outward. */
function outward(breath: Breath, holes: readonly MappedHole[]): Row[] {
  const depths = holes.flatMap(({ soundings }) => soundings.map(({ depth }) => depth));
  const steps = Array.from({ length: Math.max(...depths) }, (_, index) => index + 1);
  const overbend = breath === 'blow' ? 'overblow' : 'overdraw';
  const marks = (depth: number): string => "'".repeat(depth);
  return [
    { label: breath, breath, technique: 'natural', depth: 0 },
    ...steps.map((depth): Row => {
      return { label: `${breath} ${marks(depth)}`, breath, technique: 'bend', depth };
    }),
    ...steps.map((depth): Row => {
      return { label: `${breath} valved ${marks(depth)}`, breath, technique: 'valved-bend', depth };
    }),
    { label: overbend, breath, technique: overbend, depth: 1 },
  ];
}

function cellOf(
  { soundings }: MappedHole,
  { breath, technique, depth }: Omit<Row, 'label'>,
): string {
  const found = soundings.find(
    (sounding) =>
      sounding.breath === breath && sounding.technique === technique && sounding.depth === depth,
  );
  if (found === undefined) return '';
  return found.degree === undefined ? found.name : `${found.name} ${found.degree}`;
}
