import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { beforeAll, describe, expect, it } from 'vitest';
import { drawerOfVerovio } from './verovio.fixture.js';
import { writeMusicXml } from './write-musicxml.js';

/** Flat, natural and sharp of the Standard Music Font Layout (SMuFL 1.4, "Standard accidentals"). */
const GLYPHS = { flat: 'E260', natural: 'E261', sharp: 'E262' } as const;

let draw: (xml: string) => string;

beforeAll(async () => {
  draw = await drawerOfVerovio();
}, 60_000);

/** How often each sign is drawn before notes, those of key signatures left out. */
function signsDrawn(svg: string): Readonly<Record<string, number>> {
  const own = svg.split('<g ').filter((group) => /class="accid"/u.test(group));
  const count = (code: string): number =>
    own.filter((group) => new RegExp(`href="#${code}`, 'u').test(group)).length;
  return Object.fromEntries(Object.entries(GLYPHS).map(([name, code]) => [name, count(code)]));
}

const quarters = (...pitches: readonly number[]) =>
  makeLine(pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));

describe('writeMusicXml, drawn by Verovio 6.3', () => {
  it('draws a sign wherever a pitch needs it', () => {
    const line = quarters(66, 65, 65, 66, 65, 66, 70, 71);
    // In G: F#, F natural, then it holds, F# again; a new bar: F natural, F#, B flat, B natural.
    expect(signsDrawn(draw(writeMusicXml({ line, key: 'G' })))).toEqual({
      flat: 1,
      natural: 3,
      sharp: 2,
    });
  });

  it('draws the title once, and not before the staff again', () => {
    const { notes } = quarters(67);
    const svg = draw(writeMusicXml({ line: makeLine(notes, { title: 'Roots' }) }));
    expect(svg.match(/Roots/gu)).toHaveLength(1);
  });

  it('cautions in the bar after', () => {
    const svg = draw(writeMusicXml({ line: quarters(65, 67, 67, 67, 66, 67, 67, 67), key: 'G' }));
    expect(signsDrawn(svg)).toEqual({ flat: 0, natural: 1, sharp: 1 });
  });

  it('draws title, tempo, feel and remark, four bars a line, and a final bar line', () => {
    const chart = makeChart('basic', 'G', { tempo: 96 });
    const line = makeLine(
      chart.spans.map(({ start, end }) => ({ start, duration: end - start, pitch: 67 })),
    );
    const xml = writeMusicXml({ line, chart }, { title: 'Twelve bars', remark: 'C harp' });
    const svg = draw(xml);
    for (const words of ['Twelve bars', 'Medium', 'C harp', '96']) expect(svg).toContain(words);
    expect(svg.match(/class="system"/gu)).toHaveLength(3);
    expect(xml).toContain('<bar-style>light-heavy</bar-style>');
  });
});
