import { expectTypeOf } from 'vitest';
import {
  type BarBeat,
  barBeatAt,
  type Line,
  lineEnd,
  lineFromSeconds,
  type Metre,
  type MetreUnit,
  makeLine,
  type NoteInSeconds,
  notesInSeconds,
  parseMetre,
  readLine,
  secondsAt,
  type TimedNote,
  tickAt,
  tickAtSeconds,
  transposeLine,
} from './index.js';

const line = makeLine([]);

// What functions give is as narrow as it is known to be.
expectTypeOf(line).toEqualTypeOf<Line>();
expectTypeOf(readLine('{}')).toEqualTypeOf<Line>();
expectTypeOf(transposeLine(line, 1)).toEqualTypeOf<Line>();
expectTypeOf(lineEnd(line)).toEqualTypeOf<number>();
expectTypeOf(barBeatAt(0, line)).toEqualTypeOf<BarBeat>();
expectTypeOf(tickAt({ bar: 1, beat: 1 }, line)).toEqualTypeOf<number>();
expectTypeOf(parseMetre('4/4').denominator).toEqualTypeOf<MetreUnit>();
expectTypeOf(line.notes).toEqualTypeOf<readonly TimedNote[]>();
expectTypeOf<'12/8'>().toExtend<Metre>();
expectTypeOf(lineFromSeconds([], { tempo: 60 })).toEqualTypeOf<Line>();
expectTypeOf(notesInSeconds(line)).toEqualTypeOf<readonly NoteInSeconds[]>();
// What seconds are counted by is a line, a chart or a tempo.
expectTypeOf(secondsAt(0, line)).toEqualTypeOf<number>();
expectTypeOf(tickAtSeconds(0, { tempo: 60 })).toEqualTypeOf<number>();

// Misuse does not compile.
// @ts-expect-error a note has a duration
makeLine([{ start: 0, pitch: 60 }]);
// @ts-expect-error pitches are MIDI numbers
makeLine([{ start: 0, duration: 960, pitch: 'C4' }]);
// @ts-expect-error there is no fifth of a whole note
makeLine([], { metre: '4/5' });
// @ts-expect-error the option is spelled pickup
makeLine([], { pickUp: 0 });
// @ts-expect-error a line is read only
line.pickup = 1;
// @ts-expect-error the notes of a line are read only
line.notes.push({ start: 0, duration: 1, pitch: 60 });
// @ts-expect-error a note is read only
(line.notes[0] as TimedNote).pitch = 61;
// @ts-expect-error a grid has a metre
barBeatAt(0, { pickup: 0 });
// @ts-expect-error a place has a beat
tickAt({ bar: 1 }, line);
// @ts-expect-error a line moves by a number of semitones
transposeLine(line, 'C');
// @ts-expect-error a velocity is a number
makeLine([{ start: 0, duration: 960, pitch: 60, velocity: 'loud' }]);
// @ts-expect-error points of a curve have cents
makeLine([{ start: 0, duration: 960, pitch: 60, curve: [{ at: 0 }] }]);
// @ts-expect-error a change has a tempo
makeLine([], { tempo: 60, tempoChanges: [{ start: 960 }] });
// @ts-expect-error a tempo stands in an object
secondsAt(0, 60);
// @ts-expect-error notes in seconds have a duration
lineFromSeconds([{ start: 0, pitch: 60 }], { tempo: 60 });
