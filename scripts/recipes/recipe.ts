import { readFileSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';

/**
 * The commands of a recipe in DEVELOPERS.md, in their order: what stands between backticks and begins with
 * `npm run` or `npx`.
 */
export function commandsOf(recipe: string): readonly string[] {
  const page = readFileSync(`${ROOT}DEVELOPERS.md`, 'utf8');
  const [, rest] = page.split(`\n## ${recipe}\n`);
  if (rest === undefined) throw new Error(`DEVELOPERS.md has no recipe "${recipe}"`);
  const [section = ''] = rest.split('\n## ');
  const commands = [...section.matchAll(/`((?:npm run|npx) [^`]+)`/gu)].map(
    ([, found]) => `${found}`,
  );
  if (commands.length === 0) throw new Error(`the recipe "${recipe}" has no command`);
  return commands;
}
