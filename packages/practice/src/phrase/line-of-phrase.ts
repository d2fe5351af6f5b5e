import type { Chart } from '@reedplate/form';
import { type Line, makeLine, type PitchPoint, parseMetre, type TimedNote } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { rootAbove, semitonesOf } from './harmony.js';
import type { Phrase, PhraseBend, PhraseNote } from './phrase.js';

/** Semitones of a note of a phrase above the tonic of the chart that it is laid on. */
export function aboveTonic(note: PhraseNote, phrase: Phrase, chart: Chart, tick: number): number {
  const root = phrase.from === 'chord' ? rootAbove(chart, tick) : 0;
  return root + semitonesOf(note.degree) + 12 * note.octave;
}

/** A phrase at the pitch of a tonic, over the chords it was made for: time as in the phrase. */
export function lineOfPhrase(phrase: Phrase, chart: Chart, tonic: number): Line {
  const { metre, pickup, notes } = phrase;
  const timed = notes.map((note) => {
    const pitch = tonic + aboveTonic(note, phrase, chart, note.at);
    return timedNote(note, { start: note.at, duration: note.length, pitch, metre });
  });
  return makeLine(timed, { metre, pickup });
}

/** Where and how long a note of a phrase sounds. */
export interface Laid {
  readonly start: number;
  readonly duration: number;
  readonly pitch: number;
  readonly metre: Phrase['metre'];
}

/** A note of a line with what the phrase says of how it is played. */
export function timedNote({ accent, grace, bend }: PhraseNote, laid: Laid): TimedNote {
  const { start, duration, pitch, metre } = laid;
  return {
    start,
    duration,
    pitch,
    ...(accent ? { accent } : {}),
    ...(grace ? { grace } : {}),
    ...(bend ? { curve: curveOf(bend, duration, parseMetre(metre).beatTicks) } : {}),
  };
}

/** A scoop or a fall takes a quarter of a beat, or half of a short note. Design choice. */
function curveOf(
  { shape, cents }: PhraseBend,
  duration: number,
  beat: number,
): readonly PitchPoint[] {
  const move = Math.max(1, Math.min(Math.floor(duration / 2), Math.floor(beat / 4)));
  const low = -cents;
  const rest = duration - move;
  if (shape === 'scoop') return points([0, low], [move, 0]);
  if (shape === 'fall') return points([rest, 0], [duration, low]);
  const middle = Math.floor(duration / 2);
  return points([0, 0], [middle, low], [duration, 0]);
}

/** Points in rising order: of two at one tick the first is kept. */
function points(...given: readonly (readonly [number, number])[]): readonly PitchPoint[] {
  return given
    .filter(([at], index) => index === 0 || at > itemAt(given, index - 1)[0])
    .map(([at, cents]) => ({ at, cents }));
}
