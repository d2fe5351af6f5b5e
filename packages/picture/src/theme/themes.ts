import { deepFreeze, requireOneOf } from '@reedplate/pitch';
import type { Theme } from './theme.js';

/** The themes there are: for a screen, for a dark screen, for paper, and with large text. */
export const THEME_IDS = Object.freeze(['screen', 'dark', 'print', 'large'] as const);

/** Id of a theme; see {@link THEME_IDS}. */
export type ThemeId = (typeof THEME_IDS)[number];

const FONT = "Verdana, 'DejaVu Sans', 'Liberation Sans', Arial, sans-serif";

/**
 * The themes as data. The chords on I, IV and V are green, violet and amber, which the common
 * colour blindnesses keep apart by lightness, and each has a shape of its own beside the colour.
 */
export const THEMES: Readonly<Record<ThemeId, Theme>> = /* @__PURE__ */ deepFreeze({
  screen: {
    id: 'screen',
    paper: '#fffdf8',
    ink: '#22201c',
    faint: '#625d54',
    rule: '#8a8477',
    chords: {
      one: { tint: '#dcf0e1', strong: '#17663a' },
      four: { tint: '#ebe0f7', strong: '#6a35a0' },
      five: { tint: '#fcebc6', strong: '#855400' },
      other: { tint: '#eceae4', strong: '#57534b' },
    },
    textSize: 15,
    font: FONT,
  },
  dark: {
    id: 'dark',
    paper: '#15171a',
    ink: '#f3f0ea',
    faint: '#b9b4aa',
    rule: '#84807a',
    chords: {
      one: { tint: '#153a25', strong: '#6ad597' },
      four: { tint: '#35234d', strong: '#cda8ff' },
      five: { tint: '#412f0a', strong: '#f2b84b' },
      other: { tint: '#2c2e31', strong: '#c9c4ba' },
    },
    textSize: 15,
    font: FONT,
  },
  print: {
    id: 'print',
    paper: '#ffffff',
    ink: '#000000',
    faint: '#4d4d4d',
    rule: '#808080',
    chords: {
      one: { tint: '#eaf6ed', strong: '#0f5730' },
      four: { tint: '#f3ecfa', strong: '#592b8a' },
      five: { tint: '#fdf4df', strong: '#744900' },
      other: { tint: '#f2f2f2', strong: '#474747' },
    },
    textSize: 14,
    font: FONT,
  },
  large: {
    id: 'large',
    paper: '#ffffff',
    ink: '#000000',
    faint: '#333333',
    rule: '#595959',
    chords: {
      one: { tint: '#e2f3e7', strong: '#0b4d29' },
      four: { tint: '#efe5fa', strong: '#4d2080' },
      five: { tint: '#fdf0d2', strong: '#643e00' },
      other: { tint: '#ededed', strong: '#333333' },
    },
    textSize: 24,
    font: FONT,
  },
});

/**
 * The theme of a name; a theme is given back as it is.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`
 */
export function toTheme(theme: ThemeId | Theme): Theme {
  if (typeof theme === 'object' && theme !== null) return theme;
  return THEMES[requireOneOf(theme, THEME_IDS, { what: 'a theme' })];
}
