import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { ROOT } from '../../lib/root.mjs';
import { makeRandom } from '../random.js';
import { findMutants, type Mutant } from './find-mutants.js';

/** A change and the file, seen from the root, that it is made in. */
export interface Placed extends Mutant {
  readonly file: string;
}

/** What is no logic: tests and what they share, exports, and rows of data. */
const NOT_SOURCE =
  /\.(?:test|fixture|test-d)\.ts$|arbitraries\.ts$|(?:^|\/)index\.ts$|(?:rows|forms)[a-z-]*\.ts$/u;

const filesOf = (name: string): readonly string[] =>
  readdirSync(`${ROOT}packages/${name}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => /^(?:src|test)\/.*\.ts$/u.test(file))
    .map((file) => `packages/${name}/${file}`)
    .toSorted();

/** The test files of a package, and that of its examples where it was generated. */
export const testsOf = (name: string): readonly string[] => [
  ...filesOf(name).filter((file) => file.endsWith('.test.ts')),
  ...[`test/generated/${name}.test.ts`].filter((file) => existsSync(ROOT + file)),
];

/** Every change that the mutator knows for a package, or for those of its files that end in what is given. */
export const mutantsOf = (name: string, ends: readonly string[] = ['']): readonly Placed[] =>
  filesOf(name)
    .filter((file) => file.startsWith(`packages/${name}/src/`) && !NOT_SOURCE.test(file))
    .filter((file) => ends.some((end) => file.endsWith(end)))
    .flatMap((file) =>
      findMutants(file, readFileSync(ROOT + file, 'utf8')).map((mutant) => ({ ...mutant, file })),
    );

/** So many of a list, each as likely as any other, without one twice. */
export function draw(
  mutants: readonly Placed[],
  { sample, seed }: { readonly sample: number; readonly seed: number },
): readonly Placed[] {
  const random = makeRandom(seed);
  const left = [...mutants];
  return Array.from({ length: Math.min(sample, left.length) }, () => {
    const [drawn] = left.splice(random(left.length), 1);
    return drawn as Placed;
  });
}

/** Wilson's interval of a share, at 95 %. */
export function interval(hits: number, tried: number): readonly [low: number, high: number] {
  const z = 1.96;
  const share = hits / tried;
  const middle = share + z ** 2 / (2 * tried);
  const half = z * Math.sqrt((share * (1 - share)) / tried + z ** 2 / (4 * tried ** 2));
  const whole = 1 + z ** 2 / tried;
  return [(middle - half) / whole, (middle + half) / whole];
}
