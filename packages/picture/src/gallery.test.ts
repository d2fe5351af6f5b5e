import { describe, expect, it } from 'vitest';
import { GALLERY } from './gallery.fixture.js';
import { textComplaints } from './text-boxes.fixture.js';
import { textContrasts } from './text-contrast.fixture.js';
import { THEME_IDS } from './theme/themes.js';

describe.each(GALLERY)('%s', (name, draw) => {
  it('is drawn as it was', async () => {
    const { svg } = draw({});
    await expect(`${svg.replaceAll('><', '>\n<')}\n`).toMatchFileSnapshot(
      `../test/golden/${name}.svg`,
    );
  });

  it.each(THEME_IDS)('has readable text apart in theme %s, at 320 px and on A4', (theme) => {
    for (const width of [320, 680]) {
      const { svg } = draw({ theme, width });
      expect(textComplaints(svg)).toEqual([]);
      // WCAG 2.2, 1.4.3
      const contrasts = textContrasts(svg);
      expect(contrasts.length).toBeGreaterThan(5);
      expect(contrasts.filter(({ contrast }) => contrast < 4.5)).toEqual([]);
    }
  });

  it('is an image with a title, a description and a text of the same', () => {
    const { svg, title, description, text } = draw({});
    expect(svg).toMatch(/^<svg xmlns="[^"]+" role="img" aria-labelledby="(rp-\w+)-title \1-desc"/u);
    expect(svg).toContain('</title><desc id="rp-');
    expect(title).not.toBe('');
    expect(description.length).toBeGreaterThan(20);
    expect(text.split('\n').length).toBeGreaterThan(3);
  });
});
