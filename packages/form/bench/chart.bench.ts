import assert from 'node:assert/strict';
import { FORMS, formatForm, formById, makeChart, parseForm, recogniseForm } from '@reedplate/form';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { Bench } from 'tinybench';
import { Chord, Progression } from 'tonal';

// The basic twelve bars in twelve keys: chords with their tones, placed in ticks, against the same
// with tonal, every name asked or every answer about a name remembered. One task does all twelve.

const FORM = formById('basic');
const NUMERALS = FORM.bars.flatMap((bar) => bar.map(({ numeral }) => numeral ?? ''));
const KEYS = TWELVE_KEYS.map(({ tonic }) => tonic);
const BAR_TICKS = 3840;

interface NamedChord {
  readonly symbol: string;
  readonly notes: readonly string[];
}

interface Names {
  readonly progression: (tonic: string) => readonly string[];
  readonly chord: (symbol: string) => NamedChord;
}

const ASK_EVERY_TIME: Names = {
  progression: (tonic) => Progression.fromRomanNumerals(tonic, NUMERALS),
  chord: (symbol) => ({ symbol, notes: Chord.get(symbol).notes }),
};

function remembered<Answer>(ask: (name: string) => Answer): (name: string) => Answer {
  const answers = new Map<string, Answer>();
  return (name) => {
    const answer = answers.get(name) ?? ask(name);
    answers.set(name, answer);
    return answer;
  };
}

const ASK_ONCE: Names = {
  progression: remembered(ASK_EVERY_TIME.progression),
  chord: remembered(ASK_EVERY_TIME.chord),
};

/** A chart by names, frozen as ours is, so that neither can be changed behind a reader's back. */
const namedChart = (tonic: string, { progression, chord }: Names) =>
  Object.freeze(
    progression(tonic).map((symbol, index) =>
      Object.freeze({
        start: index * BAR_TICKS,
        end: (index + 1) * BAR_TICKS,
        chorus: 1,
        bar: index + 1,
        barOfForm: index + 1,
        beat: 1,
        numeral: NUMERALS[index],
        chord: chord(symbol),
      }),
    ),
  );

for (const key of KEYS) {
  const ours = makeChart(FORM, key).spans.map(({ chord, ...span }) => ({
    ...span,
    chord: { symbol: chord?.symbol, notes: chord?.tones.map(({ name }) => name) },
  }));
  assert.deepEqual(ours, namedChart(key, ASK_EVERY_TIME));
  assert.deepEqual(ours, namedChart(key, ASK_ONCE));
}

const PAGE = FORMS.map((form) => formatForm(form));
const PLAYED = formatForm(FORM, { key: 'Eb' });

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const ASKED = 'tonal, every name asked';
const REMEMBERED = 'tonal, every answer about a name remembered';
const OURS = 'reedplate';

const bench = new Bench({ time: 1500, warmupTime: 300 });
bench
  .add(ASKED, () => {
    for (const key of KEYS) seen += namedChart(key, ASK_EVERY_TIME).length;
  })
  .add(REMEMBERED, () => {
    for (const key of KEYS) seen += namedChart(key, ASK_ONCE).length;
  })
  .add(OURS, () => {
    for (const key of KEYS) seen += makeChart(FORM, key).spans.length;
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
