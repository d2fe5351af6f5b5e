import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idOf } from './id-of.js';
import { element, escapeText, writeNode, writeNumber } from './node.js';

describe('writeNode', () => {
  it('writeNode writes attributes, text and elements within', () => {
    const node = element('g', { x: 1.006, y: -0.001, 'font-size': 10 }, [
      'a<b',
      element('rect', {}),
    ]);
    expect(writeNode(node)).toBe('<g x="1.01" y="0" font-size="10">a&lt;b<rect/></g>');
  });

  it('escapeText leaves nothing that ends a text or an attribute, and undoes to the same text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const escaped = escapeText(text);
        expect(escaped).not.toMatch(/[<>"']/u);
        expect(escaped.replace(/&(?:amp|lt|gt|quot|#39);/gu, '')).not.toContain('&');
      }),
    );
  });

  it('escapeText puts a sign for what XML has no place for', () => {
    expect(escapeText('a\u0000b\ud800c')).toBe('a\ufffdb\ufffdc');
    expect(escapeText('a😀\tb')).toBe('a😀\tb');
  });
});

describe('writeNumber', () => {
  it.each([
    [0.005, '0.01'],
    [-0.001, '0'],
    [1 / 3, '0.33'],
    [1234567, '1234567'],
  ])('writeNumber of %d is %s', (value, text) => {
    expect(writeNumber(value)).toBe(text);
  });
});

describe('idOf', () => {
  // Fowler, Noll, Vo: test vectors of FNV-1a, 32 bits, in draft-eastlake-fnv: value from memory.
  it('idOf is FNV-1a', () => {
    expect(idOf('')).toBe('811c9dc5');
    expect(idOf('a')).toBe('e40c292c');
    expect(idOf('foobar')).toBe('bf9cf968');
  });
});
