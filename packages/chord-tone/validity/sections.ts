import { scoreLine } from '@reedplate/chord-tone';
import { contrasts } from './contrasts.js';
import type { Half } from './halves.js';
import { mean, quantile } from './statistics.js';
import { JUDGES, pitchShuffle, windowsOf, winsAgainst } from './study.js';
import { share, table, withInterval } from './table.js';

const SHUFFLES = 6;

/** Columns for each half that has solos. */
function columns(halves: readonly Half[], names: readonly string[]): readonly string[] {
  return names.flatMap((name) => halves.map((half) => `${name}, ${half.name}`));
}

/** Every contrast on whole solos. */
export function contrastTable(halves: readonly Half[]): string {
  const rows = contrasts(SHUFFLES).map((contrast) => {
    const wins = halves.map(({ solos }) => winsAgainst(contrast, solos));
    return [
      contrast.name,
      ...wins.map((one) => withInterval(one.get('total'))),
      ...wins.map((one) => share(one.get('plain share'))),
    ];
  });
  const means = FAMILIES.map(([family, pattern]) => {
    const own = contrasts(SHUFFLES).filter(({ name }) => pattern.test(name));
    const wins = halves.map(({ solos }) => own.map((contrast) => winsAgainst(contrast, solos)));
    const meanOf = (judge: string) =>
      wins.map((all) => mean(all.flatMap((one) => one.get(judge) ?? [])).toFixed(3));
    return [`**${family}**`, ...meanOf('total'), ...meanOf('plain share')];
  });
  const head = ['contrast', ...columns(halves, ['total', 'plain share'])];
  return `## The total against each contrast\n\n${table(head, [...rows, ...means])}`;
}

/** Solos cut into choruses give more trials than whole solos do. */
export function chorusTable(halves: readonly Half[]): string {
  const choruses = halves.map((half) => ({ ...half, solos: windowsOf(half.solos, 12) }));
  const counts = choruses.map(({ name, solos }) => `${solos.length} "${name}"`).join(', ');
  const rows = FAMILIES.map(([family, pattern]) => {
    const own = contrasts(SHUFFLES).filter(({ name }) => pattern.test(name));
    const wins = choruses.map(({ solos }) => own.map((contrast) => winsAgainst(contrast, solos)));
    const meanOf = (judge: string) =>
      wins.map((all) => mean(all.flatMap((one) => one.get(judge) ?? [])).toFixed(2));
    return [family, ...meanOf('total'), ...meanOf('plain share')];
  });
  const head = ['contrasts', ...columns(halves, ['total', 'plain share'])];
  return `## Chorus by chorus

Twelve bars at a time: ${counts}. One chorus tells less than a whole solo, but there are more of them. Bars and
pitches are shuffled ${SHUFFLES} times each.

${table(head, rows)}`;
}

/** With the notes where they were played. */
export function playedTable(halves: readonly Half[]): string {
  const rows = FAMILIES.slice(1).map(([family, pattern]) => {
    const own = contrasts(2).filter(({ name }) => pattern.test(name));
    return [
      family,
      ...halves.map(({ solos }) =>
        mean(own.flatMap((contrast) => winsAgainst(contrast, solos).get('total') ?? [])).toFixed(3),
      ),
    ];
  });
  return `## With the notes where they were played

Above, notes stand on the annotated grid. Here they stand between the beats where they were played,
swung, rushed and dragged, and the score undoes the swing it estimates.

${table(['contrasts', ...columns(halves, ['total'])], rows)}`;
}

/** Contrasts by family. */
const FAMILIES = [
  ['intervals', /^up/u],
  ['bars late or early', /^(late|early)/u],
  ['bars shuffled', /^bars/u],
  ['pitches shuffled', /^pitches/u],
] as const;

/** Each measure alone, on the last half. */
export function measureTable(halves: readonly Half[]): string {
  const half = halves.at(-1);
  if (half === undefined) return '';
  const families = FAMILIES.map(([, pattern]) =>
    contrasts(SHUFFLES)
      .filter(({ name }) => pattern.test(name))
      .map((contrast) => winsAgainst(contrast, half.solos)),
  );
  const rows = JUDGES.map(({ name }) => [
    name,
    ...families.map((wins) => withInterval(bySolo(wins.map((one) => one.get(name) ?? [])))),
  ]);
  return `## Each measure alone, ${half.name}

Means over the contrasts of a family. Measures are not meant to win alone: landing looks at a few
notes only, and shuffled pitches keep the share of clashes much as it was.

${table(['measure', ...FAMILIES.map(([family]) => family)], rows)}`;
}

/** Means over contrasts, one number a solo. */
function bySolo(wins: readonly (readonly number[])[]): readonly number[] {
  return (wins[0] ?? []).map((_, solo) => mean(wins.map((one) => one[solo] ?? Number.NaN)));
}

const LENGTHS = [1, 2, 4, 8, 12, 24] as const;

/** Stated confidence against what windows of several lengths win. */
export function lengthTable(halves: readonly Half[]): string {
  const rows = LENGTHS.map((bars) => {
    const windows = halves.map(({ solos }) => windowsOf(solos, bars));
    const notes = windows.flat().map(({ line }) => line.notes.length);
    const stated = mean(windows.flat().map(({ line, chart }) => scoreLine(line, chart).confidence));
    return [
      `${bars}`,
      `${quantile(notes, 0.5)}`,
      stated.toFixed(2),
      ...windows.map((own) => share(winsAgainst(pitchShuffle(2), own).get('total'))),
    ];
  });
  return `## How much a few bars tell

How often a window of a solo outscores its own pitches shuffled, beside the confidence that its score
states: Φ(0.13 √notes), chosen on the "chosen on" half, and a half where one chord sounds throughout, as in most
windows of one bar: there is nothing to follow in them.

${table(['bars', 'notes (median)', 'stated', ...columns(halves, ['won'])], rows)}`;
}

/** Where the true chart loses. */
export function losses(halves: readonly Half[]): string {
  const solos = halves.at(-1)?.solos ?? [];
  const lost = new Map<number, string[]>();
  for (const contrast of contrasts(SHUFFLES)) {
    const wins = winsAgainst(contrast, solos).get('total') ?? [];
    solos.forEach(({ id }, index) => {
      const won = wins[index] ?? 1;
      if (won < 1) lost.set(id, [...(lost.get(id) ?? []), contrast.name]);
    });
  }
  const rows = [...lost].map(([id, names]) => {
    const solo = solos.find((one) => one.id === id);
    const chords = new Set(solo?.chart.spans.map(({ chord }) => chord?.symbol));
    return [
      `${id}`,
      `${solo?.chart.bars}`,
      `${solo?.line.notes.length}`,
      `${chords.size}`,
      names.join(', '),
    ];
  });
  return `## Where the true chart loses, ${halves.at(-1)?.name}

${table(['solo', 'bars', 'notes', 'chords', 'loses to'], rows)}`;
}
