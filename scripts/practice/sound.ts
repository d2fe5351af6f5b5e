import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readMidi } from '@reedplate/interchange';
import { secondsAt } from '@reedplate/line';
import { PitchDetector } from 'pitchy';
import { SOUND_FONT, soundOfMidi } from '../lib/render-midi.js';

/** Whether fluidsynth and a sound font are here; `apt-get install fluidsynth timgm6mb-soundfont` brings both. */
export function canRender(): boolean {
  try {
    execFileSync('fluidsynth', ['--version'], { stdio: 'pipe' });
    return existsSync(SOUND_FONT);
  } catch {
    return false;
  }
}

/** What a tracker heard of the notes of a MIDI file. */
export interface HeardNotes {
  /** Notes that sound alone, long enough to be tracked, and how many of them lie within half a semitone. */
  readonly alone: number;
  readonly right: number;
  /** Notes of chords, and how many are louder than the semitones beside them that are not in the chord. */
  readonly together: number;
  readonly loud: number;
  /** What was wrong, in words. */
  readonly faults: readonly string[];
}

const WINDOW = 2048;
const CENTS = 50;

/** Renders MIDI, and listens in the middle of each note of its first part. */
export function hearMidi(bytes: Uint8Array): HeardNotes {
  const { samples, sampleRate: rate } = soundOfMidi(bytes);
  const { line } = readMidi(bytes);
  const detector = PitchDetector.forFloat32Array(WINDOW);
  const counts = { alone: 0, right: 0, together: 0, loud: 0 };
  const faults: string[] = [];
  for (const note of line.notes) {
    const from = secondsAt(note.start, line);
    const to = secondsAt(note.start + note.duration, line);
    if ((to - from) * rate < WINDOW * 1.2) continue;
    const middle = Math.round(((from + to) / 2) * rate - WINDOW / 2);
    const heard = samples.slice(middle, middle + WINDOW);
    const others = line.notes.filter((each) => each !== note && each.start === note.start);
    const where = `${from.toFixed(2)} s, pitch ${note.pitch}`;
    if (others.length === 0) {
      counts.alone += 1;
      const [hertz] = detector.findPitch(heard, rate);
      const pitch = 69 + 12 * Math.log2(hertz / 440);
      if (Math.abs(pitch - note.pitch) * 100 <= CENTS) counts.right += 1;
      else faults.push(`${where}: heard ${pitch.toFixed(2)}`);
    } else {
      counts.together += 1;
      const chord = new Set([note, ...others].map((each) => each.pitch));
      const beside = [note.pitch - 1, note.pitch + 1].filter((pitch) => !chord.has(pitch));
      const own = strength(heard, rate, note.pitch);
      if (beside.every((pitch) => own > 2 * strength(heard, rate, pitch))) counts.loud += 1;
      else faults.push(`${where}: not louder in its chord than what lies beside it`);
    }
  }
  return { ...counts, faults };
}

/** How strong a pitch is in a piece of sound (Goertzel's sum, under a Hann window). */
function strength(sound: Float32Array, rate: number, pitch: number): number {
  const turn = (2 * Math.PI * 440 * 2 ** ((pitch - 69) / 12)) / rate;
  let real = 0;
  let imaginary = 0;
  sound.forEach((sample, at) => {
    const hann = 0.5 - 0.5 * Math.cos((2 * Math.PI * at) / sound.length);
    real += sample * hann * Math.cos(turn * at);
    imaginary += sample * hann * Math.sin(turn * at);
  });
  return Math.hypot(real, imaginary);
}
