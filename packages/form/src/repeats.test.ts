import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatForm } from './format-form.js';
import { parseForm } from './parse-form.js';

/** A stretch of music on a page: bars that are played so many times, with an ending for each pass. */
interface Section {
  readonly body: readonly string[];
  /** Bars of each ending; none for a plain repeat or a stretch that is not repeated. */
  readonly endings: readonly (readonly string[])[];
  readonly isRepeated: boolean;
}

const bars = fc.array(fc.constantFrom('I7', 'IV7', 'V7', 'ii7 V7', 'vi7', 'N.C.'), {
  minLength: 1,
  maxLength: 3,
});

const sections: fc.Arbitrary<Section> = fc.oneof(
  bars.map((body) => ({ body, endings: [], isRepeated: false })),
  bars.map((body) => ({ body, endings: [], isRepeated: true })),
  fc
    .tuple(bars, fc.array(bars, { minLength: 2, maxLength: 4 }))
    .map(([body, endings]) => ({ body, endings, isRepeated: true })),
);

/** The section as it is written, with a bar line at its end. */
function write({ body, endings, isRepeated }: Section): string {
  if (!isRepeated) return `| ${body.join(' | ')} |`;
  if (endings.length === 0) return `|: ${body.join(' | ')} :|`;
  const last = endings.length - 1;
  const written = endings.map(
    (ending, pass) => `${pass + 1}. ${ending.join(' | ')} ${pass === last ? '|' : ':|'}`,
  );
  return `|: ${body.join(' | ')} |${written.join('')}`;
}

/** The section as it sounds. */
function play({ body, endings, isRepeated }: Section): readonly string[] {
  if (!isRepeated) return body;
  if (endings.length === 0) return [...body, ...body];
  return endings.flatMap((ending) => [...body, ...ending]);
}

/** One line, every bar written out. */
const plain = (played: readonly string[]) =>
  formatForm(parseForm(played.join(' | ')), { barsPerLine: 1 });

describe('parseForm plays repeats', () => {
  test('of any sections, with endings or without, on a line each', () => {
    fc.assert(
      fc.property(fc.array(sections, { minLength: 1, maxLength: 5 }), (page) => {
        const form = parseForm(page.map(write).join('\n'));
        expect(formatForm(form, { barsPerLine: 1 })).toBe(plain(page.flatMap(play)));
      }),
    );
  });

  test('of any sections on one line, where a new repeat follows the old', () => {
    fc.assert(
      fc.property(fc.array(sections, { minLength: 1, maxLength: 5 }), (page) => {
        // On one line the bar line between two sections is written once.
        const text = page
          .map(write)
          .join('\n')
          .replaceAll(/\|\n\|/gu, '|');
        expect(formatForm(parseForm(text), { barsPerLine: 1 })).toBe(plain(page.flatMap(play)));
      }),
    );
  });

  test('an ending for several passes is that ending, written out for each', () => {
    fc.assert(
      fc.property(
        bars,
        bars,
        bars,
        fc.integer({ min: 2, max: 5 }),
        (body, ending, last, passes) => {
          const numbers = Array.from({ length: passes }, (_, pass) => `${pass + 1}.`).join('');
          const [a, b, c] = [body, ending, last].map((part) => part.join(' | '));
          const form = parseForm(`|: ${a} |${numbers} ${b} :|${passes + 1}. ${c} ||`);
          const passed = Array.from({ length: passes }, () => [...body, ...ending]).flat();
          expect(formatForm(form, { barsPerLine: 1 })).toBe(plain([...passed, ...body, ...last]));
        },
      ),
    );
  });

  test('a text that lacks one of its repeat signs or endings is refused, or says something else', () => {
    const whole = '|: I7 | IV7 |1. V7 :|2. I7 ||';
    expect(parseForm(whole).bars.length).toBe(6);
    for (const [cut, code] of [
      ['|: I7 | IV7 |1. V7 |2. I7 ||', 'FORM_SYNTAX'],
      ['|: I7 | IV7 | V7 :|2. I7 ||', 'FORM_SYNTAX'],
      ['|: I7 | IV7 |1. V7 :| I7 ||', 'FORM_SYNTAX'],
      ['|: I7 | IV7 |2. V7 :|1. I7 ||', 'FORM_SYNTAX'],
    ] as const) {
      expect(() => parseForm(cut)).toThrow(expect.objectContaining({ code }));
    }
    // Without the |: the repeat goes back to the beginning, which is the same here.
    expect(parseForm(whole.replace('|:', '|')).bars).toEqual(parseForm(whole).bars);
  });

  test('many passes do not grow past the bars a form can hold', () => {
    const body = Array.from({ length: 200 }, () => 'I7').join(' | ');
    expect(() => parseForm(`|: ${body} |1.2.3.4.5. V7 :|6. I7 ||`)).toThrow(
      expect.objectContaining({ code: 'FORM_SYNTAX', expected: expect.stringContaining('1024') }),
    );
    expect(parseForm(`|: ${body} |1.2.3.4. V7 :|5. I7 ||`).bars.length).toBe(5 * 201);
  });
});
