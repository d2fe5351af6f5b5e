import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { dictionaryModule } from './lazy-tonal.js';
import { ROOT } from './root.mjs';

interface Dictionary {
  all(): readonly { name: string; intervals: string[]; aliases: string[] }[];
}

const { resolve } = createRequire(`${ROOT}packages/pitch/package.json`);

describe('lazyTonal', () => {
  test.each(['chord-type', 'scale-type'])(
    'dictionaryModule gives %s as tonal does',
    async (name) => {
      const { all }: Dictionary = await import(pathToFileURL(resolve(`@tonaljs/${name}`)).href);
      const text = dictionaryModule(all());
      const made: Dictionary = await import(`data:text/javascript,${encodeURIComponent(text)}`);
      expect(all().length).toBeGreaterThan(50);
      expect(made.all()).toEqual(
        all().map(({ name, intervals, aliases }) => ({ name, intervals, aliases })),
      );
    },
  );
});
