import { scoreLine } from '@reedplate/chord-tone';
import { contrasts } from './contrasts.js';
import type { Half } from './halves.js';
import { mean } from './statistics.js';
import { winsAgainst } from './study.js';

/** What cannot be told apart, with the figures of this run. */
export function limits(halves: readonly Half[]): string {
  const worst = contrasts(1)
    .filter(({ times, name }) => times === 1 && !/shuffled/u.test(name))
    .map((contrast) => ({
      name: contrast.name,
      total: mean(halves.flatMap(({ solos }) => winsAgainst(contrast, solos).get('total') ?? [])),
    }))
    .sort((one, other) => one.total - other.total)
    .slice(0, 3);
  const reported = halves.at(-1);
  const sure = mean(
    (reported?.solos ?? []).map(({ line, chart }) => scoreLine(line, chart).confidence),
  );
  return `## What limits it

- Lost most often, over all solos here: ${worst.map(({ name, total }) => `${name} (won ${total.toFixed(2)})`).join(', ')}.
- Shuffled pitches are told from the true ones the better the more notes there are. By the confidence that is
  stated, solos as long as those ${reported?.name} would win ${sure.toFixed(3)} of them, and the short ones among them less.
- A note resolves by a step, and a step is no seventh. Where single notes are moved by an octave, chord fit is the
  same if no note steps to them or from them, and the total within the six points of the battery. Were a step
  counted in any octave, it would be the same everywhere; but then shuffled pitches would step to chord tones
  much as played ones do, and one chorus would tell less.
- A chart late by four bars keeps the chord of about half its bars: the tonic fills most of a blues.
- A perfect line with two fifths of its notes moved has the chord fit of a good solo. A total of chord fit and
  following alone cannot put the one below and the other above the same line.
- A walk in the scale happens to follow at times: over one chart of twelve bars luck has a share, and the
  confidence that the score states says how much.
- Solos at fast tempi step through chromatic notes that lead on after two beats or more; what does not
  resolve within one counts nothing, so that a few of them lie where random notes do.
- A solo played behind the beat fits nearly as well a beat early: being late is told by a teacher from the
  band, and here from the changes alone.`;
}
