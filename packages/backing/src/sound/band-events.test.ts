import { makeChart } from '@reedplate/form';
import { applySwing } from '@reedplate/interchange';
import { makeLine, notesInSeconds } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { makeBacking } from '../make-backing.js';
import { bandEvents } from './band-events.js';

const chart = makeChart('quick-change', 'G', { tempo: 120, choruses: 2 });

describe('bandEvents', () => {
  test('bandEvents has every note of every part, at its second, in order', () => {
    const backing = makeBacking(chart);
    const events = bandEvents(backing);
    const parts = backing.parts ?? [];
    expect(events).toHaveLength(parts.reduce((sum, { line }) => sum + line.notes.length, 0));
    const starts = events.map(({ start }) => start);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    const bass = parts.find(({ name }) => name === 'Bass');
    expect(bass && notesInSeconds(bass.line).map(({ start, pitch }) => [start, pitch])).toEqual(
      events.filter(({ part }) => part === 'Bass').map(({ start, pitch }) => [start, pitch]),
    );
  });

  test('bandEvents plays eighths in the feel of the chart', () => {
    const offBeats = (feel: 'shuffle' | 'straight'): readonly number[] => {
      const own = makeChart('quick-change', 'G', { tempo: 120, feel });
      const events = bandEvents(makeBacking(own, { groove: 'boogie', countIn: 0 }));
      const places = events
        .filter(({ part, start }) => part === 'Bass' && start < 16)
        .map(({ start }) => Math.round((start % 0.5) * 1000));
      return [...new Set(places)].filter((place) => place > 1 && place < 499);
    };
    expect(offBeats('straight')).toEqual([250]);
    expect(offBeats('shuffle')).toEqual([333]);
  });

  test('bandEvents takes 96 beats a minute where neither chart nor line say', () => {
    const events = bandEvents(makeBacking(makeChart('basic', 'G')));
    expect(events[1]?.start).toBeCloseTo(60 / 96, 9);
  });

  test('bandEvents makes louder what is struck harder, by its power', () => {
    const backing = makeBacking(chart, { drums: { mute: true }, comping: { mute: true } });
    const gains = new Set(bandEvents(backing).map(({ gain }) => gain.toFixed(3)));
    expect(gains.size).toBeGreaterThan(1);
    const soft = bandEvents(makeBacking(chart, { bass: { level: 0.5 } }));
    const loud = bandEvents(makeBacking(chart));
    const first = (events: typeof soft) => events.find(({ part }) => part === 'Bass')?.gain ?? 0;
    expect(first(soft) / first(loud)).toBeCloseTo(0.25, 1);
  });

  test('bandEvents clicks on every beat where asked, once where it is counted in', () => {
    const backing = makeBacking(chart);
    const clicks = bandEvents(backing, { click: true }).filter(
      ({ sound, part }) => sound === 'rim' || part === 'Click',
    );
    const starts = clicks.map(({ start }) => start);
    expect(starts).toEqual(Array.from({ length: 26 * 4 }, (_, at) => at / 2));
    expect(clicks[4]?.gain).toBeGreaterThan(clicks[5]?.gain ?? 1);
  });

  test('bandEvents plays a line on top as a reed', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    const events = bandEvents(makeBacking(chart, { line }));
    expect(events.filter(({ sound }) => sound === 'reed')).toHaveLength(1);
    const sheet = { line: makeLine([{ start: 0, duration: 960, pitch: 67 }]), chart };
    expect(bandEvents(sheet).map(({ part, sound }) => [part, sound])).toEqual([['Tune', 'reed']]);
  });

  test('bandEvents leaves out drums that the small kit does not have', () => {
    const line = makeLine([
      { start: 0, duration: 10, pitch: 36 },
      { start: 0, duration: 10, pitch: 81 },
    ]);
    const sheet = {
      line: makeLine([]),
      chart,
      parts: [{ name: 'Drums', percussion: true as const, line }],
    };
    expect(bandEvents(sheet).map(({ sound }) => sound)).toEqual(['kick']);
  });

  test('bandEvents swings as a file that is written from the same backing does', () => {
    const backing = makeBacking(chart, { groove: 'boogie' });
    const [bass] = backing.parts ?? [];
    const played = bass && notesInSeconds(applySwing(bass.line, { feel: chart.feel }));
    const heard = bandEvents(backing).filter(({ part }) => part === 'Bass');
    expect(heard.map(({ start }) => start)).toEqual(played?.map(({ start }) => start));
  });

  test.each([null, {}, 'band', { chart }])('bandEvents refuses %j', (sheet) => {
    expect(() => bandEvents(sheet as never)).toThrow(
      expect.objectContaining({ code: expect.stringMatching(/CHART_INVALID|LINE_INVALID/u) }),
    );
  });
});
