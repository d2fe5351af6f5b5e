import { itemAt } from '@reedplate/pitch';
import { MOST_BARS } from './make-form.js';
import type { FormBar } from './types.js';
import { syntaxError, type WrittenBar } from './written-bars.js';

/** A written bar with the chords it holds. */
export interface ReadBar {
  readonly written: WrittenBar;
  readonly chords: FormBar;
}

/** What has been played so far and what of it may be played again. */
interface Playing {
  readonly played: FormBar[];
  /** Bars since the repeat began, endings left out. */
  section: FormBar[];
  /** Bars of the ending that is being played. */
  ending: FormBar[];
  /** Passes of that ending; none outside an ending. */
  passes: readonly number[];
  /** The pass whose ending must come next, after an ending with `:|`. */
  pending: number | undefined;
  /** The bar with a `|:` that has no `:|` yet. */
  open: WrittenBar | undefined;
}

/** Plays the repeats: the bars in the order they sound, each repeat and ending written out. */
export function playRepeats(bars: readonly ReadBar[]): readonly FormBar[] {
  const playing: Playing = {
    played: [],
    section: [],
    ending: [],
    passes: [],
    pending: undefined,
    open: undefined,
  };
  for (const bar of bars) playBar(playing, bar);
  const last = bars.at(-1)?.written;
  if (last !== undefined && playing.pending !== undefined) {
    throw misplaced(last, `an ending ${playing.pending}. after it`);
  }
  if (last !== undefined) requireLastEnding(playing, last);
  if (playing.open !== undefined) throw misplaced(playing.open, 'a :| to close the |: before it');
  return playing.played;
}

/** Only the last ending of a repeat, played in one pass, goes on without a `:|`. */
function requireLastEnding({ passes, pending }: Playing, written: WrittenBar): void {
  if (pending !== undefined || passes.length === 0) return;
  if (passes.length > 1 || passes[0] === 1) throw misplaced(written, 'a :| to close the ending');
}

function playBar(playing: Playing, { written, chords }: ReadBar): void {
  if (written.opens) beginRepeat(playing, written);
  if (written.passes !== undefined) beginEnding(playing, written, written.passes);
  else if (playing.pending !== undefined) throw misplaced(written, `an ending ${playing.pending}.`);
  play(playing, written, [chords]);
  (playing.passes.length > 0 ? playing.ending : playing.section).push(chords);
  if (written.closes) closeRepeat(playing, written);
}

function play({ played }: Playing, written: WrittenBar, bars: readonly FormBar[]): void {
  if (played.length + bars.length > MOST_BARS) {
    throw misplaced(written, `at most ${MOST_BARS} bars, repeats played`);
  }
  played.push(...bars);
}

function beginRepeat(playing: Playing, written: WrittenBar): void {
  if (playing.open !== undefined || playing.pending !== undefined) {
    throw misplaced(written, 'the repeat before it to be closed');
  }
  requireLastEnding(playing, written);
  playing.open = written;
  playing.section = [];
  playing.passes = [];
}

function beginEnding(playing: Playing, written: WrittenBar, passes: readonly number[]): void {
  requireLastEnding(playing, written);
  const next = playing.pending ?? 1;
  const inOrder = passes.every((pass, index) => pass === next + index);
  if (!inOrder || (playing.pending === undefined && playing.passes.length > 0)) {
    throw misplaced(written, `an ending that begins with ${next}.`);
  }
  if (playing.section.length === 0) throw misplaced(written, 'bars to repeat before an ending');
  playing.passes = passes;
  playing.ending = [];
  playing.pending = undefined;
}

/** After `:|` the section comes again: with this ending for its other passes, then without. */
function closeRepeat(playing: Playing, written: WrittenBar): void {
  const { section, ending, passes } = playing;
  for (const _pass of passes.slice(1)) play(playing, written, [...section, ...ending]);
  play(playing, written, section);
  playing.open = undefined;
  if (passes.length > 0) {
    playing.pending = itemAt(passes, -1) + 1;
  } else {
    playing.section = [];
  }
}

function misplaced(written: WrittenBar, expected: string): Error {
  const text = written.marks.map((mark) => mark.text).join(' ');
  return syntaxError({ ...written, text }, written.bar, expected);
}
