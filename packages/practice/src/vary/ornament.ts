import { parseMetre } from '@reedplate/line';
import { itemAt, requireOneOf } from '@reedplate/pitch';
import { phraseChart, soundingChord } from '../phrase/harmony.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';
import { atHeight, heights, tonesBetween } from './degrees.js';
import { rebuild } from './rebuild.js';
import { ORNAMENTS, type Ornament } from './variation.js';

/** A scoop is as deep as the manner of a note is without a figure. */
const SCOOP = Object.freeze({ shape: 'scoop', cents: 50 } as const);

/** An ornament on each note that stands alone and lasts a beat or more. */
export function ornamented(phrase: Phrase, ornament: Ornament): Phrase {
  requireOneOf(ornament, ORNAMENTS, { what: 'an ornament' });
  const chart = phraseChart(phrase, 'C');
  const above = heights(phrase, chart);
  const { beatTicks } = parseMetre(phrase.metre);
  const alone = (at: number): boolean => phrase.notes.filter((note) => note.at === at).length === 1;
  const notes = phrase.notes.flatMap((note, index): readonly PhraseNote[] => {
    if (note.length < beatTicks || note.grace || !alone(note.at)) return [note];
    const height = itemAt(above, index);
    if (ornament === 'scoop') return [note.bend ? note : { ...note, bend: SCOOP }];
    if (ornament === 'grace') {
      const grace = atHeight(note, height - 1, phrase.from, chart);
      return graced(note, grace, Math.floor(beatTicks / 8));
    }
    const tones = tonesBetween(soundingChord(chart, note.at), chart, [height + 1, height + 12]);
    const upper = tones[0] ?? height + 3;
    return shaken(note, atHeight(note, upper, phrase.from, chart), Math.floor(beatTicks / 4));
  });
  const needsBends = ornament !== 'shake' && phrase.level === 'natural';
  return rebuild(phrase, ornament, notes, needsBends ? { level: 'bends' } : {});
}

/** A short note first, which takes its time from the note that it leads to. */
function graced(note: PhraseNote, grace: PhraseNote, length: number): readonly PhraseNote[] {
  const { accent: _accent, bend: _bend, ...plain } = grace;
  return [
    { ...plain, length, grace: true },
    { ...note, at: note.at + length, length: note.length - length },
  ];
}

/** Two notes in turn, four to a beat, as long as the note was. */
function shaken(note: PhraseNote, upper: PhraseNote, length: number): readonly PhraseNote[] {
  const count = Math.floor(note.length / length);
  return Array.from({ length: count }, (_, turn): PhraseNote => {
    const { accent, bend: _bend, ...plain } = turn % 2 === 0 ? note : upper;
    const at = note.at + turn * length;
    const held = turn === count - 1 ? note.at + note.length - at : length;
    return { ...plain, at, length: held, ...(accent && turn === 0 ? { accent } : {}) };
  });
}
