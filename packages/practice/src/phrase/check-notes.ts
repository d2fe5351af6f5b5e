import { requireFields, requireInteger, requireOneOf, SCALE_DEGREES } from '@reedplate/pitch';
import { semitonesOf } from './harmony.js';
import { invalidPhrase } from './invalid-phrase.js';
import { BEND_SHAPES, type PhraseBend, type PhraseNote } from './phrase.js';

const CODE = 'PHRASE_INVALID';
const FIELDS = ['at', 'length', 'degree', 'octave', 'accent', 'grace', 'bend'] as const;
const MOST_NOTES = 2048;
const MOST_OCTAVES = 4;

/** The notes of a phrase of so many ticks: each checked, in order, one mouth for all of them. */
export function checkNotes(notes: unknown, ticks: number): readonly PhraseNote[] {
  if (!Array.isArray(notes) || notes.length === 0 || notes.length > MOST_NOTES) {
    throw invalidPhrase(notes, `a list of 1 to ${MOST_NOTES} notes`, { path: 'notes' });
  }
  const checked = Array.from(notes, (note, index) => checkNote(note, index, ticks)).sort(byTime);
  checked.slice(1).forEach((note, index) => {
    requireOneMouth(checked[index] as PhraseNote, note, index + 1);
  });
  return checked;
}

function checkNote(note: unknown, index: number, ticks: number): PhraseNote {
  const path = `notes[${index}]`;
  const { at, length, degree, octave, accent, grace, bend } = requireFields(note, FIELDS, {
    code: CODE,
    path,
  });
  const integer = (value: unknown, min: number, max: number, field: string): number =>
    requireInteger(value, {
      min,
      max,
      what: field,
      code: CODE,
      where: { path: `${path}.${field}` },
    });
  const start = integer(at, 0, ticks - 1, 'at');
  return {
    at: start,
    length: integer(length, 1, ticks - start, 'length'),
    degree: requireOneOf(degree, SCALE_DEGREES, {
      what: 'a degree',
      code: CODE,
      where: { path: `${path}.degree` },
    }),
    octave: integer(octave, -MOST_OCTAVES, MOST_OCTAVES, 'octave'),
    ...flag(accent, 'accent', path),
    ...flag(grace, 'grace', path),
    ...(bend === undefined ? {} : { bend: checkBend(bend, `${path}.bend`) }),
  };
}

/** False is left out, so that what is the same is written the same. */
function flag<Name extends string>(
  value: unknown,
  name: Name,
  path: string,
): { readonly [N in Name]?: true } {
  if (value === undefined || value === false) return {};
  if (value === true) return { [name]: true } as { readonly [N in Name]: true };
  throw invalidPhrase(value, 'true or false', { path: `${path}.${name}` });
}

function checkBend(bend: unknown, path: string): PhraseBend {
  const { shape, cents } = requireFields(bend, ['shape', 'cents'], { code: CODE, path });
  const where = (field: string) => ({ code: CODE, where: { path: `${path}.${field}` } }) as const;
  return {
    shape: requireOneOf(shape, BEND_SHAPES, { what: 'a shape', ...where('shape') }),
    cents: requireInteger(cents, { min: 1, max: 300, what: 'cents', ...where('cents') }),
  };
}

function byTime(a: PhraseNote, b: PhraseNote): number {
  return a.at - b.at || heightOf(a) - heightOf(b);
}

const heightOf = ({ degree, octave }: PhraseNote): number => semitonesOf(degree) + 12 * octave;

/** What begins together is as long as each other and of different pitch; what follows waits for it. */
function requireOneMouth(before: PhraseNote, note: PhraseNote, index: number): void {
  const where = { path: `notes[${index}]` };
  if (note.at === before.at) {
    if (note.length === before.length && heightOf(note) !== heightOf(before)) return;
    throw invalidPhrase(note, 'another pitch, as long as what begins with it', where);
  }
  if (before.at + before.length > note.at) {
    throw invalidPhrase(
      note.at,
      `a time from ${before.at + before.length}, when the note before ends`,
      where,
    );
  }
}
