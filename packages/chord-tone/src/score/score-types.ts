import type { Harp, Sounding } from '@reedplate/layout';
import type { ChordDegree, KeyName, NoteNameWithOctave, ScaleDegree } from '@reedplate/pitch';
import type { PlayingStyle } from '../styles.js';
import type { Fault, FaultCode } from './faults.js';
import type { Following } from './following.js';
import type { NoteClass } from './note-class.js';
import type { OtherHarp } from './other-harp.js';
import type { Reading } from './readings.js';
import type { TakeTiming } from './timing.js';
import type { Verdict } from './verdict.js';

/**
 * What a measure says, each from 0 to 1 and each usable alone; null where the line gives nothing to
 * judge it by. All are better when higher, `clashTime` alone when lower. The total rests on `chordFit`
 * and `following`; the others tell where they come from.
 */
export interface ScoreMeasures {
  /** Mean credit of the notes, weighted by their weight: how well they fit their chords. */
  readonly chordFit: number | null;
  /** How much of what chance leaves the chord fit reaches: 0 no more than chance; null over one chord. */
  readonly following: number | null;
  /** Mean credit of the notes that sound at the changes; a change met by a rest is left out. */
  readonly landing: number | null;
  /** Share of the time played, weighted by metrical weight, that is chord tones. */
  readonly chordToneShare: number | null;
  /** Share of the time played, weighted by metrical weight, that is thirds and sevenths. */
  readonly guideToneShare: number | null;
  /** Of the notes outside the chord, the share that resolves, sooner counting more. */
  readonly resolution: number | null;
  /** Share of the time played that clashes; 0 is best. */
  readonly clashTime: number | null;
  /** Share of the changes that the line shows: it lands on the root, or sounds a tone that the chord before did not have. */
  readonly coverage: number | null;
  /** How close the onsets lie to halves, thirds and quarters of the beat: 1 exact, 0 no closer than at random. */
  readonly timing: number | null;
}

/** A note, or the part of it that sounds over one chord, judged; `describeNote` says why in English. */
export interface NoteScore {
  /** Which note of the line, from 0; the first of several tied ones. */
  readonly index: number;
  /** Whether the note was struck over an earlier chord and is held into this one. */
  readonly held: boolean;
  /** Bar of the chart, from 1; 0 in the pickup. */
  readonly bar: number;
  /** Felt beat, from 1, of the time as played. */
  readonly beat: number;
  /** Ticks of the chart, after alignment. */
  readonly start: number;
  /** Ticks. */
  readonly duration: number;
  /** MIDI number. */
  readonly pitch: number;
  /** Spelled by the chord, or by the key where the note is outside it. */
  readonly name: NoteNameWithOctave;
  /** Symbol of the chord the note belongs to; null where none sounds. */
  readonly chord: string | null;
  /** Degree above the chord's root. */
  readonly degree: ScaleDegree | null;
  /** Whether the note anticipates: struck before the change, judged by the coming chord. */
  readonly push: boolean;
  readonly class: NoteClass;
  /** What the note is worth, 0 to 1. */
  readonly credit: number;
  /** What it counts for in `chordFit`, in felt beats. */
  readonly weight: number;
  /** Strength of its place in the bar, 0 (between sixteenths) to 1 (the first beat). */
  readonly metre: number;
  /** The note it resolves to, as its index in the line; null where it does not, or need not. */
  readonly resolvesTo: number | null;
}

/** What happened at one change of chord. */
export interface ChangeScore {
  readonly bar: number;
  readonly beat: number;
  readonly chord: string;
  readonly numeral: string | null;
  /** Index in the line of the note that sounds at the change; null for a rest. */
  readonly index: number | null;
  /** Its class, or null for a rest. */
  readonly class: NoteClass | null;
  /** 0 to 1, or null for a rest. */
  readonly landing: number | null;
  /** Whether the line lands on its root, or sounds a tone of it that the chord before did not have; null where it has none or nothing is played. */
  readonly shown: boolean | null;
}

/** How the notes of one bar follow its chords. */
export interface BarScore {
  readonly bar: number;
  /** Symbols of its chords, in order. */
  readonly chords: readonly string[];
  /** Notes and held parts judged in it. */
  readonly notes: number;
  /** Mean credit, 0 to 1; null for a bar of rest. */
  readonly chordFit: number | null;
}

/** What feedback is about: a fault of the whole take, its time, or notes of one kind. */
export type FeedbackCode =
  | FaultCode
  | 'BARS_NOT_PLAYED'
  | 'NOTES_OUTSIDE_CHART'
  | 'LITTLE_TO_JUDGE'
  | 'TIME_LOOSE'
  | 'TIME_BEHIND'
  | 'TIME_AHEAD'
  | 'TIME_RUSHES'
  | 'TIME_DRAGS'
  | 'SWING_STIFF'
  | 'SWING_WIDE'
  | 'NOTE_KEPT'
  | 'LANDED_OUTSIDE'
  | 'CLASH'
  | 'UNRESOLVED'
  | 'CHANGE_NOT_SHOWN';

/** What could be played instead. */
export interface Suggestion {
  readonly pitch: number;
  readonly name: NoteNameWithOctave;
  readonly degree: ChordDegree;
  /** The easiest way to sound it on the harp; null without a harp. */
  readonly sounding: Sounding | null;
  /** The same as tab; null without a harp. */
  readonly tab: string | null;
}

/** One thing to do next, as data: `describeFeedback` gives its remark, the sentence in English. */
export interface Feedback {
  readonly code: FeedbackCode;
  /** Bars it is about, in order, each once; empty where it is about the whole take. */
  readonly bars: readonly number[];
  /** Felt beat in the first of them, from 1; 1 for the whole take. */
  readonly beat: number;
  readonly chord: string | null;
  /** Index in the line of the first note it is about; null where no note is meant. */
  readonly index: number | null;
  readonly name: NoteNameWithOctave | null;
  /** How many notes, changes or bars it is about. */
  readonly count: number;
  /** Faults: see `Fault.by`; time: felt beats; swing: long to short; else null. */
  readonly by: number | null;
  /** The harps of `TAKE_OTHER_HARP`; null for the others. */
  readonly otherHarp: OtherHarp | null;
  /** What could be played, over each chord that it is about. */
  readonly suggestions: readonly ChordSuggestion[];
}

/** What could be played over a chord. */
export interface ChordSuggestion extends Suggestion {
  readonly chord: string;
}

/** How a line was laid on the chart. */
export interface TakeAlignment {
  /** Ticks taken off every onset. */
  readonly latency: number;
  /** Long to short part of a beat as played: 1 is even, 2 a triplet shuffle. */
  readonly swing: number;
  /** Bars counted in that were taken off. */
  readonly countIn: number;
  /** Times through the form that were judged, the last perhaps in part. */
  readonly choruses: number;
}

/** How well a line follows a chart, with the reasons. */
export interface Score {
  /** Title of the take; null where it has none. */
  readonly title: string | null;
  /** Id or name of the form. */
  readonly form: string;
  readonly key: KeyName;
  /** The harp that suggestions are written for; null where none is given. */
  readonly harp: Harp | null;
  /** What a teacher would say first; `describeVerdict` says it in English. */
  readonly verdict: Verdict;
  /**
   * 0 to 100. A line that would do as well over any chords has little, whatever its notes; half of
   * it is for how well the notes fit, half for how far that goes beyond chance. What 40, 60 and 80
   * mean was measured: `docs/scoring-validity.md`. Silence of three bars and more, a fault of the
   * whole take and loose time take off. How far a total of so few notes can be trusted is for
   * `confidence` to say, and for the feedback `LITTLE_TO_JUDGE`.
   */
  readonly total: number;
  /** Share of the bars with a chord that are played or rests between phrases, 0 to 1. */
  readonly played: number;
  /** How sure the total is, 0.5 (a toss of a coin) to 1: how often so many notes of a good player outscore their own shuffle. */
  readonly confidence: number;
  readonly style: PlayingStyle;
  readonly measures: ScoreMeasures;
  /** What chance would reach; null where there is nothing to follow. */
  readonly following: Following | null;
  /** The take read otherwise: what it would fit on another harp, a bar later, and so on. */
  readonly readings: readonly Reading[];
  /** What is wrong with the take as a whole; null where nothing stands out. */
  readonly fault: Fault | null;
  readonly timing: TakeTiming;
  readonly notes: readonly NoteScore[];
  readonly changes: readonly ChangeScore[];
  /** Every bar judged. */
  readonly bars: readonly BarScore[];
  /** What to do next: at most five, what matters most first. */
  readonly feedback: readonly Feedback[];
  readonly alignment: TakeAlignment;
}
