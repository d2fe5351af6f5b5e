import type { Target } from '@reedplate/chord-tone';
import type { Harp, Sounding } from '@reedplate/layout';
import { type Chord, itemAt, toPitchClass } from '@reedplate/pitch';
import { cheapestPath } from './connect.js';
import { techniqueCost } from './path-cost.js';
import { type Figure, targetsWithin, type Voicing, type VoicingLimits } from './voicing.js';

/**
 * Ways to play the tones of a chord one after another, a tone a beat: upwards in the chord's order
 * from its root, each the next above the one before, and where the chord lasts longer, down again and
 * so on. Tones that cannot be had within the limits are passed over; without a root it begins on any
 * tone. Where not every tone lies above the one before, the longest figures there are.
 *
 * In order of pitch; one figure from each beginning, with the easiest soundings and the fewest
 * breath changes.
 *
 * @param beats how many notes, at least 1
 */
export function arpeggioFigures(
  chord: Chord,
  harp: Harp,
  limits: VoicingLimits,
  beats: number,
): readonly Figure[] {
  const byPitch = groupByPitch(targetsWithin(chord, harp, limits));
  const had = new Set([...byPitch.keys()].map(toPitchClass));
  const order = chord.tones.map(({ pitchClass }) => pitchClass).filter((tone) => had.has(tone));
  const most = Math.min(order.length, beats);
  const root = chord.tones[0]?.pitchClass;
  const roots = [...byPitch.keys()].filter((pitch) => toPitchClass(pitch) === root);
  const from = roots.length > 0 ? roots : [...byPitch.keys()];
  const risings = from.map((pitch) => riseFrom(pitch, order, byPitch, most));
  const longest = Math.max(0, ...risings.map(({ length }) => length));
  return risings
    .filter(({ length }) => length === longest)
    .map((rising) => upAndDown(easiestWay(rising), beats));
}

type Way = readonly Target[];

function groupByPitch(targets: Way): ReadonlyMap<number, Way> {
  const byPitch = new Map<number, Way>();
  for (const target of [...targets].sort((a, b) => a.sounding.pitch - b.sounding.pitch)) {
    const { pitch } = target.sounding;
    byPitch.set(pitch, [...(byPitch.get(pitch) ?? []), target]);
  }
  return byPitch;
}

/** The ways to sound a pitch and the tones above it, each once; one that the harp lacks there is passed over. */
function riseFrom(
  from: number,
  order: readonly number[],
  byPitch: ReadonlyMap<number, Way>,
  most: number,
): readonly Way[] {
  const rising: Way[] = [];
  const first = order.indexOf(toPitchClass(from));
  let pitch = from;
  for (let step = 1; step <= order.length && rising.length < most; step += 1) {
    const ways = byPitch.get(pitch);
    if (ways !== undefined) rising.push(ways);
    pitch += toPitchClass(itemAt(order, (first + step) % order.length) - pitch);
  }
  return rising;
}

/** Technique outweighs a breath change: a figure has fewer of them than this. */
const TECHNIQUE = 100;

function easiestWay(rising: readonly Way[]): readonly Target[] {
  const costOf = ({ sounding }: Target): number => TECHNIQUE * techniqueCost(sounding);
  return cheapestPath(
    rising,
    costOf,
    (from, to) => costOf(to) + Number(changesBreath(from.sounding, to.sounding)),
  );
}

function changesBreath(from: Sounding, to: Sounding): boolean {
  return from.breath !== to.breath;
}

/** A rising figure for so many beats: 1 3 5, then 3 1 3 5 and so on. */
function upAndDown(rising: readonly Target[], beats: number): Figure {
  const top = rising.length - 1;
  return Array.from({ length: beats }, (_, beat): Voicing => {
    const place = top === 0 ? 0 : beat % (2 * top);
    const { sounding, degree } = rising[place <= top ? place : 2 * top - place] as Target;
    return { soundings: [sounding], degrees: [degree] };
  });
}
