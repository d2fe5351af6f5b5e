/** What an attribute may hold; lengths and places are rounded to hundredths. */
export type AttributeValue = string | number;

/** A piece of a picture: an SVG element as data. */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, AttributeValue>>;
  readonly children: readonly (SvgNode | string)[];
}

/** Makes an element. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, AttributeValue>>,
  children: readonly (SvgNode | string)[] = [],
): SvgNode {
  return { tag, attributes, children };
}

/** Writes an element as SVG text; whatever text it holds stands for itself. */
export function writeNode({ tag, attributes, children }: SvgNode): string {
  const head = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${writeValue(value)}"`)
    .join('');
  if (children.length === 0) return `<${tag}${head}/>`;
  const body = children.map((child) =>
    typeof child === 'string' ? escapeText(child) : writeNode(child),
  );
  return `<${tag}${head}>${body.join('')}</${tag}>`;
}

function writeValue(value: AttributeValue): string {
  return typeof value === 'number' ? writeNumber(value) : escapeText(value);
}

/** A number to the hundredth, without an exponent or a negative zero. */
export function writeNumber(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

const ENTITIES: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ["'", '&#39;'],
]);

/** Characters that XML 1.0 does not allow (section 2.2, production Char), lone surrogates among them. */
const NOT_XML =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text as it stands in XML or HTML, in an element or an attribute. */
export function escapeText(text: string): string {
  return text
    .replace(NOT_XML, '\ufffd')
    .replace(/[&<>"']/g, (found) => ENTITIES.get(found) ?? found);
}
