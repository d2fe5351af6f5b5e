import assert from 'node:assert/strict';
import { type Harp, makeHarp, soundings, soundingsOfPitch } from '@reedplate/layout';
import { Bench } from 'tinybench';
import { ASK_EVERY_TIME, type NamedHarp, namedHarp, rememberAnswers } from './tonal-harp.js';

// Building the twelve harps of the standard set, with all soundings and the lookup by pitch of
// each, against the same work on note names with tonal. One task builds all twelve.

const KEYS = [
  ['C', '1P'],
  ['Db', '2m'],
  ['D', '2M'],
  ['Eb', '3m'],
  ['E', '3M'],
  ['F', '4P'],
  ['F#', '4A'],
  ['G', '-4P'],
  ['Ab', '-3M'],
  ['A', '-3m'],
  ['Bb', '-2M'],
  ['B', '-2m'],
] as const;

const HIGHEST = 127;
const ALL = { level: 'overbends' } as const;

function assertAlike(harp: Harp, named: NamedHarp): void {
  const plain = soundings(harp, ALL).map(({ pitch, ...rest }) => rest);
  assert.deepEqual(
    plain,
    named.all.map(({ note, ...rest }) => rest),
  );
  for (let pitch = 0; pitch <= HIGHEST; pitch += 1) {
    const ours = soundingsOfPitch(harp, pitch, ALL).map(({ pitch: _, ...rest }) => rest);
    const theirs = (named.ofPitch.get(pitch) ?? []).map(({ note, ...rest }) => rest);
    assert.deepEqual(ours, theirs);
  }
}

for (const [key, interval] of KEYS) assertAlike(makeHarp(key), namedHarp(interval, ASK_EVERY_TIME));

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const remembered = rememberAnswers();
const HARPS = KEYS.map(([key]) => makeHarp(key));
const NAMED = KEYS.map(([, interval]) => namedHarp(interval, ASK_EVERY_TIME));

const TONAL_ASKED = 'tonal, every name asked';
const TONAL_REMEMBERED = 'tonal, every answer about a name remembered';
const MADE = 'reedplate, a harp and its lookup built anew';
const TONAL_LOOKUP = 'tonal, lookup by name';
const LOOKUP = 'reedplate, lookup by pitch';

const bench = new Bench({ time: 1500, warmupTime: 300 });

bench
  .add(TONAL_ASKED, () => {
    for (const [, interval] of KEYS) seen += namedHarp(interval, ASK_EVERY_TIME).ofPitch.size;
  })
  .add(TONAL_REMEMBERED, () => {
    for (const [, interval] of KEYS) seen += namedHarp(interval, remembered).ofPitch.size;
  })
  .add(MADE, () => {
    for (const [key] of KEYS) seen += soundingsOfPitch(makeHarp(key), 67, ALL).length;
  })
  .add(TONAL_LOOKUP, () => {
    for (const named of NAMED) seen += named.ofPitch.get(remembered.midi('G4'))?.length ?? 0;
  })
  .add(LOOKUP, () => {
    for (const harp of HARPS) seen += soundingsOfPitch(harp, 67, ALL).length;
  });

await bench.run();

const rate = (name: string): number => {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'throughput' in result ? result.throughput.mean : 0;
};

for (const { name } of bench.tasks) {
  const perSecond = Math.round(rate(name) * KEYS.length).toLocaleString('en');
  console.log(`${name.padEnd(46)} ${perSecond.padStart(12)} a second`);
}
for (const [ours, theirs] of [
  [MADE, TONAL_ASKED],
  [MADE, TONAL_REMEMBERED],
  [LOOKUP, TONAL_LOOKUP],
] as const) {
  console.log(`${ours}: ${(rate(ours) / rate(theirs)).toFixed(1)} times ${theirs}`);
}
console.log(`(${seen} results seen)`);
