import type { KeyLike } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import type { FormId } from './catalogue.js';
import { formById } from './form-by-id.js';
import { formatForm } from './format-form.js';
import { parseForm } from './parse-form.js';
import { recogniseForm } from './recognise-form.js';

const oneLine = (form: Parameters<typeof formatForm>[0]): string =>
  formatForm(form, { barsPerLine: 99 }).replace(/^.*\n/u, '');

/** The bars of a form from one bar to another, both counted from 1. */
const barsOf = (id: FormId, first: number, last: number) =>
  formById(id).bars.slice(first - 1, last);

const inKey = (bars: string, key: KeyLike) => parseForm(bars, { key }).bars;

published('wikipedia-bird', 'jazz and bebop rows in C', () => {
  test('swing-major-seventh has the chords of the row named after Parker, in C', () => {
    const row =
      'Cmaj7 | Bm7b5 E7 | Am7 D7 | Gm7 C7 | F7 | Fm7 Bb7 | Em7 A7 | Ebm7 Ab7 | Dm7 | G7 | Cmaj7 A7 | Dm7 G7';
    expect(inKey(row, 'C')).toEqual(formById('swing-major-seventh').bars);
  });

  test('recogniseForm knows the "typical blues progression in jazz" by its form and turnaround', () => {
    const row = 'C7 | F7 | C7 | C7 | F7 | F7 | C7 | Em7 A7 | Dm7 | G7 | C7 A7 | Dm7 G7';
    const [best] = recogniseForm(row).best;
    expect(best).toMatchObject({
      form: 'jazz-three-six-five',
      closing: 'one-six-two-five',
      key: 'C',
      cost: 0,
    });
    expect(inKey(row, 'C').slice(0, 10)).toEqual(barsOf('jazz-three-six-five', 1, 10));
  });

  test('bebop-six-dominant shares with it v–I in bar 4, and ii–V in bar 12', () => {
    expect(inKey('Gm7 C7', 'C')).toEqual(barsOf('bebop-six-dominant', 4, 4));
    expect(inKey('Dm7 G7', 'C')).toEqual(barsOf('bebop-six-dominant', 12, 12));
  });

  test('the simple blues that it begins from is basic-tonic-ending, all in sevenths', () => {
    const row = 'C7 | C7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | C7';
    expect(inKey(row, 'C')).toEqual(formById('basic-tonic-ending').bars);
  });
});

published('jazz-blues-tips', 'four rows in B flat', () => {
  test.each<[string, FormId, string | null]>([
    [
      'Bb7 | Bb7 | Bb7 | Bb7 | Eb7 | Eb7 | Bb7 | Bb7 | F7 | Eb7 | Bb7 | Bb7',
      'basic-tonic-ending',
      null,
    ],
    ['Bb7 | Eb7 | Bb7 | Bb7 | Eb7 | Eb7 | Bb7 | Bb7 | F7 | Eb7 | Bb7 | F7', 'quick-change', null],
    [
      'Bb7 | Eb7 | Bb7 | Bb7 | Eb7 | Eb7 | Bb7 | G7 | Cm7 | F7 | Bb7 G7 | Cm7 F7',
      'jazz-six-dominant',
      'one-six-two-five',
    ],
  ])('recogniseForm takes %s for %s', (row, form, closing) => {
    const { best } = recogniseForm(row);
    expect(best[0]).toMatchObject({ form, closing, key: 'Bb', cost: 0 });
  });
});

describe('minor rows', () => {
  published('minor-blues', 'the bars of the minor twelve-bar with flat six', () => {
    // "Measures 1-4 = the minor i chord; 5-8 = two bars of the iv chord followed by two bars of the i
    // chord; 9-12 = one bar of … the flat VI dominant chord, one bar of the V7 chord, and two bars of
    // the i chord." Tip 2: the minor chords are often written as minor sevenths.
    test('minor-flat-six-tonic-ending has the bars that tip 1 counts', () => {
      const counts: readonly (readonly [string, number])[] = [
        ['i7', 4],
        ['iv7', 2],
        ['i7', 2],
        ['bVI7', 1],
        ['V7', 1],
        ['i7', 2],
      ];
      const row = counts.flatMap(([numeral, count]) =>
        Array.from({ length: count }, () => numeral),
      );
      expect(oneLine(formById('minor-flat-six-tonic-ending'))).toBe(
        oneLine(parseForm(row.join(' | '))),
      );
    });
  });

  published('minor-blues-studies', 'the basic minor blues', () => {
    // "Im7 – Bars 1-4, 7-8, 11-12; ivm7 – Bars 5-6; V7alt – Bars 9-10", in D.
    test.each([
      ['i7', 'Dm7', [1, 2, 3, 4, 7, 8, 11, 12]],
      ['iv7', 'Gm7', [5, 6]],
      ['V7', 'A7', [9, 10]],
    ])('minor-two-bars-of-v has %s (%s) in bars %j', (numeral, symbol, bars) => {
      const form = formById('minor-two-bars-of-v');
      const having = form.bars.flatMap((bar, at) => (bar[0]?.numeral === numeral ? [at + 1] : []));
      expect(having).toEqual(bars);
      expect(formatForm(form, { key: 'Dm' })).toContain(symbol);
    });
  });

  published('goldsmiths', 'a skeletal blues in C, and its minor', () => {
    test('basic-tonic-ending is the skeletal blues: four bars of C7, two of F7, two of C7, G7, F7, two of C7', () => {
      const row = 'C7 | % | % | % | F7 | % | C7 | % | G7 | F7 | C7 | %';
      expect(inKey(row, 'C')).toEqual(formById('basic-tonic-ending').bars);
    });

    test('the minor row has minor sevenths on i and iv, and leaves V7 major', () => {
      const bars = barsOf('minor-quick-change', 1, 9);
      expect(inKey('Cm7 | Fm7 | Cm7 | Cm7 | Fm7 | Fm7 | Cm7 | Cm7 | G7', 'Cm')).toEqual(bars);
    });

    test('A flat 7 in bar 9, then G7 and C minor 7, are the last bars of minor-flat-six-tonic-ending', () => {
      const last = barsOf('minor-flat-six-tonic-ending', 9, 12);
      expect(inKey('Ab7 | G7 | Cm7 | Cm7', 'Cm')).toEqual(last);
    });
  });
});
