import { isReedplateError, parseChord } from '@reedplate/pitch';
import { child, childNumber, childrenOf, childText, type XmlElement } from './xml-tree.js';

/** Kinds of harmony of MusicXML and the suffix of each: MusicXML 4.0, data type kind-value (from memory). */
const SUFFIX_OF_KIND: ReadonlyMap<string, string> = new Map([
  ['major', ''],
  ['minor', 'm'],
  ['augmented', 'aug'],
  ['diminished', 'dim'],
  ['dominant', '7'],
  ['major-seventh', 'maj7'],
  ['minor-seventh', 'm7'],
  ['diminished-seventh', 'dim7'],
  ['augmented-seventh', '7#5'],
  ['half-diminished', 'm7b5'],
  ['major-minor', 'mMaj7'],
  ['major-sixth', '6'],
  ['minor-sixth', 'm6'],
  ['dominant-ninth', '9'],
  ['major-ninth', 'maj9'],
  ['minor-ninth', 'm9'],
  ['dominant-11th', '11'],
  ['minor-11th', 'm11'],
  ['dominant-13th', '13'],
  ['major-13th', 'maj13'],
  ['minor-13th', 'm13'],
  ['suspended-second', 'sus2'],
  ['suspended-fourth', 'sus4'],
  ['power', '5'],
]);

const KIND_OF_SUFFIX: ReadonlyMap<string, string> = new Map(
  [...SUFFIX_OF_KIND].map(([kind, suffix]) => [suffix, kind]),
);

/** The kind of harmony that MusicXML has for a canonical suffix; `other` where it has none. */
export function kindOfSuffix(suffix: string): string {
  return KIND_OF_SUFFIX.get(suffix) ?? 'other';
}

/**
 * The chord symbol of a `<harmony>`: its kind with added and altered degrees, or the text shown for
 * it where the kind says too little; as written where neither is a chord.
 */
export function symbolOfHarmony(harmony: XmlElement): string {
  const kind = child(harmony, 'kind');
  if (kind?.text === 'none') return 'N.C.';
  const root = noteOf(child(harmony, 'root'), 'root');
  const bass = noteOf(child(harmony, 'bass'), 'bass');
  const under = bass === '' ? '' : `/${bass}`;
  const suffix = SUFFIX_OF_KIND.get(kind?.text ?? '');
  const shown = kind?.attributes.get('text');
  const degrees = childrenOf(harmony, 'degree').map(degreeText).join('');
  const candidates = [
    ...(suffix === undefined ? [] : [`${root}${suffix}${degrees}${under}`]),
    ...(shown === undefined
      ? []
      : [`${root}${shown}${degrees}${under}`, `${root}${shown}${under}`]),
  ];
  return candidates.find(isChord) ?? `${root}${kind?.text ?? ''}${degrees}`;
}

function noteOf(element: XmlElement | undefined, name: string): string {
  const step = childText(element, `${name}-step`);
  const alter = childNumber(element, `${name}-alter`) ?? 0;
  return `${step}${alter > 0 ? '#'.repeat(Math.min(alter, 2)) : 'b'.repeat(Math.min(-alter, 2))}`;
}

/** An added ninth is `add9`, an altered one `b9` or `#9`. */
function degreeText(degree: XmlElement): string {
  const value = childText(degree, 'degree-value');
  const alter = childNumber(degree, 'degree-alter') ?? 0;
  const type = childText(degree, 'degree-type');
  if (type === 'subtract') return `no${value}`;
  if (alter !== 0) return `${alter > 0 ? '#' : 'b'}${value}`;
  return `add${value}`;
}

function isChord(symbol: string): boolean {
  try {
    return parseChord(symbol).symbol !== '';
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return false;
  }
}
