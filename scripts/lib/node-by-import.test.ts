import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { nodeByImport } from './node-by-import.js';
import { ROOT } from './root.mjs';

/** What is used of commander, which only the command depends on. */
interface CommanderModule {
  readonly Command: new () => Command;
}
interface Command {
  exitOverride(): Command;
  command(usage: string): Command;
  action(act: (word: string) => void): Command;
  parseAsync(words: readonly string[], options: { readonly from: 'user' }): Promise<unknown>;
}

async function takenIn(code: string, dir: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: `${ROOT}packages/${dir}` },
    bundle: true,
    format: 'esm',
    platform: 'node',
    plugins: [nodeByImport],
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]?.text ?? '';
}

/** commander taken in by a module, as the command takes it in. */
const commanderTakenIn = (): Promise<string> =>
  takenIn("export { Command } from 'commander';", 'cli');

describe('nodeByImport', () => {
  it("lets commander import Node's modules, but for the one that starts processes", async () => {
    const text = await commanderTakenIn();
    const imported = [...text.matchAll(/from "(node:\w+)"/gu)].map(([, name]) => name);
    expect(new Set(imported)).toEqual(new Set(['node:events', 'node:path', 'node:fs']));
    expect(text).not.toMatch(/require\("(?:node:)?\w+"\)/u);
  });

  it('leaves commander working', async () => {
    const text = await commanderTakenIn();
    const { Command } = (await import(
      `data:text/javascript,${encodeURIComponent(text)}`
    )) as CommanderModule;
    const words: string[] = [];
    const program = new Command().exitOverride();
    program.command('say <word>').action((word: string) => void words.push(word));
    await program.parseAsync(['say', 'blues'], { from: 'user' });
    expect(words).toEqual(['blues']);
  });

  it('leaves what others ask for as it is: sax looks for streams, and does without in a browser', async () => {
    const text = await takenIn("export { default } from 'sax';", 'interchange');
    expect(text).toContain('require("stream")');
    expect(text).not.toContain('node:stream');
  });
});
