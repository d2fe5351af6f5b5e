import { parseMetre } from '@reedplate/line';
import {
  chordSuffixes,
  numeralOfChord,
  parseChord,
  parseKey,
  parseNumeral,
  TONICS,
  toPitchClass,
  transposeKey,
} from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsOf, metres, tonics } from './arbitraries.js';
import { FORMS } from './catalogue.js';
import { chartEnd, chordAt } from './chord-at.js';
import { chordChanges, nextChange, previousChange } from './chord-changes.js';
import { withNinths, withSevenths, withTriads } from './chord-colours.js';
import { withDoubleLength, withHalfLength } from './length.js';
import { makeChart } from './make-chart.js';
import { makeForm } from './make-form.js';
import { toMinor } from './to-minor.js';
import type { Chart, Form } from './types.js';
import { withBreak } from './with-break.js';

const inMode = (form: Form, tonic: (typeof TONICS)[number]) =>
  form.mode === 'minor' ? (`${tonic}m` as const) : tonic;

const charts = fc
  .record({
    form: formsOf(),
    tonic: tonics,
    metre: metres,
    choruses: fc.integer({ min: 1, max: 4 }),
    pickup: fc.nat({ max: 239 }),
  })
  .map(({ form, tonic, ...options }) => makeChart(form, inMode(form, tonic), { ...options }));

describe('makeForm', () => {
  test('makeForm of its own bars and details is the same form', () => {
    fc.assert(
      fc.property(formsOf(), (form) => {
        const { bars, mode: _, ...details } = form;
        expect(makeForm(bars, details)).toEqual(form);
      }),
    );
  });

  test('makeForm keeps the proportions of a bar', () => {
    const weights = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(weights, fc.integer({ min: 1, max: 3 }), (bar, factor) => {
        const chords = bar.map((weight) => ({ numeral: 'I7', weight }));
        const scaled = bar.map((weight) => ({ numeral: 'I7', weight: weight * factor }));
        expect(makeForm([scaled]).bars).toEqual(makeForm([chords]).bars);
      }),
    );
  });
});

describe('makeChart', () => {
  test('makeChart covers every bar, without gap and without overlap, in any metre', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const { barTicks, beatTicks } = parseMetre(chart.metre);
        let time = chart.pickup;
        for (const { start, end, bar, beat } of chart.spans) {
          expect(start).toBe(time);
          expect(Number.isInteger(end) && end > start).toBe(true);
          const barStart = chart.pickup + (bar - 1) * barTicks;
          expect(start >= barStart && end <= barStart + barTicks).toBe(true);
          expect(barStart + (beat - 1) * beatTicks).toBeCloseTo(start, 6);
          time = end;
        }
        expect(time).toBe(chart.pickup + chart.bars * barTicks);
        expect(chart.bars).toBe(chart.spans.at(-1)?.bar);
      }),
    );
  });

  test('makeChart gives each chord its share of the bar, to a tick', () => {
    fc.assert(
      fc.property(formsOf(), metres, (form, metre) => {
        const { barTicks } = parseMetre(metre);
        const { spans } = makeChart(form, inMode(form, 'C'), { metre });
        const shares = form.bars.flatMap((bar) => {
          const total = bar.reduce((sum, { weight }) => sum + weight, 0);
          return bar.map(({ weight }) => (barTicks * weight) / total);
        });
        for (const [index, { start, end }] of spans.entries()) {
          expect(Math.abs(end - start - (shares[index] ?? 0))).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('makeChart commutes with transposition, and keeps spelling where the key does', () => {
    fc.assert(
      fc.property(
        formsOf(),
        tonics,
        fc.integer({ min: -24, max: 24 }),
        (form, tonic, semitones) => {
          const key = parseKey(inMode(form, tonic));
          const here = makeChart(form, key);
          const there = makeChart(form, transposeKey(key, semitones));
          const moved = ({ spans }: Chart, by: number) =>
            spans.map(({ chord, ...span }) => ({
              ...span,
              quality: chord?.quality,
              tones: chord?.tones.map(({ degree, pitchClass }) => [
                degree,
                toPitchClass(pitchClass + by),
              ]),
            }));
          expect(moved(there, 0)).toEqual(moved(here, semitones));
        },
      ),
    );
  });

  test('makeChart of two choruses is the chart of one, twice', () => {
    fc.assert(
      fc.property(formsOf(), (form) => {
        const key = inMode(form, 'G');
        const once = makeChart(form, key);
        const twice = makeChart(form, key, { choruses: 2 });
        const half = twice.spans.length / 2;
        const length = chartEnd(once);
        expect(twice.spans.slice(0, half)).toEqual(once.spans);
        expect(twice.spans.slice(half)).toEqual(
          once.spans.map((span) => ({
            ...span,
            start: span.start + length,
            end: span.end + length,
            chorus: 2,
            bar: span.bar + once.bars,
          })),
        );
      }),
    );
  });
});

describe('chordAt, nextChange and previousChange', () => {
  test('chordAt finds the one span around any tick', () => {
    fc.assert(
      fc.property(charts, fc.nat(), (chart, seed) => {
        const tick = seed % chartEnd(chart);
        const around = chart.spans.filter(({ start, end }) => start <= tick && tick < end);
        expect(around.length).toBe(tick < chart.pickup ? 0 : 1);
        expect(chordAt(chart, tick)).toBe(around[0]);
      }),
    );
  });

  test('chordChanges cover the chart, and no two neighbours sound the same', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const changes = chordChanges(chart);
        expect(changes[0]?.start).toBe(chart.pickup);
        expect(changes.at(-1)?.end).toBe(chartEnd(chart));
        for (const [index, change] of changes.slice(1).entries()) {
          expect(change.start).toBe(changes[index]?.end);
          expect(change.chord?.symbol).not.toBe(changes[index]?.chord?.symbol);
        }
        for (const { start, chord } of chart.spans) {
          expect(previousChange(changes, start)?.chord?.symbol).toBe(chord?.symbol);
        }
      }),
    );
  });

  test('nextChange and previousChange are what a search from end to end finds', () => {
    fc.assert(
      fc.property(charts, fc.nat(), (chart, seed) => {
        const changes = chordChanges(chart);
        const tick = seed % chartEnd(chart);
        expect(nextChange(changes, tick)).toBe(changes.find(({ start }) => start > tick));
        expect(previousChange(changes, tick)).toBe(changes.findLast(({ start }) => start <= tick));
      }),
    );
  });
});

describe('variations of any form', () => {
  const qualities = [withTriads, withSevenths, withNinths, (form: Form) => toMinor(form)];

  test('withTriads, withSevenths, withNinths and toMinor: twice is once, and times stay', () => {
    fc.assert(
      fc.property(formsOf(), fc.constantFrom(...qualities), (form, vary) => {
        const once = vary(form);
        expect(vary(once)).toBe(once);
        expect(once.bars.map((bar) => bar.map(({ weight }) => weight))).toEqual(
          form.bars.map((bar) => bar.map(({ weight }) => weight)),
        );
      }),
    );
  });

  test('withTriads undoes withSevenths and withNinths wherever a chord has a third', () => {
    for (const form of FORMS.map((form) => withTriads(form))) {
      expect(withTriads(withSevenths(form)).bars).toEqual(form.bars);
      expect(withTriads(withNinths(form)).bars).toEqual(form.bars);
    }
  });

  test('withHalfLength undoes withDoubleLength where no chord follows itself in a bar', () => {
    const changing = ({ bars }: Form) =>
      bars.every((bar) =>
        bar.every(({ numeral }, at) => at === 0 || numeral !== bar[at - 1]?.numeral),
      );
    fc.assert(
      fc.property(formsOf().filter(changing), (form) => {
        const doubled = withDoubleLength(form);
        expect(doubled.bars.length).toBe(2 * form.bars.length);
        expect(withHalfLength(doubled).bars).toEqual(form.bars);
      }),
    );
  });

  test('withDoubleLength sounds each chord twice as long', () => {
    fc.assert(
      fc.property(formsOf(), (form) => {
        const key = inMode(form, 'C');
        const single = chordChanges(makeChart(form, key, { metre: '2/4' }));
        const double = chordChanges(makeChart(withDoubleLength(form), key, { metre: '2/4' }));
        expect(double.map(({ chord }) => chord?.symbol)).toEqual(
          single.map(({ chord }) => chord?.symbol),
        );
        for (const [index, { start }] of double.entries()) {
          expect(Math.abs(start - 2 * (single[index]?.start ?? 0))).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('withBreak leaves every other bar alone and twice is once', () => {
    fc.assert(
      fc.property(formsOf(), fc.array(fc.nat(), { maxLength: 4 }), (form, seeds) => {
        const bars = seeds.map((seed) => (seed % form.bars.length) + 1);
        const broken = withBreak(form, bars, { hit: 'first-beat' });
        expect(withBreak(broken, bars, { hit: 'first-beat' })).toBe(broken);
        for (const [index, bar] of form.bars.entries()) {
          if (!bars.includes(index + 1)) expect(broken.bars[index]).toEqual(bar);
        }
      }),
    );
  });
});

describe('numerals and names', () => {
  const letters = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];
  const texts = ['', 'b', '#'].flatMap((sign) =>
    letters.flatMap((letter) =>
      chordSuffixes().map((suffix) => parseNumeral(`${sign}${letter}${suffix}`).text),
    ),
  );
  const numerals = [...new Set(texts)];

  test.each(TONICS)('numeralOfChord undoes makeChart in %s in every quality', (tonic) => {
    const lines = [0, 1000, 2000].map((from) => numerals.slice(from, from + 1000));
    expect(lines.flat()).toEqual(numerals);
    const spans = lines.flatMap((line) => {
      const form = makeForm(line.map((numeral) => [{ numeral, weight: 1 }]));
      return makeChart(form, inMode(form, tonic)).spans;
    });
    // A root more than two sharps or flats from its letter has no name there, and is respelled.
    const named = spans.filter(
      ({ numeral, chord }) => chord?.root[0] === letterOf(tonic, numeral ?? ''),
    );
    const again = named.map(
      ({ chord }) => numeralOfChord(parseChord(chord?.symbol ?? ''), tonic).text,
    );
    expect(again).toEqual(named.map(({ numeral }) => numeral));
    expect(named.length).toBeGreaterThan(numerals.length * 0.75);
  });
});

/** The letter of a numeral's root: so many steps of the staff above the tonic's. */
function letterOf(tonic: string, numeral: string): string | undefined {
  const staff = 'CDEFGAB';
  const steps = parseNumeral(numeral).step - 1;
  return staff[(staff.indexOf(tonic[0] ?? 'C') + steps) % staff.length];
}
