import { makeHarp } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { parseTab } from './parse-tab.js';
import { soundMark } from './sound-tab.js';
import type { TabMark } from './tab-mark.js';

const harp = makeHarp('C');

function pitchesOf(tab: string): readonly number[] {
  return parseTab(tab).map(([mark]) => soundMark(mark as TabMark, harp).pitch);
}

describe('soundMark', () => {
  // Holes 2 and 3 draw of a C harp with their bends: shared table of the standard layout after
  // Wikipedia, "Richter-tuned harmonica"; the bends by the mailing-list post "Bending &
  // overblows", September 1994.
  test('soundMark gives the bends of holes 2 and 3 draw', () => {
    expect(pitchesOf("-2 -2' -2'' -3 -3' -3'' -3'''")).toEqual([67, 66, 65, 71, 70, 69, 68]);
  });

  test('soundMark refuses a bend below the lower reed and says what the hole can do', () => {
    expect(() => pitchesOf("-2'''")).toThrowError(/hole 2.*breath draw.*-2, -2', -2''/u);
  });

  test('soundMark refuses a hole the harp lacks', () => {
    expect(() => pitchesOf('-11')).toThrowError(/11/u);
  });

  test('soundMark reads valved bends on a valved harp only', () => {
    const [[mark] = []] = parseTab("+4'");
    expect(soundMark(mark as TabMark, harp, { valved: true }).pitch).toBe(71);
    expect(() => soundMark(mark as TabMark, harp)).toThrowError(/hole 4/u);
  });
});
