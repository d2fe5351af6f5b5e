import { ReedplateError } from '@reedplate/pitch';

/** A line of a file, counted from 1. */
export interface SourceLine {
  readonly text: string;
  readonly line: number;
}

/** The lines of one tune, comments and stylesheet directives taken out. */
export type TuneLines = readonly SourceLine[];

/** A file taken apart. */
export interface TuneBook {
  /** Fields before the first tune, which hold for every tune. */
  readonly header: TuneLines;
  readonly tunes: readonly TuneLines[];
}

const FIELD_OF_TUNE = /^[XK]:/u;

/**
 * Splits a file into its tunes: each begins with `X:` and ends before a blank line.
 *
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
export function splitTuneBook(text: string): TuneBook {
  const blocks = splitBlocks(withoutTextBlocks(text.split(/\r\n|\r|\n/u)));
  const tunes = blocks.filter((block) => block.some(({ text: line }) => FIELD_OF_TUNE.test(line)));
  const [first] = blocks;
  const header = first !== undefined && first !== tunes[0] && isFileHeader(first) ? first : [];
  requireAtMost(header.length, MOST_HEADER_FIELDS, 'fields before the first tune');
  requireAtMost(tunes.length, MOST_TUNES, 'tunes');
  return { header, tunes };
}

/** They are read again for each tune. */
const MOST_HEADER_FIELDS = 100;
const MOST_TUNES = 50_000;

function requireAtMost(count: number, most: number, what: string): void {
  if (count <= most) return;
  const expected = `at most ${most} ${what}`;
  throw new ReedplateError({ code: 'FILE_TOO_LARGE', value: 'this file', expected });
}

const BLOCK_EDGE = /^%%(begin|end)([a-z]+)/u;

/** Lines between `%%begintext` and `%%endtext`, or others such, are no music: they are made comments. */
function withoutTextBlocks(lines: readonly string[]): readonly string[] {
  const kept = [...lines];
  let begun: { readonly name: string; readonly at: number } | undefined;
  for (const [at, line] of lines.entries()) {
    const [, edge, name = ''] = BLOCK_EDGE.exec(line) ?? [];
    if (edge === 'begin') begun ??= { name, at };
    else if (edge === 'end' && begun?.name === name) {
      kept.fill('%', begun.at, at);
      begun = undefined;
    }
  }
  return kept;
}

/** Any other text between tunes is for people. */
function isFileHeader(block: TuneLines): boolean {
  return block.every(({ text }) => /^[A-Za-z]:/u.test(text));
}

function splitBlocks(lines: readonly string[]): readonly TuneLines[] {
  const blocks: SourceLine[][] = [[]];
  for (const [index, raw] of lines.entries()) {
    const text = withoutComment(raw);
    const isNewTune = text.startsWith('X:');
    if (raw.trim() === '' || isNewTune) blocks.push([]);
    if (text !== '') blocks.at(-1)?.push({ text, line: index + 1 });
  }
  return blocks.filter((block) => block.length > 0);
}

/** `%%` lines of the standard that change what sounds are kept as the `I:` fields they stand for. */
function withoutComment(raw: string): string {
  if (raw.startsWith('%%propagate-accidentals')) return `I:${raw.slice(2)}`;
  const at = raw.search(/(?<!\\)%/u);
  return (at === -1 ? raw : raw.slice(0, at)).trimEnd();
}
