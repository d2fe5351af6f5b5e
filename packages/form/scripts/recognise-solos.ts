import { readFileSync } from 'node:fs';
import { FORMS, formById, recogniseForm } from '@reedplate/form';
import { parseKey } from '@reedplate/pitch';

// Recognises the changes of annotated solos over twelve-bar blues, without being told the key.
//   npx tsx packages/form/scripts/recognise-solos.ts SOLOS.ndjson
// One JSON object a line: { id, key: 'Bb-maj', beats: [[bar, beat, bar of the form, seconds, chord]] }.
// Our data came from the Weimar Jazz Database (The Jazzomat Research Project, Hochschule für Musik
// Franz Liszt Weimar; Pfleiderer, Frieler et al., 2017), under the Open Database License 1.0:
// https://jazzomat.hfm-weimar.de/dbformat/dboverview.html.

type Beat = readonly [
  bar: number,
  beat: number,
  barOfForm: number | null,
  at: number,
  chord: string | null,
];

interface Solo {
  readonly id: number;
  readonly key: string;
  readonly beats: readonly Beat[];
}

const FORM_BARS = 12;

/** Bars of one chorus, a mark for each beat; a bar without a chord goes on with the last one. */
function chorusText(beats: readonly Beat[]): string | undefined {
  const start = beats.findIndex(([, beat, barOfForm]) => barOfForm === 1 && beat === 1);
  const bars: string[][] = [];
  let last: string | null = null;
  for (const [, beat, barOfForm, , chord] of beats.slice(start)) {
    if (barOfForm === null || (barOfForm === 1 && beat === 1 && bars.length > 0)) break;
    if (beat === 1) bars.push([]);
    const isNew = chord !== null && chord !== last;
    const bar = bars.at(-1) ?? [];
    bar.push(isNew || bar.length === 0 ? (chord ?? last ?? 'N.C.') : '/');
    last = chord ?? last;
  }
  return bars.length === FORM_BARS ? bars.map((bar) => bar.join(' ')).join(' | ') : undefined;
}

const [path] = process.argv.slice(2);
if (path === undefined) {
  console.error(
    'usage: tsx packages/form/scripts/recognise-solos.ts SOLOS.ndjson (see the script)',
  );
  process.exit(2);
}

const solos = readFileSync(path, 'utf8')
  .trim()
  .split('\n')
  .map((line): Solo => JSON.parse(line));
let whole = 0;
let inKey = 0;
let twelve = 0;
let ofMode = 0;
let agreement = 0;
for (const { id, key, beats } of solos) {
  const text = chorusText(beats);
  if (text === undefined) {
    console.log(`${id}\t${key}\tno whole chorus of twelve bars`);
    continue;
  }
  whole += 1;
  const { best, tie, confidence } = recogniseForm(text);
  const [tonic = 'C', mode] = key.split('-');
  const isInKey = best.some(
    (match) => parseKey(match.key).pitchClass === parseKey(tonic).pitchClass,
  );
  const isTwelve = best.some(({ form }) => formById(form).bars.length === FORM_BARS);
  const wanted = mode === 'min' ? 'minor' : 'major';
  inKey += isInKey ? 1 : 0;
  twelve += isTwelve ? 1 : 0;
  ofMode += best.some(({ form }) => formById(form).mode === wanted) ? 1 : 0;
  agreement += best[0]?.agreement ?? 0;
  const names = best.map((match) => `${match.form} in ${match.key}`).join(', ');
  const share = Math.round(100 * (best[0]?.agreement ?? 0));
  console.log(`${id}\t${key}\t${names}\t${share} %\t${confidence}${tie ? '\ttie' : ''}`);
}
console.log(
  `${solos.length} solos, ${whole} with a whole chorus, ${FORMS.length} forms, key not told`,
);
console.log(`tonic right: ${inKey}; mode right: ${ofMode}; a twelve-bar form: ${twelve}`);
console.log(`mean agreement of the nearest form: ${(agreement / whole).toFixed(3)}`);
