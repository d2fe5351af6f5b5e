import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readMidi } from '@reedplate/interchange';
import { secondsAt } from '@reedplate/line';
import { PitchDetector } from 'pitchy';
import { readWave, type Wave } from '../interchange/wave.js';

const SOUND_FONT = '/usr/share/sounds/sf2/TimGM6mb.sf2';

/** Whether fluidsynth and a sound font are here; `apt-get install fluidsynth timgm6mb-soundfont` brings both. */
export function canRender(): boolean {
  try {
    execFileSync('fluidsynth', ['--version'], { stdio: 'pipe' });
    return existsSync(SOUND_FONT);
  } catch {
    return false;
  }
}

/** Writes the sound of a MIDI file as 16-bit WAVE, without reverberation, which blurs what a tracker hears. */
export function renderWave(midi: string, wave: string): void {
  const dry = ['-ni', '-q', '-g', '0.6', '-r', '22050', '-R', '0', '-C', '0', '-F', wave];
  execFileSync('fluidsynth', [...dry, SOUND_FONT, midi], { stdio: 'pipe' });
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
  const folder = mkdtempSync(join(tmpdir(), 'reedplate-sound-'));
  try {
    writeFileSync(join(folder, 'a.mid'), bytes);
    renderWave(join(folder, 'a.mid'), join(folder, 'a.wav'));
    return hearWave(readWave(readFileSync(join(folder, 'a.wav'))), bytes);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function hearWave({ samples, rate }: Wave, bytes: Uint8Array): HeardNotes {
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
