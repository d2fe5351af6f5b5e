import type { Chart, ChordSpan } from '@reedplate/form';
import type { PiecePart, Sheet } from '@reedplate/interchange';
import { type Line, makeLine, parseMetre, type TimedNote } from '@reedplate/line';
import { type Chord, deepFreeze, requireInteger } from '@reedplate/pitch';
import { walkBass } from './bass.js';
import { beatsOf } from './beats.js';
import { comp } from './comping.js';
import { countOff, DRUMS, drum } from './drums.js';

/** What a backing has besides the chart's choruses. */
export interface BackingOptions {
  /** Bars counted in, 0 to 8; default 1. A pickup of the line falls into the last of them. */
  readonly countIn?: number;
  /** Whether a bar of the tonic chord ends it; default true. */
  readonly ending?: boolean;
  /** A line played on top, its bar 1 on the chart's; default none. */
  readonly line?: Line;
}

const MOST_COUNT_IN = 8;

/**
 * A band that plays a chart: walking bass, chords on the backbeat and drums, counted in and ended, as
 * parts of a sheet to be written. The lines are even: {@link writeMidi} plays the chart's feel.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong count-in
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { makeBacking } from '@reedplate/backing';
 *
 * const chart = makeChart('quick-change', 'G', { choruses: 2 });
 * const { parts, chart: played } = makeBacking(chart);
 * parts?.map((part) => part.name); // => ['Bass', 'Comping', 'Drums']
 * played?.bars; // => 26
 * makeBacking(chart, { countIn: 9 }); // throws NUMBER_RANGE
 * ```
 */
export function makeBacking(chart: Chart, options: BackingOptions = {}): Sheet {
  const { countIn = 1, ending = true, line } = options;
  requireInteger(countIn, { min: 0, max: MOST_COUNT_IN, what: 'bars counted in' });
  const played = frameChart(chart, { countIn, ending, lead: line?.pickup ?? 0 });
  const { metre, pickup, tempo } = played;
  const head = { metre, pickup, ...(tempo === undefined ? {} : { tempo }) };
  const shift = played.spans[countIn]?.start ?? pickup;
  const tune = line === undefined ? makeLine([], head) : moveLine(line, head, shift);
  return deepFreeze({
    line: tune,
    key: chart.key,
    chart: played,
    parts: [
      ...(line === undefined ? [] : [tunePart(tune)]),
      ...bandParts(played, countIn, ending, head),
    ],
  });
}

type LineHead = Pick<Line, 'metre' | 'pickup' | 'tempo'>;

/** General MIDI programs, counted from 1: harmonica, fingered bass, clean electric guitar. */
const PROGRAMS = { tune: 23, bass: 34, comping: 28 } as const;

function tunePart(line: Line): PiecePart {
  return { name: 'Tune', program: PROGRAMS.tune, line };
}

function bandParts(
  chart: Chart,
  countIn: number,
  ending: boolean,
  head: LineHead,
): readonly PiecePart[] {
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const all = beatsOf(chart).slice(countIn * parseMetre(chart.metre).beatsPerBar);
  const last = ending ? chart.spans.at(-1) : undefined;
  const beats = all.filter(({ start }) => last === undefined || start < last.start);
  const clicks = countOff(countIn, barTicks, beatTicks);
  const final = last === undefined ? NO_ENDING : endWith(last);
  return [
    {
      name: 'Bass',
      program: PROGRAMS.bass,
      line: makeLine([...walkBass(beats), ...final.bass], head),
    },
    {
      name: 'Comping',
      program: PROGRAMS.comping,
      line: makeLine([...comp(beats), ...final.comping], head),
    },
    {
      name: 'Drums',
      percussion: true,
      line: makeLine([...clicks, ...drum(beats), ...final.drums], head),
    },
  ];
}

interface Ending {
  readonly bass: readonly TimedNote[];
  readonly comping: readonly TimedNote[];
  readonly drums: readonly TimedNote[];
}

const NO_ENDING: Ending = { bass: [], comping: [], drums: [] };

/** The last bar: root, chord and crash together, held. */
function endWith({ start, end, chord }: ChordSpan): Ending {
  const beat = {
    start,
    ticks: end - start,
    inBar: 0,
    beatsPerBar: 1,
    underChord: 0,
    chord,
    next: undefined,
  };
  const hold = (note: TimedNote): TimedNote => ({ ...note, duration: end - start });
  return {
    bass: walkBass([beat]),
    comping: comp([beat]).map(hold),
    drums: [DRUMS.crash, DRUMS.kick].map((pitch) => hold({ start, duration: 1, pitch })),
  };
}

interface Frame {
  readonly countIn: number;
  readonly ending: boolean;
  /** Ticks that the line begins before bar 1. */
  readonly lead: number;
}

/** The chart with bars of no chord before it and a bar of its tonic after it. */
function frameChart(chart: Chart, { countIn, ending, lead }: Frame): Chart {
  const { barTicks } = parseMetre(chart.metre);
  const pickup = countIn === 0 ? Math.max(chart.pickup, lead) : 0;
  const shift = countIn * barTicks + pickup - chart.pickup;
  const before = Array.from({ length: countIn }, (_, at) =>
    barSpan(at * barTicks, at + 1, barTicks),
  );
  const own = chart.spans.map((span) => ({
    ...span,
    start: span.start + shift,
    end: span.end + shift,
    bar: span.bar + countIn,
  }));
  const end = own.at(-1)?.end ?? shift;
  const bars = countIn + chart.bars + (ending ? 1 : 0);
  const after = ending ? [{ ...barSpan(end, bars, barTicks), ...tonicOf(chart) }] : [];
  return { ...chart, pickup, bars, spans: [...before, ...own, ...after] };
}

function barSpan(start: number, bar: number, barTicks: number): ChordSpan {
  const place = { start, end: start + barTicks, chorus: 1, bar, barOfForm: bar, beat: 1 };
  return { ...place, numeral: null, chord: null };
}

/** The first tonic chord of a chart, or its first chord. */
function tonicOf({ spans }: Chart): {
  readonly numeral: string | null;
  readonly chord: Chord | null;
} {
  const tonic = spans.find(({ numeral }) => /^[Ii](?![IiVv])/u.test(numeral ?? ''));
  const { numeral = null, chord = null } = tonic ?? spans.find((span) => span.chord !== null) ?? {};
  return { numeral, chord };
}

function moveLine(line: Line, head: LineHead, barOne: number): Line {
  const shift = barOne - line.pickup;
  const notes = line.notes.map((note) => ({ ...note, start: note.start + shift }));
  const { title } = line;
  return makeLine(notes, { ...head, ...(title === undefined ? {} : { title }) });
}
