import { makeHarp, TUNINGS } from '@reedplate/layout';
import { type Line, parseMetre } from '@reedplate/line';
import { noteNameWithOctave } from '@reedplate/pitch';
import {
  bestPath,
  effortModelById,
  everyHarp,
  fitHarps as rankHarps,
} from '@reedplate/playability';
import { Bench } from 'tinybench';
import { melodyOf } from './lines.js';
import { tightSearch } from './tight.js';
import { namedSearch } from './tonal-path.js';

// The easiest path of a line of 200 notes against the same by hand and on note names; the fit of all
// harps; and how both grow with the line.

const harp = makeHarp('C');
const model = effortModelById('advanced');
const line = melodyOf(200);
const tick = 60 / ((line.tempo ?? 100) * parseMetre(line.metre).beatTicks);
const tight = tightSearch(harp, model, tick);
const named = namedSearch(harp, model, tick);
const namedLine = line.notes.map(({ pitch, ...time }) => ({
  ...time,
  name: noteNameWithOctave(pitch),
}));
const harps = everyHarp({ tunings: TUNINGS });

requireEqual(line);

/** Nothing is measured that does not give the same. */
function requireEqual(checked: Line): void {
  const ours = bestPath(checked, harp, { model, level: 'overbends' });
  const byHand = tight(checked);
  const byName = named(namedLine);
  if (!ours.playable) throw new Error('the line must be playable');
  const same = JSON.stringify(ours.soundings) === JSON.stringify(byHand.path);
  if (!same || ours.effort !== byHand.cost) throw new Error('by hand differs');
  if (ours.effort !== byName.cost) throw new Error('on note names differs');
}

const bench = new Bench({ time: 1500, warmupTime: 500 });
bench
  .add('by hand', () => tight(line))
  .add('bestPath', () => bestPath(line, harp, { model, level: 'overbends' }))
  .add('on note names', () => named(namedLine))
  .add('fit', () => rankHarps(line, harps, { model: 'intermediate', level: 'overbends' }))
  .add('fit, new harps', () =>
    rankHarps(line, everyHarp({ tunings: TUNINGS }), { model: 'intermediate', level: 'overbends' }),
  );
const lengths = [200, 800, 3200, 12_800];
for (const length of lengths) {
  const long = melodyOf(length);
  bench.add(`bestPath of ${length}`, () => bestPath(long, harp, { model, level: 'overbends' }));
}
await bench.run();

const micros = (name: string): number => {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'latency' in result ? result.latency.p50 * 1000 : Number.NaN;
};
for (const { name } of bench.tasks)
  console.log(`${name.padEnd(20)} ${micros(name).toFixed(1).padStart(10)} µs`);
console.log(`bestPath : by hand = ${(micros('bestPath') / micros('by hand')).toFixed(2)}`);
console.log(
  `on note names : bestPath = ${(micros('on note names') / micros('bestPath')).toFixed(2)}`,
);
console.log(`fit of ${harps.length} harps: ${(micros('fit') / 1000).toFixed(1)} ms`);
for (const length of lengths) {
  console.log(
    `${length} notes: ${((micros(`bestPath of ${length}`) / length) * 1000).toFixed(0)} ns a note`,
  );
}
const { considered, searched } = rankHarps(line, harps, {
  model: 'intermediate',
  level: 'overbends',
});
console.log(`fit searched ${searched} of ${considered}`);
