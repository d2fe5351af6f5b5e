import type { OptionNames } from '@reedplate/pitch';
import type { Theme } from './theme/theme.js';
import type { ThemeId } from './theme/themes.js';

/** A picture, and what it shows in words. */
export interface Picture {
  /** The picture as SVG text, which stands alone in a file or within HTML. */
  readonly svg: string;
  /** What it is, in a few words. */
  readonly title: string;
  /** What it shows, in a sentence or two: what a screen reader says. */
  readonly description: string;
  /** All that it shows as plain text, a line a row. */
  readonly text: string;
  /** Pixels. */
  readonly width: number;
  /** Pixels; as high as the width makes it. */
  readonly height: number;
}

/** What every picture can be asked. */
export interface PictureOptions {
  /** Default `screen`. */
  readonly theme?: ThemeId | Theme;
  /** Pixels, from 200 to 4000; default 680, the width of A4 and Letter between margins. */
  readonly width?: number;
  /** Default what the picture shows; at most 200 characters. */
  readonly title?: string;
}

/** The names of what every picture can be asked. */
export const PICTURE_OPTIONS: OptionNames<PictureOptions> = {
  theme: true,
  width: true,
  title: true,
};
