import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { ENDINGS, type EndingId, withEnding } from './endings.js';
import { formById } from './form-by-id.js';
import { formatForm } from './format-form.js';
import { introBars } from './intro.js';
import { withDoubleLength, withHalfLength } from './length.js';
import { parseForm } from './parse-form.js';
import { withDiminishedPassing, withTwoFive } from './passing-chords.js';
import { withoutQuickChange, withQuickChange } from './quick-change.js';
import { TURNAROUNDS, type TurnaroundId, withTurnaround } from './turnarounds.js';
import type { Form, FormBar } from './types.js';
import { VARIATIONS, varyForm } from './vary-form.js';
import { withBreak } from './with-break.js';

const oneLine = (form: Form) => formatForm(form, { barsPerLine: 99 }).replace(/^.*\n/u, '');
const lastLine = (form: Form) => oneLine({ ...form, bars: form.bars.slice(-4) });
const invalid = expect.objectContaining({ code: 'FORM_INVALID' });
const barText = (bars: readonly FormBar[]) => oneLine({ ...formById('basic'), bars });

describe('withQuickChange', () => {
  test('withQuickChange makes the quick change of the basic form and nothing else', () => {
    expect(withQuickChange('basic').bars).toEqual(formById('quick-change').bars);
  });

  test('withQuickChange takes the IV that the form has', () => {
    expect(withQuickChange('minor').bars).toEqual(formById('minor-quick-change').bars);
    expect(withQuickChange('rock').bars[1]).toEqual([{ numeral: 'IV', weight: 1 }]);
  });

  test('withQuickChange takes two bars of a twenty-four-bar form', () => {
    expect(oneLine(withQuickChange('twenty-four-bar'))).toMatch(
      /^\| I7 \| % \| IV7 \| % \| I7 \|/u,
    );
  });

  test.each(['vamp', 'swing-major-seventh', 'eight-bar-plagal', 'eight-bar-last-eight'])(
    'withQuickChange finds no place in %s',
    (id) => {
      expect(() => withQuickChange(formById(id))).toThrow(invalid);
    },
  );
});

describe('withoutQuickChange', () => {
  test('withoutQuickChange gives a form that has none back as it is', () => {
    expect(withoutQuickChange('basic')).toBe(formById('basic'));
  });

  test('withoutQuickChange undoes withQuickChange wherever bar 2 was like bar 1', () => {
    const plains = FORMS.filter(canQuickChange)
      .map((form) => withoutQuickChange(form))
      .filter(staysInBarTwo);
    expect(plains.length).toBeGreaterThan(20);
    for (const plain of plains) {
      expect(withoutQuickChange(withQuickChange(plain)).bars).toEqual(plain.bars);
    }
  });

  test('withoutQuickChange says in which bar it found another chord', () => {
    expect(() => withoutQuickChange('eight-bar-five-second')).toThrow(
      expect.objectContaining({ code: 'FORM_INVALID', where: { bar: 2 } }),
    );
  });
});

function staysInBarTwo({ bars }: Form): boolean {
  return JSON.stringify(bars[0]) === JSON.stringify(bars[1]);
}

function canQuickChange(form: Form): boolean {
  try {
    return withQuickChange(form) !== undefined;
  } catch {
    return false;
  }
}

describe('withDiminishedPassing', () => {
  test('withDiminishedPassing puts ♯IV diminished into bar 6 of twelve', () => {
    expect(withDiminishedPassing('quick-change').bars).toEqual(formById('diminished').bars);
  });

  test('withDiminishedPassing leaves the IV after V alone', () => {
    expect(lastLine(withDiminishedPassing('basic'))).toBe('| V7 | IV7 | I7 | V7 |');
  });

  test('withDiminishedPassing serves every verse of a longer form', () => {
    const bars = withDiminishedPassing('twelve-bar-with-bridge').bars;
    const places = bars.flatMap(([chord], index) =>
      chord?.numeral === '#ivdim7' ? index + 1 : [],
    );
    expect(places).toEqual([6, 18, 26, 38]);
  });

  test('withDiminishedPassing takes two bars of a twenty-four-bar form', () => {
    expect(oneLine(withDiminishedPassing('twenty-four-bar'))).toContain(
      '| IV7 | % | #ivdim7 | % | I7 |',
    );
  });

  test('withDiminishedPassing finds no place where IV lasts one bar', () => {
    expect(() => withDiminishedPassing('bebop')).not.toThrow();
    expect(() => withDiminishedPassing('eight-bar-four-five')).toThrow(invalid);
  });
});

describe('withTwoFive', () => {
  test('withTwoFive changes bars 9 and 10 of twelve, V–IV and V–V alike', () => {
    expect(lastLine(withTwoFive('basic'))).toBe('| ii7 | V7 | I7 | V7 |');
    expect(lastLine(withTwoFive('basic-two-bars-of-v'))).toBe('| ii7 | V7 | I7 | % |');
  });

  test('withTwoFive is half-diminished in minor, and a triad beside triads', () => {
    expect(lastLine(withTwoFive('minor'))).toBe('| iim7b5 | V7 | i7 | V7 |');
    expect(lastLine(withTwoFive('eight-bar-late-four-open'))).toBe('| IV | % | ii | V |');
    expect(lastLine(withTwoFive('minor-five-minor'))).toBe('| iidim | v | i | % |');
  });

  test('withTwoFive takes two bars of each in a twenty-four-bar form', () => {
    expect(oneLine(withTwoFive('twenty-four-bar'))).toContain('| ii7 | % | V7 | % | I7 |');
  });

  test('withTwoFive leaves a form that has its ii–V', () => {
    expect(withTwoFive('jazz')).toBe(formById('jazz'));
  });

  test('withTwoFive finds no place without V', () => {
    expect(() => withTwoFive('minor-vamp')).toThrow(invalid);
  });
});

describe('TURNAROUNDS and ENDINGS', () => {
  test.each([
    ['TURNAROUNDS', TURNAROUNDS],
    ['ENDINGS', ENDINGS],
  ])(
    '%s: two bars each, of their own mode, with ids of their own, as parseForm reads them',
    (_name, rows) => {
      expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
      for (const { bars, mode, source } of rows) {
        expect(bars.length).toBe(2);
        const form = parseForm(barText(bars));
        expect(form.bars).toEqual(bars);
        expect(form.mode).toBe(mode === 'minor' || form.mode === 'minor' ? 'minor' : 'major');
        expect(source.length).toBeGreaterThan(0);
      }
    },
  );

  test('TURNAROUNDS do not rest on the tonic, ENDINGS do', () => {
    const last = (bars: readonly FormBar[]) => bars.at(-1)?.at(-1)?.numeral;
    for (const { bars } of TURNAROUNDS) expect(last(bars)).toMatch(/^(?:V|bII)/u);
    for (const { bars, mode } of ENDINGS) expect(last(bars)).toBe(mode === 'major' ? 'I7' : 'i7');
  });

  test('withTurnaround and withEnding change the last two bars of every form of their mode', () => {
    const long = FORMS.filter(({ bars }) => bars.length > 2);
    for (const form of long) {
      for (const { id, bars } of TURNAROUNDS.filter(({ mode }) => mode === form.mode)) {
        const turned = withTurnaround(form, id as TurnaroundId);
        expect(turned.bars).toEqual([...form.bars.slice(0, -2), ...bars]);
        expect(withTurnaround(turned, id as TurnaroundId)).toBe(turned);
      }
      for (const { id, bars } of ENDINGS.filter(({ mode }) => mode === form.mode)) {
        expect(withEnding(form, id as EndingId).bars).toEqual([...form.bars.slice(0, -2), ...bars]);
      }
    }
  });

  test('withTurnaround names the choices of the form’s mode', () => {
    expect(() => withTurnaround('minor', 'two-five')).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'minor-two-five' }),
    );
  });

  test('withTurnaround and withEnding find no place in two bars', () => {
    expect(() => withTurnaround(parseForm('I7 | V7'), 'five')).toThrow(invalid);
    expect(() => withEnding(parseForm('I7 | V7'), 'one')).toThrow(invalid);
  });
});

describe('withDoubleLength and withHalfLength', () => {
  test('withDoubleLength makes the sixteen bars of the eight', () => {
    expect(withDoubleLength('eight-bar').bars).toEqual(formById('sixteen-bar-doubled-eight').bars);
  });

  test('withHalfLength joins what differs and keeps what does not', () => {
    expect(oneLine(withHalfLength(parseForm('I7 | I7 V7 | IV7 / / I7 | I7')))).toBe(
      '| I7 / / V7 | IV7 / / I7 / / / / |',
    );
  });

  test('withHalfLength undoes withDoubleLength for every form of the catalogue', () => {
    for (const form of FORMS) {
      expect(withHalfLength(withDoubleLength(form)).bars).toEqual(form.bars);
    }
  });

  test('withHalfLength refuses an odd number of bars, withDoubleLength too many', () => {
    expect(() => withHalfLength('eleven-bar')).toThrow(invalid);
    expect(() => withDoubleLength(parseForm('I7 |'.repeat(513)))).toThrow(invalid);
  });
});

describe('withBreak', () => {
  test('withBreak silences the bars it is given', () => {
    expect(oneLine(withBreak('vamp', [2, 4]))).toBe('| I7 | N.C. | I7 | N.C. |');
  });

  test('withBreak strikes the first beat in stop time, as long as the metre’s beat', () => {
    const hit = { hit: 'first-beat' } as const;
    expect(oneLine(withBreak(parseForm('I7 V7 | IV7'), [1], hit))).toBe('| I7 N.C. / / | IV7 |');
    expect(oneLine(withBreak(parseForm('12/8 I7 | IV7'), [1], hit))).toBe('| I7 N.C. / / | IV7 |');
    expect(oneLine(withBreak(parseForm('6/8 I7 | IV7'), [1], hit))).toBe('| I7 N.C. | IV7 |');
    expect(oneLine(withBreak(parseForm('1/4 I7 V7'), [1], hit))).toBe('| I7 |');
  });

  test('withBreak twice is once, and a silent bar stays silent', () => {
    for (const hit of ['none', 'first-beat'] as const) {
      const once = withBreak('jazz', [1, 11], { hit });
      expect(withBreak(once, [1, 11], { hit })).toBe(once);
    }
    expect(oneLine(withBreak(parseForm('N.C. | I7'), [1], { hit: 'first-beat' }))).toBe(
      '| N.C. | I7 |',
    );
  });

  test.each([[[0]], [[13]], [[1.5]]])('withBreak refuses bars %j of twelve', (bars) => {
    expect(() => withBreak('basic', bars)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });

  test('withBreak refuses another hit', () => {
    expect(() => withBreak('basic', [1], { hit: 'last' as 'none' })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});

describe('introBars', () => {
  test.each([
    ['basic', '| V7 | IV7 | I7 | V7 |'],
    ['jazz', '| ii7 | V7 | I7 V7/ii | ii7 V7 |'],
    ['minor-flat-six', '| bVI7 | V7 | i7 | V7 |'],
    ['minor-alternating', '| bVI | V | i | V |'],
    ['ten-bar', '| V7 | I7 |'],
    ['eleven-bar', '| V7 | IV7 | I7 |'],
    ['thirteen-bar', '| V7 | IV7 | I7 | % | V7 |'],
    ['eight-bar', '| V | I IV | I V |'],
    ['sixteen-bar-longer-ending', '| V7 | % | IV7 | % | I7 | % | % | % |'],
    ['twenty-four-bar', '| V7 | % | IV7 | % | I7 | % | % | V7 |'],
    ['twelve-bar-with-bridge', '| V7 | IV7 | I7 | % |'],
  ])('introBars of %s from the V are %s', (id, bars) => {
    expect(barText(introBars(formById(id), 'from-the-five'))).toBe(bars);
  });

  test('introBars from the V begin on V or what stands for it, wherever a form has one', () => {
    const without = ['eight-bar-plagal', 'vamp', 'minor-vamp'];
    for (const form of FORMS.filter(({ id }) => !without.includes(id))) {
      expect(introBars(form, 'from-the-five')[0]?.[0]?.numeral).toMatch(
        /^(?:V7?|v7?|ii7|II7|iim7b5|bVI7?|bVImaj7|V9)$/u,
      );
    }
    for (const id of without)
      expect(() => introBars(formById(id), 'from-the-five')).toThrow(invalid);
  });

  test('introBars from the V take the V of the last line, also of ten or eleven bars', () => {
    const form = parseForm('I | I | I | I | IV | V | I | I | V | IV | I');
    expect(barText(introBars(form, 'from-the-five'))).toBe('| V | IV | I |');
  });

  test('introBars from the turnaround are the last two bars, four of twenty-four', () => {
    expect(introBars('jazz', 'from-the-turnaround')).toEqual(formById('jazz').bars.slice(-2));
    expect(introBars('twenty-four-bar', 'from-the-turnaround').length).toBe(4);
    expect(() => introBars(parseForm('I7 | V7'), 'from-the-turnaround')).toThrow(invalid);
  });
});

describe('varyForm', () => {
  test('varyForm applies variations in order', () => {
    const form = varyForm('basic', ['quick-change', 'two-five', 'minor', 'ninths']);
    expect(oneLine(form)).toBe('| i9 | iv9 | i9 | % | iv9 | % | i9 | % | iim7b5 | V9 | i9 | V9 |');
  });

  test('varyForm knows every name of VARIATIONS', () => {
    for (const name of VARIATIONS) expect(varyForm('basic', [name]).id).toBe('basic');
  });

  test('varyForm keeps the number of bars but for double and half length', () => {
    for (const name of VARIATIONS) {
      const expected = { 'double-length': 24, 'half-length': 6 }[name as 'half-length'] ?? 12;
      expect(varyForm('basic', [name]).bars.length).toBe(expected);
    }
  });

  test('varyForm applied twice is once, but for double and half length', () => {
    for (const name of VARIATIONS.filter((variation) => !variation.endsWith('length'))) {
      const once = varyForm('basic', [name]);
      expect(varyForm(once, [name])).toBe(once);
    }
  });

  test('varyForm refuses a name that there is not', () => {
    expect(() => varyForm('basic', ['qick-change' as 'quick-change'])).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'quick-change' }),
    );
  });
});

describe('variations together', () => {
  const names = VARIATIONS.filter((name) => !/triads|sevenths|no-quick|length/u.test(name));
  const pairs = names.flatMap((one) => names.map((other) => [one, other] as const));

  test.each(pairs)('%s and then %s is the same the other way round', (one, other) => {
    for (const id of ['basic', 'basic-two-bars-of-v', 'twenty-four-bar'] as const) {
      const form = formById(id);
      expect(varyForm(form, [one, other]).bars).toEqual(varyForm(form, [other, one]).bars);
    }
  });

  test('withTurnaround and withEnding leave the other variations where they are', () => {
    for (const name of names.filter((variation) => variation !== 'minor')) {
      const form = varyForm('basic', [name]);
      const turned = withTurnaround(form, 'one-six-two-five');
      expect(turned.bars.slice(0, -2)).toEqual(form.bars.slice(0, -2));
      expect(withEnding(turned, 'one').bars).toEqual(withEnding(form, 'one').bars);
    }
  });

  test('withBreak and a turnaround work on bars of their own', () => {
    const basic = formById('basic');
    const one = withTurnaround(withBreak(basic, [1, 2]), 'two-five');
    expect(withBreak(withTurnaround(basic, 'two-five'), [1, 2]).bars).toEqual(one.bars);
  });

  test('a road through many variations gives the chart of a band', () => {
    const form = withTurnaround(
      varyForm('basic', ['quick-change', 'diminished', 'two-five']),
      'four-diminished',
    );
    expect(formatForm(form, { key: 'Bb' })).toBe(
      [
        '| Bb7 | Eb7   | Bb7             | %      |',
        '| Eb7 | Edim7 | Bb7             | %      |',
        '| Cm7 | F7    | Bb7 / Eb7 Edim7 | Bb7 F7 |',
      ].join('\n'),
    );
  });
});
