import { isReedplateError, TONICS, type Tonic } from '@reedplate/pitch';
import fc from 'fast-check';
import { formsOf } from '../src/arbitraries.js';
import { FORMS, formatForm, parseForm, readForm, recogniseForm } from '../src/index.js';

// Throws arbitrary text at the notation of forms, and every form in every key at recognition.
//   npx tsx packages/form/scripts/fuzz.ts [cases, default 100000] [seed, default 1]
const numRuns = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);

const SCRAPS = [
  '|',
  ':',
  '|:',
  ':|',
  '||',
  '%',
  '/',
  '1.',
  '2.',
  '1.2.',
  'I7',
  'iv',
  'bVI7',
  'V7/',
];
const SPACES = ['', ' ', '\n', '\r\n', '\t', '\u2028', ' | '];
const WORDS = ['N.C.', '12/8', '4/4', 'slow', 'shuffle', 'G7', 'Bbm7b5', '♭VII', '__proto__', '𝄇'];

const written = fc
  .array(fc.constantFrom(...SCRAPS, ...SPACES, ...WORDS), { maxLength: 80 })
  .map((parts) => parts.join(''));
const keys = fc.option(fc.constantFrom(...TONICS), { freq: 1 });
const sound = fc
  .tuple(formsOf(), keys)
  .map(([form, tonic]): Case => [formatForm(form, keyOption(tonic)), tonic]);
const damaged = fc
  .tuple(sound, fc.nat(), fc.string({ unit: 'binary', maxLength: 3 }), fc.nat({ max: 4 }))
  .map(([[text, tonic], seed, put, taken]): Case => {
    const at = seed % text.length;
    return [text.slice(0, at) + put + text.slice(at + taken), tonic];
  });
const unsound = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), written);
const cases = fc.oneof(fc.tuple(unsound, keys), fc.tuple(unsound, keys), sound, damaged);

type Case = [string, Tonic | null];

function keyOption(tonic: Tonic | null): { readonly key?: Tonic } {
  return tonic === null ? {} : { key: tonic };
}

const outcomes = new Map<string, number>();
const count = (outcome: string): void => {
  outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
};

/** What a reader makes of an input: its value, or the code of its error; anything else is thrown on. */
function outcomeOf<Value>(read: () => Value): Value | undefined {
  try {
    const value = read();
    count('read');
    return value;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    count(error.code);
    return undefined;
  }
}

function fuzzNotation(): void {
  const property = fc.property(cases, ([text, tonic]) => {
    const form = outcomeOf(() => parseForm(text, keyOption(tonic)));
    if (form === undefined) return;
    const again = formatForm(parseForm(formatForm(form)));
    if (again !== formatForm(form)) throw new Error(`not stable: ${again}`);
  });
  fc.assert(property, { numRuns, seed });
}

function fuzzJson(): void {
  const values = fc.oneof(fc.json(), fc.anything());
  fc.assert(
    fc.property(values, (value) => void outcomeOf(() => readForm(value))),
    { numRuns: numRuns / 10, seed },
  );
}

/** CPU milliseconds for texts of two lengths: eight times the text should take about eight times as long. */
function timeLongTexts(): void {
  for (const unit of ['I7 ', 'I7 | ', '| ', ':', '1.', '/ ', '% | ', 'x', '|: I7 :|', '\n']) {
    const [short, long] = [10_000, 80_000].map((length) => {
      const text = unit.repeat(length / unit.length);
      const read = (): void => void outcomeOf(() => parseForm(text));
      const times = Array.from({ length: 20 }, () => {
        const before = process.cpuUsage();
        read();
        const { user, system } = process.cpuUsage(before);
        return (user + system) / 1000;
      });
      return Math.min(...times);
    }) as [number, number];
    console.log(
      `  ${JSON.stringify(unit).padEnd(10)} ${short.toFixed(2)} ms, ${long.toFixed(2)} ms`,
    );
    if (long > 5 && long > 24 * short) throw new Error(`not linear in ${JSON.stringify(unit)}`);
  }
}

function recogniseEverywhere(): void {
  for (const form of FORMS) {
    for (const tonic of TONICS) {
      const key = form.mode === 'minor' ? (`${tonic}m` as const) : tonic;
      const text = formatForm(form, { key }).replace(/^[a-z].*\n/u, '');
      const { best, confidence } = recogniseForm(text);
      const [only] = best;
      if (best.length !== 1 || only?.form !== form.id || confidence !== 1) {
        throw new Error(`${form.id} in ${key} is taken for ${only?.form} in ${only?.key}`);
      }
    }
  }
}

console.log(`${numRuns} texts, seed ${seed}`);
fuzzNotation();
fuzzJson();
for (const [outcome, times] of outcomes) console.log(`  ${outcome.padEnd(16)} ${times}`);
console.log('long texts of 10,000 and 80,000 characters');
timeLongTexts();
recogniseEverywhere();
console.log(`${FORMS.length} forms recognised in ${TONICS.length} keys, untold`);
