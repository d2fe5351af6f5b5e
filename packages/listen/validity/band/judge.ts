import { parseKey } from '@reedplate/pitch';
import type { BandConfidence, HeardBand } from '../../src/index.js';
import type { TrueChord, Truth } from './track.js';

/** How an answer compares with the truth. */
export interface Judged {
  readonly right: Readonly<Record<keyof BandConfidence, boolean>>;
  /** Whether the form is named itself, and not only among those that fit alike. */
  readonly formAlone: boolean;
  /** How many forms are named. */
  readonly named: number;
  /** Share of the time in which root and third of the chord are right. */
  readonly chords: number;
  readonly confidence: BandConfidence;
  /** Each bar that was heard: how sure, and whether it is right for at least three quarters of its time. */
  readonly bars: readonly { readonly confidence: number; readonly right: boolean }[];
}

/** Seconds that a bar line may be off (as mir_eval counts beats). */
const NEAR = 0.07;

/** F-measure of the bar lines that makes a track's downbeats right. */
const LINES_RIGHT = 0.8;

/** Seconds between the moments at which chords are compared. */
const STEP = 0.05;

/** Compares what was heard with what was played. */
export function judge(band: HeardBand, truth: Truth): Judged {
  const forms = [band.form, ...band.alike].flatMap((form) => (form === null ? [] : [form.form]));
  const { key } = band.chart;
  const tonic = parseKey(key).pitchClass;
  const isForm = truth.form === null ? band.form === null : forms.includes(truth.form);
  return {
    right: {
      tempo: Math.abs(band.tempo / truth.tempo - 1) < 0.02,
      downbeat: linesFound(band, truth) >= LINES_RIGHT,
      key: tonic === truth.tonic && key.endsWith('m') === truth.minor,
      form: isForm,
    },
    formAlone: truth.form === null ? band.form === null : forms[0] === truth.form,
    named: forms.length,
    chords: chordsRight(band, truth),
    confidence: band.confidence,
    bars: band.bars.map(({ start, end, confidence }) => ({
      confidence,
      right: shareRight(band, truth, start, end) >= 0.75,
    })),
  };
}

function linesFound({ bars }: HeardBand, { barLines }: Truth): number {
  const heard = bars.map(({ start }) => start);
  const found = barLines.filter((line) => heard.some((other) => Math.abs(other - line) <= NEAR));
  return (2 * found.length) / (heard.length + barLines.length);
}

function chordsRight(band: HeardBand, truth: Truth): number {
  const sounding = truth.chords.filter(({ root }) => root !== null);
  return shareRight(band, truth, sounding[0]?.start ?? 0, sounding.at(-1)?.end ?? 0);
}

/** Share of some seconds in which the chord is right; those in which nothing is played do not count. */
function shareRight(band: HeardBand, truth: Truth, from: number, to: number): number {
  let [right, all] = [0, 0];
  for (let second = from + STEP / 2; second < to; second += STEP) {
    const played = truth.chords.find(({ start, end }) => start <= second && second < end);
    if (played === undefined || played.root === null) continue;
    all += 1;
    if (isSame(played, chordAt(band, second))) right += 1;
  }
  return all === 0 ? 0 : right / all;
}

type Heard = Pick<TrueChord, 'root' | 'minor'> | undefined;

const isSame = (played: TrueChord, heard: Heard): boolean =>
  heard !== undefined && heard.root === played.root && heard.minor === played.minor;

function chordAt({ bars, chart }: HeardBand, second: number): Heard {
  const bar = bars.findIndex(({ start, end }) => start <= second && second < end);
  const place = bars[bar];
  if (place === undefined) return undefined;
  const spans = chart.spans.filter((span) => span.bar === bar + 1);
  const [first, last] = [spans[0]?.start ?? 0, spans.at(-1)?.end ?? 0];
  const tick = first + ((second - place.start) / (place.end - place.start)) * (last - first);
  const chord = spans.find(({ start, end }) => start <= tick && tick < end)?.chord;
  if (chord === undefined || chord === null) return undefined;
  const third = chord.tones.find(({ degree }) => degree === '3' || degree === 'b3');
  return { root: chord.tones[0]?.pitchClass ?? 0, minor: third?.degree === 'b3' };
}
