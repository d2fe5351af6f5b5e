import type { Options } from 'tsup';

type Plugin = NonNullable<Options['esbuildPlugins']>[number];

/** Where midi-file names its two parts. */
const INDEX = /[\\/]midi-file[\\/]index\.js$/;

/**
 * Takes midi-file's writer without its reader, at build time. Its index requires both, and no bundler can leave
 * out a part of such a module; we read MIDI by a reader of our own.
 */
export const midiWriter: Plugin = {
  name: 'midi-writer',
  setup(build) {
    build.onLoad({ filter: INDEX }, () => ({
      contents: `export { default as writeMidi } from './lib/midi-writer.js';`,
      loader: 'js',
    }));
  },
};
