import { FORMS, makeChart } from '@reedplate/form';
import { type Chord, parseChord } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { kindOfSuffix, symbolOfHarmony } from './harmony.js';
import { writeHarmony } from './write-harmony.js';
import { readXml } from './xml-tree.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const symbol = (inside: string): string => symbolOfHarmony(readXml(`<harmony>${inside}</harmony>`));
const root = (step: string, alter = ''): string =>
  `<root><root-step>${step}</root-step>${alter === '' ? '' : `<root-alter>${alter}</root-alter>`}</root>`;
const degree = (value: number, alter: number, type: string): string =>
  `<degree><degree-value>${value}</degree-value><degree-alter>${alter}</degree-alter><degree-type>${type}</degree-type></degree>`;

describe('symbolOfHarmony', () => {
  // MusicXML 4.0, data type kind-value: what each kind consists of.
  test.each([
    ['major', 'C'],
    ['minor', 'Cm'],
    ['augmented', 'Caug'],
    ['diminished', 'Cdim'],
    ['dominant', 'C7'],
    ['major-seventh', 'Cmaj7'],
    ['minor-seventh', 'Cm7'],
    ['diminished-seventh', 'Cdim7'],
    ['augmented-seventh', 'C7#5'],
    ['half-diminished', 'Cm7b5'],
    ['major-minor', 'CmMaj7'],
    ['major-sixth', 'C6'],
    ['minor-sixth', 'Cm6'],
    ['dominant-ninth', 'C9'],
    ['major-ninth', 'Cmaj9'],
    ['minor-ninth', 'Cm9'],
    ['dominant-11th', 'C11'],
    ['minor-11th', 'Cm11'],
    ['dominant-13th', 'C13'],
    ['major-13th', 'Cmaj13'],
    ['minor-13th', 'Cm13'],
    ['suspended-second', 'Csus2'],
    ['suspended-fourth', 'Csus4'],
    ['power', 'C5'],
  ])('symbolOfHarmony of the kind %s is %s', (kind, expected) => {
    expect(symbol(`${root('C')}<kind>${kind}</kind>`)).toBe(expected);
    expect(parseChord(expected).root).toBe('C');
  });

  test.each([
    ['a flat root', `${root('B', '-1')}<kind>dominant</kind>`, 'Bb7'],
    ['a sharp root', `${root('F', '1')}<kind>minor</kind>`, 'F#m'],
    ['a bass', `${root('G')}<kind>major</kind><bass><bass-step>B</bass-step></bass>`, 'G/B'],
    [
      'a flat bass',
      `${root('G')}<kind>dominant</kind><bass><bass-step>B</bass-step><bass-alter>-1</bass-alter></bass>`,
      'G7/Bb',
    ],
    ['an altered ninth', `${root('G')}<kind>dominant</kind>${degree(9, -1, 'add')}`, 'G7b9'],
    ['a sharp ninth', `${root('G')}<kind>dominant</kind>${degree(9, 1, 'alter')}`, 'G7#9'],
    ['an added ninth', `${root('G')}<kind>major</kind>${degree(9, 0, 'add')}`, 'Gadd9'],
    ['its text where the kind says nothing', `${root('G')}<kind text="7#9">other</kind>`, 'G7#9'],
    ['no chord', `${root('C')}<kind text="N.C.">none</kind>`, 'N.C.'],
  ])('symbolOfHarmony shows %s', (_, inside, expected) => {
    expect(symbol(inside)).toBe(expected);
  });

  test('symbolOfHarmony gives what is written where neither kind nor text is a chord', () => {
    expect(symbol(`${root('G')}<kind>Neapolitan</kind>`)).toBe('GNeapolitan');
    expect(symbol('<kind>major</kind>')).toBe('major');
    expect(symbol('')).toBe('');
  });
});

describe('writeHarmony', () => {
  const chords: readonly Chord[] = FORMS.flatMap((form) =>
    makeChart(form, form.mode === 'minor' ? 'Ebm' : 'Eb').spans.flatMap(({ chord }) => chord ?? []),
  );

  test('writeHarmony writes every chord of every form so that symbolOfHarmony reads it', () => {
    expect(chords.length).toBeGreaterThan(100);
    for (const chord of chords) {
      const read = symbolOfHarmony(readXml(writeHarmony(chord, 0)));
      expect(parseChord(read)).toEqual(chord);
    }
  });

  test('writeHarmony keeps any chord: root, suffix, and bass', () => {
    const suffixes = [
      '',
      'm',
      '7',
      'maj7',
      'm7',
      'dim7',
      'm7b5',
      '6',
      '9',
      '13',
      '7#9',
      '7b9',
      'sus4',
      'aug',
    ];
    fc.assert(
      fc.property(
        fc.constantFrom('C', 'Db', 'F#', 'Bb', 'E'),
        fc.constantFrom(...suffixes),
        fc.option(fc.constantFrom('G', 'Ab', 'C#'), { nil: undefined }),
        (note, suffix, bass) => {
          const chord = parseChord(`${note}${suffix}${bass === undefined ? '' : `/${bass}`}`);
          expect(parseChord(symbolOfHarmony(readXml(writeHarmony(chord, 480))))).toEqual(chord);
        },
      ),
    );
  });

  test('writeHarmony writes an offset only where the chord comes within its bar', () => {
    const chord = parseChord('G7');
    expect(writeHarmony(chord, 0)).not.toContain('offset');
    expect(writeHarmony(chord, 1920)).toContain('<offset>1920</offset>');
  });

  test.each(['', 'm', '7', 'valueOf', '7#9'])(
    'kindOfSuffix of %j is a kind of MusicXML',
    (suffix) => {
      expect(kindOfSuffix(suffix)).toMatch(/^[a-z0-9-]+$/u);
    },
  );

  test('kindOfSuffix of what MusicXML has no kind for is other', () => {
    expect([kindOfSuffix('7#9'), kindOfSuffix('__proto__')]).toEqual(['other', 'other']);
  });
});
