import { scoreLine } from '@reedplate/chord-tone';
import { ENDINGS, TURNAROUNDS } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { makeLine, parseMetre } from '@reedplate/line';
import { songKeyOf } from '@reedplate/position';
import { lineOfTab, parseTimedTab, type TabMark } from '@reedplate/tab';
import { describe, expect, it } from 'vitest';
import { phraseChart, plainHarmony, soundingChord, tonicOf } from '../phrase/harmony.js';
import { homeTonic } from '../phrase/home-tonic.js';
import { aboveTonic, lineOfPhrase } from '../phrase/line-of-phrase.js';
import { splitManners } from '../phrase/note-words.js';
import type { Phrase } from '../phrase/phrase.js';
import { placePhrase } from '../phrase/place-phrase.js';
import { findPhrases, modeOfPhrase } from './find-phrases.js';
import { PHRASE_GRADES } from './grades.js';
import { allPhrases, PHRASE_GROUPS } from './phrases.js';

const HARP = makeHarp('C');
const ALL = allPhrases();
const TABS = new Map(
  PHRASE_GROUPS.flatMap(({ rows }) =>
    rows.map(({ id, tab }) => [id, splitManners(tab).tab] as const),
  ),
);
const limitsOf = ({ grade }: Phrase) => PHRASE_GRADES[grade - 1] as (typeof PHRASE_GRADES)[number];
const timedOf = ({ id }: Phrase) => parseTimedTab(TABS.get(id) ?? '');
const chartOf = (phrase: Phrase) => phraseChart(phrase, songKeyOf(HARP, phrase.position).tonic);

/** Semitones and breath, to find a mark among soundings. */
const sameMark = (
  { hole, breath, bend, over }: TabMark,
  sounding: ReturnType<typeof soundings>[number],
) =>
  sounding.hole === hole &&
  sounding.breath === breath &&
  (over
    ? sounding.technique.startsWith('over')
    : !sounding.technique.startsWith('over') && sounding.depth === bend);

describe('the catalogue of phrases', () => {
  it('has 150 phrases and more, each with an id of its own and no two alike', () => {
    expect(ALL.length).toBeGreaterThanOrEqual(150);
    expect(new Set(ALL.map(({ id }) => id)).size).toBe(ALL.length);
    const music = ALL.map(({ notes, harmony, metre, feel, from, position }) =>
      JSON.stringify([notes, harmony, metre, feel, from, position]),
    );
    expect(
      ALL.filter((_, at) => music.indexOf(music[at] ?? '') !== at).map(({ id }) => id),
    ).toEqual([]);
  });

  it('has every position, mode, feel and kind that was promised', () => {
    expect([...new Set(ALL.map(({ position }) => position))].sort((a, b) => a - b)).toEqual([
      1, 2, 3, 4, 5, 12,
    ]);
    expect(new Set(ALL.map(({ feel }) => feel))).toEqual(
      new Set(['straight', 'shuffle', 'slow-12/8']),
    );
    expect(new Set(ALL.map(modeOfPhrase))).toEqual(new Set(['major', 'minor']));
    expect(findPhrases({ kind: 'turnaround' }).length).toBeGreaterThanOrEqual(20);
    expect(findPhrases({ kind: 'ending' }).length).toBeGreaterThanOrEqual(10);
    expect(findPhrases({ kind: 'intro' }).length).toBeGreaterThanOrEqual(10);
    for (const { grade } of PHRASE_GRADES) {
      expect(
        ALL.filter((phrase) => phrase.grade === grade).length,
        `grade ${grade}`,
      ).toBeGreaterThan(3);
    }
  });

  it('has a line for each turnaround and each ending of the form package', () => {
    const numerals = ({ bars }: (typeof TURNAROUNDS)[number]) =>
      JSON.stringify(bars.map((bar) => bar.map(({ numeral, weight }) => [numeral, weight])));
    const lines = (kind: 'turnaround' | 'ending') =>
      new Set(
        findPhrases({ kind }).map((phrase) => {
          const { spans } = phraseChart(phrase, 'C');
          return JSON.stringify(
            [1, 2].map((bar) =>
              spans
                .filter((span) => span.bar === bar)
                .map(({ numeral, start, end }) => [numeral, (end - start) / 960]),
            ),
          );
        }),
      );
    const wanted = (rows: typeof TURNAROUNDS) =>
      rows.map((row) =>
        JSON.stringify(
          JSON.parse(numerals(row)).map((bar: [string, number][]) => {
            const total = bar.reduce((sum, [, weight]) => sum + weight, 0);
            return bar.map(([numeral, weight]) => [numeral, (4 * weight) / total]);
          }),
        ),
      );
    expect(wanted(TURNAROUNDS).filter((bars) => !lines('turnaround').has(bars))).toEqual([]);
    expect(wanted(ENDINGS).filter((bars) => !lines('ending').has(bars))).toEqual([]);
  });

  it('says of each what it trains and where it comes from', () => {
    for (const { id, trains, source } of ALL) {
      expect(trains.length, id).toBeGreaterThan(3);
      expect(source, id).toBe('made for this catalogue');
    }
  });
});

describe.each(ALL.map((phrase) => [phrase.id, phrase] as const))('%s', (_, phrase) => {
  const { player, mostHoles, mostInBeat } = limitsOf(phrase);

  it('plays as written at its grade, on a standard harp in its position', () => {
    const had = soundings(HARP, { level: player });
    const marks = timedOf(phrase).flatMap((timed) => timed.marks);
    expect(marks.filter((mark) => !had.some((sounding) => sameMark(mark, sounding)))).toEqual([]);
  });

  it('is the notes that its tab sounds', () => {
    const { pitch } = { pitch: homeTonic(HARP, songKeyOf(HARP, phrase.position).pitchClass) };
    const line = lineOfTab(timedOf(phrase), HARP, { metre: phrase.metre, pickup: phrase.pickup });
    const own = lineOfPhrase(phrase, chartOf(phrase), pitch).notes;
    const plain = own.map(({ start, duration, pitch: at }) => ({ start, duration, pitch: at }));
    expect(makeLine(plain, { metre: phrase.metre, pickup: phrase.pickup })).toEqual(line);
  });

  it('has no stretch or leap beyond its grade', () => {
    const sounding = timedOf(phrase).filter(({ marks }) => marks.length > 0);
    const leaps = sounding.slice(1).map(({ marks }, at) => {
      const before = sounding[at]?.marks ?? [];
      return Math.min(
        ...marks.flatMap(({ hole }) => before.map((mark) => Math.abs(hole - mark.hole))),
      );
    });
    expect(Math.max(0, ...leaps)).toBeLessThanOrEqual(mostHoles);
    for (const { marks } of sounding) {
      const holes = marks.map(({ hole }) => hole).sort((a, b) => a - b);
      const gaps = holes.slice(1).filter((hole, at) => hole - (holes[at] ?? 0) > 1);
      const width = (holes.at(-1) ?? 0) - (holes[0] ?? 0) + 1;
      expect(gaps.length === 0 || player.splits.some((split) => split >= width)).toBe(true);
    }
  });

  it('has no more notes in a beat than its grade', () => {
    const { beatTicks } = parseMetre(phrase.metre);
    const beats = phrase.notes.filter(({ grace }) => !grace).map(({ at }) => at);
    const counts = new Map<number, Set<number>>();
    for (const at of beats) {
      const beat = Math.floor(at / beatTicks);
      counts.set(beat, (counts.get(beat) ?? new Set()).add(at));
    }
    expect(Math.max(...[...counts.values()].map(({ size }) => size))).toBeLessThanOrEqual(
      mostInBeat,
    );
  });

  it('fits its chords by score', () => {
    const line = lineOfPhrase(phrase, chartOf(phrase), homeTonic(HARP, tonicOf(chartOf(phrase))));
    const { measures, total } = scoreLine(line, chartOf(phrase));
    expect(measures.chordFit).toBeGreaterThanOrEqual(0.7);
    expect(measures.clashTime).toBeLessThanOrEqual(0.05);
    if (chartOf(phrase).bars >= 4) expect(total).toBeGreaterThanOrEqual(80);
  });

  it('comes to rest on a tone of its chord', () => {
    const chart = chartOf(phrase);
    const last = phrase.notes.at(-1);
    if (last === undefined) throw new Error('a phrase has notes');
    const pitchClass =
      (((aboveTonic(last, phrase, chart, last.at) + tonicOf(chart)) % 12) + 12) % 12;
    const tones = soundingChord(chart, last.at)?.tones.map((tone) => tone.pitchClass) ?? [];
    expect(tones).toContain(pitchClass);
  });

  it('can be placed as it is at its level', () => {
    const answer = placePhrase(phrase, { chart: chartOf(phrase), harp: HARP, level: phrase.level });
    expect(answer).toMatchObject({ playable: true, changes: [], otherHarmony: [] });
    expect(plainHarmony(phrase.harmony)).toBe(phrase.harmony);
  });
});
