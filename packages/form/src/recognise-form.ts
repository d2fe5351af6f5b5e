import {
  type KeyLike,
  type OptionNames,
  PITCH_CLASSES,
  ReedplateError,
  requireInteger,
  requireOptions,
  requireShape,
  toKey,
} from '@reedplate/pitch';
import { FORMS } from './catalogue.js';
import { describeMatch } from './describe-match.js';
import { joinBars, parseForm } from './parse-form.js';
import { type Candidate, type RankOptions, rankForms } from './rank-forms.js';
import type { FormMatch, FormRecognition } from './recognition.js';
import { LEAST_FORM_AGREEMENT } from './recognition-weights.js';
import { nearestCount } from './shortlist.js';
import { type FormLike, type KnownForms, toForm } from './to-form.js';
import type { FormBar } from './types.js';

/** How {@link recogniseForm} looks. */
export interface RecogniseOptions {
  /** Key of the tune, of which the tonic is used; default unknown: all twelve are tried. */
  readonly key?: KeyLike;
  /** Forms to choose from; default the catalogue. */
  readonly forms?: readonly FormLike[];
  /** How many runners-up to name, 0 to 100; default 3. */
  readonly runnersUp?: number;
  /** Forms of one's own that may be named by their id. */
  readonly known?: KnownForms;
}

const RECOGNISE_OPTIONS: OptionNames<RecogniseOptions> = {
  key: true,
  forms: true,
  runnersUp: true,
  known: true,
};

const MOST_BARS = 240;
const MOST_RUNNERS_UP = 100;

/**
 * The form that some bars of chord names are nearest to, in which key, what differs bar by bar,
 * and how sure that is. Any number of choruses may be given, and bars may be left out or added.
 * Forms that are equally near are all named: a tie. Where too few bars agree, no form is `near`. A form
 * is known by any turnaround or ending of the catalogue in place of its own last two bars.
 *
 * @param bars chord names in the marks that {@link parseForm} reads, as one text or bar by bar;
 * at most 240 bars
 * @throws ReedplateError `FORM_SYNTAX` for what cannot be read; `FORM_INVALID` for bars without
 * any chord, too many bars or no forms; `KEY_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { recogniseForm } from '@reedplate/form';
 *
 * const played = 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D9';
 * const { best, tie, confidence } = recogniseForm(played);
 * best.map(({ form, key }) => `${form} in ${key}`); // => ['quick-change in G']
 * best[0]?.differences; // => [{ kind: 'quality', bar: 12, barOfForm: 12, given: 'D9', expected: 'D7', cost: 0.1 }]
 * tie; // => false
 * confidence > 0.8; // => true
 * const jazzed = 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 E7 | A7 D7';
 * recogniseForm(jazzed).best[0]?.closing; // => 'one-six-two-five-dominants'
 * recogniseForm('C | G | Am | F').near; // => false
 * recogniseForm('N.C. | N.C.'); // throws FORM_INVALID
 * ```
 */
export function recogniseForm(
  bars: string | readonly string[],
  options: RecogniseOptions = {},
): FormRecognition {
  const {
    key,
    forms = FORMS,
    runnersUp = 3,
    known,
  } = requireOptions(options, RECOGNISE_OPTIONS, 'recogniseForm');
  requireShape({ forms }, { forms: 'list' }, { what: 'a list of forms', code: 'FORM_INVALID' });
  requireInteger(runnersUp, { min: 0, max: MOST_RUNNERS_UP, what: 'runners-up' });
  const home = key === undefined ? undefined : toKey(key);
  const given = readBars(bars);
  const chosen = forms === FORMS ? FORMS : forms.map((form) => toForm(form, known));
  // Even without runners-up the next nearest is wanted: it says how sure the nearest is.
  const wanted = Math.max(1, runnersUp);
  const tonics = home === undefined ? PITCH_CLASSES : [home.pitchClass];
  const ranked = rankForms(given, { forms: chosen, tonics, runnersUp: wanted });
  const [first] = ranked;
  if (first === undefined) throw invalid(forms, 'at least one form to choose from');
  const count = nearestCount(ranked);
  const others = ranked.slice(count, count + runnersUp);
  const describe = (candidate: Candidate) => describeMatch(candidate, given, home);
  const best = ranked.slice(0, count).map(describe);
  const near = best.some((match) => agreementBefore(match, given.length) >= LEAST_FORM_AGREEMENT);
  return Object.freeze({
    near,
    best: Object.freeze(best),
    others: Object.freeze(others.map(describe)),
    tie: count > 1,
    ...confidencesOf(first, given, { forms: chosen, tonics, near }),
  });
}

/** Agreement of the bars before another closing: two bars that any form may end in tell no form. */
function agreementBefore({ cost, closing, choruses }: FormMatch, bars: number): number {
  return 1 - cost / Math.max(1, bars - (closing === null ? 0 : 2 * choruses));
}

/** The names are read as if in C: their numerals then count from C and are moved to each tonic. */
function readBars(bars: string | readonly string[]): readonly FormBar[] {
  const text = joinBars(bars) as string;
  const { bars: given } = parseForm(text, { key: 'C' });
  if (given.length > MOST_BARS) throw invalid(given.length, `at most ${MOST_BARS} bars`);
  if (given.flat().every(({ numeral }) => numeral === null)) {
    throw invalid(text, 'at least one chord');
  }
  return given;
}

type Confidences = Pick<FormRecognition, 'confidence' | 'formConfidence' | 'keyConfidence'>;

interface Field extends Pick<RankOptions, 'forms' | 'tonics'> {
  readonly near: boolean;
}

/** The form against other forms in its key, and the key against all forms in other keys. */
function confidencesOf(
  first: Candidate,
  given: readonly FormBar[],
  { forms, tonics, near }: Field,
): Confidences {
  if (!near) return { confidence: 0, formConfidence: 0, keyConfidence: 0 };
  const lead = (rivals: Omit<RankOptions, 'forms' | 'runnersUp'>): number => {
    const [next] = rankForms(given, { ...rivals, forms, runnersUp: 1 });
    const share = next === undefined ? 1 : leadOver(first, next);
    const agreement = Math.max(0, 1 - first.cost / given.length);
    return Math.round(agreement * share * 1000) / 1000;
  };
  const formConfidence = lead({ tonics: [first.tonic], without: first.form });
  const elsewhere = tonics.filter((tonic) => tonic !== first.tonic);
  const keyConfidence = lead({ tonics: elsewhere, closings: false });
  const confidence = Math.min(formConfidence, keyConfidence);
  return { confidence, formConfidence, keyConfidence };
}

function leadOver(first: Candidate, next: Candidate): number {
  return next.cost <= first.cost ? 0 : 1 - first.cost / next.cost;
}

function invalid(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'FORM_INVALID', value, expected });
}
