import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run } from './lib/run.mjs';
import { copyWorkTree } from './recipes/copy.js';
import { commandsOf } from './recipes/recipe.js';

// Adds a tuning and a form as DEVELOPERS.md says, in a copy of the work tree, and runs the commands of
// the two recipes: they must do exactly what they say.

const TUNING = `  [
    'lowered-sixth-blow',
    'Lowered sixth blow reed',
    'A tuning that nobody has asked for, to try the recipe.',
    MEMORY,
    'C4 E4 G4 C5 E5 Gb5 C6 E6 G6 C7',
    'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  ],
`;

const FORM = `  [
    'recipe-six-bar',
    'Six bars of the recipe',
    'I for two bars, bIII, bVI, II7 and V7 for one each.',
    'A form that nobody plays, to try the recipe.',
    MEMORY,
    '| I7 | % | bIII7 | bVI7 | II7 | V7 |',
  ],
`;

const folder = copyWorkTree();
try {
  follow('How to add a tuning', 'packages/layout/src/tuning-rows.ts', TUNING);
  follow('How to add a form', 'packages/form/src/forms-other.ts', FORM);
  const listing = readFileSync(join(folder, 'packages/form/src/catalogue.golden.txt'), 'utf8');
  if (!listing.includes('recipe-six-bar')) throw new Error('the golden listing lacks the new form');
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Puts a row before the end of a catalogue and runs the recipe's commands. */
function follow(recipe: string, file: string, row: string): void {
  const path = join(folder, file);
  const text = readFileSync(path, 'utf8');
  const end = text.search(/^ *\] (?:as const|satisfies)/mu);
  if (end === -1) throw new Error(`${file} has no end of a list where the recipe adds a row`);
  writeFileSync(path, text.slice(0, end) + row + text.slice(end));
  for (const command of commandsOf(recipe)) {
    console.log(`${recipe}: ${command}`);
    run('sh', ['-c', command], { cwd: folder });
  }
}
