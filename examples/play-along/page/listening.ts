import type { NoteInSeconds } from '@reedplate/line';
import type { Place } from '../src/place.js';
import type { Session } from '../src/session.js';
import type { SetUp } from '../src/set-up.js';
import { LEAD } from '../src/take.js';
import type { Band } from './band.js';
import { measureLatency } from './calibrate.js';
import { type Ears, openMicrophone, openMidi } from './ears.js';

/** Milliseconds after a chorus in which the last of its sound comes in. */
const SETTLE = 400;
/** Seconds after a chorus that still belong to it. */
const TAIL = 0.1;

/** Hears the player chorus by chorus. */
export interface Listening {
  readonly open: (setUp: SetUp, band: Band) => Promise<void>;
  readonly close: () => void;
  readonly isMicrophone: () => boolean;
  /** Judges each time through as it ends. */
  readonly follow: (place: Place, band: Band) => void;
  /** Measures how late the microphone is, in milliseconds. */
  readonly calibrate: (setUp: SetUp, band: Band) => Promise<number>;
}

/** Hears with what is chosen, and gives the notes of each time through to be judged. */
export function makeListening(
  sessionNow: () => Session,
  judge: (notes: readonly NoteInSeconds[]) => void,
): Listening {
  let ears: Ears | undefined;
  let kind: SetUp['ears'] = 'none';
  let latency = 0;
  let reached = 0;
  let began = 0;
  const open = async (setUp: SetUp, band: Band): Promise<void> => {
    latency = setUp.latency / 1000;
    reached = 0;
    if (setUp.ears === kind) return;
    if (setUp.ears === 'microphone') {
      ears = await openMicrophone(band.context, () => {
        const { harp, level } = sessionNow();
        return { harp, level };
      });
    }
    if (setUp.ears === 'midi') ears = await openMidi(band.context);
    kind = setUp.ears;
  };
  const endOfPass = async (pass: number, session: Session): Promise<void> => {
    const from = began + session.countIn + (pass - 1) * session.passSeconds - LEAD + latency;
    await new Promise((resolve) => setTimeout(resolve, SETTLE + latency * 1000));
    const notes = await ears?.notesBetween(from, from + LEAD + session.passSeconds + TAIL);
    if (notes !== undefined) judge(notes);
  };
  return {
    open,
    isMicrophone: () => kind === 'microphone',
    close: () => {
      ears?.close();
      ears = undefined;
      kind = 'none';
    },
    follow: (place, band) => {
      if (band.began() !== began) {
        began = band.began();
        reached = 0;
      }
      const session = sessionNow();
      const now = place.at === 'bar' ? place.pass : place.at === 'end' ? session.passes + 1 : 0;
      if (ears === undefined || now === reached) return;
      if (reached > 0) endOfPass(reached, session);
      reached = now;
    },
    calibrate: async (setUp, band) => {
      await open({ ...setUp, ears: 'microphone' }, band);
      const late = ears && (await measureLatency(band, ears));
      if (late !== undefined) return late;
      throw new Error(
        'The clicks were not heard: turn the speaker up a little, or clap with them.',
      );
    },
  };
}
