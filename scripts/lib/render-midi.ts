import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readWav, type Sound } from '@reedplate/listen';

/** Where `apt-get install timgm6mb-soundfont` puts it. */
export const SOUND_FONT = '/usr/share/sounds/sf2/TimGM6mb.sf2';

/** How MIDI is made to sound. */
export interface RenderOptions {
  /** Default {@link SOUND_FONT}. */
  readonly font?: string;
  /** Samples a second; default 22,050. */
  readonly rate?: number;
}

/** Writes the sound of a MIDI file as 16-bit WAVE by fluidsynth, without reverberation, which blurs what a tracker hears. */
export function renderWave(
  midi: string,
  wave: string,
  { font = SOUND_FONT, rate = 22_050 }: RenderOptions = {},
): void {
  const dry = ['-ni', '-q', '-g', '0.6', '-r', `${rate}`, '-R', '0', '-C', '0', '-F', wave];
  execFileSync('fluidsynth', [...dry, font, midi], { stdio: 'pipe' });
}

/** The sound of the bytes of a MIDI file. */
export function soundOfMidi(bytes: Uint8Array, options: RenderOptions = {}): Sound {
  const folder = mkdtempSync(join(tmpdir(), 'reedplate-sound-'));
  try {
    writeFileSync(join(folder, 'a.mid'), bytes);
    renderWave(join(folder, 'a.mid'), join(folder, 'a.wav'), options);
    return readWav(readFileSync(join(folder, 'a.wav')));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
