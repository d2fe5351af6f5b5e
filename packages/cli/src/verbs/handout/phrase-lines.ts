import { type Chart, formOfChart } from '@reedplate/form';
import type { Harp, PlayerLike } from '@reedplate/layout';
import type { HandoutLine } from '@reedplate/picture';
import { isReedplateError, parseKey, ReedplateError } from '@reedplate/pitch';
import { makeLesson, type Phrase, placePhrase, toPhrase } from '@reedplate/practice';
import { count } from '../../shared/count.js';
import { readList, readWholeNumber } from '../../shared/read-words.js';
import { stepLine } from '../../shared/step-line.js';

/** Where phrases of a handout are put, and for whom. */
export interface PhraseGround {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly level: PlayerLike;
  /** Phrases of the user's own, which are taken before ours; default none. */
  readonly own?: readonly Phrase[];
}

/**
 * The phrases of a handout: those asked for, each over its bar; or a riff and a turnaround of the catalogue that
 * fit form, harp and level. None where they are not wanted.
 *
 * @throws ReedplateError `PHRASE_UNKNOWN`, `NUMBER_RANGE`, `SOUNDING_IMPOSSIBLE` where the harp has nothing
 */
export function phraseLines(
  asked: string | false | undefined,
  ground: PhraseGround,
): readonly HandoutLine[] {
  if (asked === false) return [];
  if (asked === undefined) return fittingLines(ground);
  return readList(asked).map((word) => placedLine(word, ground));
}

/** A riff and a turnaround; fewer where the harp has none, and then the page holds what there is. */
function fittingLines({ chart, harp, level, own = [] }: PhraseGround): readonly HandoutLine[] {
  try {
    const { steps, chart: played } = makeLesson({
      form: formOfChart(chart),
      key: parseKey(chart.key),
      harp,
      level,
      goals: ['riff', 'turnaround'],
      known: { phrases: own },
    });
    return steps.map((step) => ({ ...stepLine(step), chart: played }));
  } catch (error) {
    if (isReedplateError(error) && error.code === 'SOUNDING_IMPOSSIBLE') return [];
    throw error;
  }
}

/** A phrase by its id, with the bar after an @. */
function placedLine(word: string, { chart, harp, level, own = [] }: PhraseGround): HandoutLine {
  const [id = '', bar = '1', ...more] = word.split('@');
  if (more.length > 0) {
    throw new ReedplateError({
      code: 'USAGE',
      value: word,
      expected: 'a phrase and its bar, stair@5',
    });
  }
  const phrase = toPhrase(id, { phrases: own });
  const placed = placePhrase(phrase, {
    chart,
    harp,
    level,
    bar: readWholeNumber(bar, { min: 1, max: chart.bars, what: 'a bar' }),
  });
  if (!placed.playable) {
    throw new ReedplateError({
      code: 'SOUNDING_IMPOSSIBLE',
      value: id,
      expected: `a phrase with tones that the harp has at this level, of ${placed.without.join(', ')}`,
    });
  }
  const { line, soundings, changes } = placed;
  const trains = phrase.trains === '' ? [] : [`It trains ${phrase.trains}.`];
  const changed =
    changes.length === 0 ? [] : [`Played otherwise here: ${count(changes.length, 'note')}.`];
  const title = phrase.name.charAt(0).toUpperCase() + phrase.name.slice(1);
  return { title, line, soundings, words: [...trains, ...changed] };
}
