import {
  chordOfNumeral,
  type Key,
  parseKey,
  TONICS,
  type Tonic,
  TWELVE_KEYS,
} from '@reedplate/pitch';
import type { BarPair } from './align-bars.js';
import { comparedBar, hasOtherRoots } from './bar-distance.js';
import { barText } from './format-form.js';
import { type Candidate, roundCost } from './rank-forms.js';
import type { BarDifference, FormMatch } from './recognition.js';
import type { FormBar } from './types.js';

/** Says what a candidate is and where the given bars differ from it. */
export function describeMatch(
  candidate: Candidate,
  given: readonly FormBar[],
  home: Key | undefined,
): FormMatch {
  const { form, closing, bars, tonic, choruses, align } = candidate;
  const cost = roundCost(candidate.cost);
  const name = home?.tonic ?? tonicAsGiven(tonic, given);
  const key = parseKey(form.mode === 'minor' ? `${name}m` : name);
  const differences = align()
    .filter((pair) => roundCost(pair.cost) > 0)
    .map((pair) => describePair(pair, { form: bars, length: form.bars.length, given, key }));
  return Object.freeze({
    form: form.id,
    name: form.name,
    closing,
    key: key.name,
    choruses,
    cost,
    agreement: Math.max(0, roundCost(1 - cost / given.length)),
    differences: Object.freeze(differences),
  });
}

/** The tonic in the spelling of the first chord on it, else in the plain one. */
function tonicAsGiven(pitchClass: number, given: readonly FormBar[]): Tonic {
  const roots = given.flat().flatMap(({ numeral }) => {
    const chord = numeral === null ? undefined : chordOfNumeral(numeral, 'C');
    return chord?.tones[0]?.pitchClass === pitchClass ? [chord.root] : [];
  });
  const plain = TWELVE_KEYS[pitchClass]?.tonic ?? 'C';
  return TONICS.find((tonic) => tonic === roots[0]) ?? plain;
}

interface Compared {
  /** The bars compared with, for as long as they do not come again. */
  readonly form: readonly FormBar[];
  /** Bars of one chorus. */
  readonly length: number;
  readonly given: readonly FormBar[];
  readonly key: Key;
}

function describePair(pair: BarPair, { form, length, given, key }: Compared): BarDifference {
  const written = pair.given === null ? null : (given[pair.given] as FormBar);
  const barOfForm = pair.expected === null ? null : pair.expected % length;
  const expected = pair.expected === null ? null : (form[pair.expected % form.length] as FormBar);
  return Object.freeze({
    kind: kindOf(written, expected, key),
    bar: pair.given === null ? null : pair.given + 1,
    barOfForm: barOfForm === null ? null : barOfForm + 1,
    given: written && barText(written, (numeral) => chordOfNumeral(numeral, 'C').symbol),
    expected: expected && barText(expected, (numeral) => chordOfNumeral(numeral, key).symbol),
    cost: roundCost(pair.cost),
  });
}

function kindOf(
  written: FormBar | null,
  expected: FormBar | null,
  { pitchClass }: Key,
): BarDifference['kind'] {
  if (written === null) return 'missing';
  if (expected === null) return 'extra';
  const [one, other] = [comparedBar(written), comparedBar(expected)];
  return hasOtherRoots(one, other, pitchClass) ? 'root' : 'quality';
}
