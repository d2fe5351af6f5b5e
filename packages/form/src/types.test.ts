import type { Chord, KeyName } from '@reedplate/pitch';
import { describe, expectTypeOf, test } from 'vitest';
import {
  type Chart,
  type ChordSpan,
  chordAt,
  ENDINGS,
  type EndingId,
  type Feel,
  FORMS,
  type Form,
  type FormBar,
  type FormId,
  formById,
  makeChart,
  type TurnaroundId,
  type Variation,
  varyForm,
  withTurnaround,
} from './index.js';

describe('types', () => {
  test('FormId, TurnaroundId, EndingId, Variation and Feel are unions of what there is', () => {
    expectTypeOf<'quick-change'>().toExtend<FormId>();
    expectTypeOf<'quickchange'>().not.toExtend<FormId>();
    expectTypeOf<'one-six-two-five'>().toExtend<TurnaroundId>();
    expectTypeOf<'half-step-above'>().toExtend<EndingId>();
    expectTypeOf<string>().not.toExtend<EndingId>();
    expectTypeOf<Feel>().toEqualTypeOf<'straight' | 'shuffle' | 'slow-12/8'>();
    expectTypeOf<'minor'>().toExtend<Variation>();
  });

  test('formById takes any text, for ids that a user writes', () => {
    expectTypeOf(formById).parameter(0).toExtend<string>();
    expectTypeOf<string>().toExtend<Parameters<typeof formById>[0]>();
    expectTypeOf(formById).returns.toEqualTypeOf<Form>();
  });

  test('makeChart asks for a key that there is', () => {
    expectTypeOf(makeChart).parameter(1).extract<string>().toEqualTypeOf<KeyName>();
    expectTypeOf(makeChart).returns.toEqualTypeOf<Chart>();
  });

  test('every field is read-only', () => {
    expectTypeOf(FORMS).toEqualTypeOf<readonly Form[]>();
    expectTypeOf<Form['bars']>().toEqualTypeOf<readonly FormBar[]>();
    expectTypeOf<Chart>().toEqualTypeOf<Readonly<Chart>>();
    expectTypeOf<ChordSpan>().toEqualTypeOf<Readonly<ChordSpan>>();
    expectTypeOf(ENDINGS).not.toExtend<{ push: unknown }>();
  });

  test('chordAt may find nothing, and a chord may be a break', () => {
    expectTypeOf(chordAt).returns.toEqualTypeOf<ChordSpan | undefined>();
    expectTypeOf<ChordSpan['chord']>().toEqualTypeOf<Chord | null>();
  });

  test('misuse does not compile', () => {
    // @ts-expect-error a form is made into a chart in a key
    void (() => makeChart('basic'));
    // @ts-expect-error H is no key
    void (() => makeChart('basic', 'H'));
    // @ts-expect-error no turnaround of that name
    void (() => withTurnaround('basic', 'one-six'));
    // @ts-expect-error no variation of that name
    void (() => varyForm('basic', ['quickchange']));
  });
});
