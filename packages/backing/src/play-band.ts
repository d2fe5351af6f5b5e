import type { Chart, ChordSpan } from '@reedplate/form';
import type { PiecePart } from '@reedplate/interchange';
import { makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { randomFrom, requireInteger, requireOptions } from '@reedplate/pitch';
import { playBass } from './bass.js';
import { type Beat, beatsOf } from './beats.js';
import { comp, nearestVoicing } from './comping.js';
import { countOff, DRUMS, drum } from './drums.js';
import type { Groove } from './groove.js';
import type { BackingOptions, PartOptions } from './make-backing.js';
import { readLevel } from './read-level.js';

/** General MIDI programs, counted from 1: fingered bass, clean electric guitar. */
const PROGRAMS = { Bass: 34, Comping: 28 } as const;

const PART_OPTIONS = { mute: true, level: true, program: true } as const;

type BandOptions = BackingOptions & { readonly countIn: number; readonly ending: boolean };

/** The parts of a band over a chart that is counted in and ended. */
export function playBand(chart: Chart, groove: Groove, options: BandOptions): readonly PiecePart[] {
  const { countIn, ending, seed = 1, trade = false } = options;
  requireInteger(seed, { min: Number.MIN_SAFE_INTEGER, what: 'a seed' });
  const { barTicks, beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const all = beatsOf(chart).slice(countIn * beatsPerBar);
  const last = ending ? chart.spans.at(-1) : undefined;
  const beats = all.filter(({ start }) => last === undefined || start < last.start);
  const heard = trade ? beats.map(restInTurn) : beats;
  const { metre, pickup, tempo } = chart;
  const head = { metre, pickup, ...(tempo === undefined ? {} : { tempo }) };
  const final = last === undefined ? NO_ENDING : endWith(last);
  // Each part draws from a chance of its own, so that muting one leaves the others as they are.
  const [bass, drums] = [randomFrom(seed), randomFrom(seed + 1)];
  const part = (name: PartName, given: PartOptions | undefined, notes: readonly TimedNote[]) =>
    makePart(name, given, makeLine(notes, head));
  return [
    part('Bass', options.bass, [...playBass(heard, groove.bass, bass), ...final.bass]),
    part('Comping', options.comping, [...comp(heard, groove), ...final.comping]),
    part('Drums', options.drums, [
      ...countOff(countIn, barTicks, beatTicks),
      ...drum(beats, groove, drums),
      ...final.drums,
    ]),
  ].flat();
}

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
function endWith({ start, end, chord }: ChordSpan): Ending {
  if (chord === null) return NO_ENDING;
  const held = { start, duration: end - start, velocity: LAST_VELOCITY };
  const beat = { start, ticks: end - start, bar: 1, inBar: 0, beatsPerBar: 1, underChord: 0 };
  const only: Beat = { ...beat, left: end - start, chord, next: undefined, opensChorus: false };
  return {
    bass: playBass([only], 'walk', randomFrom(1)).map(({ pitch }) => ({ ...held, pitch })),
    comping: nearestVoicing(chord, []).map((pitch) => ({ ...held, pitch })),
    drums: [DRUMS.crash, DRUMS.kick].map((pitch) => ({ ...held, pitch })),
  };
}
