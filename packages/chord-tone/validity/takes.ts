import { type Chart, makeChart } from '@reedplate/form';
import { type Line, makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { type Chord, parseKey, toPitchClass } from '@reedplate/pitch';
import { type Random, seededRandom } from './contrasts.js';

// Takes whose worth a teacher knows, made over charts: good ones, and the same with one fault.

/** A chart with its takes by name. */
export interface Song {
  readonly name: string;
  readonly chart: Chart;
  readonly takes: ReadonlyMap<TakeName, Line>;
}

/** Forms, keys and choruses that takes are made over. */
const SONGS = [
  ['basic', 'G', 1],
  ['quick-change', 'D', 1],
  ['eight-bar', 'A', 2],
  ['minor', 'Em', 1],
  ['jazz', 'Bb', 1],
  ['slow-ninths', 'F', 1],
] as const;

const SEEDS = [11, 12, 13] as const;

/** All songs, each with several seeds: other seeds make other takes of the same kind. */
export function makeSongs(seeds: readonly number[] = SEEDS): readonly Song[] {
  return SONGS.flatMap(([form, key, choruses]) =>
    seeds.map((seed) => {
      const chart = makeChart(form, key, { choruses });
      return { name: `${form} in ${key}, seed ${seed}`, chart, takes: makeTakes(chart, seed) };
    }),
  );
}

interface Slot {
  readonly start: number;
  readonly duration: number;
  readonly chord: Chord;
  /** Whether it is the first of its chord. */
  readonly first: boolean;
}

/** Quarters with some halves and eighths between them, by chance; every fourth bar ends early. */
function slotsOf(chart: Chart, random: Random): readonly Slot[] {
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const slots: Slot[] = [];
  for (const { start, end, bar, chord } of chart.spans) {
    if (chord === null) continue;
    const until = bar % 4 === 0 ? Math.min(end, bar * barTicks - beatTicks) : end;
    let first = true;
    for (let at = start; at < until; ) {
      const length = Math.min(
        until - at,
        beatTicks * ([0.5, 1, 1, 2][Math.floor(random() * 4)] ?? 1),
      );
      slots.push({ start: at, duration: Math.max(1, Math.round(length * 0.9)), chord, first });
      first = false;
      at += length;
    }
  }
  return slots;
}

const LOW = 60;

function toneNear(pitchClass: number, last: number): number {
  const up = last + toPitchClass(pitchClass - last);
  const best = up - last > 6 ? up - 12 : up;
  return best < LOW ? best + 12 : best > LOW + 24 ? best - 12 : best;
}

const GUIDES: ReadonlySet<string> = new Set(['b3', '3', 'b7', '7']);

type PitchOf = (slot: Slot, last: number, at: number) => number;

function fill(slots: readonly Slot[], pitchOf: PitchOf): readonly TimedNote[] {
  let last = LOW + 9;
  return slots.map((slot, at) => {
    last = pitchOf(slot, last, at);
    return { start: slot.start, duration: slot.duration, pitch: last };
  });
}

const roots: PitchOf = ({ chord }, last) => toneNear(chord.tones[0]?.pitchClass ?? 0, last);

/** Thirds and sevenths on the changes, chord tones between. */
function aimed(random: Random): PitchOf {
  return ({ chord, first }, last) => {
    const own = chord.tones.filter(({ degree }) => !/(?:9|1[13])$/u.test(degree));
    const guides = own.filter(({ degree }) => GUIDES.has(degree));
    const tones = first && guides.length > 0 ? guides : own;
    const tone = tones[Math.floor(random() * tones.length)];
    return toneNear(tone?.pitchClass ?? 0, last);
  };
}

/** A step or two along a scale, whatever sounds. */
function walk(scale: readonly number[], tonic: number, random: Random): PitchOf {
  return (_, last) => {
    const way = random() < 0.5 ? -1 : 1;
    let pitch = last + way;
    while (!scale.includes(toPitchClass(pitch - tonic))) pitch += way;
    return pitch < LOW ? pitch + 12 : pitch > LOW + 24 ? pitch - 12 : pitch;
  };
}

/** Fourth, flat third, root over each chord: a turn of the blues, moved. */
function turns(chart: Chart): readonly TimedNote[] {
  const { beatTicks } = parseMetre(chart.metre);
  return chart.spans.flatMap(({ start, end, chord }) => {
    if (chord === null) return [];
    const root = LOW + toPitchClass((chord.tones[0]?.pitchClass ?? 0) - LOW);
    const places = [
      [0, 0.5, 5],
      [0.5, 0.5, 3],
      [1, 1, 0],
      [2, 1, 7],
    ] as const;
    return places
      .filter(([at]) => start + at * beatTicks < end)
      .map(([at, length, above]) => ({
        start: start + at * beatTicks,
        duration: Math.round(length * beatTicks * 0.9),
        pitch: root + above,
      }));
  });
}

/** Every name of a take. */
export type TakeName = keyof ReturnType<typeof notesOf>;

function makeTakes(chart: Chart, seed: number): ReadonlyMap<TakeName, Line> {
  const notes = notesOf(chart, seed);
  const lines = Object.entries(notes).filter(([, own]) => own.length > 0);
  return new Map(
    lines.map(([name, own]) => [name as TakeName, makeLine(own, { metre: chart.metre })]),
  );
}

function notesOf(chart: Chart, seed: number) {
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const { pitchClass: tonic, mode } = parseKey(chart.key);
  const random = (salt: number): Random => seededRandom(seed * 1009 + salt);
  const slots = slotsOf(chart, random(1));
  const end = chart.spans.at(-1)?.end ?? 0;
  const home = chart.spans.find(({ chord }) => chord?.tones[0]?.pitchClass === tonic)?.chord;
  const still = slots.map((slot) => ({ ...slot, chord: home ?? slot.chord }));
  const isOn = (above: number) => (slot: Slot) =>
    toPitchClass((slot.chord.tones[0]?.pitchClass ?? 0) - tonic) === above;
  const without = (above: number): readonly Slot[] =>
    slots.map((slot, at) => (isOn(above)(slot) ? (still[at] as Slot) : slot));
  const good = fill(slots, aimed(random(2)));
  const scale = mode === 'minor' ? [0, 2, 3, 5, 7, 8, 10] : [0, 2, 4, 5, 7, 9, 10];
  const late = (ticks: number) =>
    good
      .map((note) => ({ ...note, start: note.start + ticks }))
      .filter((note) => note.start >= 0 && note.start < end);
  return {
    aimed: good,
    roots: fill(slots, roots),
    turns: turns(chart),
    calls: good.filter(({ start }) => Math.floor(start / barTicks) % 4 < 2),
    tonic: fill(slots, () => LOW + toPitchClass(tonic - LOW)),
    'tonic chord': fill(still, aimed(random(2))),
    'without IV': fill(without(5), aimed(random(2))),
    'without V': fill(without(7), aimed(random(2))),
    'a bar late': late(barTicks),
    'a bar early': late(-barTicks),
    'a beat late': late(beatTicks),
    'a tone up': good.map((note) => ({ ...note, pitch: note.pitch + 2 })),
    'a fourth up': good.map((note) => ({ ...note, pitch: note.pitch + 5 })),
    'first half': good.filter(({ start }) => start < end / 2),
    'scale walk': fill(slots, walk(scale, tonic, random(3))),
    'chromatic walk': fill(slots, walk([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], tonic, random(4))),
    '20 % wrong': wrong(good, 0.2, random(5)),
    '40 % wrong': wrong(good, 0.4, random(5)),
    '80 % wrong': wrong(good, 0.8, random(5)),
    loose: loosened(good, beatTicks / 5, random(6)),
    octaves: good.map((note, at) => (at % 3 === 0 ? { ...note, pitch: note.pitch + 12 } : note)),
    graced: graced(good, beatTicks),
  };
}

function wrong(notes: readonly TimedNote[], share: number, random: Random): readonly TimedNote[] {
  return notes.map((note) => {
    const isWrong = random() < share;
    const by = 1 + Math.floor(random() * 11);
    return isWrong ? { ...note, pitch: note.pitch + (by > 6 ? by - 12 : by) } : note;
  });
}

function loosened(
  notes: readonly TimedNote[],
  ticks: number,
  random: Random,
): readonly TimedNote[] {
  return notes.map((note) => {
    const start = Math.max(0, Math.round(note.start + (2 * random() - 1) * ticks));
    return { ...note, start };
  });
}

/** A crushed half step in front of every third note. */
function graced(notes: readonly TimedNote[], beatTicks: number): readonly TimedNote[] {
  const length = Math.round(beatTicks / 12);
  return notes.flatMap((note, at) =>
    at % 3 === 0 && note.duration > 3 * length
      ? [
          { start: note.start, duration: length, pitch: note.pitch - 1 },
          { ...note, start: note.start + length, duration: note.duration - length },
        ]
      : [note],
  );
}
