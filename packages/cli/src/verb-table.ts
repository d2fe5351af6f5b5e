import type { SetUpVerb } from './verb.js';

/** A verb of the command, as the table of verbs has it: nothing of it is loaded before it is asked for. */
export interface VerbRow {
  /** What is typed. */
  readonly name: string;
  /** Another spelling of the name, which is read as well. */
  readonly spelling?: string;
  /** The heading of the help that it stands under. */
  readonly heading: string;
  /** What it does, in a phrase. */
  readonly summary: string;
  /** Loads the verb with what it needs. */
  readonly load: () => Promise<SetUpVerb>;
}

/** The verbs, under the headings of the help, in the order in which a player comes to need them. */
export const VERBS: readonly VerbRow[] = [
  {
    name: 'pick',
    heading: 'Which harp:',
    summary: 'which harp to pick up for a song, by position, with the reason',
    load: async () => (await import('./verbs/pick/pick.js')).setUpPick,
  },
  {
    name: 'setlist',
    heading: 'Which harp:',
    summary: 'harps for a set list, with the fewest changes of harp',
    load: async () => (await import('./verbs/setlist/setlist.js')).setUpSetlist,
  },
  {
    name: 'map',
    heading: 'Which harp:',
    summary: 'every hole of a harp: unbent notes, bends, overbends, and their degrees',
    load: async () => (await import('./verbs/map/map.js')).setUpMap,
  },
  {
    name: 'scale',
    heading: 'Which harp:',
    summary: 'where a scale lies on a harp, and a run up and down it',
    load: async () => (await import('./verbs/scale/scale.js')).setUpScale,
  },
  {
    name: 'chart',
    heading: 'The song:',
    summary: 'the form as bars of chords: Roman numerals and chord names',
    load: async () => (await import('./verbs/chart/chart.js')).setUpChart,
  },
  {
    name: 'forms',
    heading: 'The song:',
    summary: 'the catalogue of forms, turnarounds and endings',
    load: async () => (await import('./verbs/forms/forms.js')).setUpForms,
  },
  {
    name: 'recognise',
    spelling: 'recognize',
    heading: 'The song:',
    summary: 'which form some bars of chords are, in which key, and what differs',
    load: async () => (await import('./verbs/recognise/recognise.js')).setUpRecognise,
  },
  {
    name: 'target',
    heading: 'To practise:',
    summary: 'for each bar, where the tones of its chords lie, and which chords are whole',
    load: async () => (await import('./verbs/target/target.js')).setUpTarget,
  },
  {
    name: 'practice',
    heading: 'To practise:',
    summary: 'a line to practise: what to play when each chord comes',
    load: async () => (await import('./verbs/practice/practice.js')).setUpPractice,
  },
  {
    name: 'compose',
    heading: 'To practise:',
    summary: 'a line drawn by chance that follows the changes, from a seed',
    load: async () => (await import('./verbs/compose/compose.js')).setUpCompose,
  },
  {
    name: 'phrases',
    heading: 'To practise:',
    summary: 'riffs, licks, turnarounds: the catalogue, and any of them on a harp in a key',
    load: async () => (await import('./verbs/phrases/phrases.js')).setUpPhrases,
  },
  {
    name: 'lesson',
    heading: 'To practise:',
    summary: 'a whole lesson: steps with lines, tempos and bars to loop; a folder of files',
    load: async () => (await import('./verbs/lesson/lesson.js')).setUpLesson,
  },
  {
    name: 'handout',
    heading: 'To practise:',
    summary: 'a lesson as a page to print: chart, harp for each chord, lines as tab',
    load: async () => (await import('./verbs/handout/handout.js')).setUpHandout,
  },
  {
    name: 'picture',
    heading: 'To practise:',
    summary: 'a harp, a chart, a line, its air, effort or fit as an SVG picture',
    load: async () => (await import('./verbs/picture/picture.js')).setUpPicture,
  },
  {
    name: 'backing',
    heading: 'To practise:',
    summary: 'a band to play with: bass, chords and drums over a form',
    load: async () => (await import('./verbs/backing/backing.js')).setUpBacking,
  },
  {
    name: 'score',
    heading: 'To practise:',
    summary: 'how well a take follows the changes, and what to do next',
    load: async () => (await import('./verbs/score/score.js')).setUpScore,
  },
  {
    name: 'listen',
    heading: 'To practise:',
    summary: 'the notes of a recording: what was played, when, and how many cents off',
    load: async () => (await import('./verbs/listen/listen.js')).setUpListen,
  },
  {
    name: 'path',
    heading: 'Lines:',
    summary: 'the easiest way to play a line: tab, effort by note, and why each choice',
    load: async () => (await import('./verbs/path/path.js')).setUpPath,
  },
  {
    name: 'fit',
    heading: 'Lines:',
    summary: 'which harps suit a line: what they can play of it, with what effort',
    load: async () => (await import('./verbs/fit/fit.js')).setUpFit,
  },
  {
    name: 'study',
    heading: 'Lines:',
    summary: 'how playable many tunes are: each tuning, position and level, a line a tune',
    load: async () => (await import('./verbs/study/study.js')).setUpStudy,
  },
  {
    name: 'summary',
    heading: 'Lines:',
    summary: 'the results of a study summed up, with 95 % intervals over its tunes',
    load: async () => (await import('./verbs/summary/summary.js')).setUpSummary,
  },
  {
    name: 'convert',
    heading: 'Lines:',
    summary: 'a tune, take or chart from one format into another, and what is left out',
    load: async () => (await import('./verbs/convert/convert.js')).setUpConvert,
  },
  {
    name: 'tunings',
    heading: 'Tunings:',
    summary: 'the tunings of the catalogue, or some of them with all their reeds',
    load: async () => (await import('./verbs/tunings/tunings.js')).setUpTunings,
  },
  {
    name: 'retune',
    heading: 'Tunings:',
    summary: 'what to do to each reed to turn a harp of one tuning into another',
    load: async () => (await import('./verbs/retune/retune.js')).setUpRetune,
  },
  {
    name: 'temper',
    heading: 'Tunings:',
    summary: 'the frequency of every reed in a temperament, and how fast a chord beats',
    load: async () => (await import('./verbs/temper/temper.js')).setUpTemper,
  },
  {
    name: 'adapt',
    heading: 'Tunings:',
    summary: 'which changes of a tuning, of one reed or two, make tunes easiest to play',
    load: async () => (await import('./verbs/adapt/adapt.js')).setUpAdapt,
  },
];
