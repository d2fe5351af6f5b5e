import { makeLine } from '@reedplate/line';
import { everyHarp, fitHarps } from '@reedplate/playability';
import { describe, expect, it } from 'vitest';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { THEME_IDS } from '../theme/themes.js';
import { fitPicture } from './fit-picture.js';

const line = makeLine(
  [60, 62, 63, 67, 70, 72, 78].map((pitch, at) => ({ start: at * 480, duration: 480, pitch })),
);

describe('fitPicture', () => {
  it.each(THEME_IDS)('fitPicture keeps every text apart in theme %s', (theme) => {
    const harps = [
      ...everyHarp({ registers: ['low', 'standard'] }),
      ...everyHarp({ tunings: ['natural-minor', 'raised-third-blow'] }),
    ];
    const ranking = fitHarps(line, harps, { count: harps.length, transpositions: [0, 12] });
    for (const width of [320, 680, 1200]) {
      expect(textComplaints(fitPicture(ranking, { theme, width }).svg)).toEqual([]);
    }
  });

  it('fitPicture shows each harp once, at its best, and numbers the three best', () => {
    const ranking = fitHarps(line, everyHarp(), { count: 24, transpositions: [0, 12] });
    const { svg, text, description } = fitPicture(ranking);
    const rows = text.split('\n').slice(1);
    expect(rows).toHaveLength(12);
    expect(new Set(rows.map((row) => row.split(':')[0])).size).toBe(12);
    expect(textBoxes(svg).filter((box) => / #[123]$/u.test(box.text))).toHaveLength(3);
    expect(description).toContain(`The best is ${ranking.harps[0]?.harp.key}.`);
  });
});
