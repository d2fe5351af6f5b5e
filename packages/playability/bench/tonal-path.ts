import { type Harp, type Sounding, soundings } from '@reedplate/layout';
import { noteNameWithOctave } from '@reedplate/pitch';
import type { EffortModel } from '@reedplate/playability';
import { Note } from 'tonal';

// The same shortest path on note names with tonal, as a careful programmer writes it: every name is
// parsed once and its answers kept, costs of a pair of soundings are worked out once and kept.

export interface NamedNote {
  readonly name: string;
  readonly start: number;
  readonly duration: number;
}

interface NamedState {
  readonly cost: number;
  readonly air: number;
  readonly sounding: Sounding | undefined;
  readonly before: NamedState | undefined;
}

// biome-ignore-start lint/complexity: one closure over its caches, as a careful script has it
export function namedSearch(harp: Harp, { weights, holeRanks }: EffortModel, tick: number) {
  const t = (points: number) => Math.round(points * 1000);
  const midis = new Map<string, number | null>();
  const midiOf = (name: string): number | null => {
    const known = midis.get(name);
    if (known !== undefined) return known;
    const found = Note.midi(name);
    midis.set(name, found);
    return found;
  };
  const byMidi = new Map<number, Sounding[]>();
  for (const sounding of soundings(harp, { level: 'overbends' })) {
    const midi = midiOf(noteNameWithOctave(sounding.pitch)) ?? 0;
    byMidi.set(midi, [...(byMidi.get(midi) ?? []), sounding]);
  }
  const rank = (ranks: readonly number[], hole: number) => ranks[hole - 1] ?? ranks.at(-1) ?? 0;
  const stillCosts = new Map<Sounding, number>();
  const stillOf = (sounding: Sounding): number => {
    const known = stillCosts.get(sounding);
    if (known !== undefined) return known;
    const { technique, breath, hole, depth } = sounding;
    let cost = 0;
    if (technique === 'bend') {
      cost = t(weights.bend) + t(weights.bendDepth) * (depth - 1);
      cost += Math.round(
        t(weights.bendHole) *
          rank(breath === 'draw' ? holeRanks.drawBend : holeRanks.blowBend, hole),
      );
      if (breath === 'blow') cost += t(weights.blowBend);
    } else if (technique !== 'natural') {
      cost = t(technique === 'overblow' ? weights.overblow : weights.overdraw);
      cost += Math.round(t(weights.overbendHole) * rank(holeRanks.overbend, hole));
    }
    stillCosts.set(sounding, cost);
    return cost;
  };
  const pairs = new Map<Sounding | undefined, Map<Sounding, { cost: number; need: number }>>();
  const pairOf = (from: Sounding | undefined, to: Sounding) => {
    const known = pairs.get(from)?.get(to);
    if (known !== undefined) return known;
    const pair = makePair(from, to);
    const row = pairs.get(from) ?? new Map<Sounding, { cost: number; need: number }>();
    pairs.set(from, row.set(to, pair));
    return pair;
  };
  const makePair = (from: Sounding | undefined, to: Sounding) => {
    const isBent = to.technique !== 'natural';
    if (from === undefined) return { cost: isBent ? t(weights.bendAttack) : 0, need: 0 };
    const holes = Math.abs(to.hole - from.hole);
    const turns = to.breath !== from.breath;
    const inPlace = !turns && holes === 0;
    const cost =
      t(weights.reach) * holes +
      t(weights.farReach) * Math.max(0, holes - 3) +
      (turns ? t(weights.breathChange) : 0) +
      (isBent ? t(inPlace ? weights.bendSlide : weights.bendAttack) : 0) +
      (from.technique !== 'natural' && !(inPlace && isBent) ? t(weights.bendRelease) : 0) +
      (from === to ? t(weights.repeat) : 0);
    const seconds =
      weights.moveTime * Math.log2(1 + holes) +
      (turns ? weights.turnTime : 0) +
      (isBent && !inPlace ? weights.bendTime : 0);
    return { cost, need: Math.round(seconds * 1e6) / 1e6 };
  };
  const comfort = Math.round(weights.comfort * 10);
  const cap = Math.round(weights.capacity * 10);
  const past = (air: number) => Math.max(0, Math.abs(air) - comfort);

  return function search(notes: readonly NamedNote[]): { cost: number; path: Sounding[] } {
    let states: NamedState[] = [{ cost: 0, air: 0, sounding: undefined, before: undefined }];
    let lastStart = 0;
    let lastStep = 0;
    for (const { name, start, duration } of notes) {
      const since = (start - lastStart) * tick;
      const first = Math.round(start * tick * 10);
      const last = Math.round((start + duration) * tick * 10);
      const back = Math.round((first - lastStep) * weights.recovery);
      const next: NamedState[] = [];
      for (const sounding of byMidi.get(midiOf(name) ?? -1) ?? []) {
        const hold =
          sounding.technique === 'natural' ? 0 : Math.round(t(weights.bendHold) * duration * tick);
        const arrived = new Map<number, NamedState>();
        for (const before of states) {
          const { cost, need } = pairOf(before.sounding, sounding);
          const air = Math.sign(before.air) * Math.max(0, Math.abs(before.air) - back);
          const aim = air + (sounding.breath === 'draw' ? last - first : first - last);
          const reached = Math.max(-cap, Math.min(cap, aim));
          const strain = Math.max(0, past(reached) - (aim > 0 === air > 0 ? past(air) : 0));
          const total =
            before.cost +
            stillOf(sounding) +
            hold +
            cost +
            (need > since ? Math.round(t(weights.hurry) * (need / since - 1)) : 0) +
            strain * Math.round(weights.airStrain * 100) +
            Math.abs(aim - reached) * Math.round(weights.airSnatch * 100);
          const known = arrived.get(reached);
          if (known === undefined || total < known.cost) {
            arrived.set(reached, { cost: total, air: reached, sounding, before });
          }
        }
        next.push(...arrived.values());
      }
      states = next;
      lastStart = start;
      lastStep = last;
    }
    let best = states[0] as NamedState;
    for (const state of states) if (state.cost < best.cost) best = state;
    const path: Sounding[] = [];
    for (let at = best; at.before !== undefined; at = at.before) path.push(at.sounding as Sounding);
    return { cost: best.cost / 1000, path: path.reverse() };
  };
}
// biome-ignore-end lint/complexity: one closure over its caches, as a careful script has it
