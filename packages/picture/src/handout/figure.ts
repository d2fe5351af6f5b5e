import { isReedplateError } from '@reedplate/pitch';
import type { Picture } from '../picture.js';

/** Pixels of paper between margins, and of a small telephone between margins. */
const WIDE = 680;
const NARROW = 304;

/**
 * A picture twice, for paper and for a telephone; the style of the page shows one of them. What a telephone
 * cannot hold in readable text is there once, and scrolls: then it can be moved to by keyboard.
 */
export function figure(draw: (width: number) => Picture): string {
  const wide = draw(WIDE).svg;
  const narrow = drawNarrow(draw);
  if (narrow === undefined) return `<figure tabindex="0">${wide}</figure>`;
  return `<figure class="wide">${wide}</figure>\n<figure class="narrow">${narrow}</figure>`;
}

function drawNarrow(draw: (width: number) => Picture): string | undefined {
  try {
    return draw(NARROW).svg;
  } catch (error) {
    if (isReedplateError(error) && error.code === 'NUMBER_RANGE') return undefined;
    throw error;
  }
}
