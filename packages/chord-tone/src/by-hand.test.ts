import { readFileSync } from 'node:fs';
import { makeChart } from '@reedplate/form';
import { makeLine, tickAt } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { scoreLine } from './score/score-line.js';
import { SCORE_WEIGHTS } from './score/weights.js';

const page = readFileSync(new URL('../../../docs/scoring-by-hand.md', import.meta.url), 'utf8');
const chart = makeChart('basic', 'G');
const BEAT = 960;

interface Row {
  readonly place: string;
  readonly note: string;
  readonly beats: number;
  readonly judged: readonly [string, string, number, number];
}

/** Cells of the rows of tables whose first cell matches. */
function rowsOf(section: string, first: RegExp): readonly (readonly string[])[] {
  return section
    .split('\n')
    .filter((row) => row.startsWith('|'))
    .map((row) =>
      row
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    )
    .filter(([cell = '']) => first.test(cell));
}

function readRow([
  place = '',
  note = '',
  beats,
  chord = '',
  kind = '',
  credit,
  weight,
]: readonly string[]): Row {
  return {
    place,
    note,
    beats: Number(beats),
    judged: [chord, kind, Number(credit), Number(weight)],
  };
}

/** A held row prolongs the note before it. */
function lineOf(rows: readonly Row[]): ReturnType<typeof makeLine> {
  const struck = rows.filter(({ note }) => note !== 'held');
  return makeLine(
    struck.map((row) => {
      const after = rows[rows.indexOf(row) + 1];
      const held = after?.note === 'held' ? after.beats : 0;
      const [bar = 1, beat = 1] = row.place.split(':').map(Number);
      return {
        start: tickAt({ bar, beat }, { metre: '4/4', pickup: 0 }),
        duration: (row.beats + held) * BEAT,
        pitch: midi(row.note),
      };
    }),
  );
}

const sections = page.split(/^## /mu).slice(1);

describe('scoreLine against docs/scoring-by-hand.md', () => {
  it('scoreLine has three choruses to be compared with', () => {
    expect(sections.length).toBe(3);
  });

  it.each(sections.map((section) => [section.split('\n')[0] ?? '', section]))(
    'scoreLine judges "%s" as worked by hand, note by note and in sum',
    (_, section) => {
      const rows = rowsOf(section, /^\d+:/u).map(readRow);
      const score = scoreLine(lineOf(rows), chart);
      expect(score.notes.map((note) => [note.chord, note.class, note.credit, note.weight])).toEqual(
        rows.map(({ judged }) => judged),
      );
      const [sums = []] = rowsOf(section, /^[01]\.\d{3}$/u);
      const { fit, landing, coverage } = score.measures;
      expect([fit, landing, coverage].map((value) => value?.toFixed(3))).toEqual(sums.slice(0, 3));
      expect(score.total.toFixed(0)).toBe(sums[3]);
    },
  );
});

/** Value of a sum as the page writes it: numbers, + − × / and brackets. */
function amountOf(text: string): number {
  const words = text.match(/[\d.]+|[+−×/()]/gu) ?? [];
  let at = 0;
  const single = (): number => {
    const word = words[at] ?? '';
    at += 1;
    if (word !== '(') return Number(word);
    const inside = sum();
    at += 1;
    return inside;
  };
  const product = (): number => {
    let value = single();
    while (words[at] === '×' || words[at] === '/') {
      const isTimes = words[at] === '×';
      at += 1;
      value = isTimes ? value * single() : value / single();
    }
    return value;
  };
  const sum = (): number => {
    let value = product();
    while (words[at] === '+' || words[at] === '−') {
      const isPlus = words[at] === '+';
      at += 1;
      value = isPlus ? value + product() : value - product();
    }
    return value;
  };
  return sum();
}

/** Half of the last figure printed. */
function precisionOf(printed: string): number {
  return 0.5 * 10 ** -(printed.split('.')[1]?.length ?? 0) + 1e-9;
}

const text = page.replace(/\n(?!\n)/gu, ' ');
/** The measures that have a share in the total. */
const COUNTED = ['fit', 'coverage'] as const;

const sums = [...text.matchAll(/((?:[\d.()]+ [+−×/] )+[\d.()]+) = ([\d.]*\d)/gu)];

describe('docs/scoring-by-hand.md', () => {
  it('docs/scoring-by-hand.md has its sums right', () => {
    expect(sums.length).toBeGreaterThan(8);
    for (const [, left = '', right = ''] of sums) {
      expect(Math.abs(amountOf(left) - Number(right)), `${left} = ${right}`).toBeLessThan(
        precisionOf(right),
      );
    }
  });

  it('docs/scoring-by-hand.md names the credits, landings and weights that are used', () => {
    const { credit, resolvedCredit, landing, struck, resolveWithin } = SCORE_WEIGHTS;
    expect([struck, resolveWithin]).toEqual([0.5, 1]);
    const { passing, neighbour, approach, blue, colour } = credit;
    expect(new Set([passing, neighbour, approach, resolvedCredit]).size).toBe(1);
    expect([credit.root, credit['guide-tone'], credit['chord-tone'], blue]).toEqual([
      1,
      1,
      1,
      colour,
    ]);
    expect(text).toContain(
      `(passing, neighbour, approach) counts ${passing}, a blue note or a colour ${blue} (${resolvedCredit} where it resolves)`,
    );
    expect([credit.unresolved, credit.clash, landing.unresolved, landing.clash]).toEqual([
      0, 0, 0, 0,
    ]);
    expect([landing.root, landing['guide-tone']]).toEqual([1, 1]);
    expect(text).toContain(
      `another chord tone ${landing['chord-tone']}, a blue note ${landing.blue}, a resolved note ${landing.passing}, a colour ${landing.colour}, any other 0`,
    );
  });

  it('docs/scoring-by-hand.md names the shares and the calibration that are used', () => {
    const { measures, chanceShare, typicalChance, calibration } = SCORE_WEIGHTS;
    const named = Object.entries(measures).filter(([, share]) => share > 0);
    expect(named.map(([name]) => name)).toEqual(COUNTED);
    const sum = named.map(([name, share]) => `${share} ${name}`).join(' + ');
    expect(text).toContain(
      `${sum}, plus ${measures.fit} × ${chanceShare} × (${typicalChance} − chance)`,
    );
    const points = calibration.map(({ raw, total }, at) =>
      at === 0 ? `${raw} (total ${total})` : `${raw} (${total})`,
    );
    const [from, ...to] = points;
    expect(text).toContain(`from ${from} to ${to.slice(0, -1).join(', ')} and ${to.at(-1)}`);
  });

  it.each(sections.map((section) => [section.split('\n')[0] ?? '', section]))(
    'docs/scoring-by-hand.md adds up the total of "%s" as scoreLine does',
    (_, section) => {
      const said = section.replace(/\n/gu, ' ');
      const line = lineOf(rowsOf(section, /^\d+:/u).map(readRow));
      const { measures } = scoreLine(line, chart);
      const { measures: shares, chanceShare, typicalChance, calibration } = SCORE_WEIGHTS;
      const parts = COUNTED.map((name) => shares[name] * (measures[name] ?? 0));
      const whole = parts.reduce((sum, part) => sum + part, 0);
      const [, ...raw] = /Raw: ([\d.]+) \+ ([\d.]+) = ([\d.]*\d)/u.exec(said) ?? [];
      expect(raw).toHaveLength(parts.length + 1);
      [...parts, whole].forEach((part, at) => {
        const printed = raw[at] ?? '';
        expect(Math.abs(part - Number(printed)), printed).toBeLessThan(precisionOf(printed));
      });
      const chance = chanceOf(line);
      const [, printed = ''] = /[Cc]hance (?:is )?([\d.]*\d)/u.exec(said) ?? [];
      expect(Math.abs(chance - Number(printed)), printed).toBeLessThan(precisionOf(printed));
      const moved = shares.fit * chanceShare * (typicalChance - chance);
      const [, way = '', by = ''] = /(takes off|adds) ([\d.]*\d)/u.exec(said) ?? [];
      expect(way).toBe(moved < 0 ? 'takes off' : 'adds');
      expect(Math.abs(Math.abs(moved) - Number(by)), by).toBeLessThan(precisionOf(by));
      const [low, high] = [calibration[0]?.raw ?? 0, calibration.at(-1)?.raw ?? 1];
      const sum = whole + moved;
      // Each of the three lies beyond the ends of the calibration, which the page says.
      expect(sum < low || sum > high).toBe(true);
      expect(said).toContain(sum < low ? `far below the ${low}` : `above ${high}`);
    },
  );
});

/** The fit that the notes would have in any order: the total on a scale that changes nothing. */
function chanceOf(line: ReturnType<typeof makeLine>): number {
  const { measures } = SCORE_WEIGHTS;
  const weights = {
    chanceShare: 0,
    enoughPlayed: 0,
    measures: { ...measures, landing: 0, coverage: 0 },
    calibration: [
      { raw: 0, total: 0 },
      { raw: 1, total: 1 },
    ],
  };
  return scoreLine(line, chart, { weights }).chance;
}
