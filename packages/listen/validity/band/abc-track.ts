import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';

/** How abc2midi plays the chords of a bar: bass notes and chords, or their tones one by one. */
const PATTERNS: Readonly<Record<string, string>> = {
  'abc-stride 4': '%%MIDI gchord fzczfzcz',
  'abc-arpeggio 4': '%%MIDI gchord ghihghih',
  'abc-stride 3': '%%MIDI gchord fzczcz',
  'abc-arpeggio 3': '%%MIDI gchord ghihih',
  'abc-stride 2': '%%MIDI gchord fzcfzc',
  'abc-arpeggio 2': '%%MIDI gchord ghighi',
};

/** A chart as a tune of rests under chord symbols, which abc2midi accompanies. */
export function abcOfBars(chart: Chart, style: 'abc-stride' | 'abc-arpeggio'): string {
  const { barTicks, beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const unit = 240;
  const bars = Array.from({ length: chart.bars }, (_, bar) =>
    chart.spans
      .filter((span) => span.bar === bar + 1)
      .map(({ start, end, chord }) => `"${symbolOf(chord?.symbol)}"z${(end - start) / unit}`)
      .join(''),
  );
  return [
    'X:1',
    'T:track',
    `M:${chart.metre}`,
    'L:1/16',
    `Q:${beatTicks / unit}/16=${chart.tempo ?? 96}`,
    'K:C',
    '%%MIDI program 1',
    '%%MIDI chordprog 0',
    '%%MIDI bassprog 33',
    '%%MIDI chordvol 90',
    PATTERNS[`${style} ${beatsPerBar}`] ?? '',
    ...bars.map((bar) => `${bar}|`),
    `z${barTicks / unit}|]`,
    '',
  ].join('\n');
}

/** Chord symbols in the words that abc2midi knows. */
function symbolOf(symbol = ''): string {
  return symbol.replace('maj7', 'maj7').replace('m7b5', 'm7b5').replace('7b9', '7');
}

export function midiOfAbc(abc: string): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'reedplate-abc-'));
  try {
    writeFileSync(join(folder, 'a.abc'), abc);
    execFileSync('abc2midi', [join(folder, 'a.abc'), '-o', join(folder, 'a.mid')], {
      stdio: 'pipe',
    });
    return readFileSync(join(folder, 'a.mid'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
