import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { THEMES, type ThemeId } from '@reedplate/picture';
import type { Place } from '../src/place.js';
import { byId, say } from './elements.js';

/** Beats before a change at which it is called. */
export const CALLED = 1;

type Role = keyof (typeof THEMES)['screen']['chords'];

/** What a chord is in its key, by its numeral. */
function roleOf(numeral: string | null): Role {
  const [step = ''] = /^[#b]?[ivIV]+/u.exec(numeral ?? '') ?? [];
  const roles: Readonly<Record<string, Role>> = { I: 'one', IV: 'four', V: 'five' };
  return roles[step.toUpperCase()] ?? 'other';
}

const nameOf = (span: ChordSpan | null): string => {
  if (span === null) return '–';
  return span.chord === null ? 'No chord' : `${span.chord.symbol} (${span.numeral})`;
};

/** Shows where the band is, in large letters. */
export function showPlace(place: Place, song: Chart, theme: ThemeId): void {
  const { beatsPerBar } = parseMetre(song.metre);
  if (place.at === 'count-in') {
    say(
      byId('now', HTMLElement),
      `${((((beatsPerBar - place.beatsLeft) % beatsPerBar) + beatsPerBar) % beatsPerBar) + 1}`,
    );
    say(byId('bar', HTMLElement), 'Count-in');
    showNext(song.spans[0] ?? null, place.beatsLeft);
    colour(null, theme);
    return;
  }
  if (place.at === 'end') {
    showRest(theme);
    return;
  }
  const beat = Math.floor(place.beat);
  say(byId('now', HTMLElement), nameOf(place.now));
  say(byId('bar', HTMLElement), `Chorus ${place.pass}, bar ${place.bar}`);
  say(
    byId('beats', HTMLElement),
    `${'●'.repeat(beat)}${'○'.repeat(Math.max(0, beatsPerBar - beat))}`,
  );
  showNext(place.next, place.beatsLeft);
  colour(place.now?.numeral ?? null, theme);
}

/** Nothing plays. */
export function showRest(theme: ThemeId): void {
  for (const id of ['now', 'next']) say(byId(id, HTMLElement), '–');
  say(byId('bar', HTMLElement), 'Not playing');
  say(byId('beats', HTMLElement), '');
  byId('board', HTMLElement).dataset.soon = 'false';
  say(byId('next-label', HTMLElement), 'Next');
  colour(null, theme);
}

function showNext(next: ChordSpan | null, beatsLeft: number | null): void {
  const isSoon = beatsLeft !== null && beatsLeft <= CALLED;
  say(byId('next', HTMLElement), nameOf(next));
  say(byId('next-label', HTMLElement), isSoon ? 'Next, in a beat' : 'Next');
  byId('board', HTMLElement).dataset.soon = String(isSoon);
  if (isSoon && next !== null) say(byId('told', HTMLElement), `Next: ${nameOf(next)}`);
}

function colour(numeral: string | null, theme: ThemeId): void {
  const { tint, strong } = THEMES[theme].chords[roleOf(numeral)];
  const { style, dataset } = byId('board', HTMLElement);
  if (dataset.role === `${roleOf(numeral)} ${theme}`) return;
  dataset.role = `${roleOf(numeral)} ${theme}`;
  style.setProperty('--tint', tint);
  style.setProperty('--strong', strong);
}
