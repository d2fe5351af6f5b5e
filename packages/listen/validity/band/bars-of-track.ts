import { type FormBar, formById } from '@reedplate/form';
import { type Random, randomFrom } from '@reedplate/pitch';
import type { Track } from './track.js';

/** The bars that a band plays of a track, all choruses in a row. */
export function barsOfTrack({ form, choruses, plan, seed }: Track): readonly FormBar[] {
  const random = randomFrom(seed);
  const { bars } = formById(form);
  if (plan === 'half') return bars.slice(0, Math.ceil(bars.length / 2));
  if (plan === 'absent') return repeat(otherBars(random), choruses);
  const all = repeat(bars, choruses);
  if (plan === 'plain') return all;
  // Not at either end, where nobody could tell.
  const at = 2 + Math.floor(random() * (all.length - 4));
  const here = all[at] as FormBar;
  return plan === 'added'
    ? [...all.slice(0, at), here, ...all.slice(at)]
    : [...all.slice(0, at), ...all.slice(at + 1)];
}

function repeat(bars: readonly FormBar[], times: number): readonly FormBar[] {
  return Array.from({ length: times }, () => bars).flat();
}

/** Songs that are no blues, in numerals: common loops and tunes of chance. */
const LOOPS = [
  'I V vi IV',
  'I vi IV V',
  'vi IV I V',
  'I I IV IV ii ii V V',
  'i bVII bVI V',
  'i bVI bIII bVII',
  'I iii IV V I iii IV iv',
  'I bVII IV I',
  'ii V I I ii V I VI7',
  'i i bVII bVII bVI bVI bVII bVII',
] as const;

const STEPS = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'bVII'] as const;

function otherBars(random: Random): readonly FormBar[] {
  const loop = LOOPS[Math.floor(random() * LOOPS.length * 1.5)];
  const numerals = loop?.split(' ') ?? [
    'I',
    ...Array.from({ length: 15 }, () => STEPS[Math.floor(random() * STEPS.length)] as string),
  ];
  return numerals.map((numeral) => [{ numeral, weight: 1 }]);
}
