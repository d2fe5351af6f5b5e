import { ReedplateError } from '@reedplate/pitch';

/** A colour as six hexadecimal digits: `#1b6e3c`. */
export type Hex = `#${string}`;

const HEX = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/iu;

/**
 * How far two colours stand apart, from 1 (the same) to 21 (black and white): the contrast ratio of
 * WCAG 2.2, W3C Recommendation of 5 October 2023, which asks for 4.5 of text (1.4.3) and 3 of what
 * a picture needs to be understood (1.4.11).
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for what is no colour of six hexadecimal digits
 * @example
 * ```ts
 * import { contrastOf } from '@reedplate/picture';
 *
 * contrastOf('#000000', '#ffffff'); // => 21
 * contrastOf('#777777', '#ffffff') < 4.5; // => true
 * contrastOf('#000', '#ffffff'); // throws OPTION_UNKNOWN
 * ```
 */
export function contrastOf(one: Hex, other: Hex): number {
  const [darker, lighter] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  const ratio = ((lighter ?? 0) + 0.05) / ((darker ?? 0) + 0.05);
  // Powers differ in the last digit from one runtime to the next.
  return Math.round(ratio * 1000) / 1000;
}

/** Relative luminance, as WCAG 2.2 defines it. */
function luminanceOf(colour: Hex): number {
  const [, red, green, blue] = (typeof colour === 'string' && HEX.exec(colour)) || [];
  if (red === undefined || green === undefined || blue === undefined) throw notAColour(colour);
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

function linear(digits: string): number {
  const share = Number.parseInt(digits, 16) / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

function notAColour(value: unknown): ReedplateError {
  return new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value,
    expected: 'a colour of six hexadecimal digits, such as #1b6e3c',
  });
}
