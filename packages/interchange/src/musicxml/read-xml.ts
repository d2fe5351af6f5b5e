import { ReedplateError } from '@reedplate/pitch';
import type { XmlElement } from './xml-tree.js';

/** An element while its inside is read. */
interface OpenElement extends XmlElement {
  readonly children: XmlElement[];
  text: string;
}

/** A text, how far it is read, and what is open there: first the document, then its elements. */
interface Reader {
  readonly text: string;
  at: number;
  readonly open: OpenElement[];
  elements: number;
}

const DEEPEST = 100;
const MOST_ELEMENTS = 2_000_000;
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Reads an XML 1.0 document as a tree. Entities of its own are refused, so that none can grow, and so
 * are documents deeper or larger than music is. What a document type declares is passed over.
 *
 * @throws ReedplateError `MUSICXML_MALFORMED`, with line and column
 */
export function readXml(text: string): XmlElement {
  const document = elementOf('', new Map());
  const at = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
  const reader: Reader = { text, at, open: [document], elements: 0 };
  while (reader.at < text.length) readNext(reader);
  const [, inner] = reader.open;
  if (inner !== undefined) throw malformed(reader, `</${inner.name}> at the end`);
  const [root] = document.children;
  if (root === undefined) throw malformed(reader, 'an element');
  return root;
}

function elementOf(name: string, attributes: ReadonlyMap<string, string>): OpenElement {
  return { name, attributes, children: [], text: '' };
}

function readNext(reader: Reader): void {
  const begins = (sign: string): boolean => reader.text.startsWith(sign, reader.at);
  if (!begins('<')) readText(reader);
  else if (begins('</')) readEndTag(reader);
  else if (begins('<?')) readPast(reader, '?>');
  else if (begins('<!--')) readPast(reader, '-->', '<!--'.length);
  else if (begins('<![CDATA[')) addText(reader, readPast(reader, ']]>').slice('<![CDATA['.length));
  else if (begins('<!DOCTYPE')) readDoctype(reader);
  else readTag(reader);
}

/** What stands from here, or some signs on, to a sign, which is read as well. */
function readPast(reader: Reader, sign: string, on = 0): string {
  const end = reader.text.indexOf(sign, reader.at + on);
  if (end === -1) throw malformed(reader, `${sign} after it`);
  const passed = reader.text.slice(reader.at, end);
  reader.at = end + sign.length;
  return passed;
}

function readText(reader: Reader): void {
  const next = reader.text.indexOf('<', reader.at);
  const end = next === -1 ? reader.text.length : next;
  addText(reader, resolveEntities(reader, reader.text.slice(reader.at, end)));
  reader.at = end;
}

function addText(reader: Reader, piece: string): void {
  const inner = reader.open.at(-1);
  if (inner === undefined || (reader.open.length === 1 && piece.trim() !== '')) {
    throw malformed(reader, 'text inside an element only');
  }
  inner.text += piece;
}

const MARK = /["'<>]/gu;

/** A declaration of the type, whose own declarations may hold quotation marks and comments. */
function readDoctype(reader: Reader): void {
  if (reader.elements > 0) throw malformed(reader, 'a document type before the first element');
  let depth = 0;
  do {
    MARK.lastIndex = reader.at;
    const found = MARK.exec(reader.text);
    if (found === null) throw malformed(reader, '> after it');
    const [sign] = found;
    reader.at = found.index;
    if (sign === '"' || sign === "'") readPast(reader, sign, 1);
    else if (reader.text.startsWith('<!--', reader.at)) readPast(reader, '-->', '<!--'.length);
    else {
      depth += sign === '<' ? 1 : -1;
      reader.at += 1;
    }
  } while (depth > 0);
}

function readEndTag(reader: Reader): void {
  const name = readPast(reader, '>').slice('</'.length).trimEnd();
  const inner = reader.open.at(-1);
  if (reader.open.length === 1 || inner?.name !== name) {
    const expected = reader.open.length === 1 ? 'nothing that closes' : `</${inner?.name}>`;
    throw malformed(reader, expected, `</${name}>`);
  }
  closeElement(reader);
}

function closeElement({ open }: Reader): void {
  const closed = open.pop() as OpenElement;
  open.at(-1)?.children.push({ ...closed, text: closed.text.trim() });
}

// Names as XML 1.0 has them, without letters beyond the first plane.
const NAME_START =
  ':A-Z_a-z\u00C0-\u00D6\u00D8-\u00F6\u00F8-\u02FF\u0370-\u037D\u037F-\u1FFF\u200C\u200D\u2070-\u218F\u2C00-\u2FEF\u3001-\uD7FF\uF900-\uFDCF\uFDF0-\uFFFD';
const NAME = `[${NAME_START}][${NAME_START}\\-.0-9\u00B7\u0300-\u036F\u203F\u2040]*`;
const TAG_NAME = new RegExp(`<(${NAME})`, 'y');
const ATTRIBUTE = new RegExp(`\\s+(${NAME})\\s*=\\s*(?:"([^<"]*)"|'([^<']*)')`, 'y');
const TAG_END = /\s*(\/?)>/y;

function readTag(reader: Reader): void {
  const { open } = reader;
  const [, name = ''] = match(reader, TAG_NAME) ?? [];
  if (name === '') throw malformed(reader, 'the name of an element after <');
  if (open.length === 1 && open[0]?.children.length === 1) {
    throw malformed(reader, 'one root element', name);
  }
  reader.elements += 1;
  if (open.length > DEEPEST) {
    throw malformed(reader, `at most ${DEEPEST} elements in each other`, name);
  }
  if (reader.elements > MOST_ELEMENTS) {
    throw malformed(reader, `at most ${MOST_ELEMENTS} elements`, name);
  }
  const attributes = readAttributes(reader);
  const end = match(reader, TAG_END);
  if (end === null) throw malformed(reader, `attributes of ${name} in quotation marks, then >`);
  open.push(elementOf(name, attributes));
  if (end[1] === '/') closeElement(reader);
}

function readAttributes(reader: Reader): ReadonlyMap<string, string> {
  const attributes = new Map<string, string>();
  for (let found = match(reader, ATTRIBUTE); found !== null; found = match(reader, ATTRIBUTE)) {
    const [, name = '', inDouble, inSingle = ''] = found;
    if (attributes.has(name)) {
      throw malformed(reader, 'each attribute of an element once', name);
    }
    attributes.set(name, resolveEntities(reader, inDouble ?? inSingle));
  }
  return attributes;
}

/** What an expression finds right here, which is read then; null where it finds nothing. */
function match(reader: Reader, expression: RegExp): RegExpExecArray | null {
  expression.lastIndex = reader.at;
  const found = expression.exec(reader.text);
  reader.at += found?.[0].length ?? 0;
  return found;
}

const ESCAPED: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);
const CHARACTER = /^[\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]$/u;

/** Text as it is meant: an ampersand begins one of the five entities of XML, or a number. */
function resolveEntities(reader: Reader, text: string): string {
  return text.replaceAll(/&([^&;]{0,12};)?/gu, (written, inside: string = '') => {
    const [, hex, decimal] = /^#(?:x([\da-f]+)|(\d+));$/iu.exec(inside) ?? [];
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    const sign = code <= 0x10ffff ? String.fromCodePoint(code) : ESCAPED.get(inside.slice(0, -1));
    if (sign === undefined || !CHARACTER.test(sign)) {
      throw malformed(
        reader,
        '&lt; &amp; &gt; &quot; &apos; or the number of a character',
        written,
      );
    }
    return sign;
  });
}

/** Longest piece of a text that a message repeats. */
const LONGEST_PIECE = 20;

function malformed({ text, at }: Reader, expected: string, value?: string): ReedplateError {
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  const where = { line, column: at - before.lastIndexOf('\n') };
  const piece = text.slice(at, at + LONGEST_PIECE);
  return new ReedplateError({ code: 'MUSICXML_MALFORMED', value: value ?? piece, expected, where });
}
