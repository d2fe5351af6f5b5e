/** Kinds of sign in a line of music. */
export type TokenKind =
  | 'space'
  | 'field'
  | 'quoted'
  | 'grace'
  | 'ornament'
  | 'bar'
  | 'ending'
  | 'chord'
  | 'note'
  | 'rest'
  | 'bar-rest'
  | 'tuplet'
  | 'slur'
  | 'broken'
  | 'tie'
  | 'overlay'
  | 'unknown';

/** A sign of a line of music. */
export interface MusicToken {
  readonly kind: TokenKind;
  readonly text: string;
  /** Counted from 1. */
  readonly column: number;
}

const LENGTH = String.raw`\d{0,6}\/{0,6}\d{0,6}`;

/** How each sign looks, the first that fits being taken. */
const SIGNS: readonly (readonly [TokenKind, RegExp])[] = [
  ['space', /[\s`\\]+|y\d*|!(?=[ \t]*$)/uy],
  ['field', /\[[A-Za-z]:[^\]]{0,200}\]/uy],
  ['quoted', /"[^"]{0,200}"/uy],
  ['grace', /\{[^{}]{0,200}\}/uy],
  ['ornament', /![^!|\s]{1,30}!|\+[A-Za-z0-9.<>]{1,30}\+|[~.H-Wh-w]/uy],
  ['bar', /(?:\[\||\||:(?=[:|]))[:|\]]*/uy],
  ['ending', /(?:\[|(?<=[|:]\]?\s{0,2}))\d{1,2}(?:[,.-]\d{1,2})*\.?/uy],
  ['chord', new RegExp(String.raw`\[[^\]|:\[]{1,200}\]${LENGTH}`, 'uy')],
  ['note', new RegExp(String.raw`(?:\^{1,2}|_{1,2}|=)?[A-Ga-g][,']{0,12}${LENGTH}`, 'uy')],
  ['rest', new RegExp(`[zx]${LENGTH}`, 'uy')],
  ['bar-rest', /[ZX]\d{0,3}/uy],
  ['tuplet', /\(\d(?::\d?){0,2}/uy],
  ['slur', /[()]/uy],
  ['broken', /<{1,3}|>{1,3}/uy],
  ['tie', /-/uy],
  ['overlay', /&/uy],
];

/** Takes a line of music apart into signs, none left over. */
export function tokenise(text: string): readonly MusicToken[] {
  const tokens: MusicToken[] = [];
  let at = 0;
  while (at < text.length) {
    const token = tokenAt(text, at);
    tokens.push(token);
    at += token.text.length;
  }
  return tokens;
}

function tokenAt(text: string, at: number): MusicToken {
  for (const [kind, pattern] of SIGNS) {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found !== undefined && found !== '') return { kind, text: found, column: at + 1 };
  }
  return { kind: 'unknown', text: text.charAt(at), column: at + 1 };
}
