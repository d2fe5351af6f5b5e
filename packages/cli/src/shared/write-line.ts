import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { positionByNumber, positionOf } from '@reedplate/position';
import type { Exercise } from '@reedplate/practice';
import type { Terminal } from '../terminal.js';
import { sayHarp } from './say-harp.js';

/** What a line is written with: its song, and the harp that plays it. */
export interface WrittenSong {
  readonly chart: Chart;
  readonly harp: Harp;
}

/** A line with what sounds at each note, and a title. */
export interface TitledLine extends Pick<Exercise, 'line' | 'soundings'> {
  readonly title: string;
}

/**
 * Writes a line with the tab that the screen shows, a title, and what to pick up. Writers of files are
 * loaded only where a file is written.
 *
 * @throws ReedplateError as `writePieceFile`
 */
export async function writeLine(
  { line, soundings, title }: TitledLine,
  { chart, harp }: WrittenSong,
  file: string,
  terminal: Terminal,
): Promise<void> {
  const { writePieceFile } = await import('./piece-file.js');
  const { ordinal } = positionByNumber(positionOf(harp, chart.key));
  const subtitle = `${sayHarp(harp)}, ${ordinal} position`;
  const sheet = { line, chart, key: chart.key };
  writePieceFile(sheet, file, terminal, { harp, soundings, title, subtitle });
}
