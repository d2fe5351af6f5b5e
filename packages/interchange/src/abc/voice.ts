import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';
import type { Jump, Measure } from '../notation/measure.js';
import type { MetreField } from './fields.js';
import type { Signature, StaffLetter } from './key-field.js';
import { placeEvents } from './place-events.js';

/** How far an accidental can reach within its bar: ABC 2.1, `propagate-accidentals` (from memory). */
export const ACCIDENTAL_REACHES = ['not', 'octave', 'pitch'] as const;

/** How far an accidental reaches within its bar: its note, its octave, or its letter everywhere. */
export type AccidentalReach = (typeof ACCIDENTAL_REACHES)[number];

/** A note of an event, before the event has a place in time. */
export interface EventNote {
  readonly letter: StaffLetter;
  readonly octave: number;
  readonly pitch: number;
  readonly length: number;
  readonly tied: boolean;
}

/** A sign to jump by, before it has a place in time. */
export type AbcJump = Pick<Jump, 'kind' | 'until'>;

/** Notes that begin together, or a rest, or a chord symbol. */
export type VoiceEvent =
  | {
      readonly kind: 'notes';
      readonly notes: readonly EventNote[];
      readonly length: number;
      readonly accent: boolean;
    }
  /** Pitches of grace notes that sound together. */
  | { readonly kind: 'grace'; readonly pitches: readonly number[] }
  /** Quarter notes a minute. */
  | { readonly kind: 'tempo'; readonly quarters: number }
  | { readonly kind: 'symbol'; readonly text: string }
  | { readonly kind: 'jump'; readonly jump: AbcJump }
  | { readonly kind: 'overlay' };

/** A voice while it is read. It changes with every sign, and is seen by the reader alone. */
export interface Voice {
  readonly id: string;
  name: string;
  signature: Signature;
  /** Semitones that notes sound above what is written. */
  shift: number;
  metre: MetreField;
  unitTicks: number;
  reach: AccidentalReach;
  /** Accidentals of the open bar, by letter and octave or by letter alone. */
  accidentals: Map<string, number>;
  /** Pitches of notes tied over to the next event, by letter and octave. */
  tiedPitches: Map<string, number>;
  /** The same of every layer of the bar, while another is read; the first layer is 0. */
  tiedOfLayers: Map<number, Map<string, number>>;
  /** Signs of overlay since the bar line. */
  layer: number;
  tuplet: { left: number; readonly factor: number };
  /** What the next event is lengthened or shortened by after `>` or `<`; 1 without. */
  brokenFactor: number;
  /** Whether the next notes are accented. */
  accent: boolean;
  /** What the open bar holds; added by {@link addVoiceEvent}. */
  readonly events: VoiceEvent[];
  /** Index of its last notes or rest; −1 before the first. */
  lastNotes: number;
  /** Whether it holds more than signs between notes. */
  isFilled: boolean;
  measures: Measure[];
  opens: boolean;
  isAfterDoubleBar: boolean;
  endings: readonly number[] | undefined;
  /** Label of the part of the tune that the next measure begins. */
  label: string | undefined;
}

/** What a voice begins with. */
export type VoiceBeginning = Pick<
  Voice,
  'name' | 'signature' | 'shift' | 'metre' | 'unitTicks' | 'reach' | 'label'
>;

/** A voice without signs yet. */
export function openVoice(id: string, beginning: VoiceBeginning): Voice {
  return {
    ...beginning,
    id,
    accidentals: new Map(),
    tiedPitches: new Map(),
    tiedOfLayers: new Map(),
    layer: 0,
    tuplet: { left: 0, factor: 1 },
    brokenFactor: 1,
    accent: false,
    events: [],
    lastNotes: -1,
    isFilled: false,
    measures: [],
    opens: false,
    isAfterDoubleBar: false,
    endings: undefined,
  };
}

/** Adds to the open bar. */
export function addVoiceEvent(voice: Voice, event: VoiceEvent): void {
  if (event.kind === 'notes') voice.lastNotes = voice.events.length;
  voice.isFilled ||= event.kind === 'notes' || event.kind === 'overlay';
  voice.events.push(event);
}

/** Goes on to another layer of the bar, whose ties come from its own notes in the bar before. */
export function enterLayer(voice: Voice, layer: number): void {
  voice.tiedOfLayers.set(voice.layer, voice.tiedPitches);
  voice.layer = layer;
  voice.tiedPitches = voice.tiedOfLayers.get(layer) ?? new Map();
}

/** A bar line: what it closes and what it opens. */
export interface BarLine {
  readonly opens: boolean;
  readonly closes: number;
  /** Whether it is drawn double, which ends a section; default false. */
  readonly isDouble?: boolean;
  /** Whether an ending stops here at the latest. */
  readonly endsSection: boolean;
}

/** Most measures of a voice: hours of music. */
const MOST_MEASURES = 50_000;

function tooManyMeasures(where: ErrorPlace): ReedplateError {
  const expected = `at most ${MOST_MEASURES} bars in a voice`;
  return new ReedplateError({ code: 'FILE_TOO_LARGE', value: 'this tune', expected, where });
}

/** Closes the open measure at a bar line. A bar line with nothing before it only opens the next. */
export function closeMeasure(voice: Voice, bar: BarLine, where: ErrorPlace): void {
  const last = voice.measures.at(-1);
  if (voice.measures.length >= MOST_MEASURES) throw tooManyMeasures(where);
  if (voice.isFilled) {
    voice.measures.push({
      ...placeEvents(voice.events),
      opens: voice.opens,
      ...(voice.isAfterDoubleBar ? { isAfterDoubleBar: true } : {}),
      closes: bar.closes,
      ...(voice.endings === undefined ? {} : { endings: voice.endings }),
      ...(voice.label === undefined ? {} : { label: voice.label }),
      where,
    });
    voice.label = undefined;
    voice.opens = false;
    voice.isAfterDoubleBar = false;
    // A chord symbol right before a bar line without notes waits for the next note.
    voice.events.length = 0;
    voice.lastNotes = -1;
    voice.isFilled = false;
  } else if (bar.closes > 0 && last !== undefined && last.closes === 0) {
    voice.measures[voice.measures.length - 1] = { ...last, closes: bar.closes };
  }
  voice.opens ||= bar.opens;
  voice.isAfterDoubleBar ||= bar.isDouble === true;
  if (bar.endsSection) voice.endings = undefined;
  if (voice.layer > 0) enterLayer(voice, 0);
  voice.accidentals = new Map();
}
