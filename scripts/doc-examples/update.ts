import { readFileSync, writeFileSync } from 'node:fs';

/** A claim whose literal is to be written anew; lines count from 1. */
export interface Update {
  readonly file: string;
  readonly firstLine: number;
  readonly lastLine: number;
  readonly literal: string;
}

/** Rewrites the claims of files on disk. */
export function applyUpdates(updates: readonly Update[]): void {
  for (const file of new Set(updates.map((update) => update.file))) {
    const itsUpdates = updates.filter((update) => update.file === file);
    writeFileSync(file, rewriteClaims(readFileSync(file, 'utf8'), itsUpdates));
  }
}

/** The text with each claim's literal written anew on the line where the claim begins. */
export function rewriteClaims(text: string, updates: readonly Omit<Update, 'file'>[]): string {
  const lines = text.split('\n');
  // From the end up, so that a claim that shrinks does not move those still to come.
  for (const { firstLine, lastLine, literal } of [...updates].sort(
    (a, b) => b.firstLine - a.firstLine,
  )) {
    const line = lines[firstLine - 1] ?? '';
    const rewritten = `${line.slice(0, line.indexOf('// =>'))}// => ${literal}`;
    lines.splice(firstLine - 1, lastLine - firstLine + 1, rewritten);
  }
  return lines.join('\n');
}
