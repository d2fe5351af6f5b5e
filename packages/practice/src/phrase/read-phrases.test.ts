import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPhrases } from '../catalogue/find-phrases.js';
import { lineOfPath } from './line-of-path.js';
import { parsePhrase } from './parse-phrase.js';
import { readPhrases } from './read-phrases.js';

const SHEET = `# licks of the Tuesday class
name: Back door
kind: riff
from: chord

-2 -3:1/2 -4:1/2 r:2

name: Cellar stairs
grade: 3
pickup: 1/2
harmony: I7 | IV7
-4:1/2 | -4' +4 -3 -2
| +4:2
`;

const thrown = (text: string): unknown => {
  try {
    return readPhrases(text);
  } catch (error) {
    return error;
  }
};

describe('readPhrases', () => {
  it('readPhrases reads tab below heads, one phrase after the other', () => {
    const [riff, stairs, ...more] = readPhrases(SHEET, { id: 'tuesday' });
    expect(more).toEqual([]);
    expect(riff).toEqual(
      parsePhrase('-2 -3:1/2 -4:1/2 r:2', {
        id: 'back-door',
        name: 'Back door',
        kind: 'riff',
        from: 'chord',
        source: 'our own',
      }),
    );
    expect(stairs).toMatchObject({ id: 'cellar-stairs', grade: 3, level: 'bends', pickup: 480 });
    expect(stairs?.harmony).toBe('| I7 | IV7 |');
  });

  it('readPhrases takes tab alone, and names it after its file', () => {
    expect(readPhrases('-2 -3 -4', { id: 'Lick 7' })[0]).toMatchObject({
      id: 'lick-7',
      notes: { length: 3 },
    });
    expect(readPhrases('-2 -3 -4')[0]?.id).toBe('own');
    const two = readPhrases('kind: lick\n-2\nkind: fill\r\n-3', { id: 'mine' });
    expect(two.map(({ id, kind }) => [id, kind])).toEqual([
      ['mine', 'lick'],
      ['mine-2', 'fill'],
    ]);
  });

  it('readPhrases gives a phrase that says no grade the first that has its techniques', () => {
    const gradeOf = (tab: string) => readPhrases(tab)[0]?.grade;
    expect(['-2 -3', "-4 -4'", "-3 -3'", '-4 +6o'].map(gradeOf)).toEqual([1, 3, 4, 5]);
  });

  it('readPhrases takes a pickup in felt beats of the metre', () => {
    const text = 'metre: 12/8\nfeel: slow-12/8\npickup: 1\n-2 | -3:4';
    expect(readPhrases(text)[0]?.pickup).toBe(1440);
    expect(readPhrases('pickup: 0\n-2')[0]?.pickup).toBe(0);
  });

  it('readPhrases gives back every phrase of the catalogue from JSON, alone and as a list', () => {
    const all = findPhrases();
    expect(readPhrases(JSON.stringify(all, null, 2))).toEqual(all);
    expect(readPhrases(JSON.stringify(all[7]))).toEqual([all[7]]);
  });

  it('readPhrases names phrases of JSON that say no id by their name or their file', () => {
    const notes = [{ at: 0, length: 960, degree: '1', octave: 0 }];
    const text = JSON.stringify([{ notes }, { notes, name: 'Loft door!' }, { notes }]);
    expect(readPhrases(text, { id: 'Loft' }).map(({ id }) => id)).toEqual([
      'loft',
      'loft-door',
      'loft-3',
    ]);
  });

  it.each([
    ['a head there is not', 'name: A\n# x\nknid: riff\n-2', 'PHRASE_INVALID', { line: 3 }],
    ['a kind there is not', 'name: A\nkind: rif\n-2', 'PHRASE_INVALID', { line: 2 }],
    ['a name said twice', 'name: A\nname: B\n-2', 'PHRASE_INVALID', { line: 2 }],
    ['a position that is no number', 'name: A\n\nposition: two\n-2', 'PHRASE_INVALID', { line: 3 }],
    ['chords that are none', '-2\nname: A\nharmony: I7 | H7\n-2', 'PHRASE_INVALID', { line: 3 }],
    ['a metre there is not', 'metre: 5/3\n-2', 'METRE_UNKNOWN', { line: 1 }],
    ['a pickup that is no time', 'name: A\npickup: soon\n-2', 'PHRASE_INVALID', { line: 2 }],
    ['a mark that is none', 'name: A\n-2 -3\n-4 -x', 'TAB_SYNTAX', { line: 3, column: 4 }],
    [
      'a manner there is not',
      'name: A\n-2 -3\n-4 -3;loud',
      'PHRASE_INVALID',
      { line: 3, column: 7 },
    ],
    ['tab that is too long', '\nname: A\n-2:3 -3:2', 'PHRASE_INVALID', { line: 2 }],
    ['a hole there is not', 'name: A\n-2 -11', 'TAB_SYNTAX', { line: 2, column: 4 }],
    ['a head without tab', 'name: A\n-2\nname: B\n', 'PHRASE_INVALID', { line: 3 }],
    ['two phrases of one name', 'name: A\n-2\nname: a\n-3', 'PHRASE_INVALID', {}],
    ['nothing', '# only a comment\n', 'PHRASE_INVALID', {}],
    ['JSON that breaks off', '[{"notes": [}]', 'JSON_MALFORMED', {}],
    [
      'a note of JSON',
      '[{"notes":[{"at":0,"length":1,"degree":"1","octave":0}]},\n {"notes":\n  [{"at":0,"length":1,"degree":"9",\n "octave":0}]}]',
      'PHRASE_INVALID',
      { path: '[1].notes[0].degree', line: 3 },
    ],
    ['a field of JSON', '{"notes":[],\n"nmae":"x"}', 'PHRASE_INVALID', { path: 'nmae', line: 2 }],
    ['a list of what are no phrases', '[1]', 'PHRASE_INVALID', { path: '[0]', line: 1 }],
  ])('readPhrases refuses %s, and says in which line', (_, text, code, where) => {
    expect(thrown(text)).toMatchObject({ code, where });
  });

  it('readPhrases refuses more phrases than a thousand, and reads a thousand', () => {
    const text = 'kind: lick\n-2\n'.repeat(1000);
    expect(readPhrases(text)).toHaveLength(1000);
    expect(thrown(`${text}kind: lick\n-2`)).toMatchObject({ code: 'PHRASE_INVALID', value: 1001 });
  });

  it('readPhrases refuses what is no text, and options there are not', () => {
    for (const value of [undefined, 7, 'x'.repeat(1_000_001)]) {
      expect(() => readPhrases(value as never)).toThrow(
        expect.objectContaining({ code: 'PHRASE_INVALID' }),
      );
    }
    expect(() => readPhrases('-2', { name: 'x' } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  it('readPhrases gives phrases or the typed error for any text', () => {
    const words = fc.constantFrom(
      ...[
        'name: A',
        'kind: riff',
        'pickup: 1',
        'grade: 9',
        'harmony: I7',
        '-2',
        '-3:1/2;scoop',
        '|',
        'r:2',
        '#',
        ':',
        '{',
        '[',
        '"',
      ],
    );
    const texts = fc.array(words, { maxLength: 12 }).map((each) => each.join('\n'));
    fc.assert(
      fc.property(fc.oneof(texts, fc.string()), (text) => {
        const answer = thrown(text);
        if (answer instanceof Error) expect(answer).toHaveProperty('code');
        else expect(answer).not.toEqual([]);
      }),
    );
  });
});

describe('the page for instructors', () => {
  it('readPhrases reads the file that it shows', () => {
    const page = readFileSync(
      new URL('../../../../docs/getting-started-instructors.md', import.meta.url),
      'utf8',
    );
    const [, text = ''] = /```text\n(# the Tuesday class[\s\S]*?)```/u.exec(page) ?? [];
    expect(readPhrases(text).map(({ id, kind, from, grade }) => [id, kind, from, grade])).toEqual([
      ['back-door', 'riff', 'chord', 1],
      ['cellar-stairs', 'turnaround', 'key', 3],
    ]);
  });
});

describe('lineOfPath', () => {
  it('lineOfPath finds the line of each leaf of any JSON', () => {
    fc.assert(
      fc.property(
        fc.array(fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.array(fc.integer()))),
        (json) => {
          const text = JSON.stringify(json, null, 1);
          const lines = text.split('\n');
          for (const [at, object] of json.entries()) {
            for (const [name, list] of Object.entries(object)) {
              const line = lineOfPath(text, `[${at}].${name}`);
              expect(lines[line - 1]?.trim()).toMatch(new RegExp(`^"${name}": \\[`, 'u'));
              for (const [index, value] of list.entries()) {
                const leaf = lineOfPath(text, `[${at}].${name}[${index}]`);
                expect(leaf).toBe(line + 1 + index);
                expect(lines[leaf - 1]).toContain(`${value}`);
              }
            }
          }
        },
      ),
    );
  });

  it('lineOfPath takes the line of what should hold a field that is not there', () => {
    expect(lineOfPath('[\n{"a": 1,\n"b": {\n}}]', '[0].b.c')).toBe(3);
    expect(lineOfPath('{\n"ab": 1}', 'a')).toBe(1);
  });
});
