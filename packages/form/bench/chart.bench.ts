import assert from 'node:assert/strict';
import { FORMS, formatForm, formById, makeChart, parseForm, recogniseForm } from '@reedplate/form';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { Bench } from 'tinybench';
import { Chord, Progression } from 'tonal';

// The chords of the basic twelve bars in twelve keys, with their tones, against the same with
// tonal, every name asked or every answer about a name remembered. One task does all twelve keys.

const FORM = formById('basic');
const NUMERALS = FORM.bars.flatMap((bar) => bar.map(({ numeral }) => numeral ?? ''));
const KEYS = TWELVE_KEYS.map(({ tonic }) => tonic);

interface NamedChord {
  readonly symbol: string;
  readonly notes: readonly string[];
}

const chordOf = (symbol: string): NamedChord => ({ symbol, notes: Chord.get(symbol).notes });

function remembered<Answer>(ask: (name: string) => Answer): (name: string) => Answer {
  const answers = new Map<string, Answer>();
  return (name) => {
    const answer = answers.get(name) ?? ask(name);
    answers.set(name, answer);
    return answer;
  };
}

const namesIn = (tonic: string): readonly string[] =>
  Progression.fromRomanNumerals(tonic, NUMERALS);
const askedChart = (tonic: string): readonly NamedChord[] => namesIn(tonic).map(chordOf);
const namesOnce = remembered(namesIn);
const chordOnce = remembered(chordOf);
const rememberedChart = (tonic: string): readonly NamedChord[] => namesOnce(tonic).map(chordOnce);

for (const key of KEYS) {
  const ours = makeChart(FORM, { key }).spans.map(({ chord }) => ({
    symbol: chord?.symbol,
    notes: chord?.tones.map(({ name }) => name),
  }));
  assert.deepEqual(ours, askedChart(key));
  assert.deepEqual(ours, rememberedChart(key));
}

const PAGE = FORMS.map((form) => formatForm(form));
const PLAYED = formatForm(FORM, { key: 'Eb' });

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const ASKED = 'tonal, every name asked';
const REMEMBERED = 'tonal, every answer about a name remembered';
const OURS = 'reedplate, charts with times, checked';

const bench = new Bench({ time: 1500, warmupTime: 300 });
bench
  .add(ASKED, () => {
    for (const key of KEYS) seen += askedChart(key).length;
  })
  .add(REMEMBERED, () => {
    for (const key of KEYS) seen += rememberedChart(key).length;
  })
  .add(OURS, () => {
    for (const key of KEYS) seen += makeChart(FORM, { key }).spans.length;
  })
  .add('parse all forms of the catalogue', () => {
    for (const text of PAGE) seen += parseForm(text).bars.length;
  })
  .add('recognise twelve bars, key unknown', () => {
    seen += recogniseForm(PLAYED).best.length;
  });
await bench.run();

const rate = (name: string): number => {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'throughput' in result ? result.throughput.mean : 0;
};

for (const name of [ASKED, REMEMBERED, OURS]) {
  const perSecond = Math.round(rate(name) * KEYS.length).toLocaleString('en');
  console.log(`${name.padEnd(46)} ${perSecond.padStart(10)} charts a second`);
}
console.log(`${OURS}: ${(rate(OURS) / rate(ASKED)).toFixed(1)} times ${ASKED}`);
console.log(`${OURS}: ${(rate(OURS) / rate(REMEMBERED)).toFixed(2)} times ${REMEMBERED}`);
for (const { name } of bench.tasks.slice(3)) {
  console.log(`${name.padEnd(46)} ${(1000 / rate(name)).toFixed(2).padStart(10)} ms`);
}
console.log(`(${seen} results seen)`);
