import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { element } from './xml-text.js';
import { child, childNumber, childrenOf, childText, readXml, type XmlElement } from './xml-tree.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const names = fc.constantFrom('note', 'pitch', 'a-b', 'x1');
/** Text as it comes back: no signs that XML has no place for, no space around it. */
const texts = fc
  .string({ unit: 'grapheme', maxLength: 20 })
  .map((text) => text.replaceAll(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, '').trim());

interface Tree {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Tree[];
  readonly text: string;
}

const trees: fc.Arbitrary<Tree> = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.record({
    name: names,
    attributes: fc.dictionary(fc.constantFrom('id', 'type'), texts),
    children: fc.oneof(
      { maxDepth: 4, depthSize: 'small' },
      fc.constant<readonly Tree[]>([]),
      fc.array(tie('tree'), { maxLength: 3 }),
    ),
    text: texts,
  }),
})).tree;

const write = ({ name, attributes, children, text }: Tree): string =>
  element(name, children.length === 0 ? text : children.map(write), attributes);

/** What a tree is read back as: text stands only where there are no children. */
function same({ name, attributes, children, text }: Tree, read: XmlElement): void {
  expect(read.name).toBe(name);
  expect(Object.fromEntries(read.attributes)).toEqual(attributes);
  expect(read.children.length).toBe(children.length);
  if (children.length === 0) expect(read.text).toBe(text);
  for (const [at, each] of children.entries()) same(each, read.children[at] as XmlElement);
}

describe('element and readXml', () => {
  test('readXml reads what element writes: names, attributes, children and any text', () => {
    fc.assert(
      fc.property(trees, (tree) => {
        same(tree, readXml(write(tree)));
      }),
      { numRuns: 300 },
    );
  });

  test('element leaves out what no XML document can hold', () => {
    expect(element('a', 'x\u0000\u0008y\uFFFEz\uD800')).toBe('<a>xyz</a>');
    expect(element('a', '', { b: 'x\ny' })).toBe('<a b="x y"/>');
    expect(element('a', 'x\ud83c\udfb5')).toBe('<a>x\ud83c\udfb5</a>');
  });

  test('element indents children below their parent', () => {
    expect(element('a', [element('b', [element('c')]), element('d', 'x')])).toBe(
      '<a>\n  <b>\n    <c/>\n  </b>\n  <d>x</d>\n</a>',
    );
  });
});

describe('readXml', () => {
  test('readXml reads entities of XML, sections of data, and comments', () => {
    const { text } = readXml(
      '<?xml version="1.0"?><!-- a --><a>&lt;&#65;&#x42;<![CDATA[<c>]]></a>',
    );
    expect(text).toBe('<AB<c>');
  });

  test('childrenOf, child, childText and childNumber find what stands right inside', () => {
    const tree = readXml('<a><b>1</b><c><b>2</b></c><b>3.5</b><d/></a>');
    expect(childrenOf(tree, 'b').map(({ text }) => text)).toEqual(['1', '3.5']);
    expect(child(tree, 'c')?.children.length).toBe(1);
    expect([childText(tree, 'b'), childText(tree, 'x'), childText(undefined, 'b')]).toEqual([
      ...['1', '', ''],
    ]);
    expect([childNumber(tree, 'b'), childNumber(tree, 'd'), childNumber(tree, 'c')]).toEqual([
      ...[1, undefined, undefined],
    ]);
  });

  test.each([
    ['an entity of its own', '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'],
    ['an element that is not closed', '<a><b></a>'],
    ['two roots', '<a/><b/>'],
    ['an attribute without a value', '<a b/>'],
    ['an attribute that comes twice', '<a b="1" b="1"/>'],
    ['an attribute that comes twice, inside', '<c><a b="=" d="" b=\'"\'>x</a></c>'],
    ['text alone', 'text'],
    ['nothing', ''],
    ['a sign that is escaped wrongly', '<a>&nothing;</a>'],
  ])('readXml refuses %s', (_, text) => {
    expect(() => readXml(text)).toThrowError(
      expect.objectContaining({ code: 'MUSICXML_MALFORMED', where: expect.any(Object) }),
    );
  });

  test('readXml takes signs of equality and quotation marks inside values for no attributes', () => {
    const { attributes } = readXml('<?xml version="1.0"?>\n<a b = "x=1 y=\'2\'" c=\'d="e"\'\n/>');
    expect([...attributes]).toEqual([
      ['b', "x=1 y='2'"],
      ['c', 'd="e"'],
    ]);
  });

  test('readXml says line and column where it could not read on', () => {
    expect(() => readXml('<a>\n  <b>\n</a>')).toThrowError(
      expect.objectContaining({ where: expect.objectContaining({ line: 3 }) }),
    );
  });

  test('readXml reads a hundred elements in each other, and refuses more', () => {
    const nested = (depth: number): string => '<a>'.repeat(depth) + '</a>'.repeat(depth);
    expect(readXml(nested(100)).name).toBe('a');
    expect(() => readXml(nested(101))).toThrowError(/at most 100 elements in each other/u);
  });

  test('readXml gives a tree or a typed error, for any text', () => {
    const wild = fc.string({ unit: fc.constantFrom(...'<>/ab="&;![]-?x '), maxLength: 80 });
    fc.assert(
      fc.property(wild, (text) => {
        try {
          expect(readXml(text).name.length).toBeGreaterThan(0);
        } catch (error) {
          expect(isReedplateError(error) && error.code).toBe('MUSICXML_MALFORMED');
        }
      }),
      { numRuns: 1000 },
    );
  });
});
