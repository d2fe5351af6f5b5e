import { isReedplateError } from '@reedplate/pitch';
import * as umbrella from 'reedplate';
import { makeChart, makeHarp, makeLine } from 'reedplate';
import { describe, expect, test } from 'vitest';
import { CALLS } from './calls.fixture.js';

const EXPORTS: ReadonlyMap<string, unknown> = new Map(Object.entries(umbrella));
const FUNCTIONS = [...EXPORTS].flatMap(([name, value]) =>
  typeof value === 'function' ? [name] : [],
);
const calls: ReadonlyMap<string, readonly unknown[]> = new Map(Object.entries(CALLS));

/** What may stand in an argument by a slip: nothing, a plain value, a thing of another kind. */
const WRONG_KINDS: readonly (readonly [words: string, value: unknown])[] = [
  ['nothing', undefined],
  ['null', null],
  ['a number', 7],
  ['no number', Number.NaN],
  ['text', 'zzz'],
  ['empty text', ''],
  ['a truth value', true],
  ['an empty object', {}],
  ['an empty list', []],
  ['a list of nothing', [null]],
  ['a list of objects', [{}]],
  ['a harp', makeHarp('C')],
  ['a chart', makeChart('basic', 'G')],
  ['a line', makeLine([{ start: 0, duration: 960, pitch: 67 }])],
  ['lists that hold nothing', { notes: [null], spans: [null], holes: [null], bars: [null] }],
  ['lists that are none', { notes: 7, spans: 'zzz', holes: {}, bars: null, events: 7 }],
];

/** What is wrong with what a call does; nothing where it answers or throws the typed error. */
async function faultOf(name: string, given: readonly unknown[]): Promise<string | undefined> {
  const call = EXPORTS.get(name) as (...given: readonly unknown[]) => unknown;
  try {
    const answer = JSON.stringify(await call(...given)) ?? '';
    return /undefined|NaN/u.test(answer) ? `answers ${answer.slice(0, 200)}` : undefined;
  } catch (error) {
    if (!isReedplateError(error)) return String(error);
    // What was given is quoted, and a place is named by the fields that were given.
    const said = error.message.replaceAll(/"(?:[^"\\]|\\.)*"| \([^)]*\):/gu, '');
    return /undefined|NaN|\[object|[{}]\s*$|\{"/u.test(said) ? error.message : undefined;
  }
}

/** A right call with each wrong kind in each argument. */
function slipsOf(name: string): readonly { words: string; given: readonly unknown[] }[] {
  const right = calls.get(name) ?? [];
  const places = right.length === 0 ? [0] : [...right.keys()];
  return places.flatMap((at) =>
    [...WRONG_KINDS, ...wrongFieldsOf(right[at])].map(([words, value]) => ({
      words: `${words} in argument ${at + 1}`,
      given: right.length === 0 ? [value] : right.with(at, value),
    })),
  );
}

/** A right argument with each of its fields, or the first of its list, of a wrong kind. */
function wrongFieldsOf(value: unknown): typeof WRONG_KINDS {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  const instead = [undefined, null, 7, 'zzz', {}, [], [null]];
  return Object.keys(value)
    .slice(0, 12)
    .flatMap((field) =>
      instead.map((wrong) => {
        const changed = Array.isArray(value)
          ? value.with(Number(field), wrong)
          : { ...value, [field]: wrong };
        return [`${JSON.stringify(wrong)} as ${field}`, changed] as const;
      }),
    );
}

describe('a wrong kind of argument, in any place', () => {
  test('is tried on every function of the umbrella', () => {
    const untried = FUNCTIONS.filter((name) => name !== 'ReedplateError' && !calls.has(name));
    expect(untried).toEqual([]);
    expect(FUNCTIONS.length).toBeGreaterThan(150);
  });

  test.each(FUNCTIONS.filter((name) => calls.has(name)))(
    '%s gives its typed error or an answer',
    async (name) => {
      const faults: string[] = [];
      for (const { words, given } of slipsOf(name)) {
        const fault = await faultOf(name, given);
        if (fault !== undefined) faults.push(`${words}: ${fault}`);
      }
      expect(faults).toEqual([]);
    },
  );
});
