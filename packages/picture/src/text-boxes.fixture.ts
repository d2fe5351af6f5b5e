import { textWidth } from './text/text-width.js';

/** Where a piece of text lies. */
export interface TextBox {
  readonly text: string;
  readonly size: number;
  readonly fill: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ['&amp;', '&'],
  ['&lt;', '<'],
  ['&gt;', '>'],
  ['&quot;', '"'],
  ['&#39;', "'"],
]);

const TEXT = /<text ([^>]*)>([^<]*)<\/text>/gu;
const ATTRIBUTE = /([\w-]+)="([^"]*)"/gu;

/** The boxes of all text of an SVG picture without transforms, capitals and figures high. */
export function textBoxes(svg: string): readonly TextBox[] {
  return [...svg.matchAll(TEXT)].map(([, attributes = '', escaped = '']) => {
    const found = new Map(
      [...attributes.matchAll(ATTRIBUTE)].map(([, name = '', value = '']) => [name, value]),
    );
    const text = escaped.replace(/&[#\w]+;/gu, (entity) => ENTITIES.get(entity) ?? entity);
    const size = Number(found.get('font-size'));
    const weight = found.get('font-weight') === 'bold' ? 'bold' : 'normal';
    const width = textWidth(text, size, weight);
    const anchor = found.get('text-anchor') ?? 'start';
    const shift = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
    const left = Number(found.get('x')) - shift;
    const y = Number(found.get('y'));
    const fill = found.get('fill') ?? '';
    return { text, size, fill, left, right: left + width, top: y - 0.73 * size, bottom: y };
  });
}

/** What is wrong with the text of a picture: boxes that meet, leave the picture or are too small. */
export function textComplaints(svg: string): readonly string[] {
  const [, width = '0', height = '0'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/u.exec(svg) ?? [];
  const boxes = textBoxes(svg);
  const complaints = boxes.flatMap((box) => {
    const inside =
      box.left >= 0 && box.top >= 0 && box.right <= Number(width) && box.bottom <= Number(height);
    return [
      ...(inside ? [] : [`"${box.text}" leaves the picture`]),
      ...(box.size >= 10 ? [] : [`"${box.text}" is set in ${box.size} px`]),
    ];
  });
  for (const [at, box] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) {
      if (meets(box, other)) complaints.push(`"${box.text}" meets "${other.text}"`);
    }
  }
  return complaints;
}

function meets(a: TextBox, b: TextBox): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
