import { FORMS, type Form, type FormLike, type KnownForms, toForm } from '@reedplate/form';
import { type Metre, parseMetre } from '@reedplate/line';
import {
  itemAt,
  type Key,
  type KeyLike,
  type Mode,
  type OptionNames,
  parseKey,
  ReedplateError,
  requireShape,
  TWELVE_KEYS,
  toKey,
} from '@reedplate/pitch';
import { chartOfBars } from './band-chart.js';
import { bestReading, type Reading, type Readings } from './choose.js';
import { alikeTo, commonestOf, confidencesOf } from './confidence.js';
import type { BarScores } from './form/bar-scores.js';
import { catalogueTable, type FormTable, formTable } from './form/form-table.js';
import { keyOfChords } from './form/key-of-chords.js';
import { barsOfForm, barsOfNoForm, type Played } from './form/played-bars.js';
import type { RhythmGrid } from './grids.js';
import type { BandReading, HeardForm } from './heard-band.js';

/** What helps to tell what a band plays. */
export interface BandOptions {
  /** Key of the song, of which the tonic is used; default all keys are tried. */
  readonly key?: KeyLike;
  /** Forms to choose from; default the catalogue. */
  readonly forms?: readonly FormLike[];
  /** Forms of one's own that may be named by their id. */
  readonly known?: KnownForms;
}

export const BAND_OPTIONS: OptionNames<BandOptions> = { key: true, forms: true, known: true };

/** The forms asked for, made ready, and the tonic where it is known. */
export interface BandSetting {
  readonly table: FormTable;
  readonly home: Key | undefined;
}

/**
 * Reads the options of listening to a band.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `FORM_UNKNOWN`, `FORM_INVALID`
 */
export function settingOf({ key, forms = FORMS, known }: BandOptions): BandSetting {
  const words = { what: 'a list of forms', code: 'FORM_INVALID' } as const;
  requireShape({ forms }, { forms: 'list' }, words);
  if (forms.length === 0)
    throw new ReedplateError({
      ...words,
      value: forms,
      expected: 'at least one form to choose from',
    });
  return {
    table: forms === FORMS ? catalogueTable() : formTable(forms.map((form) => toForm(form, known))),
    home: key === undefined ? undefined : toKey(key),
  };
}

/** The best reading, with what it rests on. */
export interface Answer {
  readonly reading: BandReading;
  readonly grid: RhythmGrid;
  readonly played: Played;
}

/** What a band most likely plays; undefined where nothing sounds. */
export function answerOf(readings: Readings, home: Key | undefined): Answer | undefined {
  const { grids, table } = readings;
  const first = bestReading(
    readings,
    ({ form, tonic }) => form === null || home === undefined || tonic === home.pitchClass,
  );
  if (first === undefined) return undefined;
  const best = commonestOf(readings, first);
  const grid = grids[best.grid] as RhythmGrid;
  const scores = readings.bars[best.grid] as BarScores;
  const form = best.form === null ? undefined : table.forms[best.form];
  const key = keyOf(best, form, { scores, table, home });
  const played =
    best.form === null
      ? barsOfNoForm(scores, table, key)
      : barsOfForm(scores, table, { form: best.form, key });
  if (played.bars.length === 0) return undefined;
  const metre = metreOf(form, grid);
  const chart = chartOfBars(played.bars, {
    id: form?.id ?? 'heard',
    key,
    metre,
    feel: form?.feel ?? 'shuffle',
    tempo: Math.round(10 * grid.tempo) / 10,
  });
  const named = ({ id, name, mode }: Form): HeardForm => ({
    form: id,
    name,
    key: keyIn(key.pitchClass, mode, home).name,
  });
  return {
    grid,
    played,
    reading: {
      chart,
      form: form === undefined ? null : named(form),
      alike: alikeTo(readings, best).map((other) => named(table.forms[other] as Form)),
      differences: played.differences,
      confidence: confidencesOf(readings, best),
    },
  };
}

interface KeyGround {
  readonly scores: BarScores;
  readonly table: FormTable;
  readonly home: Key | undefined;
}

function keyOf(best: Reading, form: Form | undefined, { scores, table, home }: KeyGround): Key {
  if (form !== undefined) return keyIn(best.tonic, form.mode, home);
  if (home !== undefined) return home;
  const { tonic, mode } = keyOfChords(scores, table);
  return keyIn(tonic, mode, home);
}

/** A key by its tonic, spelled as the song's key is where that is known. */
function keyIn(tonic: number, mode: Mode, home: Key | undefined): Key {
  const name = home?.pitchClass === tonic ? home.tonic : itemAt(TWELVE_KEYS, tonic).tonic;
  return parseKey(mode === 'minor' ? `${name}m` : name);
}

const METRES: Readonly<Record<number, Metre>> = { 4: '4/4', 3: '3/4', 2: '6/8' };

/** The metre of the form, where its bars have as many beats as were heard. */
function metreOf(form: Form | undefined, { beatsPerBar }: RhythmGrid): Metre {
  if (form !== undefined && parseMetre(form.metre).beatsPerBar === beatsPerBar) return form.metre;
  return METRES[beatsPerBar] as Metre;
}
