import { ReedplateError } from '@reedplate/pitch';
import sax from 'sax';

/** An element of an XML document. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Text directly inside, without what surrounds it. */
  readonly text: string;
}

/** An element while its inside is read. */
interface OpenElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  text: string;
}

const DEEPEST = 100;
const MOST_ELEMENTS = 2_000_000;

const QUOTED = /"[^"]*"|'[^']*'/gu;

/**
 * Reads an XML document as a tree. Entities of its own are refused, so that none can grow, and so
 * are documents deeper or larger than music is.
 *
 * @throws ReedplateError `MUSICXML_MALFORMED`
 */
export function readXml(text: string): XmlElement {
  const parser = sax.parser(true);
  const open: OpenElement[] = [{ name: '', attributes: new Map(), children: [], text: '' }];
  let elements = 0;
  parser.onerror = (error) => {
    // The parser adds lines that say the place, which stands in `where` here.
    throw malformed(error.message.split('\n')[0] ?? '', 'well-formed XML', parser);
  };
  parser.onopentag = ({ name, attributes }) => {
    elements += 1;
    if (open.length > DEEPEST) {
      throw malformed(name, `at most ${DEEPEST} elements in each other`, parser);
    }
    if (elements > MOST_ELEMENTS) {
      throw malformed(name, `at most ${MOST_ELEMENTS} elements`, parser);
    }
    const given = Object.entries(attributes as Readonly<Record<string, string>>);
    // The parser drops a doubled attribute without a word.
    const written = text.slice(parser.startTagPosition - 1, parser.position).replace(QUOTED, '');
    if (written.split('=').length - 1 !== given.length) {
      throw malformed(name, 'each attribute of an element once', parser);
    }
    open.push({ name, attributes: new Map(given), children: [], text: '' });
  };
  const addText = (piece: string): void => {
    const inner = open.at(-1);
    if (inner !== undefined) inner.text += piece;
  };
  parser.ontext = addText;
  parser.oncdata = addText;
  parser.onclosetag = () => {
    const closed = open.pop() as OpenElement;
    open.at(-1)?.children.push({ ...closed, text: closed.text.trim() });
  };
  parser.write(text).close();
  const [root, ...others] = open[0]?.children ?? [];
  if (root !== undefined && others.length === 0) return root;
  throw malformed(text, 'well-formed XML with one root element', parser);
}

function malformed(
  value: string,
  expected: string,
  { line, column }: { readonly line: number; readonly column: number },
): ReedplateError {
  const where = { line: line + 1, column: column + 1 };
  return new ReedplateError({ code: 'MUSICXML_MALFORMED', value, expected, where });
}

/** The first child of a name. */
export function child(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((each) => each.name === name);
}

/** The children of a name. */
export function childrenOf(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.filter((each) => each.name === name);
}

/** Text of the first child of a name; empty without one. */
export function childText(element: XmlElement | undefined, name: string): string {
  return child(element, name)?.text ?? '';
}

/** Number of the first child of a name, or `undefined`. */
export function childNumber(element: XmlElement | undefined, name: string): number | undefined {
  const text = childText(element, name);
  const number = Number(text);
  return text === '' || !Number.isFinite(number) ? undefined : number;
}
