import { parseMetre } from '@reedplate/line';
import { requireInteger } from '@reedplate/pitch';
import { phraseTicks } from '../phrase/harmony.js';
import { invalidPhrase } from '../phrase/invalid-phrase.js';
import type { Phrase } from '../phrase/phrase.js';
import { rebuild } from './rebuild.js';

/** The phrase so many felt beats later; what leaves its bars is left out. */
export function displaced(phrase: Phrase, beats: number): Phrase {
  requireInteger(beats, { min: -64, max: 64, what: 'a number of beats' });
  const end = phraseTicks(phrase);
  const shift = beats * parseMetre(phrase.metre).beatTicks;
  const notes = phrase.notes
    .map((note) => ({ ...note, at: note.at + shift }))
    .filter(({ at, length }) => at >= 0 && at + length <= end);
  if (notes.length > 0) return rebuild(phrase, 'displaced', notes);
  throw invalidPhrase(beats, `beats that leave a note of ${phrase.id} within its bars`);
}

/** Each note held until the next begins, at most twice as long. */
export function longer(phrase: Phrase): Phrase {
  const starts = phrase.notes.map(({ at }) => at);
  const notes = phrase.notes.map((note) => {
    const next = starts.find((at) => at > note.at) ?? phraseTicks(phrase);
    return { ...note, length: Math.min(2 * note.length, next - note.at) };
  });
  return rebuild(phrase, 'longer', notes);
}

/** Each note half as long. */
export function shorter(phrase: Phrase): Phrase {
  const notes = phrase.notes.map((note) => ({
    ...note,
    length: Math.max(1, Math.floor(note.length / 2)),
  }));
  return rebuild(phrase, 'shorter', notes);
}

/** The first note, the last, and those that begin on a felt beat. */
export function thinned(phrase: Phrase): Phrase {
  const { beatTicks, barTicks } = parseMetre(phrase.metre);
  const ends = new Set([phrase.notes[0]?.at, phrase.notes.at(-1)?.at]);
  const isOnBeat = (at: number): boolean => (at - phrase.pickup + barTicks) % beatTicks === 0;
  const notes = phrase.notes.filter(({ at }) => ends.has(at) || isOnBeat(at));
  return rebuild(phrase, 'thinned', notes);
}
