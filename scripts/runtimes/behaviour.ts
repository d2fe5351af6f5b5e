// One program for every runtime: it asks the library a little of everything and prints a hash of each kind of
// answer. Bundled with the built library by compare.mjs; it uses nothing that only one runtime has.
import {
  bestPath,
  type Chart,
  FORMS,
  type Metre,
  makeBacking,
  makeChart,
  makeHarp,
  makeLine,
  parseChord,
  parseForm,
  parseKey,
  parseTab,
  pickHarps,
  practiceLine,
  readAbc,
  readMidi,
  readMusicXml,
  recogniseForm,
  scoreLine,
  TEMPERAMENTS,
  TUNINGS,
  TWELVE_KEYS,
  targetsOf,
  temperHarp,
  writeAbc,
  writeMidi,
  writeMusicXml,
} from 'reedplate';

/** What must be alike everywhere, by name. */
const ANSWERS: Readonly<Record<string, () => unknown>> = {
  frequencies: () =>
    TUNINGS.map((tuning) =>
      TEMPERAMENTS.map((temperament) =>
        answerOf(() => temperHarp(makeHarp('A', { tuning }), temperament)),
      ),
    ),
  charts: () => FORMS.map((form) => TWELVE_KEYS.map((key) => makeChart(form, key))),
  recognition: () =>
    FORMS.slice(0, 12).map((form) => recogniseForm(namesOfBars(makeChart(form, 'E')))),
  harps: () => TWELVE_KEYS.map((key) => pickHarps(key)),
  targets: () => ['G7', 'Cm7', 'F#dim7', 'Bb9'].map((chord) => targetsOf(chord, 'C')),
  practice: () =>
    FORMS.map((form) =>
      ['roots', 'chords', 'guide-tones', 'arpeggios'].map((kind) =>
        answerOf(() => practiceLine(makeChart(form, 'G'), 'C', { kind: kind as 'roots' })),
      ),
    ),
  scores: () =>
    FORMS.map((form, at) =>
      scoreLine(take(at, form.metre), makeChart(form, 'G'), { harp: makeHarp('C') }),
    ),
  paths: () =>
    [1, 2, 3].map((seed) => answerOf(() => bestPath(take(seed), 'C', { level: 'overbends' }))),
  files: () => {
    const band = makeBacking(makeChart('quick-change', 'Bb', { choruses: 2 }));
    const [midi, xml, abc] = [writeMidi(band), writeMusicXml(band), writeAbc(band)];
    return [[...midi], xml, abc, readMidi(midi), readMusicXml(xml), readAbc(abc)];
  },
  refusals: () =>
    [
      () => parseKey('H'),
      () => parseChord('G$'),
      () => parseForm('| what'),
      () => parseTab('-11'),
      () => makeHarp('X' as 'C'),
      () => readMidi(new Uint8Array([1, 2, 3])),
    ].map(answerOf),
};

/** An answer, or the error that stands for it: both must be alike. */
function answerOf(ask: () => unknown): unknown {
  try {
    return ask();
  } catch (error) {
    return JSON.parse(JSON.stringify(error));
  }
}

/** A chart's chords bar by bar, as a person would type them. */
function namesOfBars({ bars, spans }: Chart): readonly string[] {
  return Array.from({ length: bars }, (_, at) =>
    spans
      .filter(({ bar }) => bar === at + 1)
      .map(({ chord }) => chord?.symbol ?? 'N.C.')
      .join(' '),
  );
}

/** A take that nobody played: notes by a small generator of whole numbers. */
function take(seed: number, metre: Metre = '4/4') {
  let state = (seed + 1) * 7919;
  const next = (below: number): number => {
    state = (state * 16807) % 2147483647;
    return state % below;
  };
  const notes = Array.from({ length: 90 }, (_, at) => ({
    start: at * 480 + next(40),
    duration: 200 + next(300),
    pitch: 60 + next(30),
  }));
  return makeLine(notes, { metre });
}

/** A hash of text in two halves of 32 bits, by multiplication alone, so that no runtime's own is needed. */
function hashOf(text: string): string {
  let [low, high] = [0xdeadbeef, 0x41c6ce57];
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    low = Math.imul(low ^ code, 2654435761);
    high = Math.imul(high ^ code, 1597334677);
  }
  return [low, high].map((half) => (half >>> 0).toString(16).padStart(8, '0')).join('');
}

const hashes = Object.entries(ANSWERS).map(
  ([name, ask]) => `${name} ${hashOf(JSON.stringify(ask()))}`,
);
const text = `reedplate-behaviour: ${hashes.join(', ')}; ${hashOf(hashes.join())}`;
console.log(text);
const page = (globalThis as { document?: { title: string } }).document;
if (page !== undefined) page.title = text;
