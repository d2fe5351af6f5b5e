import type { Chart, ChordSpan } from '@reedplate/form';
import type { PiecePart } from '@reedplate/interchange';
import { makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { type Random, randomFrom, requireInteger, requireOptions } from '@reedplate/pitch';
import { playBass } from './bass.js';
import { type Beat, beatsOf } from './beats.js';
import { comp, nearestVoicing } from './comping.js';
import { countOff, DRUMS, drum } from './drums.js';
import type { Groove } from './groove.js';
import { loosen, requireLooseness } from './loosen.js';
import type { BackingOptions, LineHead, PartOptions } from './make-backing.js';
import { readLevel } from './read-level.js';
import { USUAL_TEMPO } from './require-backing.js';

/** General MIDI programs, counted from 1: fingered bass, clean electric guitar. */
const PROGRAMS = { Bass: 34, Comping: 28 } as const;

const PART_OPTIONS = { mute: true, level: true, program: true } as const;

type BandOptions = BackingOptions & { readonly countIn: number; readonly ending: boolean };

/** The parts of a band over a chart that is ended, after the bars that are counted in. */
export function playBand(
  chart: Chart,
  groove: Groove,
  head: LineHead,
  options: BandOptions,
): readonly PiecePart[] {
  const { countIn, ending, seed = 1, trade = false } = options;
  requireInteger(seed, { min: Number.MIN_SAFE_INTEGER, what: 'a seed' });
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const after = countIn * barTicks;
  const last = ending ? chart.spans.at(-1) : undefined;
  const all = beatsOf(chart).filter(({ start }) => last === undefined || start < last.start);
  const beats = all.map((beat) => ({ ...beat, start: beat.start + after }));
  const heard = trade ? beats.map(restInTurn) : beats;
  const final = last === undefined ? NO_ENDING : endWith(last, after);
  const late = requireLooseness(options.looseness ?? 0);
  // Each part draws from a chance of its own, so that muting one leaves the others as they are.
  const chance = (part: number): Random => randomFrom(seed + part);
  const part = (name: PartName, given: PartOptions | undefined, notes: readonly TimedNote[]) => {
    const line = makeLine(notes, head);
    const tempo = head.tempo ?? USUAL_TEMPO;
    return makePart(name, given, loosen(line, late, tempo, chance(LATENESS[name])));
  };
  return [
    part('Bass', options.bass, [...playBass(heard, groove.bass, chance(0)), ...final.bass]),
    part('Comping', options.comping, [...comp(heard, groove), ...final.comping]),
    part('Drums', options.drums, [
      ...countOff(countIn, barTicks, beatTicks),
      ...drum(beats, groove, chance(1)),
      ...final.drums,
    ]),
  ].flat();
}

/** Which chance each part is late by, beside those of walks and fills. */
const LATENESS: Readonly<Record<PartName, number>> = { Bass: 2, Comping: 3, Drums: 4 };

type PartName = keyof typeof PROGRAMS | 'Drums';

function makePart(
  name: PartName,
  given: PartOptions = {},
  line: PiecePart['line'],
): readonly PiecePart[] {
  const { mute = false, level = 1, program } = requireOptions(given, PART_OPTIONS, 'a part');
  if (program !== undefined) requireInteger(program, { min: 1, max: 128, what: 'a program' });
  const loud = readLevel(line, level);
  if (mute) return [];
  if (name === 'Drums') return [{ name, percussion: true, line: loud }];
  return [{ name, program: program ?? PROGRAMS[name], line: loud }];
}

const BARS_OF_TURN = 4;

/** Every other four bars is the player's own: bass and chords rest in it. */
function restInTurn(beat: Beat): Beat {
  const isPlayers = Math.floor((beat.bar - 1) / BARS_OF_TURN) % 2 === 1;
  return isPlayers ? { ...beat, chord: null, next: undefined } : beat;
}

interface Ending {
  readonly bass: readonly TimedNote[];
  readonly comping: readonly TimedNote[];
  readonly drums: readonly TimedNote[];
}

const NO_ENDING: Ending = { bass: [], comping: [], drums: [] };
const LAST_VELOCITY = 100;

/** The last bar: root, chord and crash together, held. */
function endWith({ start: from, end, chord }: ChordSpan, after: number): Ending {
  if (chord === null) return NO_ENDING;
  const start = from + after;
  const ticks = end - from;
  const held = { start, duration: ticks, velocity: LAST_VELOCITY };
  const beat = { start, ticks, bar: 1, inBar: 0, beatsPerBar: 1, underChord: 0 };
  const only: Beat = { ...beat, left: ticks, chord, next: undefined, opensChorus: false };
  return {
    bass: playBass([only], 'walk', randomFrom(1)).map(({ pitch }) => ({ ...held, pitch })),
    comping: nearestVoicing(chord, []).map((pitch) => ({ ...held, pitch })),
    drums: [DRUMS.crash, DRUMS.kick].map((pitch) => ({ ...held, pitch })),
  };
}
