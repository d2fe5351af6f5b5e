import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeMidi } from '@reedplate/interchange';
import { lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import type { Sound } from '../src/sound.js';
import { readWav } from '../src/wav/read-wav.js';

/** A harmonica of a sound font, as fluidsynth plays it, dry. */
export function playFluid(notes: readonly NoteInSeconds[], font: string): Sound {
  const folder = mkdtempSync(join(tmpdir(), 'reedplate-listen-'));
  const [midi, wav] = [join(folder, 'take.mid'), join(folder, 'take.wav')];
  try {
    writeFileSync(midi, writeMidi({ line: lineFromSeconds(notes, { tempo: 60 }) }));
    const plain = ['-o', 'synth.reverb.active=0', '-o', 'synth.chorus.active=0', '-g', '0.6'];
    execFileSync('fluidsynth', ['-ni', '-q', ...plain, '-r', '44100', '-F', wav, font, midi]);
    return readWav(readFileSync(wav));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
