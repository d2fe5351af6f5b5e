import { FEELS, type Feel } from '@reedplate/form';
import { type LineOptions, type Metre, parseMetre } from '@reedplate/line';
import { isReedplateError, type KeyName, parseKey } from '@reedplate/pitch';
import { readBeats, withBeats } from '@reedplate/tab';
import type { Sheet } from '../piece.js';

/** What the first rows of tablature say: `# Title`, and `## key G, 12/8, 60 beats a minute`. */
export interface TabHead extends LineOptions {
  readonly key?: KeyName;
  readonly feel?: Feel;
}

/** Rows that say what the tablature is; empty where nothing is known of it but its notes. */
export function writeTabHead(
  { line, key, chart }: Sheet,
  { title = line.title, subtitle }: { readonly title?: string; readonly subtitle?: string },
): readonly string[] {
  const { metre, pickup, tempo, countIn } = line;
  const { beatTicks } = parseMetre(metre);
  const facts = [
    ...(key === undefined ? [] : [`key ${key}`]),
    ...(metre === '4/4' && chart === undefined ? [] : [metre]),
    ...(chart === undefined ? [] : [chart.feel]),
    ...(tempo === undefined ? [] : [`${tempo} beats a minute`]),
    ...(pickup === 0 ? [] : [withBeats('pickup', pickup / beatTicks)]),
    ...(countIn === undefined || countIn === 0 ? [] : [`count-in ${countIn}`]),
    ...(subtitle === undefined ? [] : [oneLine(subtitle)]),
  ];
  return [
    ...(title === undefined || oneLine(title) === '' ? [] : [`# ${oneLine(title)}`]),
    ...(facts.length === 0 ? [] : [`## ${facts.join(', ')}`]),
  ];
}

const oneLine = (text: string): string =>
  text
    .split(/[\r\n]/u)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .join(' ');

/** Whether a row says something of the tablature and is none itself. */
export function isHeadRow(row: string): boolean {
  return /^\s*#/u.test(row);
}

const LONGEST_ROW = 2000;

/** Reads what head rows say; what is not known is passed over. */
export function readTabHead(rows: readonly string[]): TabHead {
  const found = { title: undefined as string | undefined };
  const words: string[] = [];
  for (const row of rows) {
    const [, signs = '', text = ''] = /^\s*(#{1,6})(.*)$/su.exec(row.slice(0, LONGEST_ROW)) ?? [];
    if (signs === '#') found.title ??= text.trim();
    else words.push(...text.split(/[,;]/u).map((word) => word.trim()));
  }
  const facts = factsOf(words);
  return found.title === undefined || found.title === '' ? facts : { title: found.title, ...facts };
}

function factsOf(words: readonly string[]): TabHead {
  const metre = firstOf(words, readMetre);
  const { beatTicks } = parseMetre(metre ?? '4/4');
  const pickup = firstOf(words, (word) => readPickup(word, beatTicks));
  const key = firstOf(words, readKey);
  const feel = firstOf(words, (word) => FEELS.find((each) => each === word));
  const tempo = firstOf(words, (word) =>
    readFigure(/^(\d{1,4}(?:\.\d{1,12})?) beats a minute$/u, word),
  );
  const countIn = firstOf(words, (word) => readFigure(/^count-in (\d{1,2})$/u, word));
  return {
    ...(metre === undefined ? {} : { metre }),
    ...(pickup === undefined ? {} : { pickup }),
    ...(key === undefined ? {} : { key }),
    ...(feel === undefined ? {} : { feel }),
    ...(tempo === undefined ? {} : { tempo }),
    ...(countIn === undefined ? {} : { countIn }),
  };
}

function firstOf<Value>(
  words: readonly string[],
  read: (word: string) => Value | undefined,
): Value | undefined {
  for (const word of words) {
    const value = read(word);
    if (value !== undefined) return value;
  }
  return undefined;
}

function readMetre(word: string): Metre | undefined {
  if (!/^\d{1,2}\/\d{1,2}$/u.test(word)) return undefined;
  return known(() => {
    const metre = word as Metre;
    parseMetre(metre);
    return metre;
  });
}

function readPickup(word: string, beatTicks: number): number | undefined {
  const { what, beats } = readBeats(word);
  return what === 'pickup' && beats !== undefined ? Math.round(beats * beatTicks) : undefined;
}

function readKey(word: string): KeyName | undefined {
  const [, name] = /^key (\S{1,12})$/u.exec(word) ?? [];
  return name === undefined ? undefined : known(() => parseKey(name).name);
}

function readFigure(pattern: RegExp, word: string): number | undefined {
  const [, figure] = pattern.exec(word) ?? [];
  return figure === undefined ? undefined : Number(figure);
}

/** What is read, or nothing where it is none. */
function known<Value>(read: () => Value): Value | undefined {
  try {
    return read();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return undefined;
  }
}
