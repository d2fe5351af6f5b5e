import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp, type Sounding } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { parseChord, spell, TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import { Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { chordAvailability } from './availability.js';
import { chordShapes } from './chord-shape.js';
import { METRICAL_STRENGTH, metricalStrength } from './score/metrical.js';
import { scoreLine } from './score/score-line.js';
import type { PlayingStyle } from './styles.js';
import { targetsOf } from './target.js';

const harp = makeHarp('C');

describe('chordShapes against what is known of the standard layout', () => {
  published('wikipedia-richter', 'the standard layout', () => {
    // Wikipedia, "Richter-tuned harmonica": the blow notes are the tonic triad; draw 1-4 the dominant.
    it('chordShapes finds the tonic triad on every three blow holes', () => {
      const runs = chordShapes('C', harp).filter(
        ({ gesture, holes }) => gesture === 'run' && holes.length === 3,
      );
      expect(runs.map(({ breath, holes }) => `${breath} ${holes[0]}`)).toEqual(
        [1, 2, 3, 4, 5, 6, 7, 8].map((hole) => `blow ${hole}`),
      );
    });
  });

  published('computed', 'chords on neighbouring draw holes', () => {
    // Computed from the layout; Missin, tuning-list post, 16 July 1996: "just G dominant 9th" for G9.
    it.each([
      ['G', 'draw 123'],
      ['G', 'draw 234'],
      ['G', 'draw 1234'],
      ['G7', 'draw 2345'],
      ['G7', 'draw 12345'],
      ['G9', 'draw 23456'],
      ['Bdim', 'draw 345'],
      ['Bdim', 'draw 789'],
      ['Dm', 'draw 456'],
      ['Dm', 'draw 8910'],
      ['Bm7b5', 'draw 3456'],
      ['Bm7b5', 'draw 78910'],
    ])('chordShapes gives %s complete on %s', (chord, place) => {
      const complete = chordShapes(chord, harp)
        .filter(({ gesture, completeness }) => gesture === 'run' && completeness === 'complete')
        .map(({ breath, holes }) => `${breath} ${holes.join('')}`);
      expect(complete).toContain(place);
    });
  });

  published('practice', 'the trade', () => {
    // Common practice, equal to what the layout gives: octaves by splits of one to three blocked holes.
    it('chordShapes finds all octave splits', () => {
      const octaves = ['C', 'G', 'D', 'B', 'F', 'A', 'E'].flatMap((root) =>
        chordShapes(`${root}5`, harp)
          .filter(
            ({ gesture, tones }) =>
              gesture === 'split' && tones.every(({ degree }) => degree === '1'),
          )
          .map(({ breath, holes }) => `${breath} ${holes.join('-')}`),
      );
      expect(new Set(octaves)).toEqual(
        new Set([
          ...[1, 2, 3, 4, 5, 6, 7].map((hole) => `blow ${hole}-${hole + 3}`),
          'draw 1-4',
          'draw 3-7',
          'draw 4-8',
          'draw 5-9',
          'draw 6-10',
        ]),
      );
    });
  });
});

describe('targetsOf against tables of chord tones by position', () => {
  published('computed', 'worked out', () => {
    // Computed from the layout, for three positions: root, third, fifth and seventh on unbent notes.
    it.each([
      ['C7', '1', '1b 4b 7b 10b'],
      ['F7', '1', '5d 9d'],
      ['F7', 'b7', ''],
      ['G7', '3', '3d 7d'],
      ['G7', 'b7', '5d 9d'],
      ['C7', 'b7', ''],
      ['D7', '5', '6d 10d'],
      ['D7', 'b7', '1b 4b 7b 10b'],
      ['Dm7', 'b3', '5d 9d'],
      ['A7', '5', '2b 5b 8b'],
      ['A7', '3', ''],
    ])('targetsOf %s has its %s at %s', (chord, degree, places) => {
      const found = targetsOf(chord, harp, { level: 'natural' })
        .filter((target) => target.degree === degree)
        .map(({ sounding }) => `${sounding.hole}${sounding.breath.charAt(0)}`);
      expect(found.join(' ')).toBe(places);
    });
  });

  published('tonal', 'chords, scales and names', () => {
    // tonal 6.4.3 as an outside reading of chord symbols.
    it.each(['C', 'Bbm7b5', 'F#dim7', 'Ebmaj9', 'G13', 'A7#9', 'Dsus4', 'Caug'])(
      'targetsOf %s names the tones that tonal names',
      (symbol) => {
        const named = new Set(targetsOf(symbol, harp).map(({ name }) => name.replace(/\d+$/u, '')));
        expect(named).toEqual(new Set(TonalChord.get(symbol).notes));
        expect(parseChord(symbol).tones.length).toBe(TonalChord.get(symbol).notes.length);
      },
    );
  });
});

describe('targetsOf against the chord tones of the first three positions', () => {
  /**
   * Where each tone lies on a C harp: unbent notes, then bends, then overbends. Computed from the
   * layout, in the trade's own way of writing: 3d' is hole 3 drawn and bent by a semitone.
   */
  const TONES: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
    ['C7', { '1': '1b 4b 7b 10b', '3': '2b 5b 8b', '5': '2d 3b 6b 9b', b7: "| 3d' 10b'' | 6o" }],
    ['F7', { '1': "5d 9d | 2d''", '3': "6d 10d | 3d''", '5': '1b 4b 7b 10b', b7: "| 8b' | 1o 4o" }],
    ['G7', { '1': '2d 3b 6b 9b', '3': "3d 7d | 10b'", '5': '1d 4d 8d', b7: "5d 9d | 2d''" }],
    ['D7', { '1': '1d 4d 8d', '3': "| 2d' 9b' | 5o", '5': "6d 10d | 3d''", b7: '1b 4b 7b 10b' }],
    ['Dm7', { '1': '1d 4d 8d', b3: "5d 9d | 2d''", '5': "6d 10d | 3d''", b7: '1b 4b 7b 10b' }],
    ['A7', { '1': "6d 10d | 3d''", '3': "| 1d' 4d' | 7o 10o", '5': '2b 5b 8b', b7: '2d 3b 6b 9b' }],
  ];

  const cases = TONES.flatMap(([chord, tones]) =>
    Object.entries(tones).map(([degree, places]) => [chord, degree, places] as const),
  );

  published('computed', 'chord tones of three positions', () => {
    it.each(cases)('targetsOf %s has its %s at %s', (chord, degree, places) => {
      const [natural = '', bends = '', over = ''] = places.split('|').map((part) => part.trim());
      const found = targetsOf(chord, harp, { level: 'overbends' }).filter(
        (target) => target.degree === degree,
      );
      const at = (techniques: readonly string[], say: (sounding: Sounding) => string): string =>
        found
          .filter(({ sounding }) => techniques.includes(sounding.technique))
          .map(({ sounding }) => say(sounding))
          .join(' ');
      const plain = ({ hole, breath }: Sounding): string => `${hole}${breath.charAt(0)}`;
      expect(at(['natural'], plain)).toBe(natural);
      const bent = (sounding: Sounding): string => plain(sounding) + "'".repeat(sounding.depth);
      expect(at(['bend'], bent)).toBe(bends);
      // Overbends that repeat an unbent note or a bend of the same pitch are not in the table.
      const had = new Set(
        found.filter(({ sounding }) => !isOver(sounding)).map(({ sounding }) => sounding.pitch),
      );
      const fresh = found.filter(({ sounding }) => isOver(sounding) && !had.has(sounding.pitch));
      const useful = fresh.filter(({ sounding }) => USEFUL_OVERBENDS.has(sounding.hole));
      expect(useful.map(({ sounding }) => `${sounding.hole}o`).join(' ')).toBe(over);
    });
  });

  /** Overblows on 1, 4, 5 and 6, overdraws on 7, 9 and 10: common practice. */
  const USEFUL_OVERBENDS: ReadonlySet<number> = new Set([1, 4, 5, 6, 7, 9, 10]);

  function isOver({ technique }: Sounding): boolean {
    return technique === 'overblow' || technique === 'overdraw';
  }
});

describe('the chords of second position in every key', () => {
  // Common practice: I is draw 1 to 4 with its root on 2 draw and 3 blow, 2 to 5 draw adds the
  // seventh, IV is any blow, its root on 4 blow; there is no V, 4 and 5 draw sound its root and third.
  const SECONDS = TWELVE_KEYS.map(({ tonic, pitchClass }) => {
    const on = makeHarp(tonic);
    const [one, four, five] = [7, 0, 2].map(
      (up) => `${spell(toPitchClass(pitchClass + up), tonic)}7`,
    );
    return [tonic, on, one ?? '', four ?? '', five ?? ''] as const;
  });

  published('practice', 'the trade', () => {
    it.each(SECONDS)(
      'targetsOf puts the roots where they are taught on the %s harp',
      (_, on, one, four, five) => {
        const roots = (chord: string): string =>
          targetsOf(chord, on, { level: 'natural' })
            .filter(({ degree }) => degree === '1')
            .map(({ sounding }) => `${sounding.hole}${sounding.breath.charAt(0)}`)
            .join(' ');
        expect(roots(one)).toBe('2d 3b 6b 9b');
        expect(roots(four)).toBe('1b 4b 7b 10b');
        expect(roots(five)).toBe('1d 4d 8d');
      },
    );

    it.each(SECONDS)(
      'chordShapes finds I on draw 1 to 4 and IV on all of blow on the %s harp',
      (_, on, one, four) => {
        const wholeOf = (chord: string) =>
          chordShapes(chord, on).filter(
            ({ gesture, triad, clashes, adds }) =>
              gesture === 'run' && triad && clashes.length + adds.length === 0,
          );
        const draws = wholeOf(one).map(({ breath, holes }) => `${breath} ${holes.join('')}`);
        expect(draws).toEqual(['draw 123', 'draw 1234', 'draw 12345', 'draw 234', 'draw 2345']);
        expect(wholeOf(four).every(({ breath }) => breath === 'blow')).toBe(true);
        expect(wholeOf(four)).toHaveLength(8 + 7 + 6);
      },
    );

    it.each(SECONDS)(
      'chordAvailability has no V on the %s harp, by its rule, and warns of 4 and 5 draw',
      (_, on, __, ___, five) => {
        const { whole, warnings } = chordAvailability(five, on);
        expect(whole).toEqual([]);
        const [none, clashing, bent] = warnings;
        expect([none?.code, bent?.code, bent?.degrees]).toEqual([
          'NO_WHOLE_CHORD',
          'NO_UNBENT_TONE',
          ['3'],
        ]);
        expect(clashing).toMatchObject({
          code: 'CLASHING_CHORD',
          shape: { breath: 'draw', holes: [4, 5], gesture: 'double-stop' },
          clash: { above: 'b3', against: '3' },
        });
      },
    );

    it('chordShapes judges 4 and 5 draw over V as players do: usual in blues, wrong in a major tune', () => {
      const clashIn = (style: PlayingStyle, chord = 'D7') =>
        chordShapes(chord, harp, { style }).find(
          ({ breath, holes }) => breath === 'draw' && holes.join() === '4,5',
        )?.clashes[0]?.roughness;
      expect(clashIn('blues')).toBeLessThan(0.5);
      expect(clashIn('minor')).toBeLessThan(0.5);
      expect(clashIn('major')).toBeGreaterThan(0.75);
      expect(clashIn('major', 'Dm7')).toBeUndefined();
    });

    // By the same rule V is there as soon as the reeds give it: 5 draw raised to its third.
    it('chordAvailability finds V whole where 5 draw is raised, and in a minor key on any harp', () => {
      const raised = makeHarp('C', { tuning: 'raised-fifth-draw' });
      const { whole, warnings } = chordAvailability('D7', raised);
      expect(whole.map(({ breath, holes }) => `${breath} ${holes.join('')}`)).toContain('draw 456');
      expect(warnings).toEqual([]);
      const minor = chordAvailability('Dm', harp, { style: 'minor' });
      expect(minor.whole.map(({ holes }) => holes.join(''))).toEqual(['456', '8910']);
      expect(minor.warnings).toEqual([]);
    });

    // Common practice: in a blues only the shares of chord tones among notes drawn by chance are known
    // for sure. Computed: how many tones of I7, IV7 and V7 each scale has.
    it.each([
      ['minor blues', [0, 3, 5, 6, 7, 10], [3, 3, 2]],
      ['minor pentatonic', [0, 3, 5, 7, 10], [3, 3, 2]],
      ['major pentatonic', [0, 2, 4, 7, 9], [3, 2, 2]],
      ['mixolydian', [0, 2, 4, 5, 7, 9, 10], [4, 3, 3]],
      ['chromatic', [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11], [4, 4, 4]],
    ])('scoreLine finds as many chord tones as there are in the %s scale', (_, scale, counts) => {
      const three = makeChart(parseForm('| I7 | IV7 | V7 |'), 'G');
      const tones = new Set(['root', 'guide-tone', 'chord-tone']);
      const found = [0, 1, 2].map((bar) => {
        // One note alone at a time, so that none can resolve or push.
        const kinds = scale.map((above) => {
          const line = makeLine([{ start: bar * 3840 + 960, duration: 480, pitch: 67 + above }]);
          return scoreLine(line, three).notes[0]?.class ?? '';
        });
        return kinds.filter((kind) => tones.has(kind)).length;
      });
      expect(found).toEqual(counts);
    });
  });
});

describe('metricalStrength against the metrical tree', () => {
  published('longuet-higgins', 'metrical weights', () => {
    // Longuet-Higgins and Lee (1984) weights for sixteenths of a 4/4 bar, value from memory:
    // 0 -4 -3 -4 -2 -4 -3 -4 -1 -4 -3 -4 -2 -4 -3 -4, mapped by (4 + w) / 4.
    it('metricalStrength gives the sixteenths of a bar their places in the tree', () => {
      const tree = [0, -4, -3, -4, -2, -4, -3, -4, -1, -4, -3, -4, -2, -4, -3, -4];
      const strengths = tree.map((_, sixteenth) => metricalStrength(sixteenth / 4, 4));
      expect(strengths).toEqual(tree.map((weight) => (4 + weight) / 4));
    });
  });

  published('practice', 'early notes and triplets', () => {
    it('metricalStrength takes a slightly early note as on its beat, and triplets as off-beats', () => {
      expect(metricalStrength(-0.05, 4)).toBe(METRICAL_STRENGTH.downbeat);
      expect(metricalStrength(2.04, 4)).toBe(METRICAL_STRENGTH.halfBar);
      expect(metricalStrength(1 + 1 / 3, 4)).toBe(METRICAL_STRENGTH.offBeat);
      expect(metricalStrength(1 + 2 / 3, 4)).toBe(METRICAL_STRENGTH.offBeat);
      expect(metricalStrength(1.2, 4)).toBe(METRICAL_STRENGTH.between);
      expect(metricalStrength(1, 3)).toBe(METRICAL_STRENGTH.beat);
    });
  });
});
