import { type Key, type NoteNameWithOctave, noteNameWithOctave } from '@reedplate/pitch';
import type { NotPlayable, PathAlternative, UnplayableEvent } from '@reedplate/playability';
import type { Page } from '../../shared/print.js';
import { round } from '../../shared/say-grips.js';
import { sayHarp } from '../../shared/say-harp.js';

/** Why a line cannot be played, and with what it could. */
export function showObstacles(
  { playableShare, missing, first, alternatives }: NotPlayable,
  key: Key,
  { paint }: Page,
): readonly string[] {
  const percent = Math.floor(playableShare * 100);
  const rest = missing - first.length;
  return [
    `${paint('warning', 'not playable:')} ${missing} cannot be sounded, ${percent} % can`,
    ...first.map((event) => `  ${sayObstacle(event, key)}`),
    ...(rest > 0 ? [`  and ${rest} more`] : []),
    ...(alternatives.length === 0 ? [] : ['', 'but it can be played']),
    ...alternatives.map((alternative) => `  ${sayAlternative(alternative)}`),
  ];
}

const OBSTACLES: Readonly<Record<UnplayableEvent['obstacle'], string>> = {
  'out-of-range': 'is outside the range of the harp',
  gap: 'is not on this harp',
  'beyond-level': 'needs a technique beyond the level',
  'no-grip': 'cannot be held together on one breath',
};

function sayObstacle({ bar, beat, pitches, obstacle }: UnplayableEvent, key: Key): string {
  const notes = pitches.map((pitch): NoteNameWithOctave => noteNameWithOctave(pitch, { key }));
  return `bar ${bar}, beat ${round(beat)}: ${notes.join(' ')} ${OBSTACLES[obstacle]}`;
}

function sayAlternative(alternative: PathAlternative): string {
  const effort = `effort ${round(alternative.effort)}`;
  if (alternative.change === 'level') return `at level ${alternative.level}: ${effort}`;
  if (alternative.change === 'harp') return `on the ${sayHarp(alternative.harp)}: ${effort}`;
  const way = alternative.semitones > 0 ? 'up' : 'down';
  const octaves = Math.abs(alternative.semitones) / 12;
  return `${octaves === 1 ? 'an octave' : `${octaves} octaves`} ${way}: ${effort}`;
}
