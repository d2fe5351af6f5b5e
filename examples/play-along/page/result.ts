import { scorePicture, type ThemeId } from '@reedplate/picture';
import type { Session } from '../src/session.js';
import type { JudgedTake } from '../src/take.js';
import { byId, showSvg, textElement } from './elements.js';

const SAVES = ['save-json', 'save-midi', 'save-musicxml'] as const;

/** Shows a judged take: total, verdict, strip, remarks, and what to practise next. */
export function showResult(take: JudgedTake, session: Session, theme: ThemeId): void {
  const body = byId('result-body', HTMLElement);
  const total = textElement('p', `${Math.round(take.score.total)} of 100`);
  total.className = 'total';
  total.id = 'total';
  const strip = document.createElement('div');
  strip.className = 'picture';
  const width = Math.max(320, Math.min(1000, Math.floor(body.clientWidth)));
  showSvg(strip, scorePicture(take.score, session.song, { theme, width }).svg);
  body.replaceChildren(
    total,
    textElement('p', take.verdict),
    strip,
    ...listOf('What stands out', take.remarks),
    ...listOf('Practise next', take.next),
  );
  for (const id of SAVES) byId(id, HTMLButtonElement).disabled = false;
}

/** Says why there is no take to show. */
export function showNoResult(words: string): void {
  byId('result-body', HTMLElement).replaceChildren(textElement('p', words));
  for (const id of SAVES) byId(id, HTMLButtonElement).disabled = true;
}

function listOf(title: string, words: readonly string[]): readonly HTMLElement[] {
  if (words.length === 0) return [];
  const list = document.createElement('ol');
  list.append(...words.map((each) => textElement('li', each)));
  return [textElement('h3', title), list];
}
