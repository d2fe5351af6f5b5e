import type { TimedNote } from '@reedplate/line';
import { itemAt, type Random } from '@reedplate/pitch';
import type { Beat } from './beats.js';
import type { DrumName, Groove } from './groove.js';
import { partTicks, readPattern, type Stroke } from './pattern.js';

/** Keys of the General MIDI drum kit: General MIDI 1, percussion key map (from memory). */
export const DRUMS: Readonly<Record<DrumName | 'click', number>> = Object.freeze({
  kick: 36,
  rim: 37,
  click: 37,
  snare: 38,
  hat: 42,
  pedalHat: 44,
  tom: 45,
  crash: 49,
  ride: 51,
});

/** Loud enough to begin a chorus. */
const CRASH_VELOCITY = 100;
const BARS_OF_PHRASE = 4;
const BEATS_OF_FILL = 2;

/**
 * The drums of a groove: its patterns beat by beat, a crash where a chorus begins, a fill over the last two
 * beats of every fourth bar, drawn from those of the groove. Silent in a break.
 */
export function drum(beats: readonly Beat[], groove: Groove, random: Random): readonly TimedNote[] {
  const patterns = layersOf(groove.drums, groove.parts);
  const fills = groove.fills.map((fill) => layersOf(fill, groove.parts));
  let fill: readonly Layer[] = [];
  return beats.flatMap((beat) => {
    if (beat.chord === null) return [];
    const at = fillBeat(beat);
    if (at === 0) fill = fills[Math.floor(random() * fills.length)] ?? [];
    const isFilled = at !== undefined && fill.length > 0;
    const notes = isFilled ? strike(fill, at, beat) : strike(patterns, beat.inBar, beat);
    return beat.opensChorus ? [crashOn(beat), ...notes] : notes;
  });
}

interface Layer {
  readonly pitch: number;
  readonly parts: number;
  readonly beats: readonly (readonly Stroke[])[];
}

function layersOf(drums: Groove['drums'], parts: number): readonly Layer[] {
  return Object.entries(drums).map(([name, pattern]) => ({
    pitch: DRUMS[name as DrumName],
    parts,
    beats: readPattern(pattern, parts),
  }));
}

/** Which beat of a fill a beat is, from 0; `undefined` where none is played. */
function fillBeat({ bar, inBar, beatsPerBar }: Beat): number | undefined {
  const isPhraseEnd = bar % BARS_OF_PHRASE === 0 && bar > 0;
  const at = inBar - (beatsPerBar - BEATS_OF_FILL);
  return isPhraseEnd && beatsPerBar > BEATS_OF_FILL && at >= 0 ? at : undefined;
}

function strike(layers: readonly Layer[], at: number, { start, ticks }: Beat): TimedNote[] {
  return layers.flatMap(({ pitch, parts, beats }) => {
    const places = partTicks(parts, ticks);
    const strokes = itemAt(beats, at % beats.length);
    return strokes.map(({ part, velocity }) => ({
      start: start + itemAt(places, part),
      duration: Math.floor(ticks / parts / 2),
      pitch,
      velocity,
    }));
  });
}

function crashOn({ start, ticks }: Beat): TimedNote {
  return { start, duration: ticks, pitch: DRUMS.crash, velocity: CRASH_VELOCITY };
}

/** A click on every beat of the bars before a chart, the first of each bar accented. */
export function countOff(bars: number, barTicks: number, beatTicks: number): readonly TimedNote[] {
  return Array.from({ length: (bars * barTicks) / beatTicks }, (_, at) => ({
    start: at * beatTicks,
    duration: beatTicks / 2,
    pitch: DRUMS.click,
    velocity: (at * beatTicks) % barTicks === 0 ? 104 : 82,
  }));
}
