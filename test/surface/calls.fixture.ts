import * as reedplate from './everything.fixture.js';

type Exports = typeof reedplate;

/** Every function that a package exports. */
export type FunctionName = {
  [Name in keyof Exports]: Exports[Name] extends (...given: never[]) => unknown ? Name : never;
}[keyof Exports];

const chart = reedplate.makeChart('quick-change', 'G', { tempo: 120 });
const pitches = [67, 70, 72, 74];
const notes = pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch }));
const line = reedplate.makeLine(notes, { tempo: 120 });
const harp = reedplate.makeHarp('C');
const tuning = reedplate.tuningById('standard');
const form = reedplate.formById('basic');
const abc = 'X:1\nT:Test\nM:4/4\nL:1/4\nK:G\nG B d g|\n';
const [piece] = reedplate.readAbc(abc) as [reedplate.Piece];
const sheet: reedplate.Sheet = { line, key: 'G', chart };
const chords = reedplate.chordChanges(chart);
const bar = [{ numeral: 'I7', weight: 1 }] as const;
const score = reedplate.scoreLine(line, chart);
const choice = reedplate.readMidi(reedplate.writeMidi(sheet)).choice as reedplate.PartChoice;
const explanation = reedplate.explainPath(line, harp) as reedplate.PathExplanation;
const [pick] = reedplate.pickHarps('G') as [reedplate.HarpPick];
const [blow, draw] = reedplate.soundings(harp) as [reedplate.Sounding, reedplate.Sounding];
const marks = [{ hole: 2, breath: 'draw', bend: 0, over: false }] as const;
const timed = reedplate.parseTimedTab('-2:1 +3:1');
const available = reedplate.chordAvailability('C7', harp);
const [phrase] = reedplate.findPhrases() as [reedplate.Phrase];
const scala = '! a.scl\nFifths\n2\n3/2\n2/1\n';
const warning = available.warnings[0] ?? { code: 'NO_TONE', degrees: ['5'] };

/**
 * A right call of every function that takes options, without them, and of most others. What is wrong with
 * one argument of it, or with the options after it, the tests put in.
 */
export const CALLS: { readonly [Name in FunctionName]?: Readonly<Parameters<Exports[Name]>> } = {
  // backing
  makeBacking: [chart],
  summariseBacking: [reedplate.makeBacking(chart)],
  // chord-tone
  chartAvailability: [chart, harp],
  chordAvailability: ['G7', harp],
  chordFamily: [reedplate.parseChord('G7')],
  chordNow: [chart, { tick: 960 }],
  chordShapes: ['G7', harp],
  describeFeedback: [score.feedback[0] as reedplate.Feedback],
  describeNote: [score.notes[0] as reedplate.NoteScore],
  describeVerdict: [score.verdict],
  describeWarning: [warning, { chord: reedplate.parseChord('C7') }],
  distanceBetween: [blow, draw],
  harpRows: [harp],
  progressOf: [[score, score]],
  scoreLine: [line, chart],
  styleOfKey: ['G'],
  targetsOf: ['G7', harp],
  // form
  chartEnd: [chart],
  chordAt: [chart, 960],
  chordAtBeat: [chart, { bar: 2, beat: 1 }],
  chordChanges: [chart],
  describeRecognition: [reedplate.recogniseForm('| G7 | C7 | G7 | G7 |')],
  formById: ['basic'],
  formOfChart: [chart],
  formatForm: [form],
  introBars: [form, 'from-the-five'],
  loopOf: [chart],
  makeChart: ['basic', 'G'],
  makeForm: [[bar]],
  nextChange: [chords, 0],
  parseForm: ['| I7 | IV7 |'],
  previousChange: [chords, 9999],
  readChart: [chart],
  readForm: [form],
  recogniseForm: ['| G7 | C7 | G7 | G7 |'],
  toMinor: [form],
  varyForm: [form, ['quick-change']],
  withBreak: [form, [1]],
  withDiminishedPassing: [form],
  withDoubleLength: [form],
  withEnding: [form, 'one'],
  withHalfLength: [reedplate.withDoubleLength(form)],
  withNinths: [form],
  withQuickChange: [form],
  withSevenths: [form],
  withTriads: [form],
  withTurnaround: [form, 'five'],
  withTwoFive: [form],
  withoutQuickChange: [form],
  // interchange
  detectFormat: [abc],
  formatOfName: ['take.mid'],
  applySwing: [line],
  removeSwing: [line],
  unsupportedIn: [sheet, 'midi'],
  quantiseLine: [line],
  readAbc: [abc],
  readMidi: [reedplate.writeMidi(sheet)],
  readMusicXml: [reedplate.writeMusicXml(sheet)],
  readPiece: [abc],
  sayPartChoice: [choice],
  summarisePiece: [piece],
  tabLyrics: [line, harp],
  writeAbc: [sheet],
  writeMidi: [sheet],
  writeMusicXml: [sheet],
  writePiece: [sheet, 'midi'],
  writeTab: [sheet, harp],
  // layout
  chordIntonation: [reedplate.temperHarp(harp, 'equal'), [1, 2, 3], 'blow'],
  editTuning: ['standard', ['5 draw up 1'], { id: 'own' }],
  formatReedEdit: [{ hole: 5, breath: 'draw', by: 1 }],
  harpCaveats: [harp],
  harpName: [harp],
  harpRange: [harp],
  intervalIntonation: [200, 301],
  makeHarp: ['C'],
  makePlayer: [['natural']],
  makeTuning: [{ id: 'tiny', blow: 'C4', draw: 'D4' }],
  missingPitches: [harp],
  nameOnHarp: [harp, 66],
  nearestRatio: [700],
  otherBreath: ['blow'],
  parseHarp: ['low F'],
  parseReedEdit: ['5 draw up 1'],
  ratioCents: [{ numerator: 3, denominator: 2 }],
  readHarp: [harp],
  readPlayer: [reedplate.PLAYERS.bends],
  readScala: [scala],
  readTuning: [tuning],
  reedsOf: [harp],
  reedsSounding: [blow],
  retuningPlan: [harp, 'A natural-minor'],
  shadings: [harp],
  soundings: [harp],
  soundingsAt: [harp, 3, 'draw'],
  soundingsOfPitch: [harp, 67],
  temperamentById: ['equal'],
  transposeHarp: [harp, 2],
  temperHarp: [harp, 'equal'],
  tuningById: ['standard'],
  // line
  barBeatAt: [960, line],
  centsAt: [{ cents: -18 }, 0],
  foldTick: [960, { start: 0, end: 480 }],
  lineEnd: [line],
  lineFromSeconds: [[{ start: 0.5, duration: 0.25, pitch: 67 }], { tempo: 120 }],
  makeLine: [notes],
  notesInSeconds: [line],
  parseMetre: ['4/4'],
  readLine: [line],
  secondsAt: [960, line],
  tickAt: [{ bar: 1, beat: 1 }, line],
  tickAtSeconds: [1, line],
  transposeLine: [line, 2],
  // picture
  breathPicture: [explanation, line],
  chartPicture: [chart],
  contrastOf: ['#000000', '#ffffff'],
  effortPicture: [explanation],
  fitPicture: [reedplate.fitHarps(line, ['C', 'A'])],
  handoutPage: [chart, harp],
  harpPicture: [harp],
  linePicture: [line, harp],
  positionPicture: ['G'],
  scorePicture: [score, chart],
  // pitch
  centsBetween: [220, 440],
  chordOfNumeral: ['IV7', 'G'],
  chordSuffixes: [],
  degreeAbove: [5, 7],
  frequency: [69],
  isReedplateError: [new Error('other')],
  keySignature: ['G'],
  midi: ['C4'],
  noteName: [60],
  noteNameWithOctave: [60],
  numeralOfChord: ['C7', 'G'],
  parseChord: ['G7'],
  parseKey: ['G'],
  parseNoteName: ['Bb'],
  parseNumeral: ['IV7'],
  parseScale: ['blues'],
  plainName: [6],
  scaleNames: [],
  spell: [1],
  spellAbove: [6, 'D'],
  spellOnStep: [10, 6],
  toKey: ['G'],
  toPitchClass: [61],
  transposeKey: ['G', 2],
  triadOf: [reedplate.parseChord('G7')],
  // playability
  bestPath: [line, harp],
  bestPaths: [line, harp],
  effortModelById: ['intermediate'],
  effortSensitivity: [line, harp],
  everyHarp: [],
  explainPath: [line, harp],
  fitHarps: [line, [harp, 'A']],
  fitHarpsAsync: [line, [harp, 'A']],
  makeEffortModel: ['intermediate'],
  pathInPart: [line, harp],
  eventsOf: [line],
  // position
  composePositions: [2, 2],
  describePick: [pick],
  enharmonicKeys: ['C#'],
  harpKeyOf: ['G', 2],
  harpMap: [harp],
  pickForKeys: [[{ key: 'G', length: 8 }]],
  pickHarps: ['G'],
  planSetList: [[{ title: 'One', key: 'G' }]],
  positionByNumber: [2],
  positionOf: [harp, 'G'],
  scaleMap: [harp, 'G', 'blues'],
  scaleRun: [harp, 'G', 'blues'],
  songKeyOf: [harp, 2],
  // practice
  composeLine: [chart, harp],
  composeLineAsync: [chart, harp],
  describeKeyChords: [reedplate.keyChords('G', harp)],
  findPhrases: [],
  formatPhrase: [phrase],
  keyChords: ['G', harp],
  makeExercise: [chart, harp, { kind: 'bend-drill' }],
  makeLesson: [{ form: 'basic', key: 'G' }],
  makePhrase: [phrase.notes],
  nextSteps: [[score]],
  parsePhrase: ['-2:2 -3:2'],
  phraseById: [phrase.id],
  phraseChart: [phrase, 'G'],
  readPhrase: [phrase],
  readPhrases: ['kind: riff\n-2:2 -3:2'],
  learnPhrases: [[phrase], 'major'],
  varyPhrase: [phrase, [{ way: 'displaced', beats: 1 }]],
  placePhrase: [phrase, { chart, harp }],
  learnMelody: [[{ line, key: 'G' }]],
  practiceLine: [chart, harp],
  // tab
  detectTab: ['-2 +3'],
  formatSounding: [draw],
  formatTab: [reedplate.parseTab('-2 +3')],
  formatTimedTab: [timed],
  liesTogether: [marks],
  lineOfTab: [timed, harp],
  markOf: [draw],
  parseTab: ['-2 +3'],
  parseTimedTab: ['-2:1 +3:1'],
  soundMark: [marks[0], harp],
  tabOfLine: [line, harp],
};
