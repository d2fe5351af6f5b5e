import { createRequire } from 'node:module';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { midiWriter } from './midi-writer.js';
import { ROOT } from './root.mjs';

const FOLDER = `${ROOT}packages/interchange`;

interface Writer {
  readonly writeMidi: (file: object) => readonly number[];
}

async function bundle(code: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: FOLDER },
    bundle: true,
    format: 'esm',
    plugins: [midiWriter],
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]?.text ?? '';
}

describe('midiWriter', () => {
  it('takes the writer, which writes the same bytes, without the reader', async () => {
    const text = await bundle("export { writeMidi } from 'midi-file';");
    expect(text).toContain('midi-writer.js');
    expect(text).not.toContain('midi-parser.js');

    const taken = (await import(`data:text/javascript,${encodeURIComponent(text)}`)) as Writer;
    const published = createRequire(`${FOLDER}/package.json`)('midi-file') as Writer;
    const file = {
      header: { format: 0, numTracks: 1, ticksPerBeat: 960 },
      tracks: [
        [
          { deltaTime: 0, type: 'noteOn', channel: 0, noteNumber: 60, velocity: 96 },
          { deltaTime: 960, type: 'noteOff', channel: 0, noteNumber: 60, velocity: 0 },
          { deltaTime: 0, type: 'endOfTrack' },
        ],
      ],
    };
    expect(taken.writeMidi(file)).toEqual(published.writeMidi(file));
  });

  it('fails a build that asks for the reader', async () => {
    await expect(bundle("export { parseMidi } from 'midi-file';")).rejects.toThrow('parseMidi');
  });
});
