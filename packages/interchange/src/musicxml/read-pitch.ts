import { HIGHEST_MIDI } from '@reedplate/pitch';
import type { GraceNote } from '../notation/measure.js';
import { LETTER_SEMITONES } from '../notation/staff-pitch.js';
import type { WarningList } from '../warning.js';
import { ACCENTS, playedAs } from './read-playing.js';
import { child, childNumber, childrenOf, childText, type XmlElement } from './xml-tree.js';

/** What the pitch of a note is read with. */
export interface PitchContext {
  /** Semitones that notes sound above what is written. */
  readonly transpose: number;
  /** Velocity of notes that say none of their own. */
  readonly loudness: number | undefined;
  readonly warnings: WarningList;
}

/** The sounding pitch, and how it is played; `undefined` for a rest, for percussion, and beyond MIDI. */
export function pitchOf(
  element: XmlElement,
  { transpose, loudness, warnings }: PitchContext,
  bar: number,
): GraceNote | undefined {
  const pitch = child(element, 'pitch');
  if (child(element, 'unpitched') !== undefined) warnings.add('percussion', { bar });
  if (pitch === undefined) return undefined;
  const step = LETTER_SEMITONES.get(childText(pitch, 'step'));
  const octave = childNumber(pitch, 'octave');
  const alter = childNumber(pitch, 'alter') ?? 0;
  const midi =
    (step ?? Number.NaN) + 12 * ((octave ?? Number.NaN) + 1) + Math.round(alter) + transpose;
  if (Number.isInteger(midi) && midi >= 0 && midi <= HIGHEST_MIDI) {
    // A quarter tone sharp is a sharp, half of it down.
    const beside = Math.round((alter - Math.round(alter)) * 1000) / 10;
    const played = playedAs(element, beside, loudness);
    return { pitch: midi, ...(Object.keys(played).length === 0 ? {} : { played }) };
  }
  warnings.add('pitch-range', { bar });
  return undefined;
}

/** Notations that change how a note is played, and not which note it is. */
const PLAYING_SIGNS: ReadonlySet<string> = new Set(['ornaments', 'articulations', 'fermata']);

/** The first sign inside that is not read, or the notation itself where nothing stands inside. */
function unreadSign({ name, children }: XmlElement): string | undefined {
  if (!PLAYING_SIGNS.has(name)) return undefined;
  return children.length === 0 ? name : children.find((sign) => !ACCENTS.has(sign.name))?.name;
}

/** Says which signs at a note are left out. */
export function warnOfNotations(element: XmlElement, bar: number, warnings: WarningList): void {
  const notations = childrenOf(element, 'notations').flatMap(({ children }) => children);
  const sign = notations.map(unreadSign).find((name) => name !== undefined);
  if (sign !== undefined) warnings.add('ornaments', { bar }, sign);
  if (child(element, 'lyric') !== undefined) warnings.add('words', { bar });
}
