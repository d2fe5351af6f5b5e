import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { readMusicXml } from './read-musicxml.js';
import { writeMusicXml } from './write-musicxml.js';

const quarter = (at: number, pitch: number, duration = 960) => ({
  start: at * 960,
  duration,
  pitch,
});
const count = (xml: string, part: string): number => xml.split(part).length - 1;

describe('writeMusicXml', () => {
  test('writeMusicXml spells notes in the key, and names their values', () => {
    const line = makeLine([quarter(0, 70, 1440), quarter(1.5, 63, 320)]);
    const xml = writeMusicXml({ line, key: 'Bb' });
    expect(xml).toMatch(/<step>B<\/step>\s*<alter>-1<\/alter>\s*<octave>4<\/octave>/u);
    expect(xml).toMatch(/<step>E<\/step>\s*<alter>-1<\/alter>/u);
    expect(xml).toMatch(/<type>quarter<\/type>\s*<dot\/>/u);
    expect(xml).toMatch(/<type>eighth<\/type>\s*<time-modification>/u);
    expect(xml).toContain('<fifths>-2</fifths>');
  });

  test('writeMusicXml ties a note over a bar line, and one that no value makes', () => {
    const xml = writeMusicXml({ line: makeLine([quarter(3, 67, 1920), quarter(5, 69, 2400)]) });
    expect(count(xml, '<tie type="start"/>')).toBe(2);
    expect(count(xml, '<tie type="stop"/>')).toBe(2);
  });

  test('writeMusicXml writes a length that no values make without one, exactly', () => {
    const xml = writeMusicXml({ line: makeLine([{ start: 0, duration: 901, pitch: 67 }]) });
    expect(xml).toMatch(/<duration>901<\/duration>\s*<voice>1<\/voice>\s*<\/note>/u);
  });

  test('writeMusicXml writes words once a beginning, as lyric and as technical sign', () => {
    const line = makeLine([quarter(0, 60, 4800), quarter(0, 64, 4800), quarter(5, 67)]);
    const xml = writeMusicXml({ line }, { words: ['(+1+2)', '-2'] });
    expect(count(xml, '<text>(+1+2)</text>')).toBe(1);
    expect(count(xml, '<other-technical>-2</other-technical>')).toBe(1);
  });

  test('writeMusicXml writes the chart, its feel, and the harmonica', () => {
    const chart = makeChart('basic', 'G', { tempo: 96 });
    const xml = writeMusicXml({ line: makeLine([quarter(0, 67)]), chart });
    expect(count(xml, '<harmony>')).toBe(7);
    expect(count(xml, '<measure ')).toBe(12);
    expect(xml).toContain('<sound tempo="96">');
    expect(xml).toContain('<swing-type>eighth</swing-type>');
    expect(xml).toContain('wind.reed.harmonica');
    expect(xml).toContain('<midi-program>23</midi-program>');
    const read = readMusicXml(xml);
    expect(read.chart?.spans).toEqual(
      chart.spans.map((span) => ({ ...span, barOfForm: span.bar, chorus: 1 })),
    );
  });

  // MusicXML 4.0, data type kind-value: of "none" the root-step text should be empty. Verovio 6.3.0
  // shows the root all the same.
  test('writeMusicXml writes no chord with a root that is not shown', () => {
    const chart = makeChart(parseForm('N.C. | I7 | IV7 | I7'), 'G');
    const xml = writeMusicXml({ line: makeLine([]), chart });
    expect(xml).toMatch(
      /<root-step text="">C<\/root-step>\s*<\/root>\s*<kind text="N\.C\.">none</u,
    );
    expect(readMusicXml(xml).chart?.spans[0]?.chord).toBeNull();
  });

  test('writeMusicXml writes choruses that are alike once, unless told', () => {
    const chart = makeChart('basic', 'G', { choruses: 3 });
    const line = makeLine([0, 12, 24].map((bar) => quarter(bar * 4, 67)));
    const folded = writeMusicXml({ line, chart });
    expect([count(folded, '<measure '), count(folded, 'times="3"')]).toEqual([12, 1]);
    expect(readMusicXml(folded).line.notes).toEqual(line.notes);
    expect(count(writeMusicXml({ line, chart }, { repeats: false }), '<measure ')).toBe(36);
    const other = makeLine([quarter(0, 67), quarter(48, 69)]);
    expect(count(writeMusicXml({ line: other, chart }), '<measure ')).toBe(36);
  });

  test('writeMusicXml writes a chart without notes as bars of rest', () => {
    const chart = makeChart('basic', 'G', { pickup: 960 });
    const xml = writeMusicXml({ line: makeLine([]), chart });
    expect([count(xml, '<measure '), count(xml, '<rest/>')]).toEqual([12, 12]);
  });

  test('writeMusicXml escapes what XML cannot hold', () => {
    const line = makeLine([quarter(0, 60)], { title: 'A < B & "C"\u0000' });
    expect(readMusicXml(writeMusicXml({ line })).line.title).toBe('A < B & "C"');
  });

  test('writeMusicXml refuses a line of years', () => {
    const line = makeLine([{ start: 2 ** 39, duration: 1, pitch: 60 }]);
    expect(() => writeMusicXml({ line })).toThrowError(/at most 20000 bars/u);
  });

  test('writeMusicXml leaves out percussion, and refuses notes below C0', () => {
    const line = makeLine([quarter(0, 60)]);
    const kit = { name: 'Kit', percussion: true, line } as const;
    expect(count(writeMusicXml({ line: makeLine([quarter(0, 62)]), parts: [kit] }), '<part ')).toBe(
      1,
    );
    expect(() => writeMusicXml({ line: makeLine([quarter(0, 11)]) })).toThrowError(
      expect.objectContaining({ code: 'PITCH_RANGE' }),
    );
  });
});
