import { THEMES, type ThemeId } from '@reedplate/picture';
import type { Look } from '../src/set-up.js';

/** Sizes of text of the page in each look, in pixels. */
const SIZES: Readonly<Record<string, number>> = { screen: 16, dark: 16, large: 24 };

/** Gives the page the colours of a theme of the pictures, and says which it is. */
export function wear(look: Look): ThemeId {
  const isDark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  const id: ThemeId = look === 'auto' ? (isDark ? 'dark' : 'screen') : look;
  const { paper, ink, faint, rule } = THEMES[id];
  const { style, dataset } = document.documentElement;
  for (const [name, value] of Object.entries({ paper, ink, faint, rule })) {
    style.setProperty(`--${name}`, value);
  }
  style.setProperty('--size', `${SIZES[id] ?? 16}px`);
  style.setProperty('color-scheme', id === 'dark' ? 'dark' : 'light');
  dataset.look = id;
  return id;
}
