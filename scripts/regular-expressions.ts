import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { ROOT } from './lib/root.mjs';
import { checkExpression } from './regular-expressions/check.js';
import { type FoundExpression, gatherExpressions } from './regular-expressions/gather.js';
import { madeExpressions } from './regular-expressions/made.js';

// Checks every regular expression of the packages for texts that make it slow.
//   npm run regular-expressions           those that were not found safe before, and notes them
//   npm run regular-expressions -- --all  all of them
// An expression is the same wherever it stands, so what was found safe once is safe: CI checks what is new.
const SAFE_LIST = `${ROOT}scripts/regular-expressions/safe.txt`;
const NOT_SHIPPED = /\.(?:test|fixture|test-d)\.ts$|arbitraries\.ts$/u;

const files = execFileSync('git', ['ls-files', 'packages/*/src/*.ts'], { cwd: ROOT })
  .toString()
  .split('\n')
  .filter((file) => file !== '' && !NOT_SHIPPED.test(file));
const gathered = files.map((file) => gatherExpressions(file, readFileSync(ROOT + file, 'utf8')));
const made = await madeExpressions(ROOT);
const found = [...gathered.flatMap(({ literals }) => literals), ...made];

const unmade = gathered
  .flatMap((each) => each.made)
  .filter((place) => !made.some((each) => place.startsWith(`${each.place}:`)));
for (const place of unmade) console.error(`${place}: made only when called, so it is not checked`);

const isAll = process.argv.includes('--all');
const known = new Set(isAll ? [] : readFileSync(SAFE_LIST, 'utf8').split('\n'));
const written = ({ source, flags }: Pick<FoundExpression, 'source' | 'flags'>): string =>
  `/${source}/${flags}`;
const byText = new Map(found.map((each) => [written(each), each]));
const fresh = [...byText].filter(([text]) => !known.has(text)).map(([, each]) => each);
const checked = fresh.map(checkExpression);
const unsafe = checked.filter(({ status }) => status !== 'safe');
for (const { place, reason, ...each } of unsafe)
  console.error(`${place}: ${written(each)}: ${reason}`);

const bad = new Set(unsafe.map(written));
const safe = [...byText.keys()].filter((text) => !bad.has(text)).sort();
writeFileSync(SAFE_LIST, `${safe.join('\n')}\n`);
console.log(
  `${byText.size} regular expressions, ${checked.length} checked now, ${unsafe.length} not safe`,
);
process.exitCode = unsafe.length + unmade.length === 0 ? 0 : 1;
