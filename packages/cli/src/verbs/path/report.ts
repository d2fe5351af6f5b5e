import type { Harp, Sounding } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { type Key, type NoteNameWithOctave, noteNameWithOctave, parseKey } from '@reedplate/pitch';
import {
  type BestPathsOptions,
  bestPaths,
  type ChoiceReason,
  type ExplainedStep,
  explainPath,
  type LinePath,
  type NotPlayable,
  type PathHead,
  type TermEfforts,
} from '@reedplate/playability';
import { formatTab, markOf } from '@reedplate/tab';

/** Another way to play a note, and what the easiest way through it costs more. */
export interface PathOther {
  readonly tab: string;
  /** Points more in all. */
  readonly more: number;
}

/** One note or chord of a path. */
export interface PathMove {
  readonly bar: number;
  /** Felt beat, from 1. */
  readonly beat: number;
  /** In signs; a chord in brackets. */
  readonly tab: string;
  /** From the low end, spelled in the key of the song. */
  readonly notes: readonly NoteNameWithOctave[];
  /** Points, and of what they are made. */
  readonly effort: number;
  readonly terms: TermEfforts;
  /** Air after it, in seconds of playing from half full: above 0 drawn in. */
  readonly air: number;
  readonly reason: ChoiceReason;
  readonly others: readonly PathOther[];
}

/** What `reedplate path --json` prints for a line that can be played. */
export interface PlayablePathReport extends PathHead {
  readonly playable: true;
  /** The whole path, in signs. */
  readonly tab: string;
  /** Points in all, of the worst move, and by term. */
  readonly effort: number;
  readonly worst: number;
  readonly terms: TermEfforts;
  readonly moves: readonly PathMove[];
  /** The next best paths, as many as were asked for. */
  readonly next: readonly {
    readonly tab: string;
    readonly effort: number;
    readonly worst: number;
  }[];
}

/** What `reedplate path --json` prints. */
export type PathReport = PlayablePathReport | NotPlayable;

/** How a path is searched and told. */
export interface PathReportOptions extends BestPathsOptions {
  /** Key of the song, by which notes are spelled; default that of the harp's first position. */
  readonly key?: string;
}

/**
 * The easiest way to play a line on a harp, note by note, with the effort taken apart and the
 * reason for each choice; or why it cannot be played, and what could.
 *
 * @param options as `bestPaths`; `count` more than 1 adds the next best paths; default 1
 * @throws ReedplateError as `bestPaths`; `KEY_UNKNOWN`
 */
export function pathReport(
  line: Line,
  harp: Harp,
  { count = 1, key, ...options }: PathReportOptions = {},
): PathReport {
  const spelling = parseKey(key ?? harp.firstPosition);
  const found = explainPath(line, harp, options);
  if (!found.playable) return found;
  const paths = bestPaths(line, harp, { ...options, count });
  const { model, level, objective, effort, worst, soundings } = found.path;
  return {
    playable: true,
    harp,
    model,
    level,
    objective,
    tab: tabOf(soundings),
    effort,
    worst,
    terms: found.terms,
    moves: found.steps.map((step) => moveOf(step, spelling)),
    next: (paths.playable ? paths.paths.slice(1) : []).map((path: LinePath) => ({
      tab: tabOf(path.soundings),
      effort: path.effort,
      worst: path.worst,
    })),
  };
}

function moveOf({ others, soundings, ...step }: ExplainedStep, key: Key): PathMove {
  return {
    bar: step.bar,
    beat: step.beat,
    tab: tabOf([soundings]),
    notes: soundings.map(({ pitch }) => noteNameWithOctave(pitch, { key })),
    effort: step.effort,
    terms: step.terms,
    air: step.air,
    reason: step.reason,
    others: others.map((other) => ({ tab: tabOf([other.soundings]), more: other.more })),
  };
}

const tabOf = (grips: readonly (readonly Sounding[])[]): string =>
  formatTab(grips.map((grip) => grip.map(markOf)));
