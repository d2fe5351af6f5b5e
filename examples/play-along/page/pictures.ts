import type { ChordSpan } from '@reedplate/form';
import { type Line, parseMetre } from '@reedplate/line';
import { chartPicture, harpPicture, linePicture, type ThemeId } from '@reedplate/picture';
import type { Place } from '../src/place.js';
import type { Session } from '../src/session.js';
import { byId, say, showSvg } from './elements.js';

/** Bars of the line that are shown at a time. */
const BARS = 4;
const NARROWEST = 260;

/** Shows a session: chart, harp now and next, and the line, each drawn anew only where it changed. */
export function makePictures(): {
  readonly show: (session: Session, theme: ThemeId, place?: Place) => void;
} {
  const shown = new Map<string, string>();
  /** What is drawn anew by `draw` where `state` is another than before. */
  const draw = (id: string, state: string, make: (width: number) => string): void => {
    const element = byId(id, HTMLElement);
    const width = Math.max(NARROWEST, Math.min(1600, Math.floor(element.clientWidth)));
    const now = `${state} ${width}`;
    if (shown.get(id) === now) return;
    shown.set(id, now);
    showSvg(element, make(width));
  };
  let known: Session | undefined;
  let count = 0;
  return {
    show: (session, theme, place) => {
      if (session !== known) count += 1;
      known = session;
      const here = `${count} ${theme}`;
      const at = place?.at === 'bar' ? place : undefined;
      const bar = at?.bar ?? session.bars[0];
      drawChart(draw, session, { here, theme, bar: at?.bar });
      drawHarps(draw, session, { here, theme, now: at?.now ?? null, next: at?.next ?? null });
      drawLine(draw, session, { here, theme, first: firstShown(bar) });
    },
  };
}

type Draw = (id: string, state: string, make: (width: number) => string) => void;

interface Look {
  readonly here: string;
  readonly theme: ThemeId;
}

function drawChart(
  draw: Draw,
  { song }: Session,
  { here, theme, bar }: Look & { readonly bar: number | undefined },
): void {
  draw('chart', `${here} ${bar}`, (width) => {
    const sounding = bar === undefined ? {} : { sounding: bar };
    return chartPicture(song, { theme, width, reader: 'band', ...sounding }).svg;
  });
}

function drawHarps(
  draw: Draw,
  { song, harp, level }: Session,
  { here, theme, now, next }: Look & Readonly<Record<'now' | 'next', ChordSpan | null>>,
): void {
  const first = song.spans[0] ?? null;
  const chords = { now: now ?? first, next: next ?? first } as const;
  for (const [name, span] of Object.entries(chords)) {
    const symbol = span?.chord?.symbol;
    draw(`harp-${name}`, `${here} ${symbol}`, (width) => {
      const chord = symbol === undefined ? {} : { chord: symbol };
      return harpPicture(harp, { theme, width, key: song.key, level, ...chord }).svg;
    });
    say(
      byId(`harp-${name}-label`, HTMLElement),
      `${name === 'now' ? 'Now' : 'Next'}: ${symbol ?? 'no chord'}`,
    );
  }
}

const firstShown = (bar: number): number => bar - ((bar - 1) % BARS);

function drawLine(
  draw: Draw,
  { shown, song, harp, level }: Session,
  { here, theme, first }: Look & { readonly first: number },
): void {
  const last = Math.min(song.bars, first + BARS - 1);
  draw('line-shown', `${here} ${first}`, (width) => {
    if (shown === undefined || !hasNotes(shown.line, first, last)) return '';
    const { line, soundings } = shown;
    const bars = [first, last] as const;
    const title = `Line to play along, bars ${first} to ${last}`;
    return linePicture(line, harp, { theme, width, level, chart: song, soundings, bars, title })
      .svg;
  });
}

function hasNotes({ notes, metre }: Line, first: number, last: number): boolean {
  const { barTicks } = parseMetre(metre);
  return notes.some(({ start }) => start >= (first - 1) * barTicks && start < last * barTicks);
}
