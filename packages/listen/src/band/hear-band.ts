import { deepFreeze, itemAt, parseKey, ReedplateError, requireOptions } from '@reedplate/pitch';
import { requireSound, type Sound } from '../sound.js';
import {
  type Answer,
  answerOf,
  BAND_OPTIONS,
  type BandOptions,
  settingOf,
} from './band-reading.js';
import { chanceOf } from './confidence.js';
import { textOf } from './form/played-bars.js';
import type { HeardBand, HeardBar } from './heard-band.js';
import { readSound } from './read-sound.js';

/** Ten minutes: what is longer is no tune of a band. */
const LONGEST = 600;

/** Shorter than this, no bar is told from another. */
const SHORTEST = 3;

/**
 * What a band plays in a recording: its tempo and beats, where bars begin, how it is tuned, its key, the chord of
 * each bar, and which form of the catalogue that is, with what differs, or that none fits. How sure each part is
 * stands beside it.
 *
 * A band that is tuned half a semitone away from 440 hertz is heard in one of two keys, as anyone would.
 *
 * @throws ReedplateError `SOUND_INVALID` for what is no sound, for silence, for less than 3 seconds or more than
 * 10 minutes; `KEY_UNKNOWN`, `FORM_UNKNOWN`, `FORM_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { hearBand } from '@reedplate/listen';
 *
 * hearBand({ sampleRate: 44_100, samples: new Float32Array(441_000) }); // throws SOUND_INVALID
 * ```
 */
export function hearBand(sound: Sound, options: BandOptions = {}): HeardBand {
  const { table, home } = settingOf(requireOptions(options, BAND_OPTIONS, 'hearBand'));
  const { sampleRate, samples } = requireSound(sound);
  const seconds = samples.length / sampleRate;
  if (!(seconds >= SHORTEST && seconds <= LONGEST)) {
    throw unheard(seconds, `a recording of ${SHORTEST} to ${LONGEST} seconds`);
  }
  const heard = readSound(sound, table);
  const answer = heard && answerOf(heard.readings, home);
  if (heard === undefined || answer === undefined)
    throw unheard(seconds, 'a recording in which a band is heard: this one is silent');
  const { silence, tuning } = heard;
  return deepFreeze({
    ...answer.reading,
    ...placed(answer, silence, seconds),
    tempo: Math.round(100 * answer.grid.tempo) / 100,
    reference: 440 * 2 ** (tuning / 12),
    cents: 100 * tuning,
    seconds,
  });
}

/** Bars and beats of the chart in seconds of the recording. */
function placed(
  { grid, played: { bars }, reading: { chart } }: Answer,
  silence: number,
  seconds: number,
): Pick<HeardBand, 'bars' | 'beats'> {
  const key = parseKey(chart.key);
  const { beats, beatsPerBar } = grid;
  const secondOf = (beat: number): number =>
    Math.min(seconds, Math.max(0, (beats[beat] as number) + silence));
  const first = itemAt(bars, 0).at;
  const end = first + bars.length;
  return {
    bars: bars.map(
      ({ at, chords, lead }): HeardBar => ({
        start: secondOf(at * beatsPerBar),
        end: secondOf((at + 1) * beatsPerBar),
        chords: textOf(chords, key),
        confidence: chanceOf('bar', lead),
      }),
    ),
    beats: Array.from({ length: (end - first) * beatsPerBar + 1 }, (_, at) =>
      secondOf(first * beatsPerBar + at),
    ),
  };
}

function unheard(value: number, expected: string): ReedplateError {
  return new ReedplateError({
    code: 'SOUND_INVALID',
    value: Math.round(value * 1000) / 1000,
    expected,
  });
}
