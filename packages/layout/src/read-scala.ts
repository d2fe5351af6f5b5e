import { deepFreeze, type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { ratioCents } from './ratio.js';
import type { Temperament } from './temperament.js';

/** What {@link readScala} names the temperament. */
export interface ScalaOptions {
  /** Default `scala`. */
  readonly id?: string;
}

const SCALA_OPTIONS: OptionNames<ScalaOptions> = { id: true };

/** The longest scale read. */
const MOST_NOTES = 1024;
/** A note of the scale stands for a semitone when it is at most this far from it. */
const HALF_A_SEMITONE = 50;

/**
 * Reads a scale in the Scala format (.scl) as a temperament: comment lines begin with `!`; then
 * come a description, the number of notes, and one pitch a line as a ratio or, with a point, as
 * cents. The unison is the tonic of first position and the last pitch its octave. Each semitone
 * takes the nearest note within half a semitone. What follows a pitch on its line is a comment, and
 * a byte order mark before the text is passed over.
 *
 * Format: "Scala scale file format", https://www.huygens-fokker.org/scala/scl_format.html.
 *
 * @throws ReedplateError `SCALA_SYNTAX` with `where.line`
 * @example
 * ```ts
 * import { readScala } from '@reedplate/layout';
 *
 * const triad = readScala('! triad.scl\nA just triad\n3\n5/4\n3/2\n2/1\n');
 * triad.name; // => 'A just triad'
 * triad.cents[4]?.toFixed(1); // => '-13.7'
 * triad.cents[2]; // => null
 * readScala('no notes\n0\n'); // throws SCALA_SYNTAX
 * ```
 */
export function readScala(text: string, options: ScalaOptions = {}): Temperament {
  const { id = 'scala' } = requireOptions(options, SCALA_OPTIONS, 'readScala');
  const lines = contentLines(text);
  const [description, count, ...rest] = lines;
  if (description === undefined) throw syntax(text, 'a description line', 1);
  const notes = readCount(count, description.line + 1);
  const pitches = [...Array(notes).keys()].map((index) => readPitch(rest[index], lines));
  const octave = pitches.at(-1) as number;
  if (Math.abs(octave - 1200) > HALF_A_SEMITONE) {
    throw syntax(
      rest[notes - 1]?.content,
      'an octave as the last pitch',
      rest[notes - 1]?.line ?? 1,
    );
  }
  return deepFreeze({
    id,
    name: description.content.trim() || id,
    source: 'a Scala file',
    cents: Array.from({ length: 12 }, (_, semitones) => deviationOf(semitones, [0, ...pitches])),
    octaveStretch: octave - 1200,
  });
}

interface ScalaLine {
  readonly content: string;
  /** In the file, from 1. */
  readonly line: number;
}

function contentLines(text: unknown): readonly ScalaLine[] {
  if (typeof text !== 'string') throw syntax(text, 'the text of a Scala file', 1);
  return text
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\r|\n/u)
    .map((content, index) => ({ content, line: index + 1 }))
    .filter(({ content }) => !content.startsWith('!'));
}

function readCount(found: ScalaLine | undefined, line: number): number {
  const count = Number(/^\s*(\d{1,4})(?:\s|$)/u.exec(found?.content ?? '')?.[1]);
  if (count >= 1 && count <= MOST_NOTES) return count;
  const expected = `a number of notes, 1 to ${MOST_NOTES}`;
  const reason = count === 0 ? ': the format allows a scale of none, which tunes no reed' : '';
  throw syntax(found?.content, expected + reason, found?.line ?? line);
}

// Whatever follows a whole number is a comment, as in `5/4E`; a slash without a number is none.
const RATIO = /^\s*(\d{1,15})(?![\d/])|^\s*(\d{1,15})\/(\d{1,15})(?!\d)/u;
const CENTS = /^\s*(-?\d{0,6}\.\d{0,15})(?!\d)/u;

/** Cents of a pitch line; a number with a point is cents, any other a ratio. */
function readPitch(found: ScalaLine | undefined, lines: readonly ScalaLine[]): number {
  const content = found?.content ?? '';
  const cents = CENTS.exec(content)?.[1];
  if (cents !== undefined && /\d/u.test(cents)) return Number(cents);
  const [, whole, upper = whole, lower = '1'] = RATIO.exec(content) ?? [];
  const ratio = { numerator: Number(upper), denominator: Number(lower) };
  if (ratio.numerator > 0 && ratio.denominator > 0) return ratioCents(ratio);
  const line = found?.line ?? (lines.at(-1)?.line ?? 0) + 1;
  throw syntax(found?.content, 'a pitch as a ratio (5/4) or in cents (386.3)', line);
}

/** Cents by which the nearest pitch lies above a semitone, or null where none is near. */
function deviationOf(semitones: number, pitches: readonly number[]): number | null {
  let nearest: number | null = null;
  for (const pitch of pitches) {
    const deviation = pitch - 100 * semitones;
    if (Math.abs(deviation) > HALF_A_SEMITONE) continue;
    if (nearest === null || Math.abs(deviation) < Math.abs(nearest)) nearest = deviation;
  }
  return nearest;
}

function syntax(value: unknown, expected: string, line: number): ReedplateError {
  return new ReedplateError({ code: 'SCALA_SYNTAX', value, expected, where: { line } });
}
