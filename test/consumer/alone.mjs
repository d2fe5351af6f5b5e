// A program that asked for `reedplate` and nothing else: it reads a MIDI file, scores it, and knows errors
// of every package by one class.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as reedplate from 'reedplate';

const require = createRequire(import.meta.url);

for (const { readMidi, makeChart, scoreLine, makeHarp, ReedplateError, parseKey, parseForm } of [
  reedplate,
  require('reedplate'),
]) {
  const { line } = readMidi(new Uint8Array(readFileSync('take.mid')));
  const { total } = scoreLine(line, makeChart('quick-change', 'G'), { harp: makeHarp('C') });
  if (!(total > 0 && total <= 100)) throw new Error(`the take scores ${total}`);
  const slips = [
    () => parseKey('H'),
    () => parseForm('| what |'),
    () => makeHarp('X'),
    () => readMidi(new Uint8Array(3)),
    () => scoreLine(line, null),
  ];
  for (const slip of slips) {
    const error = caught(slip);
    if (!(error instanceof ReedplateError)) throw new Error(`not our error: ${error}`);
  }
}
console.log('reedplate alone reads a MIDI file, scores it, and throws errors of one class');

function caught(slip) {
  try {
    slip();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}
