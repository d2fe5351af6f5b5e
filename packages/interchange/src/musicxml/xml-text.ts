/** An element as text, its children indented below it or its text inside it. */
export function element(
  name: string,
  content: string | readonly string[] = '',
  attributes: Readonly<Record<string, string | number>> = {},
): string {
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escapeText(`${value}`)}"`)
    .join('');
  if (content === '' || (typeof content !== 'string' && content.length === 0)) {
    return `<${name}${written}/>`;
  }
  if (typeof content === 'string') return `<${name}${written}>${escapeText(content)}</${name}>`;
  const inside = content.flatMap((each) => each.split('\n')).map((each) => `  ${each}`);
  return [`<${name}${written}>`, ...inside, `</${name}>`].join('\n');
}

const ESCAPES: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
]);

/** Signs that no XML 1.0 document can hold, and lone halves of a pair. */
const FORBIDDEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is meant
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

function escapeText(text: string): string {
  return text
    .replace(FORBIDDEN, '')
    .replace(/[\r\n\t]+/gu, ' ')
    .replace(/[&<>"]/gu, (sign) => ESCAPES.get(sign) ?? '');
}
