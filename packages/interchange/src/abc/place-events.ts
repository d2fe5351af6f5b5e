import type {
  Jump,
  Measure,
  MeasureChord,
  MeasureGrace,
  MeasureNote,
  MeasureTempo,
} from '../notation/measure.js';
import type { AbcJump, VoiceEvent } from './voice.js';

/** A measure while its events find their places. */
interface OpenPlaces {
  readonly notes: MeasureNote[];
  readonly graces: MeasureGrace[];
  readonly chords: MeasureChord[];
  readonly tempos: MeasureTempo[];
  readonly jumps: Jump[];
  /** Signs written over the note that comes next, or over the bar line. */
  waiting: AbcJump[];
  offset: number;
  longest: number;
}

/** The events of a measure in time. */
export function placeEvents(
  events: readonly VoiceEvent[],
): Pick<Measure, 'notes' | 'graces' | 'chords' | 'tempos' | 'length' | 'jumps'> {
  const open: OpenPlaces = {
    ...{ notes: [], graces: [], chords: [], tempos: [], jumps: [], waiting: [] },
    ...{ offset: 0, longest: 0 },
  };
  for (const event of events) placeEvent(event, open);
  placeJumps(open, 0);
  const { notes, graces, chords, tempos, jumps, longest } = open;
  return {
    notes,
    ...(graces.length === 0 ? {} : { graces }),
    chords,
    ...(tempos.length === 0 ? {} : { tempos }),
    length: longest,
    ...(jumps.length === 0 ? {} : { jumps }),
  };
}

function placeEvent(event: VoiceEvent, open: OpenPlaces): void {
  const { offset } = open;
  switch (event.kind) {
    case 'symbol':
      open.chords.push({ offset, text: event.text });
      break;
    case 'jump':
      open.waiting.push(event.jump);
      break;
    case 'tempo':
      open.tempos.push({ offset, quarters: event.quarters });
      break;
    case 'grace':
      open.graces.push({ offset, notes: event.pitches.map((pitch) => ({ pitch })) });
      break;
    case 'overlay':
      placeJumps(open, 0);
      open.offset = 0;
      break;
    default:
      placeNotes(event, open);
  }
}

function placeNotes(
  { notes, length, accent }: Extract<VoiceEvent, { readonly kind: 'notes' }>,
  open: OpenPlaces,
): void {
  const played = accent ? { played: { accent } } : {};
  for (const { length: duration, pitch, tied } of notes) {
    open.notes.push({ offset: open.offset, duration, pitch, tied, ...played });
  }
  placeJumps(open, length);
  open.offset += length;
  open.longest = Math.max(open.longest, open.offset);
}

function placeJumps(open: OpenPlaces, length: number): void {
  const { offset } = open;
  for (const jump of open.waiting) {
    open.jumps.push({ ...jump, name: '', offset, end: offset + length });
  }
  open.waiting = [];
}
