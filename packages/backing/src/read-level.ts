import { type Line, makeLine } from '@reedplate/line';
import { requirePositive } from '@reedplate/pitch';

const LOUDEST = 127;
const MOST = 2;

/**
 * A line as loud as asked: each velocity by a factor, within MIDI.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 */
export function readLevel(line: Line, level: number): Line {
  requirePositive(level, { max: MOST, what: 'a level of a part' });
  if (level === 1) return line;
  const { notes, ...head } = line;
  const louder = notes.map(({ velocity = LOUDEST, ...note }) => ({
    ...note,
    velocity: Math.max(1, Math.min(LOUDEST, Math.round(velocity * level))),
  }));
  return makeLine(louder, head);
}
