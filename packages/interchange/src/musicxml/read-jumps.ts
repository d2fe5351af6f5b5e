import type { Jump, JumpKind } from '../notation/measure.js';
import { child, childrenOf, type XmlElement } from './xml-tree.js';

/** Attributes of a `<sound>` and what they say: MusicXML 4.0, complex type sound. */
const KIND_OF_ATTRIBUTE: ReadonlyMap<string, JumpKind> = new Map([
  ['dacapo', 'da-capo'],
  ['dalsegno', 'dal-segno'],
  ['tocoda', 'to-coda'],
  ['fine', 'fine'],
  ['segno', 'segno'],
  ['coda', 'coda'],
]);

const WORDS = /\b(?:D\.? ?[CS]\.|da capo|dal segno)/iu;
const UNTIL = /\bal (fine|coda)\b/iu;

/** What a `<sound>` says of jumps, and the words printed with it of where they lead. */
export function jumpsOfSound(
  { attributes }: XmlElement,
  offset: number,
  words = '',
): readonly Jump[] {
  const until = UNTIL.exec(words)?.[1]?.toLowerCase() as Jump['until'];
  return [...KIND_OF_ATTRIBUTE].flatMap(([attribute, kind]): readonly Jump[] => {
    const name = attributes.get(attribute);
    if (name === undefined || (kind === 'da-capo' && name !== 'yes')) return [];
    const isBack = kind === 'da-capo' || kind === 'dal-segno';
    return [
      { kind, offset, end: offset, name, ...(isBack && until !== undefined ? { until } : {}) },
    ];
  });
}

/** The words of a `<direction>`. */
export function wordsOfDirection(direction: XmlElement): string {
  return childrenOf(direction, 'direction-type')
    .flatMap((type) => childrenOf(type, 'words'))
    .map(({ text }) => text)
    .join(' ');
}

/** Whether words ask for a jump, which only a `<sound>` says how to play. */
export function sayJump(words: string): boolean {
  return WORDS.test(words);
}

/** A segno or coda that stands at the left bar line. */
export function jumpsOfBarlines(measure: XmlElement): readonly Jump[] {
  return childrenOf(measure, 'barline')
    .filter(({ attributes }) => attributes.get('location') === 'left')
    .flatMap((barline) =>
      (['segno', 'coda'] as const).flatMap((kind): readonly Jump[] => {
        const name = barline.attributes.get(kind);
        const isShown = child(barline, kind) !== undefined;
        return name === undefined && !isShown
          ? []
          : [{ kind, offset: 0, end: 0, name: name ?? '' }];
      }),
    );
}
