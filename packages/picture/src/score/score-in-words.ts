import { describeVerdict, type Score } from '@reedplate/chord-tone';
import { MARK_WORDS, markOfClass } from './class-marks.js';
import { LANDING_WORDS, landingOf } from './landing-marks.js';
import type { BarChange, BarNote, TakeBar } from './score-bars.js';

/** What the picture of a score shows, in a sentence or two. */
export function describeScore({ verdict, total, changes }: Score): string {
  const landed = changes.filter((change) => landingOf(change) === 'tone').length;
  return (
    `${describeVerdict(verdict)} ${Math.round(total)} of 100; ` +
    `${landed} of ${changes.length} changes land on a tone of their chord. ` +
    'Each note has the mark of what it is to its chord, each bar a strip as full as it is good.'
  );
}

/** All that the picture of a score shows: a line a bar. */
export function scoreInText(title: string, score: Score, bars: readonly TakeBar[]): string {
  return [title, describeVerdict(score.verdict), ...bars.map(barInText)].join('\n');
}

function barInText({ number, chords, chordFit, notes, changes }: TakeBar): string {
  const name = number === 0 ? 'pickup' : `bar ${number}`;
  const over = chords.length === 0 ? '' : ` (${chords.join(', ')})`;
  const good = number === 0 ? [] : [chordFit === null ? 'rest' : `${Math.round(chordFit * 100)} %`];
  const struck = notes.filter(({ isStruck }) => isStruck).map(noteInText);
  const parts = [...good, ...changes.map(changeInText), ...struck];
  return `${name}${over}: ${parts.join('; ')}`;
}

function changeInText({ change }: BarChange): string {
  const heard = change.shown === false ? ', change not heard' : '';
  return `${change.chord} ${LANDING_WORDS[landingOf(change)]}${heard}`;
}

function noteInText({ note }: BarNote): string {
  const degree = note.degree === null ? '' : ` ${note.degree}`;
  return `${note.name}${degree} ${MARK_WORDS[markOfClass(note.class)]}`;
}
