import { deepFreeze, ReedplateError, requireInteger } from '@reedplate/pitch';
import type { Picture, PictureOptions } from '../picture.js';
import { wrapText } from '../text/text-width.js';
import type { Theme } from '../theme/theme.js';
import { toTheme } from '../theme/themes.js';
import { say } from './draw.js';
import { idOf } from './id-of.js';
import { element, type SvgNode, writeNode, writeNumber } from './node.js';

/** The smallest text that is read with ease on paper: 10 px are 7.5 points. */
export const SMALLEST_TEXT = 10;

const USUAL_WIDTH = 680;
const LONGEST_TITLE = 200;

/** What a picture is drawn on: its look, its width and where its content begins. */
export interface Frame {
  readonly theme: Theme;
  readonly width: number;
  /** Left and right of the content. */
  readonly left: number;
  readonly right: number;
  /** Below the heading. */
  readonly top: number;
  readonly title: string;
  readonly heading: readonly SvgNode[];
}

/** What is drawn on a frame. */
export interface Drawing {
  readonly description: string;
  readonly text: string;
  readonly nodes: readonly SvgNode[];
  /** Where the drawing ends. */
  readonly bottom: number;
}

/** Begins a picture: checks what was asked and sets the title as a heading. */
export function makeFrame(options: PictureOptions, usualTitle: string): Frame {
  // What is null is no choice: it is refused, and not taken for what is left out.
  const { theme: asked = 'screen', width: wide = USUAL_WIDTH, title: own = usualTitle } = options;
  const theme = toTheme(asked);
  const size = requireInteger(Math.round(theme.textSize), {
    min: SMALLEST_TEXT,
    max: 96,
    what: 'pixels of text',
  });
  const width = requireInteger(wide, {
    min: 200,
    max: 4000,
    what: 'pixels of width',
  });
  const title = requireTitle(own);
  const margin = Math.round(Math.min(size, width / 32));
  const headSize = size * 1.15;
  const lines = wrapText(title, width - 2 * margin, headSize, 'bold');
  const heading = lines.map((line, at) =>
    say(line, {
      x: margin,
      y: margin + headSize * (1 + at * 1.25),
      size: headSize,
      fill: theme.ink,
      weight: 'bold',
    }),
  );
  const top = margin + headSize * (lines.length * 1.25 + 0.5);
  return { theme, width, left: margin, right: width - margin, top, title, heading };
}

function requireTitle(title: unknown): string {
  if (typeof title === 'string' && title.trim() !== '' && title.length <= LONGEST_TITLE) {
    return title.trim();
  }
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: title,
    expected: `a title of 1 to ${LONGEST_TITLE} characters`,
  });
}

/** Ends a picture: paper, heading and drawing as SVG with a title and a description. */
export function finishPicture(frame: Frame, drawing: Drawing, height?: number): Picture {
  const { theme, width, left, title, heading } = frame;
  const { description, text } = drawing;
  const high = height ?? Math.ceil(drawing.bottom + left);
  const paper = element('rect', { width, height: high, fill: theme.paper });
  // Written once: the id is made of what is drawn, and most of a picture's time goes into writing it.
  const body = [paper, ...heading, ...drawing.nodes].map(writeNode).join('');
  const id = `rp-${idOf(`${title}${description}${body}`)}`;
  const opening = element('svg', {
    xmlns: 'http://www.w3.org/2000/svg',
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    viewBox: `0 0 ${writeNumber(width)} ${writeNumber(high)}`,
    width,
    height: high,
    'font-family': theme.font,
  });
  const said = [
    element('title', { id: `${id}-title` }, [title]),
    element('desc', { id: `${id}-desc` }, [description]),
  ].map(writeNode);
  const svg = `${writeNode(opening).slice(0, -'/>'.length)}>${said.join('')}${body}</svg>`;
  return deepFreeze({ svg, title, description, text, width, height: high });
}

/** What is thrown where a picture has more to show than its width holds in readable text. */
export function tooNarrow(width: number, needed: number, what: string): ReedplateError {
  return new ReedplateError({
    code: 'NUMBER_RANGE',
    value: width,
    expected: `pixels of width that hold ${what} in readable text, about ${Math.ceil(needed)} or more`,
    nearest: `${Math.ceil(needed)}`,
  });
}
