import { deepFreeze } from '@reedplate/pitch';
import type { DrumName, Groove, Pattern } from './groove.js';

type Fill = Readonly<Partial<Record<DrumName, Pattern>>>;

const FILLS_OF_TWO: readonly Fill[] = [
  { snare: 'xx XX', kick: 'x. ..' },
  { snare: 'x. x.', tom: '.x .X' },
  { snare: '.. xx', kick: 'x. x.' },
];

const FILLS_OF_THREE: readonly Fill[] = [
  { snare: 'x.x XXX', kick: 'x.. ...' },
  { snare: '... x..', tom: '... .xX' },
];

const FILLS_OF_FOUR: readonly Fill[] = [
  { snare: 'xoxo XoXX', kick: 'x... ....' },
  { snare: 'x.xx ....', tom: '.... x.xX' },
];

const SOFT_FILLS: readonly Fill[] = [
  { snare: '.. .x', ride: 'x. x.' },
  { snare: '.x .o', ride: 'x. x.' },
];

/**
 * Grooves of a blues band. Common practice, no source: the patterns are written here from what each
 * name means to players.
 */
export const GROOVES = /* @__PURE__ */ deepFreeze([
  {
    id: 'driving-shuffle',
    name: 'Driving shuffle',
    use: 'Medium and fast shuffles: every swung eighth on the cymbal, a walking bass.',
    parts: 2,
    drums: {
      ride: 'Xx Xx Xx Xx',
      kick: 'X. .. X. ..',
      snare: '.. X. .. X.',
      pedalHat: '.. x. .. x.',
    },
    fills: FILLS_OF_TWO,
    bass: 'walk',
    comping: { figure: 'stabs', rhythm: '.. X. .. X.' },
  },
  {
    id: 'lazy-shuffle',
    name: 'Lazy shuffle',
    use: 'Slow and medium shuffles with room between the notes.',
    parts: 2,
    drums: { hat: 'x. xo x. xo', kick: 'X. .. x. .x', snare: '.. X. .. X.' },
    fills: FILLS_OF_TWO,
    bass: 'two-beat',
    comping: { figure: 'stabs', rhythm: '.x .. .x ..' },
  },
  {
    id: 'off-beat-shuffle',
    name: 'Off-beat shuffle',
    use: 'Shuffles that lean on the second half of the beat.',
    parts: 2,
    drums: { hat: 'oX oX oX oX', kick: 'X. x. X. x.', snare: '.. X. .. X.' },
    fills: FILLS_OF_TWO,
    bass: 'walk',
    comping: { figure: 'stabs', rhythm: '.X .X .X .X' },
  },
  {
    id: 'boogie',
    name: 'Boogie',
    use: 'Boogie: bass and chords rise from the fifth to the sixth and come back.',
    parts: 2,
    drums: { hat: 'xx xx xx xx', kick: 'X. x. X. x.', snare: 'o. Xo o. Xo' },
    fills: FILLS_OF_TWO,
    bass: 'boogie',
    comping: { figure: 'fifth-and-sixth', rhythm: 'xx xx xx xx' },
  },
  {
    id: 'slow-twelve-eight',
    name: 'Slow 12/8',
    use: 'Slow blues, three to the beat.',
    parts: 3,
    drums: { hat: 'Xox xox Xox xox', kick: 'X.. ..x X.. ...', snare: '... X.. ... X..' },
    fills: FILLS_OF_THREE,
    bass: 'two-beat',
    comping: { figure: 'held', rhythm: 'x.. ... x.. ...' },
  },
  {
    id: 'straight-rock',
    name: 'Straight rock',
    use: 'Blues rock in even eighths.',
    parts: 2,
    drums: { hat: 'Xx Xx Xx Xx', kick: 'X. .. Xx ..', snare: '.. X. .. X.' },
    fills: FILLS_OF_TWO,
    bass: 'eighths',
    comping: { figure: 'fifth-and-sixth', rhythm: 'Xx xx Xx xx' },
  },
  {
    id: 'even-eighths',
    name: 'Even eighths',
    use: 'Old rock and roll: even eighths on the cymbal over a walking bass.',
    parts: 2,
    drums: { ride: 'xx xx xx xx', kick: 'X. x. X. x.', snare: '.. Xx .. X.' },
    fills: FILLS_OF_TWO,
    bass: 'boogie',
    comping: { figure: 'stabs', rhythm: '.x .. .x .x' },
  },
  {
    id: 'two-beat',
    name: 'Two-beat',
    use: 'Country blues: root and fifth, chords on the back beat.',
    parts: 2,
    drums: { hat: '.x .x .x .x', kick: 'X. .. X. ..', snare: '.. x. .. x.' },
    fills: FILLS_OF_TWO,
    bass: 'two-beat',
    comping: { figure: 'stabs', rhythm: '.. X. .. X.' },
  },
  {
    id: 'train',
    name: 'Train rhythm',
    use: 'Train pieces and chugging: brushes on every sixteenth.',
    parts: 4,
    drums: { snare: 'ooXo ooXo ooXo ooXo', kick: 'X... x... X... x...' },
    fills: FILLS_OF_FOUR,
    bass: 'two-beat',
    comping: { figure: 'stabs', rhythm: '..x. ..x. ..x. ..x.' },
  },
  {
    id: 'waltz',
    name: 'Waltz',
    use: 'Blues in three.',
    parts: 2,
    drums: { ride: 'X. xx x.', kick: 'X. .. ..', snare: '.. x. x.' },
    fills: SOFT_FILLS,
    bass: 'two-beat',
    comping: { figure: 'stabs', rhythm: '.. x. x.' },
  },
  {
    id: 'minor-syncopated',
    name: 'Minor, syncopated',
    use: 'Minor blues with a bass ahead of the beat.',
    parts: 2,
    drums: { ride: 'Xx xx Xx xx', rim: '.. X. .x ..', kick: 'X. .x X. .x' },
    fills: SOFT_FILLS,
    bass: 'syncopated',
    comping: { figure: 'stabs', rhythm: '.x .x .. x.' },
  },
  {
    id: 'walking-four',
    name: 'Walking four',
    use: 'Jazz blues: the bass walks, the cymbal keeps time.',
    parts: 2,
    drums: { ride: 'X. xx X. xx', pedalHat: '.. x. .. x.', kick: 'o. o. o. o.' },
    fills: SOFT_FILLS,
    bass: 'walk',
    comping: { figure: 'stabs', rhythm: 'x. .x .. ..' },
  },
] as const satisfies readonly Groove[]);

/** Id of a groove of the catalogue. */
export type GrooveId = (typeof GROOVES)[number]['id'];
