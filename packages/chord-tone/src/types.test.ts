import type { Chart } from '@reedplate/form';
import type { Harp, HarpLike, Sounding } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import type { ChordDegree, ChordLike } from '@reedplate/pitch';
import { describe, expectTypeOf, it } from 'vitest';
import { type PracticeKind, practiceLine } from '../../practice/src/index.js';
import {
  chordShapes,
  type NoteClass,
  type NoteScore,
  type PlayingStyle,
  type Score,
  type ScoreMeasures,
  type ScoreOptions,
  scoreLine,
  type Target,
  targetsOf,
} from './index.js';

describe('types of chord-tone', () => {
  it('targetsOf takes a chord or its symbol and gives a read-only list', () => {
    expectTypeOf(targetsOf).parameter(0).toEqualTypeOf<ChordLike>();
    expectTypeOf(targetsOf).parameter(1).toEqualTypeOf<HarpLike>();
    expectTypeOf(targetsOf).returns.toEqualTypeOf<readonly Target[]>();
    expectTypeOf<Target['degree']>().toEqualTypeOf<ChordDegree>();
    expectTypeOf<Target['sounding']>().toEqualTypeOf<Sounding>();
  });

  it('scoreLine takes a line and a chart, with everything else optional', () => {
    expectTypeOf(scoreLine).parameters.toEqualTypeOf<[Line, Chart, ScoreOptions?]>();
    expectTypeOf(scoreLine).returns.toEqualTypeOf<Score>();
    expectTypeOf<ScoreMeasures['chordFit']>().toEqualTypeOf<number | null>();
    expectTypeOf<NoteScore['class']>().toEqualTypeOf<NoteClass>();
  });

  it('styles, kinds and classes are literal, so that a slip does not compile', () => {
    expectTypeOf<PlayingStyle>().toEqualTypeOf<'blues' | 'major' | 'minor'>();
    expectTypeOf<PracticeKind>().toEqualTypeOf<'roots' | 'chords' | 'guide-tones' | 'arpeggios'>();
    expectTypeOf<'blue'>().toExtend<NoteClass>();
    const refused = (line: Line, chart: Chart, harp: Harp): void => {
      // @ts-expect-error there is no style of that name
      scoreLine(line, chart, { style: 'loud' });
      // @ts-expect-error there is no kind of that name
      practiceLine(chart, harp, { kind: 'root' });
      // @ts-expect-error there is no level of that name
      chordShapes('G', harp, { level: 'bend' });
    };
    expectTypeOf(refused).toBeFunction();
  });

  it('fields are read-only', () => {
    const refused = (score: Score): void => {
      // @ts-expect-error a score cannot be changed
      score.total = 100;
      // @ts-expect-error nor its list of notes
      score.notes.push();
    };
    expectTypeOf(refused).toBeFunction();
  });
});
