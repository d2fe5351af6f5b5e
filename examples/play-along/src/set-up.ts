import { GROOVES } from '@reedplate/backing';
import { FEELS, FORMS, VARIATIONS, type Variation } from '@reedplate/form';
import { PRACTICE_KINDS } from '@reedplate/practice';

/** Parts of the band that can be left out. */
export const PARTS = ['bass', 'comping', 'drums'] as const;
export type Part = (typeof PARTS)[number];

/** How the page looks; `auto` is light or dark as the machine is. */
export const LOOKS = ['auto', 'screen', 'dark', 'large'] as const;
export type Look = (typeof LOOKS)[number];

/** What the page listens to. */
export const EARS = ['none', 'microphone', 'midi'] as const;
export type Ears = (typeof EARS)[number];

/** What a player has chosen: plain data, kept in the browser from one visit to the next. */
export interface SetUp {
  readonly key: string;
  /** Id of a form; with `ownBars` these are played instead. */
  readonly form: string;
  /** Bars in lead-sheet marks, as `| I7 | IV7 |`; empty for none. */
  readonly ownBars: string;
  readonly variations: readonly Variation[];
  /** Key of the harp; empty for the one that suits the song best. */
  readonly harp: string;
  readonly tuning: string;
  readonly level: 'natural' | 'bends' | 'overbends';
  readonly tempo: number;
  /** Empty for that of the form. */
  readonly feel: string;
  /** Empty for the usual one. */
  readonly groove: string;
  readonly choruses: number;
  readonly countIn: number;
  /** First and last bar that are played again and again; 0 for all. */
  readonly loopFrom: number;
  readonly loopTo: number;
  readonly mute: readonly Part[];
  readonly click: boolean;
  /** Of 100. */
  readonly volume: number;
  readonly line: string;
  readonly ears: Ears;
  /** Milliseconds by which what is heard comes late; 0 for not measured. */
  readonly latency: number;
  readonly look: Look;
  /** Whether a voice of the machine calls the changes. */
  readonly voice: boolean;
}

/** What a first visit begins with. */
export const FIRST_SET_UP: SetUp = Object.freeze({
  key: 'G',
  form: 'quick-change',
  ownBars: '',
  variations: [],
  harp: '',
  tuning: 'standard',
  level: 'bends',
  tempo: 96,
  feel: '',
  groove: '',
  choruses: 3,
  countIn: 1,
  loopFrom: 0,
  loopTo: 0,
  mute: [],
  click: false,
  volume: 40,
  line: 'roots',
  ears: 'none',
  latency: 0,
  look: 'auto',
  voice: false,
});

type Check = (value: unknown) => boolean;

const text = (value: unknown): boolean => typeof value === 'string' && value.length <= 400;
const flag = (value: unknown): boolean => typeof value === 'boolean';
const whole =
  (min: number, max: number): Check =>
  (value) =>
    Number.isInteger(value) && (value as number) >= min && (value as number) <= max;
const oneOf =
  (choices: readonly string[]): Check =>
  (value) =>
    choices.some((choice) => choice === value);
const someOf =
  (choices: readonly string[]): Check =>
  (value) =>
    Array.isArray(value) && value.length <= choices.length && value.every(oneOf(choices));

const CHECKS: { readonly [Name in keyof SetUp]: Check } = {
  key: text,
  form: oneOf(FORMS.map(({ id }) => id)),
  ownBars: text,
  variations: someOf(VARIATIONS),
  harp: text,
  tuning: text,
  level: oneOf(['natural', 'bends', 'overbends']),
  tempo: whole(30, 300),
  feel: oneOf(['', ...FEELS]),
  groove: oneOf(['', ...GROOVES.map(({ id }) => id)]),
  choruses: whole(1, 100),
  countIn: whole(1, 8),
  loopFrom: whole(0, 96),
  loopTo: whole(0, 96),
  mute: someOf(PARTS),
  click: flag,
  volume: whole(0, 100),
  line: oneOf(['', ...PRACTICE_KINDS]),
  ears: oneOf(EARS),
  latency: whole(0, 1000),
  look: oneOf(LOOKS),
  voice: flag,
};

/** A set-up out of what was kept: what is no longer right in it is as on a first visit. */
export function readSetUp(kept: string | null): SetUp {
  const read = new Map(Object.entries(fieldsOf(kept)));
  const right = Object.entries(CHECKS).filter(([name, check]) => check(read.get(name)));
  return { ...FIRST_SET_UP, ...Object.fromEntries(right.map(([name]) => [name, read.get(name)])) };
}

function fieldsOf(kept: string | null): object {
  try {
    return Object(JSON.parse(kept ?? '{}'));
  } catch {
    return {};
  }
}
