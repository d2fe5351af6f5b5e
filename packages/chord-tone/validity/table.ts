import { bootstrapInterval, mean } from './statistics.js';

/** A table in Markdown. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** A share with two figures. */
export function share(wins: readonly number[] | undefined): string {
  return mean(wins ?? []).toFixed(2);
}

/** A share with three figures and its interval. */
export function withInterval(wins: readonly number[] | undefined): string {
  const [low, high] = bootstrapInterval(wins ?? []);
  return `${mean(wins ?? []).toFixed(3)} [${low.toFixed(2)}, ${high.toFixed(2)}]`;
}
