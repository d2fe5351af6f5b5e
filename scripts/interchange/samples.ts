import { makeBacking } from '@reedplate/backing';
import { FORMS, makeChart } from '@reedplate/form';
import { quantiseLine, type Sheet } from '@reedplate/interchange';
import { type Line, makeLine } from '@reedplate/line';

/** Pitches a band would play, in a fixed order that repeats late. */
const pitchAt = (at: number): number => 60 + ((at * 7 + (at % 5) * 3) % 24);

/** Note values of every kind that is printed: in beats. */
const VALUES = [1, 0.5, 1.5, 1 / 3, 1 / 3, 1 / 3, 2, 0.25, 0.75, 3, 2 / 3, 1 / 3] as const;

/** A line with every printed note value, starting anywhere in the bar, two notes at a time or one. */
function variedLine(seed: number): Line {
  const notes = [];
  let beat = (seed % 4) * 0.5;
  for (let at = 0; at < 24; at += 1) {
    const beats = VALUES[(at + seed) % VALUES.length] ?? 1;
    const start = Math.round(beat * 960);
    beat += beats;
    const duration = Math.round(beat * 960) - start;
    const pitch = pitchAt(at + seed);
    notes.push({ start, duration, pitch });
    if (at % 6 === 0) notes.push({ start, duration, pitch: pitch + 4 });
    if (at % 8 === 7) beat += 1;
  }
  return makeLine(notes, { title: `Sample ${seed}`, pickup: (seed % 3) * 480, tempo: 60 + seed });
}

const KEYS = ['C', 'G', 'D', 'A', 'E', 'B', 'F#', 'Db', 'Ab', 'Eb', 'Bb', 'F'] as const;

/** Sheets of lines in every key, without chords. */
export const LINE_SHEETS: readonly Sheet[] = KEYS.map((key, at) => ({ line: variedLine(at), key }));

/** Sheets of every form of the catalogue with its bass as the line. */
export const FORM_SHEETS: readonly Sheet[] = FORMS.map((form, at) => {
  const tonic = KEYS[at % KEYS.length] ?? 'C';
  const chart = makeChart(
    form,
    form.mode === 'minor' ? (`${tonic.replace('Db', 'C#').replace('Ab', 'G#')}m` as 'Cm') : tonic,
    { choruses: (at % 3) + 1, tempo: 80 + at },
  );
  const [bass] = makeBacking(chart, { countIn: 0, ending: false }).parts ?? [];
  return { line: bass?.line ?? makeLine([]), chart };
});

/** How far off each note is played, in ticks, in a fixed order that repeats late. */
const offAt = (at: number): number => ((at * 37) % 71) - 35;

/** Sheets of takes played by hand, a little off every beat, laid on the nearest grid beat by beat. */
export const HAND_SHEETS: readonly Sheet[] = KEYS.map((key, seed) => {
  const { title: _, tempo: __, ...line } = variedLine(seed);
  // One note at a time, as most takes are.
  const tune = line.notes.filter(({ start }, at) => start !== line.notes[at - 1]?.start);
  const notes = tune.map(({ start, duration, pitch }, at) => {
    const from = Math.max(0, start + offAt(at + seed));
    return { start: from, duration: Math.max(60, duration + offAt(at * 3 + seed)), pitch };
  });
  const take = makeLine(notes, { metre: line.metre, pickup: line.pickup });
  return { line: quantiseLine(take, { grid: ['1/16', '1/8t'] }), key };
});
