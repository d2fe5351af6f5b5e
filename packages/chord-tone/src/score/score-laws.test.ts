import { type Chart, FORMS, makeChart, parseForm } from '@reedplate/form';
import { type Line, makeLine, parseMetre, type TimedNote, transposeLine } from '@reedplate/line';
import { chordSuffixes, TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody, anyNotes, anyTonic } from '../arbitraries.fixture.js';
import { PLAYING_STYLES } from '../styles.js';
import { BEAT } from './play.fixture.js';
import { scoreLine } from './score-line.js';
import type { Score } from './score-types.js';

const CHORUS = 12 * 4 * BEAT;
const anyStyle = fc.constantFrom(...PLAYING_STYLES);

/** A line that is over before its chorus of twelve bars is, so that it can be played again. */
const withinChorus = anyMelody
  .map(({ notes }) => notes.filter(({ start, duration }) => start + duration <= CHORUS - BEAT))
  .filter((notes) => notes.length > 0);

/** Everything that a score says of the playing itself, without names, numbers of bars or remarks. */
function judgementOf({ total, following, measures, notes }: Score): unknown {
  const round = (value: number | null): number | null =>
    value === null ? null : Math.round(value * 1e9) / 1e9;
  return {
    totals: [total, following?.chance ?? null].map(round),
    measures: Object.values(measures).map(round),
    notes: notes.map((note) => [note.class, note.credit, note.weight, note.metre, note.resolvesTo]),
  };
}

function shift(notes: readonly TimedNote[], by: number): readonly TimedNote[] {
  return notes.map((note) => ({ ...note, start: note.start + by }));
}

describe('scoreLine and key', () => {
  it('scoreLine judges alike in all twelve keys, notes, changes and bars', () => {
    fc.assert(
      fc.property(
        anyMelody,
        fc.constantFrom(...FORMS.filter(({ metre }) => metre === '4/4')),
        anyStyle,
        (line, form, style) => {
          const scores = TWELVE_KEYS.map(({ tonic, pitchClass }) => {
            const chart = makeChart(form, tonic);
            const up = pitchClass > 6 ? pitchClass - 12 : pitchClass;
            return scoreLine(transposeLine(line, up), chart, { style });
          });
          for (const score of scores) {
            expect(judgementOf(score)).toEqual(judgementOf(scores[0] as Score));
            expect(score.bars.map(({ chordFit }) => chordFit)).toEqual(
              scores[0]?.bars.map(({ chordFit }) => chordFit),
            );
          }
        },
      ),
      { numRuns: 8 },
    );
  });

  it('scoreLine judges alike when the line is played an octave higher', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.constantFrom(-12, 12, 24), (line, chart, octaves) => {
        const moved = scoreLine(transposeLine(line, octaves), chart);
        expect(judgementOf(moved)).toEqual(judgementOf(scoreLine(line, chart)));
      }),
    );
  });

  it('scoreLine degrees of notes do not change with the key', () => {
    fc.assert(
      fc.property(anyMelody, anyTonic, (line, tonic) => {
        const { pitchClass } = TWELVE_KEYS.find((key) => key.tonic === tonic) ?? { pitchClass: 0 };
        const degrees = (of: Line, key: typeof tonic) =>
          scoreLine(of, makeChart('basic', key)).notes.map(({ degree }) => degree);
        expect(degrees(transposeLine(line, pitchClass), tonic)).toEqual(degrees(line, 'C'));
      }),
    );
  });
});

describe('scoreLine and ties', () => {
  it('scoreLine gives the same score for notes written in tied parts, however played', () => {
    const cuts = fc.array(fc.nat(), { minLength: 1, maxLength: 8 });
    const ways = fc.record({
      latency: fc.constantFrom('estimate' as const, 0, 37),
      swing: fc.constantFrom('estimate' as const, 1, 2),
    });
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, cuts, ways, (line, chart, at, how) => {
        const whole = scoreLine(line, chart, how);
        const split = scoreLine(splitNotes(line, at), chart, how);
        const plain = ({ index: _, resolvesTo: __, ...note }: Score['notes'][number]) => note;
        expect(split.alignment).toEqual(whole.alignment);
        expect(split.measures).toEqual(whole.measures);
        expect([split.total, split.following]).toEqual([whole.total, whole.following]);
        expect(split.notes.map(plain)).toEqual(whole.notes.map(plain));
        expect(split.bars).toEqual(whole.bars);
      }),
      { numRuns: 100 },
    );
  });

  /** Cuts notes in two where they sound alone at their pitch: else the parts could tie elsewhere. */
  function splitNotes({ notes, ...line }: Line, cuts: readonly number[]): Line {
    const parts = notes.flatMap((note, index) => {
      const end = note.start + note.duration;
      const isAlone = notes.every(
        (other, at) =>
          at === index ||
          other.pitch !== note.pitch ||
          other.start > end ||
          other.start + other.duration < note.start,
      );
      const cut = cuts[index % cuts.length] ?? 0;
      if (!isAlone || note.duration < 2) return [note];
      const first = 1 + (cut % (note.duration - 1));
      return [
        { ...note, duration: first },
        { ...note, start: note.start + first, duration: note.duration - first },
      ];
    });
    return makeLine(parts, line);
  }
});

describe('scoreLine and choruses', () => {
  it('scoreLine gives the same measures however often the same chorus is played', () => {
    fc.assert(
      fc.property(
        withinChorus,
        anyTonic,
        fc.constantFrom('basic', 'quick-change', 'minor'),
        fc.integer({ min: 2, max: 5 }),
        (notes, key, form, choruses) => {
          const once = scoreLine(makeLine(notes), makeChart(form, key), { swing: 1 });
          const again = Array.from({ length: choruses }, (_, at) => shift(notes, at * CHORUS));
          const chart = makeChart(form, key, { choruses });
          const often = scoreLine(makeLine(again.flat()), chart, { swing: 1 });
          for (const name of ['chordFit', 'landing', 'coverage', 'clashTime', 'timing'] as const) {
            expect(often.measures[name] ?? -1).toBeCloseTo(once.measures[name] ?? -1, 9);
          }
          for (const name of ['chordToneShare', 'guideToneShare', 'resolution'] as const) {
            expect(often.measures[name] ?? -1).toBeCloseTo(once.measures[name] ?? -1, 9);
          }
          expect(often.played).toBe(once.played);
          expect(often.total).toBeCloseTo(once.total, 6);
        },
      ),
    );
  });

  it('scoreLine judges each chorus as the first, note by note', () => {
    fc.assert(
      fc.property(withinChorus, anyTonic, (notes, key) => {
        const chart = makeChart('basic', key, { choruses: 2 });
        const both = scoreLine(makeLine([...notes, ...shift(notes, CHORUS)]), chart, { swing: 1 });
        const half = both.notes.length / 2;
        const kinds = both.notes.map((note) => [note.class, note.metre, note.beat, note.degree]);
        // The first note of a chorus may be called after the one before it.
        expect(kinds.slice(half + 1)).toEqual(kinds.slice(1, half));
      }),
    );
  });
});

describe('scoreLine and what is played better', () => {
  it('scoreLine never lowers the chord fit when any note that needs no other becomes the root', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.nat(), (line, chart, which) => {
        const before = scoreLine(line, chart, { swing: 1 });
        const index = which % line.notes.length;
        const parts = before.notes.filter((note) => note.index === index);
        const [part] = parts;
        fc.pre(parts.length === 1 && part?.class === 'clash' && part.chord !== null);
        const after = scoreLine(toRoot(line, index, chart, part?.chord ?? ''), chart, { swing: 1 });
        expect(after.measures.chordFit).toBeGreaterThanOrEqual(
          (before.measures.chordFit ?? 0) - 1e-12,
        );
      }),
      { numRuns: 100 },
    );
  });

  function toRoot(line: Line, index: number, chart: Chart, symbol: string): Line {
    const root = chart.spans.find(({ chord }) => chord?.symbol === symbol)?.chord?.tones[0];
    const notes = line.notes.map((note, at) => {
      const up = toPitchClass((root?.pitchClass ?? 0) - note.pitch);
      return at === index ? { ...note, pitch: note.pitch + (up > 6 ? up - 12 : up) } : note;
    });
    return makeLine(notes);
  }

  it('scoreLine gives full landing, chord fit and coverage for roots over chords of any quality', () => {
    const anyQuality = fc.constantFrom(...chordSuffixes());
    fc.assert(
      fc.property(
        anyTonic,
        fc.array(anyQuality, { minLength: 1, maxLength: 6 }),
        (key, qualities) => {
          const chart = chartOf(key, qualities);
          const roots = chart.spans.map(({ start, end, chord }) => ({
            start,
            duration: end - start,
            pitch: 60 + (chord?.tones[0]?.pitchClass ?? 0),
          }));
          const { measures, total } = scoreLine(makeLine(roots), chart);
          expect(measures).toMatchObject({ chordFit: 1, landing: 1, coverage: 1, clashTime: 0 });
          expect(total).toBe(100);
        },
      ),
    );
  });

  /** A bar for each quality, on roots that go round in fourths. */
  function chartOf(key: Parameters<typeof makeChart>[1], qualities: readonly string[]): Chart {
    const tonics = ['C', 'F', 'Bb', 'Eb', 'Ab', 'Db'];
    const bars = qualities.map((quality, at) => `${tonics[at % 6]}${quality}`);
    return makeChart(parseForm(`| ${bars.join(' | ')} |`, { key: 'C' }), key);
  }
});

describe('scoreLine and time', () => {
  it('scoreLine judges a note without the later ones but for its resolution within the window', () => {
    fc.assert(
      fc.property(anyMelody, anyMelody, anyChart, fc.nat(), (line, other, chart, cut) => {
        const until = line.notes[cut % line.notes.length]?.start ?? 0;
        const kept = line.notes.filter(({ start }) => start <= until);
        const rewritten = makeLine([...kept, ...shift(other.notes, until + BEAT + 1)]);
        const [one, two] = [line, rewritten].map((of) => scoreLine(of, chart, { swing: 1 }).notes);
        const settled = (notes: Score['notes'] | undefined) =>
          notes
            ?.filter(
              ({ start, held, index }) => index < kept.length && !held && start < until - BEAT,
            )
            .map(({ class: kind, credit, resolvesTo }) => [kind, credit, resolvesTo]);
        expect(settled(two)).toEqual(settled(one));
      }),
    );
  });

  it('scoreLine gives the same for notes in any order of the list', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, fc.nat(), (line, chart, seed) => {
        const shuffled = [...line.notes].sort(
          (a, b) => ((a.start * 7919 + seed) % 101) - ((b.start * 7919 + seed) % 101),
        );
        expect(scoreLine({ ...line, notes: shuffled }, chart)).toEqual(scoreLine(line, chart));
      }),
    );
  });

  it('scoreLine gives the same when line and chart begin with a pickup', () => {
    fc.assert(
      fc.property(
        anyMelody,
        anyTonic,
        fc.integer({ min: 1, max: 4 * BEAT - 1 }),
        (line, key, pickup) => {
          const plain = scoreLine(line, makeChart('basic', key), { swing: 1 });
          const later = makeLine(shift(line.notes, pickup), { pickup });
          const chart = makeChart('basic', key, { pickup });
          expect(judgementOf(scoreLine(later, chart, { swing: 1 }))).toEqual(judgementOf(plain));
          // Bar 1 of the line is laid on bar 1 of the chart, whichever of them has a pickup.
          const onPlain = scoreLine(later, makeChart('basic', key), { swing: 1 });
          expect(onPlain).toEqual(plain);
        },
      ),
    );
  });

  it('scoreLine undoes swing of any ratio: eighths swung and told of are judged as even ones', () => {
    const eighths = fc.array(
      fc.record({ rest: fc.nat(2), pitch: fc.integer({ min: 55, max: 79 }) }),
      {
        minLength: 1,
        maxLength: 40,
      },
    );
    fc.assert(
      fc.property(
        eighths,
        anyTonic,
        fc.double({ min: 1, max: 4, noNaN: true }),
        (steps, key, swing) => {
          const chart = makeChart('basic', key);
          const at = (ratio: number): Line => {
            let place = 0;
            const offBeat = Math.round((BEAT * ratio) / (ratio + 1));
            const notes = steps.map(({ rest, pitch }) => {
              const start = Math.floor(place / 2) * BEAT + (place % 2) * offBeat;
              place += 1 + rest;
              // Short of the next onset at any ratio: notes of one pitch that touch are one.
              return { start, duration: 100, pitch };
            });
            return makeLine(notes);
          };
          const [even, swung] = [
            scoreLine(at(1), chart, { swing: 1 }),
            scoreLine(at(swing), chart, { swing }),
          ];
          const heard = ({ notes }: Score) =>
            notes.map((note) => [note.chord, note.metre, note.weight, note.push]);
          expect(heard(swung)).toEqual(heard(even));
          expect(swung.measures.chordToneShare).toBeCloseTo(even.measures.chordToneShare ?? -1, 9);
          expect(swung.measures.timing ?? 0).toBeGreaterThan(0.98);
        },
      ),
    );
  });

  // Friberg and Sundström (2002): swing falls from about 3.5:1 at 120 to 1:1 at 300 beats a minute;
  // with a short note of 100 ms (computed), 600 / tempo − 1.
  it.each([
    [133, 3.5],
    [150, 3],
    [200, 2],
    [240, 1.5],
    [300, 1],
  ])('scoreLine finds the swing of playing at %s beats a minute', (tempo, ratio) => {
    expect(600 / tempo - 1).toBeCloseTo(ratio, 1);
    const offBeat = Math.round((BEAT * ratio) / (ratio + 1));
    const notes = Array.from({ length: 32 }, (_, at) => ({
      start: Math.floor(at / 2) * BEAT + (at % 2) * offBeat,
      duration: 100,
      pitch: 67,
    }));
    const { alignment } = scoreLine(makeLine(notes), makeChart('basic', 'G'));
    // Past 2.6:1 the off-beat lies nearer the next sixteenth, and is taken for one.
    expect(alignment.swing).toBeCloseTo(ratio > 2.57 ? 1 : ratio, 1);
  });

  it('scoreLine estimates a latency and then judges as if there were none', () => {
    const steady = fc.array(fc.integer({ min: 55, max: 79 }), { minLength: 8, maxLength: 60 });
    fc.assert(
      fc.property(steady, anyTonic, fc.integer({ min: -110, max: 110 }), (pitches, key, late) => {
        const chart = makeChart('basic', key);
        const takeAt = (from: number): Line =>
          makeLine(
            pitches.map((pitch, at) => ({ start: from + at * 480, duration: 400, pitch })),
            { pickup: 960 },
          );
        const onTime = scoreLine(takeAt(960), chart, { swing: 1 });
        const moved = scoreLine(takeAt(960 + late), chart, { swing: 1, latency: 'estimate' });
        expect(moved.alignment.latency).toBe(late);
        expect(judgementOf(moved)).toEqual(judgementOf(onTime));
      }),
    );
  });

  it('scoreLine counts a note for the coming chord only where it is a tone of that alone, near enough', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { beatTicks } = parseMetre(chart.metre);
        for (const { push, start, pitch, held, chord } of scoreLine(line, chart, { swing: 1 })
          .notes) {
          const at = chart.spans.findIndex((span) => span.start <= start && start < span.end);
          const rest = chart.spans.slice(at);
          const here = rest[0]?.chord ?? null;
          const coming = rest.find(({ chord: other }) => other?.symbol !== here?.symbol);
          const isNear = coming !== undefined && coming.start - start <= beatTicks / 2;
          const isTone = (of: typeof here | undefined): boolean =>
            of?.tones.some(
              ({ pitchClass, degree }) =>
                pitchClass === pitch % 12 && !/(?:9|1[13])$/u.test(degree),
            ) ?? false;
          if (push) {
            expect([held, isNear, isTone(coming?.chord), isTone(here)]).toEqual([
              false,
              true,
              true,
              false,
            ]);
            expect(chord).toBe(coming?.chord?.symbol);
          } else {
            expect(chord).toBe(here?.symbol ?? null);
            expect(!held && isNear && isTone(coming?.chord) && !isTone(here)).toBe(false);
          }
        }
      }),
    );
  });
});
