import fc from 'fast-check';
import sax from 'sax';
import { describe, expect, test, vi } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { readXml } from './read-xml.js';
import { writeMusicXml } from './write-musicxml.js';
import type { XmlElement } from './xml-tree.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

interface Tree {
  readonly name: string;
  readonly attributes: Readonly<Record<string, unknown>>;
  readonly children: Tree[];
  text: string;
}

/** The tree of a document as sax reads it, with the entities of XML alone; undefined where it refuses. */
function treeOfSax(text: string): Tree | undefined {
  const open: Tree[] = [{ name: '', attributes: {}, children: [], text: '' }];
  const parser = sax.parser(true, { strictEntities: true } as sax.SAXOptions);
  let isRefused = false;
  parser.onerror = () => {
    isRefused = true;
    parser.resume();
  };
  parser.onopentag = ({ name, attributes }) => {
    open.push({ name, attributes, children: [], text: '' });
  };
  const addText = (piece: string): void => {
    const inner = open.at(-1);
    if (inner !== undefined) inner.text += piece;
  };
  parser.ontext = addText;
  parser.oncdata = addText;
  parser.onclosetag = () => {
    const closed = open.pop();
    if (closed !== undefined) open.at(-1)?.children.push({ ...closed, text: closed.text.trim() });
  };
  parser.write(text).close();
  return isRefused ? undefined : open[0]?.children[0];
}

const plain = ({ name, attributes, children, text }: XmlElement): Tree => ({
  ...{ name, attributes: Object.fromEntries(attributes), text },
  children: children.map(plain),
});

/** What we read; undefined where we refuse. */
function treeOfOurs(text: string): Tree | undefined {
  try {
    return plain(readXml(text));
  } catch {
    return undefined;
  }
}

const note = { start: 0, duration: 960, pitch: 66, accent: true } as const;
const SHEET = writeMusicXml({
  key: 'G',
  line: {
    ...{ metre: '4/4', pickup: 0, title: 'Rock & "roll" <one>', tempo: 96 },
    notes: [note, { ...note, start: 960, cents: -30 }],
  },
});

const PIECES = [
  '<a>',
  '</a>',
  '<b c="d"/>',
  '&amp;',
  '&#65;',
  '<!-- x -->',
  '<![CDATA[<]]>',
  ' ',
  'x',
];
const wild = fc
  .array(fc.constantFrom(...PIECES, '<?x?>', "<a b='1' c='2'>", '<', '>', '&', '"', ']]>', '<a'), {
    maxLength: 8,
  })
  .map((pieces) => `<a>${pieces.join('')}</a>`);

/** The sheet with some of its signs gone, doubled or others. */
const mutated = fc
  .array(
    fc.tuple(fc.nat({ max: SHEET.length - 1 }), fc.constantFrom('', '<', '>', '"', '&', '/', 'x ')),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .map((changes) => {
    const signs = [...SHEET];
    for (const [at, sign] of changes) signs[at] = sign;
    return signs.join('');
  });

published('sax', 'readXml reads what another reader reads', () => {
  test.each([
    ['a sheet of ours', SHEET],
    ['a document type with comments and marks', '<!DOCTYPE a [<!-- \' --> <!ELEMENT a "x>">]><a/>'],
    ['spaces wherever they may stand', '<a  b = "1"\n c\t=\'2\' ><d /></a >\n<!-- end -->'],
    ['letters of all alphabets', '<größe 名="価">Ω</größe>'],
    ['numbers of characters', '<a>&#x1D11E;&#9837;</a>'],
  ])('%s', (_, text) => {
    expect(treeOfSax(text)).toBeDefined();
    expect(treeOfOurs(text)).toEqual(treeOfSax(text));
  });

  describe.each([
    ['marks in any order', wild],
    ['a changed sheet', mutated],
  ] as const)('%s', (_, texts) => {
    test('is refused where sax refuses it, and else read as sax reads it', () => {
      let accepted = 0;
      fc.assert(
        fc.property(texts, (text) => {
          const ours = treeOfOurs(text);
          if (ours === undefined) return;
          accepted += 1;
          expect(ours).toEqual(treeOfSax(text));
        }),
        { numRuns: 1500 },
      );
      expect(accepted).toBeGreaterThan(20);
    });
  });
});
