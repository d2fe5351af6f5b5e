import type { FeedbackCode } from '@reedplate/chord-tone';
import type { TakeName } from './takes.js';

/** What a take was given. */
export interface Given {
  readonly total: number;
  readonly codes: readonly FeedbackCode[];
}

/** A judgement that a teacher would make, with its reason. */
export interface Judgement {
  readonly says: string;
  readonly why: string;
  /** What must hold of a song's takes; missing takes are not tried. */
  readonly holds: (of: (name: TakeName) => Given) => boolean;
  /** What limits it, where it does not hold everywhere. */
  readonly limit?: string;
}

const atLeast =
  (name: TakeName, least: number): Judgement['holds'] =>
  (of) =>
    of(name).total >= least;
const atMost =
  (name: TakeName, most: number): Judgement['holds'] =>
  (of) =>
    of(name).total <= most;
const above =
  (one: TakeName, other: TakeName, by: number): Judgement['holds'] =>
  (of) =>
    of(one).total - of(other).total >= by;
const near =
  (one: TakeName, other: TakeName, by: number): Judgement['holds'] =>
  (of) =>
    Math.abs(of(one).total - of(other).total) <= by;
const named =
  (name: TakeName, code: FeedbackCode): Judgement['holds'] =>
  (of) =>
    of(name).codes.includes(code);

const WHOLE: ReadonlySet<FeedbackCode> = new Set([
  'TAKE_OTHER_HARP',
  'TAKE_BARS_LATE',
  'TAKE_BARS_EARLY',
  'TAKE_BEATS_LATE',
  'TAKE_BEATS_EARLY',
  'STAYS_ON_ONE_CHORD',
  'CHORD_MISSED',
  'BARS_NOT_PLAYED',
]);
const notAccused =
  (name: TakeName): Judgement['holds'] =>
  (of) =>
    !of(name).codes.some((code) => WHOLE.has(code));

/** Every judgement of the battery. */
export const JUDGEMENTS: readonly Judgement[] = [
  {
    says: 'chord tones aimed at the changes have 80 and more',
    why: 'it is what is taught',
    holds: atLeast('aimed', 80),
  },
  { says: 'roots have 80 and more', why: 'no change is missed', holds: atLeast('roots', 80) },
  {
    says: 'fourth, flat third, root, moved with the chords, has 65 and more',
    why: 'it follows, in the style',
    holds: atLeast('turns', 65),
  },
  {
    says: 'call and response has 80 and more',
    why: 'its rests are music',
    holds: atLeast('calls', 80),
  },
  {
    says: 'the tonic alone has 50 at most',
    why: 'it would be the same over any chord',
    holds: atMost('tonic', 50),
  },
  {
    says: 'a good line over the tonic chord alone has 50 at most',
    why: 'good notes, no changes',
    holds: atMost('tonic chord', 50),
  },
  {
    says: 'roots are 30 above the tonic alone',
    why: 'one hears every change, the other none',
    holds: above('roots', 'tonic', 30),
  },
  { says: 'IV missed costs 5', why: 'a change was missed', holds: above('aimed', 'without IV', 5) },
  { says: 'V missed costs 5', why: 'a change was missed', holds: above('aimed', 'without V', 5) },
  {
    says: 'IV missed has 50 and more',
    why: 'the others were heard',
    holds: atLeast('without IV', 50),
    limit:
      'where IV fills nearly half of the chart, what is left fits hardly better than by chance',
  },
  {
    says: 'V missed has 50 and more',
    why: 'the others were heard',
    holds: atLeast('without V', 50),
  },
  {
    says: 'a bar late costs 30',
    why: 'the player is lost',
    holds: above('aimed', 'a bar late', 30),
  },
  {
    says: 'a bar early costs 30',
    why: 'the player is lost',
    holds: above('aimed', 'a bar early', 30),
  },
  {
    says: 'a beat late costs 10',
    why: 'every change is met late',
    holds: above('aimed', 'a beat late', 10),
  },
  {
    says: 'a beat late has 55 and more',
    why: 'the changes are known',
    holds: atLeast('a beat late', 55),
  },
  { says: 'a tone up has 40 at most', why: 'the wrong harp', holds: atMost('a tone up', 40) },
  { says: 'a fourth up costs 30', why: 'the wrong harp', holds: above('aimed', 'a fourth up', 30) },
  {
    says: 'half a chart of silence has 60 at most',
    why: 'half a chorus is no chorus',
    holds: atMost('first half', 60),
  },
  {
    says: 'a walk in the scale has 65 at most',
    why: 'in key, but it hears no change',
    holds: atMost('scale walk', 65),
    limit:
      'over one chart a walk meets the chords by luck at times, as often as a line that aims at them',
  },
  {
    says: 'a chromatic walk has 30 at most',
    why: 'notes at random',
    holds: atMost('chromatic walk', 30),
    limit: 'by half steps a walk leads into a chord tone all the time: in passing that is music',
  },
  {
    says: 'aimed lines are above a walk in the scale by 20',
    why: 'notes of the key are not the chord',
    holds: above('aimed', 'scale walk', 20),
  },
  {
    says: 'a fifth of wrong notes costs something',
    why: 'heard',
    holds: above('aimed', '20 % wrong', 1),
  },
  {
    says: 'two fifths of wrong notes cost 20',
    why: 'nearly every second note',
    holds: above('aimed', '40 % wrong', 20),
    limit: 'the notes that were left are all chord tones: together they fit as a good solo does',
  },
  {
    says: 'four fifths of wrong notes leave 30 at most',
    why: 'nothing is left',
    holds: atMost('80 % wrong', 30),
    limit:
      'of notes moved by chance some are chord tones again or step to one, over one chart at times enough',
  },
  {
    says: 'loose time costs 25 at most',
    why: 'the changes are followed',
    holds: (of) => of('aimed').total - of('loose').total <= 25,
  },
  { says: 'octaves cost 6 at most', why: 'the same chord', holds: near('octaves', 'aimed', 6) },
  { says: 'grace notes cost 5 at most', why: 'ornament', holds: near('graced', 'aimed', 5) },
  {
    says: 'staying on the tonic is named',
    why: 'the one thing to tell',
    holds: named('tonic', 'STAYS_ON_ONE_CHORD'),
  },
  {
    says: 'the tonic chord throughout is named',
    why: 'the one thing to tell',
    holds: named('tonic chord', 'STAYS_ON_ONE_CHORD'),
  },
  {
    says: 'IV missed is named',
    why: 'the one thing to tell',
    holds: named('without IV', 'CHORD_MISSED'),
  },
  {
    says: 'V missed is named',
    why: 'the one thing to tell',
    holds: named('without V', 'CHORD_MISSED'),
  },
  {
    says: 'a bar late is named',
    why: 'the one thing to tell',
    holds: named('a bar late', 'TAKE_BARS_LATE'),
  },
  {
    says: 'a bar early is named',
    why: 'the one thing to tell',
    holds: named('a bar early', 'TAKE_BARS_EARLY'),
  },
  {
    says: 'a beat late is named',
    why: 'the one thing to tell',
    holds: named('a beat late', 'TAKE_BEATS_LATE'),
  },
  {
    says: 'another harp is named',
    why: 'the one thing to tell',
    holds: named('a tone up', 'TAKE_OTHER_HARP'),
  },
  {
    says: 'half a chart of silence is named',
    why: 'the one thing to tell',
    holds: named('first half', 'BARS_NOT_PLAYED'),
  },
  {
    says: 'nothing of the kind is said of aimed lines',
    why: 'a false alarm costs trust',
    holds: notAccused('aimed'),
  },
  {
    says: 'nothing of the kind is said of roots',
    why: 'a false alarm costs trust',
    holds: notAccused('roots'),
  },
  {
    says: 'nothing of the kind is said of turns',
    why: 'a false alarm costs trust',
    holds: notAccused('turns'),
  },
  {
    says: 'nothing of the kind is said of call and response',
    why: 'a false alarm costs trust',
    holds: notAccused('calls'),
  },
];
