import { type Metre, parseMetre } from '@reedplate/line';
import {
  asErrorOf,
  chordOfNumeral,
  type JsonFields,
  type Key,
  parseKey,
  parseNumeral,
  ReedplateError,
  readJson,
  requireFields,
  requireInteger,
} from '@reedplate/pitch';
import { requireTempo } from './make-chart.js';
import { toFeel } from './to-feel.js';
import type { Chart, ChordSpan } from './types.js';

const CODE = 'CHART_INVALID';
const CHART_FIELDS = [
  'form',
  'key',
  'metre',
  'feel',
  'tempo',
  'choruses',
  'intro',
  'pickup',
  'bars',
  'spans',
] as const;
const SPAN_FIELDS = [
  'start',
  'end',
  'chorus',
  'bar',
  'barOfForm',
  'beat',
  'numeral',
  'chord',
] as const;

/**
 * A chart from parsed JSON, or from JSON text: the shape of {@link Chart}. Spans must follow each
 * other without gap, each within its bar, up to the last bar; bars, beats and chords must be those
 * of the ticks, numerals and key. A field of another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, or `CHART_INVALID` with `where.path` of the field
 * @example
 * ```ts
 * import { makeChart, readChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'G');
 * readChart(JSON.stringify(chart)).spans.length; // => 12
 * readChart({ ...chart, bars: 11 }); // throws CHART_INVALID
 * ```
 */
export function readChart(json: unknown): Chart {
  const fields = requireFields(readJson(json), CHART_FIELDS, { code: CODE, path: '' });
  const { form, tempo, intro, spans } = fields;
  if (typeof form !== 'string') throw invalid(form, 'the id of a form', 'form');
  if (!Array.isArray(spans)) throw invalid(spans, 'a list of chord spans', 'spans');
  const key = read('key', () => parseKey(fields.key as string));
  const metre = fields.metre as Metre;
  const { barTicks } = read('metre', () => parseMetre(metre));
  const pickup = count(fields.pickup, { min: 0, max: barTicks - 1, path: 'pickup' });
  const choruses = count(fields.choruses, { min: 1, path: 'choruses' });
  const bars = count(fields.bars, { min: choruses, path: 'bars' });
  return Object.freeze({
    form,
    key: key.name,
    metre,
    feel: read('feel', () => toFeel(fields.feel)),
    ...(tempo === undefined ? {} : { tempo: read('tempo', () => requireTempo(tempo)) }),
    choruses,
    ...(intro === undefined ? {} : { intro: count(intro, { min: 1, max: bars, path: 'intro' }) }),
    pickup,
    bars,
    spans: readSpans(spans, { key, metre, pickup, bars, choruses }),
  });
}

/** What spans are checked against. */
interface Frame extends Pick<Chart, 'metre' | 'pickup' | 'bars' | 'choruses'> {
  readonly key: Key;
}

function readSpans(spans: readonly unknown[], frame: Frame): readonly ChordSpan[] {
  const { barTicks } = parseMetre(frame.metre);
  let time = frame.pickup;
  const checked = spans.map((span, index) => {
    const path = `spans[${index}]`;
    const fields = requireFields(span, SPAN_FIELDS, { code: CODE, path });
    requireSame(fields.start, time, `${path}.start`);
    const read = readSpan(fields, frame, path);
    time = read.end;
    return read;
  });
  requireSame(time, frame.pickup + frame.bars * barTicks, 'spans');
  return Object.freeze(checked);
}

function readSpan(
  fields: JsonFields<(typeof SPAN_FIELDS)[number]>,
  frame: Frame,
  path: string,
): ChordSpan {
  const { barTicks, beatTicks } = parseMetre(frame.metre);
  const start = fields.start as number;
  const bar = Math.floor((start - frame.pickup) / barTicks) + 1;
  const barStart = frame.pickup + (bar - 1) * barTicks;
  return Object.freeze({
    start,
    end: count(fields.end, { min: start + 1, max: barStart + barTicks, path: `${path}.end` }),
    chorus: count(fields.chorus, { min: 0, max: frame.choruses, path: `${path}.chorus` }),
    bar: requireSame(fields.bar, bar, `${path}.bar`),
    barOfForm: count(fields.barOfForm, { min: 1, path: `${path}.barOfForm` }),
    beat: requireSame(fields.beat, (start - barStart) / beatTicks + 1, `${path}.beat`),
    ...readChord(fields.numeral, fields.chord, frame.key, path),
  });
}

function readChord(
  numeral: unknown,
  chord: unknown,
  key: Key,
  path: string,
): Pick<ChordSpan, 'numeral' | 'chord'> {
  if (numeral === null) return { numeral, chord: requireSame(chord, null, `${path}.chord`) };
  const { text } = read(`${path}.numeral`, () => parseNumeral(numeral as string));
  const expected = chordOfNumeral(text, key);
  const { symbol } = Object(chord) as { readonly symbol?: unknown };
  requireSame(symbol, expected.symbol, `${path}.chord.symbol`);
  return { numeral: text, chord: expected };
}

function read<Value>(path: string, check: () => Value): Value {
  return asErrorOf(CODE, { path }, check);
}

interface Count {
  readonly min: number;
  readonly max?: number;
  readonly path: string;
}

function count(value: unknown, { path, ...bounds }: Count): number {
  return requireInteger(value, { ...bounds, what: path, code: CODE, where: { path } });
}

function requireSame<Value>(value: unknown, expected: Value, path: string): Value {
  if (value === expected) return expected;
  throw invalid(value, String(expected), path);
}

function invalid(value: unknown, expected: string, path: string): ReedplateError {
  return new ReedplateError({ code: CODE, value, expected, where: { path } });
}
