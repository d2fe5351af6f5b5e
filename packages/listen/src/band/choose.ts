import type { Form } from '@reedplate/form';
import { itemAt } from '@reedplate/pitch';
import { type BarScores, scoreBars } from './form/bar-scores.js';
import { formScore } from './form/follow-form.js';
import type { FormTable } from './form/form-table.js';
import type { Chroma } from './front/chroma.js';
import type { RhythmGrid } from './grids.js';

/** One way to read what was heard: a form on a tonic over a grid. */
export interface Reading {
  /** Place among the grids. */
  readonly grid: number;
  /** Place in the table; null where no form is followed. */
  readonly form: number | null;
  /** Pitch class; of no meaning without a form. */
  readonly tonic: number;
  /** How well the chords fit, with what the rhythm says. */
  readonly score: number;
}

/** Every reading of what was heard. */
export interface Readings {
  readonly grids: readonly RhythmGrid[];
  /** For each grid how well its bars fit: about 1 where they fit as well as they can. */
  readonly bars: readonly BarScores[];
  readonly table: FormTable;
  /** For each grid the score of each form on each tonic, by `form * 12 + tonic`. */
  readonly scores: readonly Float64Array[];
  /** For each grid the score of no form at all. */
  readonly formless: readonly number[];
}

/** What the rhythm says beside the chords, whose scores are about 1. Chosen on one half of the tracks. */
export const RHYTHM_WEIGHTS = Object.freeze({
  onBeats: 0.36,
  accent: 0.04,
  /** For each octave squared from the usual tempo. */
  tempo: 0.1,
  /** Bars of three beats, and of two, are rarer than those of four. */
  three: 0.27,
  two: 0.45,
});

/** Share of its freest reading that a form must reach to be one. Chosen on one half of the tracks. */
export const FORMLESS_SHARE = 0.88;

/** Felt beats a minute, as most blues are played. Our own choice. */
const USUAL_TEMPO = 100;

/** How far behind the best grid, by its few forms, a grid may be and still be looked at with all. */
const IN_REACH = 0.25;

/** Forms that tell at little cost how well a grid fits; those that are not in a table are left out. */
const SCOUTS: ReadonlySet<string> = new Set([
  'basic',
  'quick-change',
  'jazz',
  'minor',
  'minor-six-eight',
  'eight-bar',
  'eight-bar-late-four',
  'eight-bar-five-second-sevenths',
  'eight-bar-minor-four',
  'sixteen-bar',
]);

/** Every form on every tonic over every grid that is in reach. */
export function readAll(
  grids: readonly RhythmGrid[],
  chroma: Chroma,
  table: FormTable,
  seconds: number,
): Readings {
  const all = grids.map((grid) => scoreBars(chroma, grid, table, seconds));
  const scale = Math.max(1e-6, ...all.map(freeScore));
  for (const bars of all) scaleScores(bars, scale);
  const scouted = grids.map((grid, at) => {
    const bars = all[at] as BarScores;
    const rhythm = rhythmScore(grid);
    const formless = rhythm + FORMLESS_SHARE * freeScore(bars);
    const scouts = formScores(bars, grid, table, ({ id }) => SCOUTS.has(id));
    const best = Math.max(formless, rhythm + scouts.reduce((a, b) => Math.max(a, b), formless - 1));
    return { grid, bars, rhythm, formless, best };
  });
  const limit = Math.max(...scouted.map(({ best }) => best)) - IN_REACH;
  const kept = scouted.filter(({ best }) => best >= limit);
  return {
    grids: kept.map(({ grid }) => grid),
    bars: kept.map(({ bars }) => bars),
    table,
    scores: kept.map(({ grid, bars, rhythm }) =>
      formScores(bars, grid, table).map((harmony) => harmony + rhythm),
    ),
    formless: kept.map(({ formless }) => formless),
  };
}

/** Divides all scores: how clear a recording is should not make leaving the form cheap or dear. */
function scaleScores({ ofForms, free, whole, next }: BarScores, scale: number): void {
  for (const scores of [ofForms, free, whole, next]) {
    for (let at = 0; at < scores.length; at += 1) scores[at] = (scores[at] as number) / scale;
  }
}

/** How well bars fit the best chord that each of them could have. */
function freeScore({ whole, shares }: BarScores): number {
  return whole.reduce((sum, score, bar) => sum + score * (shares[bar] as number), 0);
}

function formScores(
  bars: BarScores,
  { beatsPerBar }: RhythmGrid,
  table: FormTable,
  wanted: (form: Form) => boolean = () => true,
): Float64Array {
  return Float64Array.from({ length: table.forms.length * 12 }, (_, at) => {
    const form = table.forms[Math.floor(at / 12)] as Form;
    if (!wanted(form)) return Number.NEGATIVE_INFINITY;
    // Two beats are half a bar of four, unless the form is one of two.
    const isOfTwo = form.metre === '6/8';
    if (isOfTwo !== (beatsPerBar === 2)) return Number.NEGATIVE_INFINITY;
    const places = table.barsOfForms[Math.floor(at / 12)] as readonly number[];
    return formScore(bars, { bars: places, tonic: at % 12 });
  });
}

function rhythmScore({ tempo, onBeats, accent, beatsPerBar }: RhythmGrid): number {
  const octaves = Math.log2(tempo / USUAL_TEMPO);
  const metre =
    beatsPerBar === 3 ? RHYTHM_WEIGHTS.three : beatsPerBar === 2 ? RHYTHM_WEIGHTS.two : 0;
  return (
    RHYTHM_WEIGHTS.onBeats * onBeats +
    RHYTHM_WEIGHTS.accent * accent -
    RHYTHM_WEIGHTS.tempo * octaves * octaves -
    metre
  );
}

/** Whether a reading is one that is looked for. */
export type Wanted = (reading: Omit<Reading, 'score'>) => boolean;

/**
 * The best reading of all that are wanted: the best form over any grid, or no form over the grid of that one, since
 * what is free of any form would choose the shortest bars.
 */
export function bestReading({ scores, formless }: Readings, wanted: Wanted): Reading | undefined {
  let best: Reading | undefined;
  for (const [grid, row] of scores.entries()) {
    for (const [at, score] of row.entries()) {
      if (score <= (best?.score ?? Number.NEGATIVE_INFINITY)) continue;
      const reading = { grid, form: Math.floor(at / 12), tonic: at % 12, score };
      if (wanted(reading)) best = reading;
    }
  }
  const grid = best?.grid ?? 0;
  const free: Reading = {
    grid,
    form: null,
    tonic: 0,
    score: itemAt(formless, grid),
  };
  return free.score > (best?.score ?? Number.NEGATIVE_INFINITY) && wanted(free) ? free : best;
}
