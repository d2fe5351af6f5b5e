import { makeChart, parseForm } from '@reedplate/form';
import { type Harp, makeHarp, makeTuning, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { chordSuffixes, SCALE_DEGREES } from '@reedplate/pitch';
import fc from 'fast-check';
import { Interval, Note, Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import { practiceLine } from '../../practice/src/index.js';
import { chordAvailability } from './availability.js';
import { type ChordShape, chordShapes } from './chord-shape.js';
import { CHORD_ROUGHNESS, PLAYING_STYLES, type PlayingStyle } from './styles.js';
import { targetsOf } from './target.js';

// What the package finds, found again the long way: from the two reeds of each hole by the rule of
// bends and overbends, and from chords as tonal 6.4.3 spells them, on tunings that nobody has made.

/** A harp of random reeds: wide gaps, narrow ones, none, either reed the higher. */
const anyReeds: fc.Arbitrary<Harp> = fc
  .array(
    fc.record({ blow: fc.integer({ min: 55, max: 90 }), gap: fc.integer({ min: -5, max: 5 }) }),
    { minLength: 1, maxLength: 10 },
  )
  .map((holes) =>
    makeHarp('C', {
      tuning: makeTuning({
        id: 'random',
        blow: holes.map(({ blow }) => blow),
        draw: holes.map(({ blow, gap }) => blow + gap),
      }),
    }),
  );

const ROOTS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;
const anySymbol = fc
  .tuple(fc.constantFrom(...ROOTS), fc.constantFrom(...chordSuffixes()))
  .map(([root, suffix]) => `${root}${suffix}`);

interface Tone {
  readonly degree: string;
  readonly pitchClass: number;
}

/** Tones by tonal, which does not know the sign of a half-diminished seventh. */
function tonesOf(symbol: string): readonly Tone[] {
  const { tonic, intervals } = TonalChord.get(symbol.replace('ø7', 'm7b5'));
  const root = Note.chroma(tonic ?? '') ?? Number.NaN;
  return intervals.map((interval) => ({
    degree: degreeOf(interval),
    pitchClass: (root + Interval.semitones(interval)) % 12,
  }));
}

/** 3m is b3, 5A is #5, 7d is bb7: how far an interval is from that of the major scale; a tenth is a third. */
function degreeOf(interval: string): string {
  const written = Number.parseInt(interval, 10);
  const number = written === 10 ? 3 : written;
  const major = [0, 2, 4, 5, 7, 9, 11][(number - 1) % 7] ?? 0;
  const from = (Interval.semitones(interval) % 12) - major;
  return `${from < 0 ? 'b'.repeat(-from) : '#'.repeat(from)}${number}`;
}

interface Way {
  readonly hole: number;
  readonly breath: 'blow' | 'draw';
  readonly technique: string;
  readonly depth: number;
  readonly pitch: number;
}

/** By the rule: the higher reed bends to a semitone above the lower; the overbend is a semitone above the higher. */
function waysOf({ holes }: Harp): readonly Way[] {
  return holes.flatMap(({ hole, blow, draw }) =>
    (['blow', 'draw'] as const).flatMap((breath) => {
      const [own, other] = breath === 'blow' ? [blow, draw] : [draw, blow];
      const bends = Array.from({ length: Math.max(0, own - other - 1) }, (_, at) => at + 1);
      const overbend = { technique: breath === 'blow' ? 'overblow' : 'overdraw', depth: 1 };
      return [
        { hole, breath, technique: 'natural', depth: 0, pitch: own },
        ...bends.map((depth) => ({ hole, breath, technique: 'bend', depth, pitch: own - depth })),
        ...(own < other ? [{ hole, breath, ...overbend, pitch: other + 1 }] : []),
      ];
    }),
  );
}

const ALLOWED = {
  natural: ['natural'],
  bends: ['natural', 'bend'],
  overbends: ['natural', 'bend', 'overblow', 'overdraw'],
} as const;

type Found = Way & { readonly degree: string };

function targetsByHand(symbol: string, harp: Harp, level: keyof typeof ALLOWED): readonly Found[] {
  const tones = tonesOf(symbol);
  return waysOf(harp)
    .filter(({ technique }) => (ALLOWED[level] as readonly string[]).includes(technique))
    .flatMap((way) => {
      const tone = tones.find(({ pitchClass }) => pitchClass === way.pitch % 12);
      return tone === undefined ? [] : [{ ...way, degree: tone.degree }];
    });
}

describe('targetsOf on random reeds', () => {
  it('targetsOf finds what the rule of the reeds and the tones of tonal give, in that order', () => {
    fc.assert(
      fc.property(
        anyReeds,
        anySymbol,
        fc.constantFrom(...TECHNIQUE_LEVELS),
        (harp, symbol, level) => {
          const found = targetsOf(symbol, harp, { level });
          expect(found.map(({ sounding, degree }) => [plain(sounding), degree])).toEqual(
            targetsByHand(symbol, harp, level).map(({ degree, ...way }) => [plain(way), degree]),
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  /** How deep an overbend is counted is a matter of layout. */
  function plain({ hole, breath, technique, depth, pitch }: Way): unknown {
    const isOver = technique.startsWith('over');
    return { hole, breath, technique, depth: isOver ? null : depth, pitch };
  }

  it.each(chordSuffixes().map((suffix) => [suffix === '' ? 'major' : suffix, `C${suffix}`]))(
    'targetsOf has the degrees that tonal has for a chord of %s',
    (_, symbol) => {
      const chromatic = makeHarp('C', {
        tuning: makeTuning({
          id: 'ladder',
          blow: '60 62 64 66 68 70'.split(' ').map(Number),
          draw: [61, 63, 65, 67, 69, 71],
        }),
      });
      const found = targetsOf(symbol, chromatic, { level: 'natural' });
      const expected = tonesOf(symbol).filter(
        ({ pitchClass }, at, all) => all.findIndex((tone) => tone.pitchClass === pitchClass) === at,
      );
      expect(new Set(found.map(({ degree }) => degree))).toEqual(
        new Set(expected.map(({ degree }) => degree)),
      );
    },
  );
});

interface ShapeFound {
  readonly at: string;
  readonly completeness: string;
  readonly lacks: readonly string[];
  readonly adds: readonly string[];
  readonly clashes: readonly string[];
}

/** Every set of holes on one breath that is a run of three to five, or two at most five apart. */
function holeSets(count: number): readonly (readonly number[])[] {
  const sets: number[][] = [];
  for (let low = 0; low < count; low += 1) {
    for (let size = 3; size <= 5; size += 1) {
      if (low + size <= count) sets.push(Array.from({ length: size }, (_, at) => low + at));
    }
    for (let high = low + 1; high <= low + 4 && high < count; high += 1) sets.push([low, high]);
  }
  return sets;
}

function familyOf(
  degrees: readonly string[],
): 'major' | 'dominant' | 'minor' | 'diminished' | 'open' {
  if (degrees.includes('3')) return degrees.includes('b7') ? 'dominant' : 'major';
  if (!degrees.includes('b3')) return 'open';
  return degrees.includes('b5') ? 'diminished' : 'minor';
}

function shapesByHand(symbol: string, { holes }: Harp, style: PlayingStyle): readonly ShapeFound[] {
  const tones = tonesOf(symbol);
  const degrees = tones.map(({ degree }) => degree);
  const rough = CHORD_ROUGHNESS[style][familyOf(degrees)];
  return (['blow', 'draw'] as const).flatMap((breath) =>
    holeSets(holes.length).flatMap((set) => {
      const pitches = set.map((at) => holes[at]?.[breath] ?? 0);
      const sounded = pitches.map((pitch) =>
        tones.find(({ pitchClass }) => pitchClass === pitch % 12),
      );
      if (sounded.filter((tone) => tone !== undefined).length * 2 < set.length) return [];
      const lacks = degrees.filter((degree) => !sounded.some((tone) => tone?.degree === degree));
      const foreign = pitches
        .filter((_, at) => sounded[at] === undefined)
        .map((pitch) => SCALE_DEGREES[(pitch - (tones[0]?.pitchClass ?? 0) + 120) % 12] ?? '1');
      const others = [...new Set(foreign)];
      const clashes = others.filter((degree) => rough[degree] > 0);
      const adds = others.filter((degree) => rough[degree] === 0);
      const isWhole = lacks.length === 0 ? 'complete' : 'partial';
      const completeness =
        clashes.length > 0 ? 'clashing' : adds.length > 0 ? 'with-added-tones' : isWhole;
      const at = `${breath} ${set.map((hole) => hole + 1).join(' ')}`;
      return [{ at, completeness, lacks, adds, clashes: clashes.sort() }];
    }),
  );
}

const byPlace = (a: ShapeFound, b: ShapeFound): number => (a.at < b.at ? -1 : 1);

describe('chordShapes on random reeds', () => {
  it('chordShapes judges every set of holes as counting its tones by hand does', () => {
    fc.assert(
      fc.property(
        anyReeds,
        anySymbol,
        fc.constantFrom(...PLAYING_STYLES),
        (harp, symbol, style) => {
          const found = chordShapes(symbol, harp, { style }).map(
            ({ breath, holes, completeness, lacks, adds, clashes }): ShapeFound => ({
              at: `${breath} ${holes.join(' ')}`,
              completeness,
              lacks,
              adds,
              clashes: clashes.map(({ above }) => above).sort(),
            }),
          );
          expect(found.sort(byPlace)).toEqual([...shapesByHand(symbol, harp, style)].sort(byPlace));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('chordShapes orders clashes from the worst, each as rough as its style says', () => {
    fc.assert(
      fc.property(
        anyReeds,
        anySymbol,
        fc.constantFrom(...PLAYING_STYLES),
        (harp, symbol, style) => {
          const rough =
            CHORD_ROUGHNESS[style][familyOf(tonesOf(symbol).map(({ degree }) => degree))];
          for (const { clashes } of chordShapes(symbol, harp, { style })) {
            const values = clashes.map(({ roughness }) => roughness);
            expect(values).toEqual([...values].sort((a, b) => b - a));
            expect(values).toEqual(clashes.map(({ above }) => rough[above]));
          }
        },
      ),
    );
  });
});

describe('chordAvailability on random reeds', () => {
  it('chordAvailability sorts shapes and warns of tones as counting by hand does', () => {
    fc.assert(
      fc.property(
        anyReeds,
        anySymbol,
        fc.constantFrom(...TECHNIQUE_LEVELS),
        (harp, symbol, level) => {
          const { whole, partial, warnings } = chordAvailability(symbol, harp, { level });
          const degrees = [...new Set(tonesOf(symbol).map(({ degree }) => degree))];
          const triad = degrees.filter((degree) => /^[b#]?[135]$/u.test(degree));
          const isTriad = familyOf(degrees) !== 'open' && triad.length >= 3;
          const byHand = shapesByHand(symbol, harp, 'blues');
          const wholeByHand = byHand.filter(
            ({ lacks, adds, clashes }) =>
              clashes.length === 0 &&
              ((isTriad && !triad.some((degree) => lacks.includes(degree))) ||
                lacks.length + adds.length === 0),
          );
          const placeOf = ({ breath, holes }: ChordShape): string => `${breath} ${holes.join(' ')}`;
          expect(whole.map(placeOf).sort()).toEqual(wholeByHand.map(({ at }) => at).sort());
          const partialByHand = byHand.filter(
            (shape) =>
              !wholeByHand.includes(shape) &&
              shape.adds.length + shape.clashes.length === 0 &&
              degrees.length - shape.lacks.length >= 2,
          );
          expect(partial.map(placeOf).sort()).toEqual(partialByHand.map(({ at }) => at).sort());
          const had = (allowed: keyof typeof ALLOWED): ReadonlySet<string> =>
            new Set(targetsByHand(symbol, harp, allowed).map(({ degree }) => degree));
          const degreesOf = (code: string): readonly string[] =>
            warnings.find((warning) => warning.code === code)?.degrees ?? [];
          const missing = degrees.filter((degree) => !had(level).has(degree));
          const bent = degrees.filter(
            (degree) => had(level).has(degree) && !had('natural').has(degree),
          );
          expect(degreesOf('NO_TONE')).toEqual(missing);
          expect(degreesOf('NO_UNBENT_TONE')).toEqual(bent);
        },
      ),
      { numRuns: 100 },
    );
  });
});

const COST: Readonly<Record<string, number>> = { natural: 0, bend: 2, overblow: 4, overdraw: 5 };
const GUIDES = ['b3', '3', 'bb7', 'b7', '7', '6'];

/** Least semitones moved, then easiest techniques, then the lowest place at the end, and before. */
function bestByListing(columns: readonly (readonly Found[])[]): readonly Found[] {
  const ways = columns.reduce<readonly (readonly Found[])[]>(
    (before, column) => before.flatMap((way) => column.map((next) => [...way, next])),
    [[]],
  );
  const ranks = ways.map((way) => [
    way.reduce((sum, { pitch }, at) => sum + Math.abs(pitch - (way[at - 1]?.pitch ?? pitch)), 0),
    way.reduce((sum, { technique, depth }) => sum + (COST[technique] ?? 0) + depth, 0),
    ...way.map((choice, at) => columns[at]?.indexOf(choice) ?? 0).reverse(),
  ]);
  const best = ranks.reduce((least, rank) => (compareRanks(rank, least) < 0 ? rank : least));
  return ways[ranks.indexOf(best)] ?? [];
}

function compareRanks(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at === -1 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

describe('practiceLine on random reeds', () => {
  const anyForm = fc
    .array(fc.constantFrom('I7', 'IV7', 'V7', 'ii7', 'bVII', 'vi', 'VI7', 'iv'), {
      minLength: 1,
      maxLength: 4,
    })
    .map((bars) => parseForm(`| ${bars.join(' | ')} |`));

  it.each(['roots', 'guide-tones'] as const)(
    'practiceLine finds the line of %s that listing every line finds, ties and all',
    (kind) => {
      const wanted = kind === 'roots' ? ['1'] : GUIDES;
      fc.assert(
        fc.property(
          anyReeds,
          anyForm,
          fc.constantFrom(...ROOTS),
          fc.constantFrom(...TECHNIQUE_LEVELS),
          fc.integer({ min: 50, max: 70 }),
          (harp, form, key, level, lowest) => {
            const chart = makeChart(form, key);
            const columns = chart.spans.map(({ chord }) => {
              const all = targetsByHand(chord?.symbol ?? '', harp, level).filter(
                ({ pitch }) => pitch >= lowest && pitch <= lowest + 20,
              );
              const asked = all.filter(({ degree }) => wanted.includes(degree));
              return asked.length > 0 ? asked : all;
            });
            const options = { kind, level, lowest, highest: lowest + 20 };
            if (columns.some((column) => column.length === 0)) {
              expect(() => practiceLine(chart, harp, options)).toThrow(
                expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE' }),
              );
              return;
            }
            fc.pre(columns.reduce((ways, { length }) => ways * length, 1) <= 20_000);
            const { steps } = practiceLine(chart, harp, options);
            expect(
              steps.map(
                ({ soundings: [sounding] }) =>
                  `${sounding?.hole} ${sounding?.breath} ${sounding?.pitch}`,
              ),
            ).toEqual(
              bestByListing(columns).map(({ hole, breath, pitch }) => `${hole} ${breath} ${pitch}`),
            );
          },
        ),
        { numRuns: 60 },
      );
    },
  );
});

/** Kinds of playing a chord together, the best first, as places on the harp. */
function voicingsByHand(symbol: string, harp: Harp): readonly string[] {
  const degrees = tonesOf(symbol).map(({ degree }) => degree);
  const triad = degrees.filter((degree) => /^[b#]?[135]$/u.test(degree));
  const isTriad = familyOf(degrees) !== 'open' && triad.length >= 3;
  const clean = shapesByHand(symbol, harp, 'blues').filter(
    ({ adds, clashes, lacks }) =>
      adds.length + clashes.length === 0 && new Set(degrees).size - new Set(lacks).size >= 2,
  );
  // On neighbouring holes first; splits, the narrowest first, only where no neighbours will do.
  const span = ({ at }: { at: string }): number => {
    const holes = at.split(' ').slice(1).map(Number);
    return Math.max(...holes) - Math.min(...holes) + 1 - holes.length;
  };
  const together = clean.filter((shape) => span(shape) === 0);
  const has = ({ lacks }: { lacks: readonly string[] }, ...wanted: readonly string[]) =>
    wanted.some((degree) => degrees.includes(degree) && !lacks.includes(degree));
  const count = ({ lacks }: { lacks: readonly string[] }) =>
    new Set(degrees.filter((degree) => !lacks.includes(degree))).size;
  const [thirds, sevenths] = [
    ['3', 'b3'],
    ['7', 'b7'],
  ] as const;
  const kinds = [
    together.filter(({ lacks }) => lacks.length === 0),
    together.filter(({ lacks }) => isTriad && !triad.some((degree) => lacks.includes(degree))),
    together.filter((shape) => has(shape, '1') && has(shape, ...thirds)),
    together.filter((shape) => count(shape) >= 3),
    together.filter((shape) => has(shape, ...thirds) && has(shape, ...sevenths)),
    together.filter((shape) => has(shape, '1')),
    together,
    ...[1, 2, 3].map((blocked) => clean.filter((shape) => span(shape) === blocked)),
  ];
  return (kinds.find((shapes) => shapes.length > 0) ?? []).map(({ at }) => at);
}

describe('practiceLine of chords on random reeds', () => {
  it('practiceLine plays a chord as whole as the harp has it, else its root, else any tone', () => {
    const qualities = fc.constantFrom('I7', 'IV', 'i', 'V9', 'vii°7', 'I6', 'Isus4', 'I5');
    fc.assert(
      fc.property(anyReeds, qualities, fc.constantFrom(...ROOTS), (harp, numeral, key) => {
        const chart = makeChart(parseForm(`| ${numeral} |`), key);
        const symbol = chart.spans[0]?.chord?.symbol ?? '';
        const natural = targetsByHand(symbol, harp, 'natural');
        fc.pre(natural.length > 0);
        const { steps } = practiceLine(chart, harp, {
          kind: 'chords',
          level: 'natural',
          lowest: 0,
        });
        const [{ soundings = [], degrees = [] } = {}] = steps;
        const at = `${soundings[0]?.breath} ${soundings.map(({ hole }) => hole).join(' ')}`;
        const together = voicingsByHand(symbol, harp);
        if (together.length > 0) {
          expect(together).toContain(at);
          return;
        }
        expect(soundings).toHaveLength(1);
        const hasRoot = natural.some(({ degree }) => degree === '1');
        expect(degrees[0] === '1').toBe(hasRoot);
      }),
      { numRuns: 60 },
    );
  });
});
