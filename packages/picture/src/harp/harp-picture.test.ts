import { makeHarp } from '@reedplate/layout';
import { NOTE_NAMES } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyHarp, anyLevel, anyLook } from '../arbitraries.fixture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { THEME_IDS } from '../theme/themes.js';
import { harpPicture } from './harp-picture.js';

const anyChord = fc
  .tuple(
    fc.constantFrom(...NOTE_NAMES.filter((name) => name.length < 3)),
    fc.constantFrom('', 'm', '7', 'm7', '9', '13', 'dim7', 'm7b5', 'maj7', '7#9'),
  )
  .map(([root, quality]) => root + quality);

describe('harpPicture', () => {
  it('harpPicture keeps every text apart, readable and within the picture', () => {
    fc.assert(
      fc.property(
        anyHarp,
        anyLevel,
        anyLook,
        fc.option(anyChord, { nil: undefined }),
        fc.constantFrom('notes' as const, 'degrees' as const),
        fc.boolean(),
        (harp, level, look, chord, names, mirrored) => {
          const options = { ...look, level, names, mirrored };
          const asked = chord === undefined ? options : { ...options, chord };
          expect(textComplaints(harpPicture(harp, asked).svg)).toEqual([]);
        },
      ),
    );
  });

  it('harpPicture names every unbent note of the harp, and no more on the natural level', () => {
    const { svg, text } = harpPicture('C', { level: 'natural' });
    const names = textBoxes(svg).map((box) => box.text);
    expect(
      names
        .filter((name) => /^[A-G]$/u.test(name))
        .sort()
        .join(''),
    ).toBe('AABBCCCCDDDEEEFFGGGG');
    expect(text.split('\n')).toHaveLength(11);
  });

  it('harpPicture marks the tones of a chord by degree, shape and bracket', () => {
    const { svg, text, description } = harpPicture('C', { chord: 'G7', key: 'G' });
    expect(text).toContain("hole 3: +3 G (1 of the chord), -3 B (3 of the chord), -3' Bb");
    expect(text).toContain('whole chord: draw 1 to 5');
    expect(description).toContain('Whole: draw 1 to 5.');
    // Six roots filled: holes 2 draw and 3, 6, 9 blow, and the sign of the legend.
    expect(svg.match(/<circle [^>]*fill="#17663a"/gu)).toHaveLength(5);
  });

  it('harpPicture gives a chord the colour of its step in the key', () => {
    const strongOf = (chord: string) =>
      ['#17663a', '#6a35a0', '#855400', '#57534b'].filter((colour) =>
        harpPicture('C', { chord, key: 'G' }).svg.includes(colour),
      );
    expect(['G7', 'C7', 'D7', 'Am7'].map(strongOf)).toEqual([
      ['#17663a'],
      ['#6a35a0'],
      ['#855400'],
      ['#57534b'],
    ]);
  });

  it('harpPicture mirrored has the same text at mirrored places', () => {
    const numbersOf = (mirrored: boolean) =>
      textBoxes(harpPicture('C', { mirrored }).svg)
        .filter(({ text }) => /^\d+$/u.test(text))
        .sort((a, b) => a.left - b.left)
        .map(({ text }) => Number(text));
    expect(numbersOf(false)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(numbersOf(true)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect(harpPicture('C', { mirrored: true }).text).toBe(harpPicture('C').text);
  });

  it('harpPicture spells notes by the key of the song, and degrees from it', () => {
    expect(harpPicture('C', { key: 'Db' }).text).toContain("-1' Db");
    expect(harpPicture('C', { names: 'degrees', key: 'G' }).text).toContain('hole 2: +2 6, -2 1');
    expect(harpPicture('C', { names: 'degrees' }).text).toContain('hole 2: +2 3, -2 5');
  });

  it('harpPicture is the same each time, and its ids differ where the picture does', () => {
    const one = harpPicture(makeHarp('C'));
    expect(harpPicture('C')).toEqual(one);
    const idOf = (svg: string) => /id="(rp-[0-9a-f]{8})-title"/u.exec(svg)?.[1];
    expect(idOf(one.svg)).toBeDefined();
    expect(idOf(harpPicture('D').svg)).not.toBe(idOf(one.svg));
  });

  it('harpPicture refuses what it cannot show', () => {
    const code = (make: () => unknown): string => {
      try {
        make();
      } catch (error) {
        return (error as { code: string }).code;
      }
      return 'none';
    };
    expect(code(() => harpPicture('C', { chord: 'H7' }))).toBe('CHORD_UNKNOWN');
    expect(code(() => harpPicture('H'))).toBe('KEY_UNKNOWN');
    expect(code(() => harpPicture('C', { names: 'solfa' as 'notes' }))).toBe('OPTION_UNKNOWN');
    expect(code(() => harpPicture('C', { width: 100 }))).toBe('NUMBER_RANGE');
    const narrow = { width: 200, theme: 'large' as const };
    expect(() => harpPicture('C', narrow)).toThrow(/that hold 10 holes in readable text/u);
    expect(code(() => harpPicture('C', { title: ' ' }))).toBe('OPTION_UNKNOWN');
    expect(code(() => harpPicture('C', { theme: 'constructor' as 'dark' }))).toBe('OPTION_UNKNOWN');
  });

  it('harpPicture escapes a title', () => {
    const { svg } = harpPicture('C', { title: `<b>"A" & 'B'</b>` });
    expect(svg).toContain('&lt;b&gt;&quot;A&quot; &amp; &#39;B&#39;&lt;/b&gt;');
    expect(svg).not.toContain('<b>');
  });

  it('harpPicture calls neighbours the whole chord only where all its tones are there', () => {
    const saidOf = (chord: string, harp = 'C') => {
      const { text, description } = harpPicture(harp, { chord, key: 'G', level: 'natural' });
      const rows = text.split('\n').filter((row) => /^(?:whole|its triad|part)/u.test(row));
      return { rows, description };
    };
    // Draw 1 to 5 of a C harp is D G B D F: all of G7. Blow has C E G, and no B flat.
    expect(saidOf('G7').rows[0]).toBe('whole chord: draw 1 to 5');
    expect(saidOf('C7').rows).toEqual(['its triad: blow 1 to 10']);
    expect(saidOf('C7').description).toContain('Its triad: blow 1 to 10.');
    expect(saidOf('C').rows).toEqual(['whole chord: blow 1 to 10']);
    // D has no F sharp unbent.
    expect(saidOf('D7').rows.filter((row) => !row.startsWith('part'))).toEqual([]);
    expect(saidOf('D7').description).toContain('No neighbouring holes sound the whole chord');
  });

  it.each(THEME_IDS)(
    'harpPicture sets no name of a note larger than its degree in theme %s',
    (theme) => {
      for (const width of [320, 680]) {
        const { svg } = harpPicture('C', { chord: 'G7', key: 'G', level: 'natural', theme, width });
        const boxes = textBoxes(svg);
        const degree = boxes.find(({ text }) => text === '♭7');
        const names = boxes.filter(({ text, top }) => text === 'F' && top > (degree?.top ?? 0));
        expect(names.length).toBeGreaterThan(0);
        for (const { size } of names) expect(size).toBeLessThanOrEqual(degree?.size ?? 0);
      }
    },
  );
});
