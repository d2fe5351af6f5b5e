import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import {
  BREATHS,
  type Breath,
  type Harp,
  makeHarp,
  missingPitches,
  nameOnHarp,
  soundings,
  soundingsAt,
  TECHNIQUE_LEVELS,
  TUNINGS,
} from './index.js';

// What the rule gives for every tuning of the catalogue, as text: a change of a row or of the rule
// shows. `npx vitest run packages/layout -u` writes it anew.
const GOLDEN = fileURLToPath(new URL('../test/golden/catalogue.txt', import.meta.url));

function describeHarp(harp: Harp): string {
  const name = (pitch: number): string => nameOnHarp(harp, pitch);
  const soundsOn = (hole: number, breath: Breath): string =>
    soundingsAt(harp, hole, breath, { level: 'overbends' })
      .map(({ technique, pitch }) => (technique.startsWith('over') ? '+' : '') + name(pitch))
      .join(' ');
  return [
    `${harp.tuning}: ${harp.key}, 1st position ${harp.firstPosition}`,
    ...harp.holes.map(({ hole }) => {
      const [blow, draw] = BREATHS.map((breath) => `${breath} ${soundsOn(hole, breath)}`);
      return `${hole}: ${blow} | ${draw}`;
    }),
    ...TECHNIQUE_LEVELS.map((level) => {
      const missing = missingPitches(harp, { level }).map(name).join(' ') || 'nothing';
      return `${level}: ${soundings(harp, { level }).length} soundings, missing ${missing}`;
    }),
  ].join('\n');
}

it('the rule gives for every tuning of the catalogue what the golden file holds', async () => {
  const harps = TUNINGS.map((tuning) => makeHarp(tuning.label, { tuning }));
  await expect(`${harps.map(describeHarp).join('\n\n')}\n`).toMatchFileSnapshot(GOLDEN);
});
