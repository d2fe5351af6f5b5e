import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { plainShare } from '../validity/baseline.js';
import { tryJudgements } from '../validity/battery.js';
import { contrasts, seededRandom, shuffled } from '../validity/contrasts.js';
import { halvesOf } from '../validity/halves.js';
import { JUDGEMENTS } from '../validity/judgements.js';
import { beatsOf, readSolos, type Solo } from '../validity/read-solos.js';
import { bootstrapInterval, quantile } from '../validity/statistics.js';
import { windowsOf, winsAgainst } from '../validity/study.js';
import { makeSongs } from '../validity/takes.js';

// An invented solo in the shape of the data file: roots on every beat of twelve bars.
const ROOTS = { Bb7: 58, Eb7: 63, F7: 65 } as const;
const FORM = 'Bb7 Eb7 Bb7 Bb7 Eb7 Eb7 Bb7 Bb7 F7 Eb7 Bb7 F7'.split(' ') as (keyof typeof ROOTS)[];
const row = {
  id: 1,
  key: 'Bb-maj',
  bpm: 120,
  beats: FORM.flatMap((chord, bar) =>
    [1, 2, 3, 4].map((beat) => [bar + 1, beat, bar + 1, (bar * 4 + beat) / 2, chord]),
  ),
  notes: FORM.flatMap((chord, bar) =>
    [1, 2, 3, 4].map((beat) => [
      bar + 1,
      beat,
      1,
      1,
      bar + 1,
      (bar * 4 + beat) / 2 + 0.01,
      0.4,
      0.8,
      ROOTS[chord],
    ]),
  ),
};

const folder = mkdtempSync(join(tmpdir(), 'solos-'));
const path = join(folder, 'solos.ndjson');
writeFileSync(path, `${JSON.stringify(row)}\n`);
afterAll(() => rmSync(folder, { recursive: true }));

function onlySolo(timing: 'written' | 'played' = 'written'): Solo {
  const [solo] = readSolos(path, timing);
  if (solo === undefined) throw new Error('no solo');
  return solo;
}

describe('readSolos', () => {
  it('readSolos lays notes and chords on one grid', () => {
    const { line, chart } = onlySolo();
    expect(line.notes.slice(0, 2)).toEqual([
      { start: 0, duration: 768, pitch: 58 },
      { start: 960, duration: 768, pitch: 58 },
    ]);
    expect(chart).toMatchObject({ key: 'Bb', bars: 12, metre: '4/4' });
    expect(beatsOf(chart).map((chord) => chord?.symbol)).toEqual(
      FORM.flatMap((chord) => Array(4).fill(chord)),
    );
  });

  it('readSolos puts notes where they were played when asked', () => {
    expect(onlySolo('played').line.notes[1]?.start).toBeCloseTo(960 + 0.02 * 960, 0);
  });
});

describe('contrasts', () => {
  const solo = onlySolo();
  const all = contrasts(3);
  const made = (name: string): Solo => {
    const contrast = all.find((one) => one.name === name);
    if (contrast === undefined) throw new Error(name);
    return contrast.make(solo, seededRandom(1));
  };
  const rootsOf = ({ chart }: Solo): readonly unknown[] =>
    beatsOf(chart).map((chord) => chord?.symbol);

  it('contrasts are the eleven intervals, eight shifts and two shuffles', () => {
    expect(all.length).toBe(21);
  });

  it('contrasts move the chart and its key, and leave the line', () => {
    const up = made('up 2');
    expect(up.chart.key).toBe('C');
    expect(rootsOf(up)[0]).toBe('C7');
    expect(up.line).toBe(solo.line);
  });

  it('contrasts turn the chart round by whole bars', () => {
    expect(rootsOf(made('late 1'))[4]).toBe('Bb7');
    expect(rootsOf(made('late 1'))[0]).toBe('F7');
    expect(rootsOf(made('early 1'))[0]).toBe('Eb7');
  });

  it('contrasts shuffle bars and pitches without losing any', () => {
    expect([...rootsOf(made('bars shuffled'))].sort()).toEqual([...rootsOf(solo)].sort());
    const pitches = made('pitches shuffled').line.notes.map(({ pitch }) => pitch);
    expect(pitches.sort()).toEqual(solo.line.notes.map(({ pitch }) => pitch).sort());
  });

  it('contrasts are all lost to the true chart of a line of roots, but for those that make them guide tones', () => {
    const lost = all.filter((contrast) => winsAgainst(contrast, [solo]).get('total')?.[0] !== 1);
    // Over these charts the same notes are all sevenths, fifths or thirds: as good a line as roots.
    expect(lost.map(({ name }) => name)).toEqual(['up 2', 'up 5', 'up 8']);
  });

  it('shuffled is the same for the same seed', () => {
    const items = [1, 2, 3, 4, 5, 6, 7, 8];
    expect(shuffled(items, seededRandom(5))).toEqual(shuffled(items, seededRandom(5)));
    expect(shuffled(items, seededRandom(5))).not.toEqual(shuffled(items, seededRandom(6)));
  });
});

describe('plainShare and windowsOf', () => {
  it('plainShare of roots is the whole', () => {
    expect(plainShare(onlySolo())).toBe(1);
  });

  it('windowsOf cuts line and chart alike', () => {
    const windows = windowsOf([onlySolo()], 4);
    expect(windows.length).toBe(3);
    expect(windows.every((window) => plainShare(window) === 1)).toBe(true);
    expect(windows[1]?.line.notes[0]?.start).toBe(0);
  });
});

describe('statistics of the report', () => {
  it('quantile reads between values', () => {
    expect(quantile([3, 1, 2], 0.5)).toBe(2);
    expect(quantile([0, 10], 0.25)).toBe(2.5);
  });

  it('bootstrapInterval holds the mean, and has no width where all values are one', () => {
    const [low, high] = bootstrapInterval([0, 1, 1, 1, 0, 1, 1, 1]);
    expect(low < 0.75 && high > 0.75).toBe(true);
    expect(bootstrapInterval([1, 1, 1])).toEqual([1, 1]);
  });
});

describe('battery', () => {
  const [song] = makeSongs();
  if (song === undefined) throw new Error('no song');

  it('makeSongs makes the same takes each time, each over the chart of its song', () => {
    expect(makeSongs()[0]?.takes.get('aimed')).toEqual(song.takes.get('aimed'));
    const end = song.chart.spans.at(-1)?.end ?? 0;
    for (const { notes } of song.takes.values()) {
      expect(notes.every(({ start }) => start < end)).toBe(true);
    }
    expect(song.takes.get('a bar late')?.notes[0]?.start).toBeGreaterThanOrEqual(3840);
  });

  it('tryJudgements counts every judgement for every song, and names those that broke one', () => {
    const tried = tryJudgements([song]);
    expect(tried).toHaveLength(JUDGEMENTS.length);
    for (const { held, of, broken } of tried) expect(held + broken.length).toBe(of);
    // Of the first song nearly all hold; on a song whose takes are swapped many must not.
    const swapped = new Map(song.takes);
    for (const name of ['aimed', 'roots', 'calls'] as const) {
      swapped.set(name, song.takes.get('chromatic walk') ?? makeSilence());
    }
    const broken = tryJudgements([{ ...song, takes: swapped }]).filter(({ held }) => held === 0);
    expect(broken.length).toBeGreaterThan(tried.filter(({ held }) => held === 0).length + 8);
  });

  function makeSilence(): never {
    throw new Error('no walk');
  }
});

describe('halvesOf', () => {
  it('halvesOf leaves out a half without solos', () => {
    expect(halvesOf([onlySolo()]).map(({ name }) => name)).toEqual(['chosen on']);
    const both = halvesOf([onlySolo(), { ...onlySolo(), id: 3 }]);
    expect(both.map(({ name, solos }) => [name, solos.length])).toEqual([
      ['chosen on', 1],
      ['reported on', 1],
    ]);
  });
});
