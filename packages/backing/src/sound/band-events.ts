import { type Chart, chartEnd } from '@reedplate/form';
import { applySwing, type PiecePart, type Sheet } from '@reedplate/interchange';
import {
  type Line,
  makeLine,
  notesInSeconds,
  parseMetre,
  secondsAt,
  tickAt,
} from '@reedplate/line';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import { DRUMS } from '../drums.js';
import { DRUM_NAMES, type DrumName } from '../groove.js';
import { requireBacking, USUAL_TEMPO } from '../require-backing.js';
import { DRUM_LEVELS } from './drum-sounds.js';
import { TONE_SOUNDS, type ToneName, toneOfProgram } from './tone-sounds.js';

/** Something that a band sounds, in seconds. */
export interface BandEvent {
  /** Seconds from the beginning of the sheet. */
  readonly start: number;
  /** Seconds until it is let go; a drum rings as long as it does. */
  readonly duration: number;
  /** Name of the part, as the sheet has it; `Click` for a click that was asked for. */
  readonly part: string;
  /** A drum, or an instrument with pitches. */
  readonly sound: DrumName | ToneName;
  /** MIDI number. */
  readonly pitch: number;
  /** Factor to its samples, from 0 to 1: its velocity, and how loud its sound is in the band. */
  readonly gain: number;
}

/** How the parts of a sheet become sound. */
export interface BandEventOptions {
  /** Whether every beat has a click. Default `false`: the count-in alone. */
  readonly click?: boolean;
}

const EVENT_OPTIONS: OptionNames<BandEventOptions> = { click: true };

/**
 * What a band sounds and when, in order of time: the parts of a backing in the feel of its chart, as a player
 * of sound schedules them. `eventSound` gives the samples of each.
 *
 * @throws ReedplateError `CHART_INVALID` for a sheet without a chart, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { bandEvents, makeBacking } from '@reedplate/backing';
 * import { makeChart } from '@reedplate/form';
 *
 * const events = bandEvents(makeBacking(makeChart('basic', 'G', { tempo: 120 })));
 * events.slice(0, 4).map(({ start, sound }) => [start, sound]); // => [[0, 'rim'], [0.5, 'rim'], [1, 'rim'], [1.5, 'rim']]
 * bandEvents({ chart: null } as never); // throws CHART_INVALID
 * ```
 */
export function bandEvents(backing: Sheet, options: BandEventOptions = {}): readonly BandEvent[] {
  const { click = false } = requireOptions(options, EVENT_OPTIONS, 'bandEvents');
  const { line, parts, chart } = requireBacking(backing);
  const tempo = chart.tempo ?? line.tempo ?? USUAL_TEMPO;
  const isTune = line.notes.length > 0 && !parts.some((part) => part.line === line);
  const all = isTune ? [{ name: 'Tune', program: TUNE, line }, ...parts] : parts;
  const events = inOrder(all.flatMap((part) => partEvents(part, chart, tempo)));
  const clicks = click ? clicksOver(withTempo(line, tempo), chart, events) : [];
  return Object.freeze(inOrder([...events, ...clicks]));
}

function inOrder(events: readonly BandEvent[]): readonly BandEvent[] {
  return [...events].sort((a, b) => a.start - b.start);
}

/** The harmonica in General MIDI, counted from 1. */
const TUNE = 23;

function partEvents(part: PiecePart, { feel }: Chart, tempo: number): readonly BandEvent[] {
  const { name, percussion, program, swing } = part;
  const tone = percussion === true ? undefined : toneOfProgram(program);
  const ratio = swing === undefined ? {} : { ratio: swing };
  const swung = applySwing(withTempo(part.line, tempo), { feel, ...ratio });
  return notesInSeconds(swung).flatMap(({ start, duration, pitch, velocity = USUAL_VELOCITY }) => {
    const sound = tone ?? DRUM_OF_KEY.get(pitch);
    // The kit has no other drums; a file of someone else may ask for them.
    if (sound === undefined) return [];
    const gain = levelOf(sound) * loudnessOf(velocity);
    return [Object.freeze({ start, duration, part: name, sound, pitch, gain })];
  });
}

const USUAL_VELOCITY = 96;

/** Power goes by the square of what a player gives. */
const loudnessOf = (velocity: number): number => (velocity / 127) * (velocity / 127);

const DRUM_OF_KEY: ReadonlyMap<number, DrumName> = new Map(
  DRUM_NAMES.map((name) => [DRUMS[name], name]),
);

const LEVELS: ReadonlyMap<string, number> = new Map([
  ...Object.entries(DRUM_LEVELS),
  ...Object.entries(TONE_SOUNDS).map(([name, { level }]) => [name, level] as const),
]);

const levelOf = (sound: string): number => LEVELS.get(sound) ?? 0;

function withTempo(line: Line, tempo: number): Line {
  if (line.tempo !== undefined) return line;
  const { notes, ...head } = line;
  return makeLine(notes, { ...head, tempo });
}

/** Loud enough to be heard through a band, the first of a bar a little more. */
const CLICK_VELOCITY = 84;
const FIRST_VELOCITY = 112;
const CLICK_SECONDS = 0.05;

/** A click on each beat, but for those that are counted in. */
function clicksOver(line: Line, chart: Chart, events: readonly BandEvent[]): readonly BandEvent[] {
  const { beatTicks, barTicks } = parseMetre(chart.metre);
  const barOne = tickAt({ bar: 1, beat: 1 }, line);
  const first = barOne % beatTicks;
  const end = barOne + chartEnd(chart) - chart.pickup;
  const counted = new Set(countedIn(events));
  return Array.from({ length: Math.ceil((end - first) / beatTicks) }, (_, at) => {
    const tick = first + at * beatTicks;
    const start = secondsAt(tick, line);
    const velocity = (tick - barOne) % barTicks === 0 ? FIRST_VELOCITY : CLICK_VELOCITY;
    const gain = levelOf('rim') * loudnessOf(velocity);
    const named = { part: 'Click', sound: 'rim', pitch: DRUMS.click } as const;
    return Object.freeze({ start, duration: CLICK_SECONDS, ...named, gain });
  }).filter(({ start }) => !counted.has(start.toFixed(3)));
}

/** When the clicks before the band begins are heard. */
function countedIn(events: readonly BandEvent[]): readonly string[] {
  const begin = events.find(({ sound }) => sound !== 'rim')?.start ?? 0;
  return events.filter(({ start }) => start < begin).map(({ start }) => start.toFixed(3));
}
