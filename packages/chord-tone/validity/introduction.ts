import type { Half } from './halves.js';

/** What the page is, its data, its split and its contrasts. */
export function introduction(halves: readonly Half[]): string {
  const all = halves.reduce((sum, { solos }) => sum + solos.length, 0);
  const split = halves.map(({ name, solos }) => `${solos.length} "${name}"`).join(', ');
  return `# How valid the score is

A score of how well a line follows the changes should rank the true chart of a solo above wrong ones, and
agree with what a teacher would say. This page shows how often it does. All of it is written by a script;
anyone with the data can run it:

\`\`\`sh
npx tsx --tsconfig tsconfig.json packages/chord-tone/validity/report.ts SOLOS.ndjson > docs/scoring-validity.md
\`\`\`

**Data.** ${all} improvised solos over twelve-bar blues, with their chords, from the Weimar Jazz Database
(The Jazzomat Research Project, Hochschule für Musik Franz Liszt Weimar; Pfleiderer, Frieler et al.,
2017), used under the Open Database License 1.0. The data are not part of this repository. They are
jazz players on other instruments: chromatic notes are many and bars often hold two chords. They
say nothing about bends.

**Split.** Solos whose number leaves 1 when divided by 4 chose the rules of notes, weights and calibration
("chosen on"): here ${split}. Made takes over the eight charts of another battery had a say too, by
search, with the solos of that half alone; the figures were then rounded. The other solos are no unseen data:
in an earlier search their results stood beside at every step, about twenty-five times; after a second search they
were looked at twice. The rule of two passing notes, the share of blind playing that grows with what is played and
the figures of now came after that, from the solos chosen on alone; the others were looked at twice more, once with
the other battery and once for this page. The battery below was made before all that, and its takes chose nothing.

**Contrasts.** The chart, key and all, moved up by each of eleven intervals; the chart late or early by whole
bars, its end going round to its beginning; its bars shuffled; the solo's pitches shuffled among its
notes (seeded). The true pairing wins when it scores higher; a tie is no win. In brackets: the 95 %
percentile bootstrap interval over solos (2000 resamples, seeded). A contrast won by all has an interval of
no width although the next solo may lose it.

**What it is compared with.** "Plain share" is the share of chord tones by duration, counted 2 on the
first beat, 1.5 on the third and 1 elsewhere.`;
}
