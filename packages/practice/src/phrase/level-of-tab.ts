import { makeHarp, soundings, type TechniqueLevel } from '@reedplate/layout';
import { parseTimedTab, soundMark, type TabMark } from '@reedplate/tab';
import { PHRASE_GRADES } from '../catalogue/grades.js';
import { splitManners } from './note-words.js';
import type { PhraseGrade } from './phrase.js';

/** The least level that has every mark of a tab. */
export function levelOfTab(tab: string): TechniqueLevel {
  const marks = marksOf(tab);
  if (marks.some(({ over }) => over)) return 'overbends';
  return marks.some(({ bend }) => bend > 0) ? 'bends' : 'natural';
}

/**
 * The first grade whose player has every mark of a tab on a standard harp; that it is quick or wide is not judged.
 *
 * @throws ReedplateError `HOLE_RANGE`, `SOUNDING_IMPOSSIBLE`
 */
export function gradeOfTab(tab: string): PhraseGrade {
  const harp = makeHarp('C');
  const wanted = marksOf(tab).map((mark) => soundMark(mark, harp));
  const found = PHRASE_GRADES.find(({ player }) => {
    const had = soundings(harp, { level: player });
    return wanted.every(({ hole, breath, pitch }) =>
      had.some((each) => each.hole === hole && each.breath === breath && each.pitch === pitch),
    );
  });
  return found?.grade ?? 5;
}

function marksOf(tab: string): readonly TabMark[] {
  return parseTimedTab(splitManners(tab).tab).flatMap((timed) => timed.marks);
}
