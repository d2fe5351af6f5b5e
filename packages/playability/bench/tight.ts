import { type Harp, type Sounding, soundings } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import type { EffortModel } from '@reedplate/playability';

// The same shortest path by hand, for single notes: one function, flat loops, typed arrays, nothing
// checked, every table filled and every buffer made once. A ceiling for what a library can reach.

export interface TightResult {
  readonly cost: number;
  readonly path: readonly (readonly Sounding[])[];
}

// biome-ignore-start lint/complexity: written flat on purpose, as the ceiling to measure against
/** Fills the tables for a harp and a model, and gives the search over them. */
export function tightSearch(harp: Harp, { weights, holeRanks }: EffortModel, tick: number) {
  const all = soundings(harp, { level: 'overbends' });
  const grips = all.map((sounding) => [sounding]);
  const size = all.length;
  const t = (points: number) => Math.round(points * 1000);
  const still = new Float64Array(size);
  const bent = new Uint8Array(size);
  const sign = new Int32Array(size);
  const move = new Float64Array((size + 1) * size);
  const need = new Float64Array((size + 1) * size);
  const ofPitch: number[][] = Array.from({ length: 128 }, () => []);
  all.forEach(({ technique, breath, hole, depth, pitch }, s) => {
    ofPitch[pitch]?.push(s);
    bent[s] = technique === 'natural' ? 0 : 1;
    sign[s] = breath === 'draw' ? 1 : -1;
    const rank = (r: readonly number[]) => r[hole - 1] ?? r.at(-1) ?? 0;
    if (technique === 'bend') {
      still[s] =
        t(weights.bend) +
        t(weights.bendDepth) * (depth - 1) +
        Math.round(
          t(weights.bendHole) * rank(breath === 'draw' ? holeRanks.drawBend : holeRanks.blowBend),
        ) +
        (breath === 'blow' ? t(weights.blowBend) : 0);
    } else if (technique !== 'natural') {
      still[s] =
        t(technique === 'overblow' ? weights.overblow : weights.overdraw) +
        Math.round(t(weights.overbendHole) * rank(holeRanks.overbend));
    }
    move[size * size + s] = bent[s] ? t(weights.bendAttack) : 0;
    all.forEach((from, f) => {
      const holes = Math.abs(hole - from.hole);
      const turns = breath !== from.breath;
      const inPlace = !turns && holes === 0;
      const wasBent = from.technique !== 'natural';
      move[f * size + s] =
        t(weights.reach) * holes +
        t(weights.farReach) * Math.max(0, holes - 3) +
        (turns ? t(weights.breathChange) : 0) +
        (bent[s] ? t(inPlace ? weights.bendSlide : weights.bendAttack) : 0) +
        (wasBent && !(inPlace && bent[s]) ? t(weights.bendRelease) : 0) +
        (f === s ? t(weights.repeat) : 0);
      need[f * size + s] =
        Math.round(
          (weights.moveTime * Math.log2(1 + holes) +
            (turns ? weights.turnTime : 0) +
            (bent[s] && !inPlace ? weights.bendTime : 0)) *
            1e6,
        ) / 1e6;
    });
  });
  const hurry = t(weights.hurry);
  const holdRate = t(weights.bendHold);
  const comfort = Math.round(weights.comfort * 10);
  const cap = Math.round(weights.capacity * 10);
  const strainCost = Math.round(weights.airStrain * 100);
  const snatchCost = Math.round(weights.airSnatch * 100);
  const room = 1 << 20;
  const lCost = new Float64Array(room);
  const lAir = new Int32Array(room);
  const lChoice = new Int32Array(room);
  const lBefore = new Int32Array(room);
  const bestCost = new Float64Array(2 * cap + 1).fill(Infinity);
  const bestFrom = new Int32Array(2 * cap + 1);
  const slotOf = new Int32Array(1 << 12);

  return function search({ notes }: Line): TightResult {
    let begin = 0;
    let count = 1;
    lChoice[0] = size;
    lCost[0] = 0;
    lAir[0] = 0;
    let lastStart = 0;
    let lastStep = 0;
    for (let i = 0; i < notes.length; i += 1) {
      const { start, duration, pitch } = notes[i] as (typeof notes)[number];
      const since = (start - lastStart) * tick;
      const held = duration * tick;
      const s0 = Math.round(start * tick * 10);
      const s1 = Math.round((start + duration) * tick * 10);
      const back = Math.round((s0 - lastStep) * weights.recovery);
      const end = count;
      const ways = ofPitch[pitch] as number[];
      for (let w = 0; w < ways.length; w += 1) {
        const c = ways[w] as number;
        const fixed = (still[c] as number) + (bent[c] ? Math.round(holdRate * held) : 0);
        const amount = (sign[c] as number) * (s1 - s0);
        for (let p = begin; p < end; p += 1) {
          const cell = (lChoice[p] as number) * size + c;
          const n = need[cell] as number;
          let step = fixed + (move[cell] as number);
          if (n > since) step += Math.round(hurry * (n / since - 1));
          const before = lAir[p] as number;
          const air = before > back ? before - back : before < -back ? before + back : 0;
          const aim = air + amount;
          const reached = aim > cap ? cap : aim < -cap ? -cap : aim;
          const far = reached < 0 ? -reached : reached;
          if (far > comfort || aim !== reached) {
            const already = aim > 0 === air > 0 ? Math.max(0, Math.abs(air) - comfort) : 0;
            step +=
              Math.max(0, far - comfort - already) * strainCost +
              Math.abs(aim - reached) * snatchCost;
          }
          const total = (lCost[p] as number) + step;
          const slot = reached + cap;
          slotOf[p - begin] = slot;
          if (total < (bestCost[slot] as number)) {
            bestCost[slot] = total;
            bestFrom[slot] = p;
          }
        }
        for (let p = begin; p < end; p += 1) {
          const slot = slotOf[p - begin] as number;
          if (bestFrom[slot] !== p || bestCost[slot] === Infinity) continue;
          lCost[count] = bestCost[slot] as number;
          lAir[count] = slot - cap;
          lChoice[count] = c;
          lBefore[count] = p;
          count += 1;
          bestCost[slot] = Infinity;
        }
      }
      begin = end;
      lastStart = start;
      lastStep = s1;
    }
    let best = begin;
    for (let p = begin + 1; p < count; p += 1)
      if ((lCost[p] as number) < (lCost[best] as number)) best = p;
    const cost = (lCost[best] as number) / 1000;
    const path: Sounding[][] = new Array(notes.length);
    for (let i = notes.length - 1; i >= 0; i -= 1) {
      path[i] = grips[lChoice[best] as number] as Sounding[];
      best = lBefore[best] as number;
    }
    return { cost, path };
  };
}
// biome-ignore-end lint/complexity: written flat on purpose, as the ceiling to measure against
