import { FORMS, type FormId } from '@reedplate/form';
import { randomFrom } from '@reedplate/pitch';
import type { Plan, Track } from './track.js';

/** What is held apart: forms, grooves, sound fonts and other programs of one half are not in the other. */
export const HALVES = {
  choose: {
    forms: [
      'basic',
      'quick-change-two-bars-of-v',
      'jazz-five',
      'minor',
      'eight-bar',
      'eight-bar-four-five',
      'sixteen-bar-middle-again',
      'swing-sixths',
      'minor-flat-six-tonic-ending',
      'rock',
      'eight-bar-last-eight',
      'ten-bar',
    ],
    grooves: [
      'driving-shuffle',
      'lazy-shuffle',
      'boogie',
      'train',
      'minor-syncopated',
      'slow-twelve-eight',
    ],
    abc: 'abc-stride',
    font: 'small',
  },
  report: {
    forms: [
      'quick-change',
      'basic-two-bars-of-v',
      'jazz',
      'minor-five-minor',
      'eight-bar-five-second',
      'eight-bar-late-four',
      'sixteen-bar',
      'basic-tonic-ending',
      'minor-quick-change',
      'ragtime-eight-bar',
      'jazz-six-dominant',
      'eleven-bar',
    ],
    grooves: [
      'off-beat-shuffle',
      'straight-rock',
      'even-eighths',
      'two-beat',
      'walking-four',
      'waltz',
    ],
    abc: 'abc-arpeggio',
    font: 'large',
  },
} as const satisfies Record<
  string,
  {
    readonly forms: readonly FormId[];
    readonly grooves: readonly string[];
    readonly abc: string;
    readonly font: string;
  }
>;

export type Half = keyof typeof HALVES;

/** Tracks of one half, drawn from a seed. */
export function tracksOf(
  half: Half,
  plan: Plan,
  count: number,
  { lead = false, seed = 1 } = {},
): readonly Track[] {
  const { forms, grooves, abc, font } = HALVES[half];
  const random = randomFrom(seed);
  const pick = <Item>(items: readonly Item[]): Item =>
    items[Math.floor(random() * items.length)] as Item;
  return Array.from({ length: count }, (_, at): Track => {
    const form = forms[(at + Math.floor(at / forms.length)) % forms.length] as FormId;
    const player = at % 6 === 5 && !lead ? abc : (pick(grooves) as Track['player']);
    const length = FORMS.find(({ id }) => id === form)?.bars.length ?? 12;
    return {
      id: at,
      form,
      tonic: Math.floor(random() * 12),
      tempo: Math.round(60 + 100 * random()),
      choruses: length > 14 ? 2 : 3,
      player: playerFor(player, form),
      font,
      reference: Math.round(4250 + 300 * random()) / 10,
      plan,
      lead,
      seed: 1000 * seed + at,
    };
  });
}

/** Slow grooves of three to a beat go with the metre of four beats; the waltz asks for its own. */
function playerFor(player: Track['player'], form: FormId): Track['player'] {
  const metre = FORMS.find(({ id }) => id === form)?.metre;
  return player === 'waltz' && metre !== '4/4' && metre !== '3/4' ? 'walking-four' : player;
}
