import { FAULT_CODES, type FeedbackCode, scoreLine } from '@reedplate/chord-tone';
import type { Half } from './halves.js';
import { table } from './table.js';
import { makeSongs, type Song, type TakeName } from './takes.js';

// How often a fault of the whole take is named where there is one, and where there is none.

const GOOD = ['aimed', 'roots', 'turns', 'calls'] as const satisfies readonly TakeName[];

const FAULTY = [
  ['tonic', 'STAYS_ON_ONE_CHORD'],
  ['tonic chord', 'STAYS_ON_ONE_CHORD'],
  ['without IV', 'CHORD_MISSED'],
  ['without V', 'CHORD_MISSED'],
  ['a bar late', 'TAKE_BARS_LATE'],
  ['a bar early', 'TAKE_BARS_EARLY'],
  ['a beat late', 'TAKE_BEATS_LATE'],
  ['a tone up', 'TAKE_OTHER_HARP'],
  ['a fourth up', 'TAKE_OTHER_HARP'],
  ['first half', 'BARS_NOT_PLAYED'],
] as const satisfies readonly (readonly [TakeName, FeedbackCode])[];

/** Other seeds than those of the battery: fourteen of each chart. */
const SEEDS = Array.from({ length: 14 }, (_, at) => 101 + at);

const WHOLE: ReadonlySet<FeedbackCode> = new Set([...FAULT_CODES, 'BARS_NOT_PLAYED']);

/** How often faults are named, and how often by mistake. */
export function alarmTable(halves: readonly Half[]): string {
  const songs = makeSongs(SEEDS);
  const named = FAULTY.map(([name, code]) => {
    const takes = songs.filter(({ takes: own }) => own.has(name));
    return {
      name,
      code,
      held: takes.filter((song) => codesOf(song, name).includes(code)).length,
      of: takes.length,
    };
  });
  const [held, of] = [sumOf(named, 'held'), sumOf(named, 'of')];
  const good = songs.flatMap((song) => GOOD.map((name) => codesOf(song, name)));
  const solos = halves.flatMap((half) => half.solos);
  const played = solos.map(({ line, chart }) =>
    scoreLine(line, chart).feedback.map(({ code }) => code),
  );
  const alarms = [...good, ...played].filter((codes) => codes.some((code) => WHOLE.has(code)));
  const falseShare = (100 * alarms.length) / (good.length + played.length);
  return `## Is the fault of a whole take named?

Takes of the battery below over the same charts with fourteen other seeds. Faults are named in ${held} of ${of} trials (${((100 * held) / of).toFixed(1)} %).
Nothing of the kind is to be said of good takes and of real solos: it is said of ${alarms.length} of ${good.length} good takes and ${played.length}
solos together (${falseShare.toFixed(2)} %).

${table(
  ['take', 'to be named', 'named'],
  named.map((row) => [row.name, row.code, `${row.held} of ${row.of}`]),
)}`;
}

function codesOf({ chart, takes }: Song, name: TakeName): readonly FeedbackCode[] {
  const line = takes.get(name);
  return line === undefined ? [] : scoreLine(line, chart).feedback.map(({ code }) => code);
}

function sumOf<Name extends string>(
  rows: readonly Readonly<Record<Name, number>>[],
  name: Name,
): number {
  return rows.reduce((sum, row) => sum + row[name], 0);
}
