import { parseNumeral } from '@reedplate/pitch';
import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import type { FormId } from './catalogue.js';
import { formById } from './form-by-id.js';
import { parseForm } from './parse-form.js';
import { recogniseForm } from './recognise-form.js';
import type { Form } from './types.js';

/** Degrees alone, one or more to a bar. */
const degrees = ({ bars }: Form): string =>
  bars
    .map((bar) =>
      bar
        .map(({ numeral }) =>
          /[b#]?[IViv]+/u.exec(parseNumeral(numeral ?? '').text)?.[0].toUpperCase(),
        )
        .join(' '),
    )
    .join(' | ');

published('open-music-theory', 'the blues progressions of twelve and sixteen bars', () => {
  test.each<[FormId, string]>([
    ['basic-tonic-ending', 'I I I I IV IV I I V IV I I'],
    ['sixteen-bar', 'I I I I I I I I IV IV I I V IV I I'],
  ])('%s has the bars that are printed', (id, printed) => {
    expect(degrees(formById(id))).toBe(printed.split(' ').join(' | '));
  });

  test('the phrases of basic-tonic-ending begin on I, IV and V', () => {
    const { bars } = formById('basic-tonic-ending');
    expect([0, 4, 8].map((bar) => bars[bar]?.[0]?.numeral)).toEqual(['I7', 'IV7', 'V7']);
  });

  test('recogniseForm takes the alteration II–V–I of the last phrase for a twelve-bar blues', () => {
    const { best, near } = recogniseForm('C | % | % | % | F | % | C | % | D7 | G7 | C | %');
    expect(near).toBe(true);
    expect(formById(best[0]?.form ?? '').bars).toHaveLength(12);
    expect(best[0]?.key).toBe('C');
  });
});

published('coker', 'four twelve-bar forms in major sevenths', () => {
  test.each<[number, FormId, string]>([
    [
      1,
      'major-seventh-plain',
      'IM7 | IV7 | IM7 | I7 | IV7 | IV7 | IM7 | IM7 | V7 | V7 | IM7 | IM7',
    ],
    [
      2,
      'major-seventh-diminished',
      'IM7 | IV7 | IM7 | v7 I7 | IV7 | #ivdim7 | IM7 | VI7 | ii7 | V7 | IM7 | IM7',
    ],
    [
      3,
      'major-seventh-minor-four',
      'IM7 | IV7 | IM7 | v7 I7 | IVM7 | iv7 | iii7 | VI7 | ii7 | V7 | IM7 | IM7',
    ],
    [
      4,
      'major-seventh-by-half-steps',
      'IM7 | ii7 #iidim7 | iii7 | v7 I7 | IVM7 | iv7 bVII7 | iii7 | biii7 | ii7 | V7 | IM7 | IM7',
    ],
  ])('example %i is %s', (_, id, printed) => {
    expect(formById(id).bars).toEqual(parseForm(printed.replaceAll('M7', 'maj7')).bars);
  });
});

published('steedman', 'the plain progression, and one of its elaborations', () => {
  test('basic-tonic-ending has the bars of the plain progression', () => {
    expect(degrees(formById('basic-tonic-ending'))).toBe(
      'I | I | I | I | IV | IV | I | I | V | IV | I | I',
    );
  });

  test('recogniseForm takes the chain of fifths from bar 6 for a twelve-bar form in its key', () => {
    const { best, near } = recogniseForm('C | F | C | C7 | F | B7 | E7 | A7 | D7 | G7 | C | C');
    expect(near).toBe(true);
    expect(best[0]?.key).toBe('C');
    expect(formById(best[0]?.form ?? '').bars).toHaveLength(12);
  });
});

published('wikipedia-ragtime', 'the cycle in C', () => {
  test.each<[FormId]>([['ragtime-eight-bar'], ['ragtime-sixteen-bar']])(
    '%s runs through A7, D7 and G7 to C',
    (id) => {
      const roots = degrees(formById(id))
        .split(/ \| | /u)
        .filter((one, at, all) => one !== all[at - 1]);
      expect(roots.join(' ')).toContain('I VI II V I');
    },
  );
});
