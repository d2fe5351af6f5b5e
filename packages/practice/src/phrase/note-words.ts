import { invalidPhrase } from './invalid-phrase.js';
import { BEND_SHAPES, type PhraseNote } from './phrase.js';

/** How a note is played, as the words behind a semicolon say it. */
export type NoteManner = Pick<PhraseNote, 'accent' | 'grace' | 'bend'>;

/** A move of pitch without a figure goes half a semitone. Design choice. */
const USUAL_CENTS = 50;
const BEND_WORD = /* @__PURE__ */ (() =>
  new RegExp(`^(${BEND_SHAPES.join('|')})(\\d{1,3})?$`, 'u'))();
/** A word of tab, brackets kept whole, as the tab package divides a text. */
const WORD = /(?:\([^()]{0,500}\)|\[[^[\]]{0,500}\])[^\s|]*|[^\s|]+/gu;

/** Reads `accent`, `grace`, `scoop50`, `fall`, joined with `+`. */
export function parseManner(words: string, column: number): NoteManner {
  let manner: NoteManner = {};
  for (const word of words.split('+')) {
    const [, shape, cents = `${USUAL_CENTS}`] = BEND_WORD.exec(word) ?? [];
    const known = BEND_SHAPES.find((each) => each === shape);
    if (word === 'accent' || word === 'grace') manner = { ...manner, [word]: true };
    else if (known !== undefined)
      manner = { ...manner, bend: { shape: known, cents: Number(cents) } };
    else throw invalidPhrase(word, `accent, grace, ${BEND_SHAPES.join(', ')}`, { column });
  }
  return manner;
}

/** Writes what {@link parseManner} reads, the semicolon before it; empty for a plain note. */
export function formatManner({ accent, grace, bend }: NoteManner): string {
  const words = [
    ...(accent ? ['accent'] : []),
    ...(grace ? ['grace'] : []),
    ...(bend ? [`${bend.shape}${bend.cents === USUAL_CENTS ? '' : bend.cents}`] : []),
  ];
  return words.length === 0 ? '' : `;${words.join('+')}`;
}

/** A text of tab without the manners, each word where it was, and the manner of each word. */
export function splitManners(text: string): {
  readonly tab: string;
  readonly manners: readonly NoteManner[];
} {
  const manners: NoteManner[] = [];
  const tab = text.replace(WORD, (word: string, offset: number) => {
    const cut = word.indexOf(';');
    manners.push(cut < 0 ? {} : parseManner(word.slice(cut + 1), offset + cut + 2));
    return cut < 0 ? word : word.slice(0, cut).padEnd(word.length);
  });
  return { tab, manners };
}
