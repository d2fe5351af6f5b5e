import { requireOneOf, requireShape } from '@reedplate/pitch';
import type { NoteClass } from './note-class.js';
import { placeInWords } from './place-in-words.js';
import type { NoteScore } from './score-types.js';

const NOTE = { what: 'a note of a score', code: 'OPTION_UNKNOWN' } as const;

/**
 * Why a note counts as it does, in English: its place, its degree over the chord, its class with the
 * reason, and its credit. All of it is data in the note, so that an application can say it in another
 * language; what each class means stands at {@link NOTE_CLASSES}.
 *
 * @example
 * ```ts
 * import { describeNote, scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G');
 * const take = makeLine([
 *   { start: 0, duration: 480, pitch: 70 },
 *   { start: 480, duration: 480, pitch: 71 },
 * ]);
 * const [first] = scoreLine(take, chart).notes;
 * first && describeNote(first); // => 'bar 1, beat 1: Bb4 (b3 over G7): a turn of the blues, which leads on as the style has it; counts 0.8'
 * ```
 */
export function describeNote(note: NoteScore): string {
  requireShape(note, { name: 'text', bar: 'number', beat: 'number', credit: 'number' }, NOTE);
  requireOneOf(note.class, Object.keys(REASONS) as NoteClass[], { what: 'the class of a note' });
  if (note.chord !== null) requireShape(note, { chord: 'text', degree: 'text' }, NOTE);
  const { name, chord, degree, held, push, resolvesTo, credit } = note;
  const over = chord === null ? '' : ` (${degree} over ${chord})`;
  const how = `${held ? ', held from the chord before' : ''}${push ? ', struck before the change' : ''}`;
  // The other classes that resolve say so themselves.
  const resolved = note.class === 'blue' && resolvesTo !== null ? ', and it resolves' : '';
  const worth =
    note.class === 'unjudged' ? 'not counted' : `counts ${Math.round(credit * 100) / 100}`;
  return `${placeInWords(note)}: ${name}${over}${how}: ${REASONS[note.class]}${resolved}; ${worth}`;
}

const REASONS: Readonly<Record<NoteClass, string>> = {
  root: 'the root of the chord',
  'guide-tone': 'a guide tone, which tells the chord from others',
  'chord-tone': 'a tone of the chord',
  idiom: 'a turn of the blues, which leads on as the style has it',
  blue: 'a blue note, at home in the style',
  passing: 'a passing note, by step on to a chord tone',
  neighbour: 'a neighbour, a step away from a chord tone and back',
  approach: 'an approach, by step to a chord tone',
  leaning: 'leaning on a chord tone from a stronger place, and longer than it',
  colour: 'a colour, which does not disturb the chord',
  unresolved: 'outside the chord, and it does not resolve',
  clash: 'a clash, rough against the chord and held, and it does not resolve',
  unjudged: 'no chord sounds',
};
