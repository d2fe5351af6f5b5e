import { chordOfNumeral, parseNumeral, TONICS } from '@reedplate/pitch';
import { Chord, Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { FORMS, type FormId } from './catalogue.js';
import { formById } from './form-by-id.js';
import { formatForm } from './format-form.js';
import { makeChart } from './make-chart.js';
import { parseForm } from './parse-form.js';
import { TURNAROUNDS } from './turnarounds.js';
import type { Form } from './types.js';

/** The form as its sources print it where they give degrees only: qualities left out. */
const degrees = ({ bars }: Form) =>
  bars.map((bar) => bar.map(({ numeral }) => degreeOf(numeral ?? '')).join(' ')).join(' | ');

function degreeOf(numeral: string): string {
  const { text } = parseNumeral(numeral);
  const [, sign = '', letters = ''] = /^([b#]?)([IViv]+)/u.exec(text) ?? [];
  return sign + letters.toUpperCase();
}

const written = (form: Form) => formatForm(form, { barsPerLine: 99 }).replace(/^.*\n/u, '');

/** A row as a source prints it, in one line of lead-sheet marks. */
const printed = (text: string) => written(parseForm(text));

describe('FORMS against Wikipedia, "Twelve-bar blues"', () => {
  published('wikipedia-twelve-bar', 'the twelve-bar forms', () => {
    test.each<[FormId, string]>([
      // Section "Structure": I I I I, IV IV I I, V V I I (there after Benward & Saker 2003, p. 186).
      ['basic-two-bars-of-v', 'I | I | I | I | IV | IV | I | I | V | V | I | I'],
      // Section "Variations": V–IV–I–I, "now considered standard" (there after Tanner & Gerow 1984, p. 37).
      ['basic-tonic-ending', 'I | I | I | I | IV | IV | I | I | V | IV | I | I'],
      // Section "Variations": the quick change, IV in bar 2.
      ['quick-change-two-bars-of-v', 'I | IV | I | I | IV | IV | I | I | V | V | I | I'],
    ])('%s has the degrees that are printed', (id, row) => {
      expect(degrees(formById(id))).toBe(row);
    });

    test('quick-change-late-sevenths has the chords of T S T T7, S S7 T T7, D S T D7', () => {
      const letters = new Map([
        ['T', 'I'],
        ['S', 'IV'],
        ['D', 'V'],
      ]);
      const row = 'T S T T7 S S7 T T7 D S T D7'
        .split(' ')
        .map((mark) => `${letters.get(mark[0] ?? '')}${mark.slice(1)}`)
        .join(' | ');
      expect(written(formById('quick-change-late-sevenths'))).toBe(printed(row));
    });

    test('basic is the standard form with the last bar on V, "called a turnaround"', () => {
      expect(degrees(formById('basic'))).toBe(
        degrees(formById('basic-tonic-ending')).replace(/I$/u, 'V'),
      );
    });

    test('jazz-three-six has the chords of section "In jazz", in B flat and in C', () => {
      const inBFlat =
        'Bb7 | Eb7 | Bb7 | Bb7 | Eb7 | Edim7 | Bb7 | Dm7 G7 | Cm7 | F7 | Dm7 G7 | Cm7 F7';
      expect(parseForm(inBFlat, { key: 'Bb' }).bars).toEqual(formById('jazz-three-six').bars);
      const inC = 'C7 | F7 | C7 | C7 | F7 | F#dim7 | C7 | Em7 A7 | Dm7 | G7 | Em7 A7 | Dm7 G7';
      expect(parseForm(inC, { key: 'C' }).bars).toEqual(formById('jazz-three-six').bars);
    });

    test('falling-dominants are the turnaround of section "In jazz", C7 Eb7, D7 Db7', () => {
      const turnaround = TURNAROUNDS.find(({ id }) => id === 'falling-dominants');
      expect(parseForm('C7 Eb7 | D7 Db7', { key: 'C' }).bars).toEqual(turnaround?.bars);
      expect(formById('jazz-tritone').bars.slice(-2)).toEqual(turnaround?.bars);
    });

    test('bebop and jazz-six-dominant have V of ii in bar 8, VI7♭9 with its flat ninth', () => {
      // Section "Bebop blues": "A7♭9 (V/ii = VI7♭9)".
      expect(formById('bebop').bars[7]?.at(-1)?.numeral).toBe('VI7b9');
      expect(formById('jazz-six-dominant').bars[7]?.at(-1)?.numeral).toBe('VI7');
      expect(parseNumeral('VI7').semitones).toBe(parseNumeral('V7/ii').semitones);
    });
  });
});

published('bebop-blues', 'bars of the bebop blues', () => {
  // "Quick Change … IV7 in bar 2"; "Bar 5 … the IV7", "#IVdim7 in bar 6", "VI7b9 or V7b9/ii in bar 8";
  // "a ii-V-I which is played over bars 9, 10 and the first two beats of 11".
  test.each<[number, string]>([
    [1, 'I7'],
    [2, 'IV7'],
    [3, 'I7'],
    [5, 'IV7'],
    [6, '#ivdim7'],
    [8, 'VI7b9'],
    [9, 'ii7'],
    [10, 'V7'],
    [11, 'I7'],
  ])(
    'bar %i of bebop-six-dominant begins with %s, as guitar4free, "Bebop Blues"',
    (bar, numeral) => {
      expect(formById('bebop-six-dominant').bars[bar - 1]?.[0]?.numeral).toBe(numeral);
    },
  );

  test('bars 11 and 12 of bebop-six-dominant change at the half and fall by fourths to I', () => {
    const last = formById('bebop-six-dominant').bars.slice(10).flat();
    const roots = last.slice(1).map(({ numeral }) => parseNumeral(numeral ?? '').semitones);
    expect(last).toHaveLength(4);
    expect([...roots, 0].slice(1).every((root, at) => ((roots[at] ?? 0) + 5) % 12 === root)).toBe(
      true,
    );
  });
});

published('darling', 'twelve-bar blues', () => {
  test('basic-tonic-ending has the counts of David Darling, Encyclopedia of Music, "twelve-bar blues"', () => {
    // "four bars of a tonic chord, two bars of a subdominant chord, two bars of a tonic chord, one
    // bar of a dominant chord, one bar of a subdominant chord, and two bars of a tonic chord"
    const counts: [string, number][] = [
      ['I7', 4],
      ['IV7', 2],
      ['I7', 2],
      ['V7', 1],
      ['IV7', 1],
      ['I7', 2],
    ];
    const bars = counts.flatMap(([numeral, count]) => Array.from({ length: count }, () => numeral));
    expect(formById('basic-tonic-ending').bars.map(([chord]) => chord?.numeral)).toEqual(bars);
  });
});

published('harnum', 'sevenths throughout', () => {
  test('basic-tonic-ending has sevenths in every bar, as "Basic Music Theory: How to Read, Write, and Understand Written Music", ch. 31, ex. 31.6', () => {
    expect(
      formById('basic-tonic-ending')
        .bars.flat()
        .every(({ numeral }) => numeral?.endsWith('7')),
    ).toBe(true);
  });
});

describe('FORMS against Wikipedia, "Eight-bar blues"', () => {
  published('wikipedia-eight-bar', 'the eight-bar forms', () => {
    test.each<[FormId, string]>([
      ['eight-bar-five-second', 'I | V7 | IV7 | IV7 | I | V7 IV7 | I | V7'],
      ['eight-bar', 'I | I | IV | IV | I | V | I IV | I V'],
      ['eight-bar-late-four', 'I | I | I | I | IV | IV | V | I'],
      ['eight-bar-five-second-sevenths', 'I7 | V7 | IV7 | IV7 | I7 | V7 | I7 | V7'],
      ['eight-bar-late-four-open', 'I | I | I | I | IV | IV | V | V'],
      ['eight-bar-four-five', 'I7 | I7 | I7 | I7 | IV7 | V7 | I7 | V7'],
      // An older revision: T T7 S Sm, T D T D, a bar each.
      ['eight-bar-minor-four', 'I | I7 | IV | iv | I | V | I | V'],
      // An older revision, a symbol a beat: TTSS TTTT SSSS TTTT, TTTT SSSS TTDD TTTT gives this.
      ['eight-bar-plagal', 'I IV | I | IV | I | I | IV | I V | I'],
    ])('%s has the chords that are printed', (id, row) => {
      expect(written(formById(id))).toBe(printed(row));
    });
  });

  published('practice', 'the trade', () => {
    test('eight-bar-last-eight comes of "dropping the first four bars from the twelve-bar blues"', () => {
      const lastEight = formById('basic-tonic-ending').bars.slice(4);
      expect(degrees(formById('eight-bar-last-eight'))).toBe(
        degrees({ ...formById('basic'), bars: lastEight }),
      );
    });
  });

  published('wikipedia-eight-bar', 'the eight-bar forms', () => {
    test('the move to IV "usually happens at bar 3", or V in bar 2 is characteristic', () => {
      const isUsual = ({ bars }: Form) =>
        degreeOf(bars[2]?.[0]?.numeral ?? 'I') === 'IV' ||
        degreeOf(bars[1]?.[0]?.numeral ?? 'I') === 'V';
      const eights = FORMS.filter(({ bars }) => bars.length === 8);
      expect(eights.filter(isUsual).map(({ id }) => id)).toEqual([
        'eight-bar',
        'eight-bar-five-second',
        'eight-bar-five-second-turnaround',
        'eight-bar-five-second-back',
        'eight-bar-five-second-sevenths',
        'eight-bar-minor-four',
        'eight-bar-minor-four-turnaround',
        'eight-bar-plagal',
      ]);
    });
  });
});

describe('FORMS against Wikipedia, "Sixteen-bar blues"', () => {
  published('wikipedia-sixteen-bar', 'the sixteen-bar forms', () => {
    test.each<[FormId, string]>([
      // "extends the first section of tonic chords (bars 1–4) ... to become the first half"
      ['sixteen-bar', 'I | I | I | I | I | I | I | I | IV | IV | I | I | V | IV | I | I'],
      // "one adaptation extends the third section"
      [
        'sixteen-bar-longer-ending',
        'I | I | I | I | IV | IV | I | I | V | V | IV | IV | I | I | I | I',
      ],
      // "one might repeat the second section"
      [
        'sixteen-bar-middle-again',
        'I | I | I | I | IV | IV | I | I | IV | IV | I | I | V | IV | I | I',
      ],
      // "the transition from the ninth (dominant) to tenth (subdominant) twelve-bar chord is repeated twice"
      [
        'sixteen-bar-cadence-again',
        'I | I | I | I | IV | IV | I | I | V | IV | V | IV | V | IV | I | I',
      ],
      // Variety 3 of editions about 2010: T T T T, S S T T, D S D S, T T T T.
      [
        'sixteen-bar-cadence-and-ending',
        'I | I | I | I | IV | IV | I | I | V | IV | V | IV | I | I | I | I',
      ],
    ])('%s has the degrees that are described', (id, row) => {
      expect(degrees(formById(id))).toBe(row);
    });
  });
});

published('jarrett-day', 'twenty-four bars', () => {
  test('twenty-four-bar: "each chord lasts for twice as many bars" (Wikipedia, "Twelve-bar blues"), but for the turnaround bar of Jarrett & Day, composition handbook, p. 153', () => {
    const doubled = formById('basic').bars.flatMap((bar) => [bar, bar]);
    const bars = formById('twenty-four-bar').bars;
    expect(bars.slice(0, 22)).toEqual(doubled.slice(0, 22));
    expect(bars.slice(22).map(([chord]) => chord?.numeral)).toEqual(['I7', 'V7']);
  });
});

describe('minor forms', () => {
  const minors = FORMS.filter(({ mode, bars }) => mode === 'minor' && bars.length === 12);

  published('onmusic', 'the minor twelve-bar', () => {
    test.each(minors)(
      '$id: iv in bar 5, a cadence to i from bar 9 (OnMusic Dictionary, "12-bar minor blues")',
      ({ bars }) => {
        expect(parseNumeral(bars[4]?.[0]?.numeral ?? '')).toMatchObject({ step: 4, semitones: 5 });
        expect(bars[8]?.[0]?.numeral).toMatch(/^(?:V|v|bVI|ii)/u);
        expect(bars[10]?.[0]?.numeral).toMatch(/^i/u);
      },
    );
  });

  published('premier-guitar', 'minor forms', () => {
    // Premier Guitar, "Style Guide: Essential Blues Progressions", p. 3.
    test.each<[string, FormId, readonly (readonly [number, string])[]]>([
      [
        'fig. 12: V7 in bars 9 and 12',
        'minor',
        [
          [9, 'V7'],
          [12, 'V7'],
        ],
      ],
      [
        'fig. 13: ♭VI in bar 9, V7 in bar 10',
        'minor-flat-six',
        [
          [9, 'bVI7'],
          [10, 'V7'],
        ],
      ],
      ['fig. 14: ♭VI as a major seventh', 'minor-flat-six-major-seventh', [[9, 'bVImaj7']]],
      [
        'fig. 15: ii becomes m7♭5',
        'minor-jazz',
        [
          [2, 'iim7b5'],
          [9, 'iim7b5'],
          [12, 'iim7b5'],
        ],
      ],
    ])('Premier Guitar %s', (_figure, id, places) => {
      for (const [bar, numeral] of places) {
        expect(formById(id).bars[bar - 1]?.[0]?.numeral).toBe(numeral);
      }
    });
  });
});

describe('charts against tonal 6.4.3', () => {
  /** Names of a quality that tonal has under another: its symbols after the root. */
  const SUFFIXES = new Map([['', 'M']]);

  published('tonal', 'chords, scales and names', () => {
    test.each(FORMS)('every chord of $id in every key has the tones that tonal gives', (form) => {
      for (const tonic of TONICS) {
        const { spans } = makeChart(form, form.mode === 'minor' ? `${tonic}m` : tonic);
        for (const { chord } of spans) {
          const suffix = SUFFIXES.get(chord?.quality ?? '') ?? chord?.quality;
          const { notes, empty } = Chord.getChord(suffix ?? '', chord?.root);
          expect(empty).toBe(false);
          expect(chord?.tones.map(({ pitchClass }) => pitchClass)).toEqual(
            notes.map((note) => Note.chroma(note)),
          );
        }
      }
    });

    test('every root stands as far above its tonic as tonal transposes by the degree', () => {
      const intervals = new Map(
        Object.entries({
          I: '1P',
          bII: '2m',
          II: '2M',
          bIII: '3m',
          '#II': '2A',
          III: '3M',
          IV: '4P',
          '#IV': '4A',
          bV: '5d',
          V: '5P',
          bVI: '6m',
          VI: '6M',
          bVII: '7m',
          VII: '7M',
        }),
      );
      const numerals = new Set(
        FORMS.flatMap(({ bars }) => bars.flat().map(({ numeral }) => numeral ?? '')),
      );
      expect(numerals.size).toBeGreaterThan(30);
      for (const numeral of [...numerals].filter((text) => !text.includes('/'))) {
        for (const tonic of TONICS) {
          const expected = Note.transpose(tonic, intervals.get(degreeOf(numeral)) ?? '');
          expect(`${numeral} in ${tonic}: ${chordOfNumeral(numeral, tonic).root}`).toBe(
            `${numeral} in ${tonic}: ${expected}`,
          );
        }
      }
    });
  });
});
