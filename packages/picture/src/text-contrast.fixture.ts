import { textBoxes } from './text-boxes.fixture.js';
import { contrastOf, type Hex } from './theme/contrast.js';

interface Filled {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly fill: string;
}

const ELEMENT = /<(rect|circle|path|text) ([^>]*?)\/?>/gu;

/** Each text of an SVG picture with its contrast against what lies right under its middle. */
export function textContrasts(svg: string): readonly { text: string; contrast: number }[] {
  const under: Filled[] = [];
  const boxes = [...textBoxes(svg)];
  const found: { text: string; contrast: number }[] = [];
  for (const [, tag = '', attributes = ''] of svg.matchAll(ELEMENT)) {
    if (tag !== 'text') {
      under.push(filledArea(tag, attributes));
      continue;
    }
    const box = boxes.shift();
    if (box === undefined) break;
    const x = (box.left + box.right) / 2;
    const y = (box.top + box.bottom) / 2;
    const ground = under.findLast(
      (area) =>
        area.fill !== 'none' &&
        area.left <= x &&
        x <= area.right &&
        area.top <= y &&
        y <= area.bottom,
    );
    found.push({
      text: box.text,
      contrast: contrastOf(box.fill as Hex, (ground?.fill ?? '#ffffff') as Hex),
    });
  }
  return found;
}

function filledArea(tag: string, attributes: string): Filled {
  const read = (name: string): string =>
    new RegExp(`(?:^| )${name}="([^"]*)"`, 'u').exec(attributes)?.[1] ?? '0';
  const number = (name: string): number => Number(read(name));
  const fill = read('fill');
  if (tag === 'circle') {
    const [x, y, r] = [number('cx'), number('cy'), number('r')];
    return { left: x - r, right: x + r, top: y - r, bottom: y + r, fill };
  }
  if (tag === 'rect') {
    const [left, top] = [number('x'), number('y')];
    return { left, top, right: left + number('width'), bottom: top + number('height'), fill };
  }
  const places = [...read('d').matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)];
  const xs = places.map(([, x]) => Number(x));
  const ys = places.map(([, , y]) => Number(y));
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
    fill,
  };
}
