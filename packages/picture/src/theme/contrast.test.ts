import { describe, expect, it } from 'vitest';
import { contrastOf, type Hex } from './contrast.js';
import type { Theme } from './theme.js';
import { THEME_IDS, THEMES, toTheme } from './themes.js';

describe('contrastOf', () => {
  // By the definition of contrast ratio in WCAG: black on white is 21:1, a colour on itself 1:1.
  it('contrastOf is 21 for black and white, 1 for a colour on itself', () => {
    expect(contrastOf('#000000', '#ffffff')).toBe(21);
    expect(contrastOf('#ffffff', '#000000')).toBe(21);
    expect(contrastOf('#6a35a0', '#6A35A0')).toBe(1);
  });

  it.each(['#fff', 'white', '#gggggg', '', null, 7])('contrastOf refuses %s', (colour) => {
    expect(() => contrastOf(colour as Hex, '#ffffff')).toThrow(/six hexadecimal digits/u);
  });
});

describe.each(THEME_IDS)('THEMES.%s', (id) => {
  const { paper, ink, faint, rule, chords, textSize } = THEMES[id];
  const shades = Object.entries(chords);

  it('has text of at least 4.5 on paper, 7 for ink (WCAG 2.2, 1.4.3 and 1.4.6)', () => {
    expect(contrastOf(ink, paper)).toBeGreaterThanOrEqual(7);
    expect(contrastOf(faint, paper)).toBeGreaterThanOrEqual(4.5);
    expect(textSize).toBeGreaterThanOrEqual(12);
  });

  it('has lines of at least 3 on paper (WCAG 2.2, 1.4.11)', () => {
    expect(contrastOf(rule, paper)).toBeGreaterThanOrEqual(3);
  });

  it.each(shades)('has the chord on %s readable on its tint and marked on paper', (_, shade) => {
    expect(contrastOf(ink, shade.tint)).toBeGreaterThanOrEqual(7);
    expect(contrastOf(faint, shade.tint)).toBeGreaterThanOrEqual(4.5);
    expect(contrastOf(shade.strong, shade.tint)).toBeGreaterThanOrEqual(4.5);
    expect(contrastOf(shade.strong, paper)).toBeGreaterThanOrEqual(4.5);
  });
});

describe('toTheme', () => {
  it('toTheme gives a theme of its own back, and refuses a name that is none', () => {
    const own: Theme = { ...THEMES.print, id: 'own', textSize: 20 };
    expect(toTheme(own)).toBe(own);
    expect(toTheme('dark')).toBe(THEMES.dark);
    expect(() => toTheme('drak' as 'dark')).toThrow(/dark/u);
  });
});
