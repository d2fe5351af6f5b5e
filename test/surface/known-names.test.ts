import { isReedplateError } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { CALLS, type FunctionName } from './calls.fixture.js';
import * as reedplate from './everything.fixture.js';
import { functionsOf } from './functions.fixture.js';

const EXPORTS: ReadonlyMap<string, unknown> = new Map(Object.entries(reedplate));

const tuning = reedplate.makeTuning({
  id: 'shared-attic',
  blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
  draw: 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
});
const form = reedplate.makeForm(
  reedplate.formById('basic').bars.map((bar) => [...bar]),
  { id: 'shared-porch', name: 'Porch' },
);

/** Whether an argument of a right call names, or is, the thing. */
const isHarp = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'holes' in value && 'firstPosition' in value;
const isForm = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'bars' in value && 'use' in value;

/** Functions with an argument of a kind, its place and the place of the options. */
function taking(isOne: (value: unknown) => boolean) {
  return functionsOf('test/surface/everything.fixture.ts').flatMap(({ name, parameters }) => {
    const given: readonly unknown[] = CALLS[name as FunctionName] ?? [];
    const at = given.findIndex(isOne);
    const options = parameters.findIndex(({ isOptions }, place) => isOptions && place > at);
    return at === -1 ? [] : [{ name: name as FunctionName, at, options, given }];
  });
}

async function errorOf(name: FunctionName, given: readonly unknown[]): Promise<unknown> {
  const call = EXPORTS.get(name) as (...given: readonly unknown[]) => unknown;
  try {
    await call(...given);
    return undefined;
  } catch (error) {
    return isReedplateError(error) ? error.message : error;
  }
}

/** The call with a name in place of the thing, and what it names among the options. */
function named(
  { at, options, given }: ReturnType<typeof taking>[number],
  name: string,
  known: object,
): readonly unknown[] {
  const changed: unknown[] = [...given];
  changed[at] = name;
  if (options !== -1) changed[options] = { ...Object(given[options]), known };
  return changed;
}

/** What reads JSON takes the thing itself: a name is no JSON of it. */
const takesNames = ({ name }: ReturnType<typeof taking>[number]): boolean =>
  !name.startsWith('read');

describe("a harp in a tuning of one's own, by name", () => {
  const found = taking(isHarp).filter(takesNames);

  test('is taken by many functions', () => {
    expect(found.length).toBeGreaterThan(30);
  });

  test.each(found)('$name takes it, with the tuning among the options', async (one) => {
    expect(
      await errorOf(one.name, named(one, 'C shared-attic', { tunings: [tuning] })),
    ).toBeUndefined();
  });
});

describe("a form of one's own, by name", () => {
  const found = taking(isForm).filter(takesNames);

  test('is taken by many functions', () => {
    expect(found.length).toBeGreaterThan(2);
  });

  test.each(found)('$name takes it, with the form among the options', async (one) => {
    expect(await errorOf(one.name, named(one, 'shared-porch', { forms: [form] }))).toBeUndefined();
  });
});

describe("what is one's own, elsewhere", () => {
  const known = { tunings: [tuning] };
  const line = reedplate.makeLine([{ start: 0, duration: 960, pitch: 67 }]);

  test('parseHarp, makeHarp and what one owns take a tuning by its name', () => {
    const harp = reedplate.makeHarp('C', { tuning });
    expect(reedplate.parseHarp('C shared-attic', { known })).toEqual(harp);
    expect(reedplate.makeHarp('C', { tuning: 'shared-attic', known })).toEqual(harp);
    const [pick] = reedplate.pickHarps('G', { own: ['C shared-attic'], known });
    expect(pick?.harp).toEqual(harp);
  });

  test('bestPath and fitHarps take an effort model by its name', () => {
    const { weights } = reedplate.effortModelById('beginner');
    const model = reedplate.makeEffortModel('beginner', { id: 'shared-bench', weights });
    const models = { models: [model] };
    const path = reedplate.bestPath(line, 'C', { model: 'shared-bench', known: models });
    expect(path).toMatchObject({ playable: true, model: 'shared-bench' });
    const { harps } = reedplate.fitHarps(line, ['C'], { model: 'shared-bench', known: models });
    expect(harps).toHaveLength(1);
  });

  test("an error names what is near among one's own", () => {
    expect(() => reedplate.makeChart('shared-porhc', 'G', { known: { forms: [form] } })).toThrow(
      expect.objectContaining({ code: 'FORM_UNKNOWN', nearest: 'shared-porch' }),
    );
  });
});
