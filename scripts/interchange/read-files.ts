import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { type Piece, readAbc, readMidi, readMusicXml } from '@reedplate/interchange';
import { isReedplateError } from '@reedplate/pitch';

// Reads every ABC, MIDI and MusicXML file under the folders given, and prints what was read, what was
// left out and what was refused, as Markdown. Run: npx tsx scripts/interchange/read-files.ts FOLDER...
type Reader = (bytes: Uint8Array) => readonly Piece[];

const READERS: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['.abc', readAbc],
  ['.mid', (bytes) => [readMidi(bytes)]],
  ['.midi', (bytes) => [readMidi(bytes)]],
  ['.xml', (bytes) => [readMusicXml(bytes)]],
  ['.musicxml', (bytes) => [readMusicXml(bytes)]],
  ['.mxl', (bytes) => [readMusicXml(bytes)]],
]);

interface Tally {
  files: number;
  pieces: number;
  notes: number;
  clean: number;
  charts: number;
  readonly warnings: Map<string, number>;
  readonly refused: string[];
}

const tallies = new Map<string, Tally>();

function filesUnder(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => READERS.has(extname(file).toLowerCase()))
    .sort()
    .map((file) => join(folder, file));
}

function readFile(file: string): void {
  const kind = extname(file).toLowerCase();
  const tally = tallies.get(kind) ?? newTally();
  tallies.set(kind, tally);
  tally.files += 1;
  try {
    for (const piece of READERS.get(kind)?.(readFileSync(file)) ?? []) count(piece, tally);
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    tally.refused.push(`\`${file}\`: ${error.message.replaceAll(/\s+/gu, ' ')}`);
  }
}

function newTally(): Tally {
  return { files: 0, pieces: 0, notes: 0, clean: 0, charts: 0, warnings: new Map(), refused: [] };
}

function count({ parts, chart, warnings }: Piece, tally: Tally): void {
  tally.pieces += 1;
  tally.notes += parts.reduce((sum, { line }) => sum + line.notes.length, 0);
  if (warnings.length === 0) tally.clean += 1;
  if (chart !== undefined) tally.charts += 1;
  for (const { code } of warnings) tally.warnings.set(code, (tally.warnings.get(code) ?? 0) + 1);
}

const folders = process.argv.slice(2);
if (folders.length === 0) {
  console.error(
    'Give folders with .abc, .mid, .xml, .musicxml or .mxl files, such as a tune database.',
  );
  process.exitCode = 2;
}
for (const folder of folders) for (const file of filesUnder(folder)) readFile(file);

console.log('| kind | files | pieces | notes | with a chart | without a warning | refused |');
console.log('|---|---:|---:|---:|---:|---:|---:|');
for (const [kind, { files, pieces, notes, charts, clean, refused }] of tallies) {
  console.log(
    `| ${kind} | ${files} | ${pieces} | ${notes} | ${charts} | ${clean} | ${refused.length} |`,
  );
}
for (const [kind, { warnings, refused }] of tallies) {
  const shown = [...warnings]
    .sort((a, b) => b[1] - a[1])
    .map(([code, times]) => `${code} ${times}`);
  console.log(`\n${kind}, pieces with each warning: ${shown.join(', ') || 'none'}.`);
  for (const line of refused) console.log(`- refused ${line}`);
}
