import { type Chart, formatForm, formOfChart } from '@reedplate/form';
import {
  type Harp,
  type Player,
  type PlayerLike,
  type Sounding,
  soundings,
  toPlayer,
} from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import { positionOf } from '@reedplate/position';
import { findPhrases } from '../catalogue/find-phrases.js';
import { PHRASE_GRADES } from '../catalogue/grades.js';
import { barsOf, phraseChart, plainHarmony } from '../phrase/harmony.js';
import type { Phrase, PhraseGrade, PhraseKind } from '../phrase/phrase.js';
import { placeWithin } from '../phrase/place-phrase.js';
import type { PlacedPhrase } from '../phrase/placed-phrase.js';
import { varyPhrase } from '../vary/vary-phrase.js';

/** What material is chosen for. */
export interface MaterialGround {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly level: PlayerLike;
  /** Phrases of the instructor's own, which are taken before ours. */
  readonly phrases: readonly Phrase[];
}

/** A phrase, put on the harp. */
export interface Chosen {
  readonly phrase: Phrase;
  readonly placed: PlacedPhrase;
}

/** As for exercises. */
const LAST_HOLE = 7;
/** How many phrases are tried at most; the best of them is taken. */
const MOST_TRIED = 6;

/** A riff through the whole form. */
export function riffThrough(ground: MaterialGround): Chosen | undefined {
  const harmony = plainHarmony(formatForm(formOfChart(ground.chart)));
  const riffs = likely('riff', ground).filter(
    (riff) => riff.from === 'chord' && riff.pickup === 0 && barsOf(riff) <= barsOf({ harmony }),
  );
  return easiest(riffs, ground, 1, (riff) => varyPhrase(riff, [{ way: 'sequenced', harmony }]));
}

/** A line over the last two bars: made for their chords where there is one. */
export function turnaroundOf(ground: MaterialGround): Chosen | undefined {
  const { chart } = ground;
  const bars = formOfChart(chart).bars.length;
  if (bars < 2) return undefined;
  const bar = bars - 1;
  const chordsFrom = (of: Chart, first: number): string =>
    of.spans
      .filter((span) => span.bar >= first && span.bar < first + 2)
      .map(({ chord, beat }) => `${beat} ${chord?.symbol ?? ''}`)
      .join(' ');
  const wanted = chordsFrom(chart, bar);
  const { tonic } = parseKey(chart.key);
  const lines = likely('turnaround', ground);
  const made = lines.filter((line) => chordsFrom(phraseChart(line, tonic), 1) === wanted);
  return easiest(made.length > 0 ? made : lines, ground, bar);
}

/**
 * Phrases of a kind, of the chart's mode and as many beats a bar: those of the position first, one's own before ours, then those of the
 * feel.
 */
function likely(
  kind: PhraseKind,
  { chart, harp, level, phrases }: MaterialGround,
): readonly Phrase[] {
  const key = parseKey(chart.key);
  const position = positionOf(harp, key);
  const wanted = gradeOfPlayer(toPlayer(level), harp);
  const far = (phrase: Phrase): number =>
    (phrase.position === position ? 0 : 16) +
    (phrases.includes(phrase) ? 0 : 8) +
    (phrase.feel === chart.feel ? 0 : 2) +
    Math.abs(wanted - phrase.grade) +
    (phrase.grade > wanted ? 4 : 0);
  const { beatsPerBar } = parseMetre(chart.metre);
  return findPhrases({ kind, mode: key.mode, from: [...phrases, ...findPhrases()] })
    .filter(({ metre }) => parseMetre(metre).beatsPerBar === beatsPerBar)
    .sort((a, b) => far(a) - far(b));
}

/** The player without bends and overbends. */
function unbent(player: Player): Player {
  return { ...player, skills: player.skills.filter(({ technique }) => technique === 'natural') };
}

/** The highest grade all of whose techniques a player has on a harp; 1 where they have not even every unbent note. */
function gradeOfPlayer(player: Player, harp: Harp): PhraseGrade {
  const had = new Set(soundings(harp, { level: player }).map(nameOfSounding));
  const grades = PHRASE_GRADES.filter((each) =>
    soundings(harp, { level: each.player }).every((sounding) => had.has(nameOfSounding(sounding))),
  );
  return grades.at(-1)?.grade ?? 1;
}

const nameOfSounding = ({ hole, breath, pitch }: Sounding): string => `${hole} ${breath} ${pitch}`;

/**
 * The best of the likely ones, each made ready before it is tried: what comes first goes before what comes later, and
 * each note that must be played otherwise, wherever it comes, counts as two places.
 */
function easiest(
  phrases: readonly Phrase[],
  { chart, harp, level }: MaterialGround,
  bar: number,
  makeReady = (phrase: Phrase): Phrase => phrase,
): Chosen | undefined {
  let best: Chosen | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, found] of phrases.slice(0, MOST_TRIED).entries()) {
    // What comes later costs at least its place. Measured: a lesson takes 65 ms of processor time, 100 without this.
    if (index >= least) break;
    const phrase = makeReady(found);
    // What is written unbent stays so: a change of a note is easier than a deep bend in passing.
    const own = phrase.level === 'natural' ? unbent(toPlayer(level)) : level;
    const placed = placeWithin(phrase, { chart, harp, level: own, bar }, LAST_HOLE);
    if (!placed.playable) continue;
    const otherwise = new Set(placed.changes.map(({ wanted }) => wanted)).size;
    const cost = index + 2 * otherwise;
    if (cost < least) [best, least] = [{ phrase, placed }, cost];
  }
  return best;
}
