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
  it('scoreLine has four takes to be compared with', () => {
    expect(sections.length).toBe(4);
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
      const { chordFit, landing, coverage } = score.measures;
      expect([chordFit, landing, coverage].map((value) => value?.toFixed(3))).toEqual(
        sums.slice(0, 3),
      );
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
const sums = [...text.matchAll(/((?:[\d.()]+ [+−×/] )+[\d.()]+) = ([\d.]*\d)/gu)];

describe('docs/scoring-by-hand.md', () => {
  it('docs/scoring-by-hand.md has its sums right', () => {
    expect(sums.length).toBeGreaterThan(25);
    for (const [, left = '', right = ''] of sums) {
      // Sums go on with rounded figures: a hair more than the last one printed.
      expect(Math.abs(amountOf(left) - Number(right)), `${left} = ${right}`).toBeLessThan(
        1.5 * precisionOf(right),
      );
    }
  });

  it('docs/scoring-by-hand.md names the credits, landings and weights that are used', () => {
    const { credit, resolvedCredit, landing, struck, resolveWithin } = SCORE_WEIGHTS;
    expect([struck, resolveWithin]).toEqual([0.5, 1]);
    const { passing, neighbour, approach, leaning, idiom, blue, colour } = credit;
    expect(new Set([passing, neighbour, approach, resolvedCredit]).size).toBe(1);
    expect([credit.root, credit['guide-tone'], credit['chord-tone']]).toEqual([1, 1, 1]);
    expect(blue).toBe(colour);
    expect(text).toContain(`flat fifth into such a fourth) counts ${idiom}.`);
    expect(text).toContain(
      `(passing, neighbour, approach) counts ${passing}, one that leans on it from a stronger place and is longer ${leaning}, a blue note or a colour ${blue} (${resolvedCredit} where it resolves)`,
    );
    expect([credit.unresolved, credit.clash, landing.unresolved, landing.clash]).toEqual([
      0, 0, 0, 0,
    ]);
    expect([landing.root, landing['guide-tone'], landing.idiom]).toEqual([1, 1, landing.blue]);
    expect(text).toContain(
      `another chord tone ${landing['chord-tone']}, a blue note or a turn ${landing.blue}, a resolved note ${landing.passing}, a colour ${landing.colour}, any other 0`,
    );
  });

  it('docs/scoring-by-hand.md names the shares and the calibration that are used', () => {
    const { blindFrom, followingShare, calibration } = SCORE_WEIGHTS;
    expect(text).toContain(`blind counts for the share w / (w + ${blindFrom}) of it`);
    expect(text).toContain(
      `${followingShare} following + ${(1 - followingShare).toFixed(2)} chord fit`,
    );
    const points = calibration.map(({ raw, total }, at) =>
      at === 0 ? `${raw} (total ${total})` : `${raw} (${total})`,
    );
    const [from, ...to] = points;
    expect(text).toContain(`from ${from} to ${to.slice(0, -1).join(', ')} and ${to.at(-1)}`);
  });

  it.each(sections.map((section) => [section.split('\n')[0] ?? '', section]))(
    'docs/scoring-by-hand.md works out chance and raw of "%s" as scoreLine does',
    (_, section) => {
      const said = section.replace(/\n/gu, ' ');
      const { measures, following, notes } = scoreLine(
        lineOf(rowsOf(section, /^\d+:/u).map(readRow)),
        chart,
      );
      const { blindFrom, followingShare } = SCORE_WEIGHTS;
      const evidence = notes.reduce((sum, { weight }) => sum + weight, 0);
      const blindShare = evidence / (evidence + blindFrom);
      const { shuffled = 0, blind = 0, chance = 0 } = following ?? {};
      const [, ...chances] =
        /Chance: ([\d.]+) × ([\d.]+) \+ ([\d.]+) × ([\d.]+) = ([\d.]*\d)/u.exec(said) ?? [];
      const shares = [1 - blindShare, shuffled, blindShare, blind, chance];
      const [, ...raws] =
        /Raw: ([\d.]+) × ([\d.]+) \+ ([\d.]+) × ([\d.]+) = ([\d.]*\d)/u.exec(said) ?? [];
      const { chordFit, following: above } = measures;
      const raw = followingShare * (above ?? 0) + (1 - followingShare) * (chordFit ?? 0);
      const parts = [followingShare, above ?? 0, 1 - followingShare, chordFit ?? 0, raw];
      const printed = [...chances, ...raws];
      expect(printed).toHaveLength(shares.length + parts.length);
      [...shares, ...parts].forEach((value, at) => {
        const figure = printed[at] ?? '';
        expect(Math.abs(value - Number(figure)), figure).toBeLessThan(precisionOf(figure));
      });
    },
  );
});
