/** A JSON Schema to publish: which exported type of which package it describes. */
export interface SchemaRow {
  /** Folder of the package under packages/. */
  readonly dir: string;
  readonly type: string;
  /** Name of the schema: the file is `schemas/<name>.json`. */
  readonly name: string;
  /** Whether a harp may stand by its name, as the command prints it unless asked for its reeds. */
  readonly harps?: 'by-name';
}

/** Every JSON Schema that the packages publish. */
export const SCHEMA_TABLE: readonly SchemaRow[] = [
  { dir: 'layout', type: 'Tuning', name: 'tuning' },
  { dir: 'layout', type: 'Harp', name: 'harp' },
  { dir: 'layout', type: 'Player', name: 'player' },
  { dir: 'layout', type: 'Temperament', name: 'temperament' },
  { dir: 'layout', type: 'RetuningPlan', name: 'retuning-plan' },
  { dir: 'form', type: 'Form', name: 'form' },
  { dir: 'form', type: 'Chart', name: 'chart' },
  { dir: 'form', type: 'FormRecognition', name: 'recognition' },
  { dir: 'line', type: 'Line', name: 'line' },
  { dir: 'chord-tone', type: 'Score', name: 'score' },
  { dir: 'chord-tone', type: 'ProgressReport', name: 'progress' },
  { dir: 'playability', type: 'EffortModel', name: 'effort-model' },
  { dir: 'practice', type: 'Phrase', name: 'phrase' },
  { dir: 'study', type: 'StudyTune', name: 'study-tune' },
  { dir: 'study', type: 'StudyResult', name: 'study-result' },
  { dir: 'study', type: 'StudyManifest', name: 'study-manifest' },
  { dir: 'cli', type: 'PickAnswer', name: 'pick', harps: 'by-name' },
  { dir: 'cli', type: 'ListenAnswer', name: 'listen', harps: 'by-name' },
  { dir: 'cli', type: 'MapAnswer', name: 'map', harps: 'by-name' },
  { dir: 'cli', type: 'TuningsAnswer', name: 'tunings', harps: 'by-name' },
  { dir: 'cli', type: 'RetuneAnswer', name: 'retune', harps: 'by-name' },
  { dir: 'cli', type: 'TemperAnswer', name: 'temper', harps: 'by-name' },
  { dir: 'cli', type: 'ScaleAnswer', name: 'scale', harps: 'by-name' },
  { dir: 'cli', type: 'SetlistAnswer', name: 'setlist', harps: 'by-name' },
  { dir: 'cli', type: 'ChartAnswer', name: 'chart', harps: 'by-name' },
  { dir: 'cli', type: 'FormsAnswer', name: 'forms', harps: 'by-name' },
  { dir: 'cli', type: 'RecogniseAnswer', name: 'recognise', harps: 'by-name' },
  { dir: 'cli', type: 'TargetAnswer', name: 'target', harps: 'by-name' },
  { dir: 'cli', type: 'PracticeAnswer', name: 'practice', harps: 'by-name' },
  { dir: 'cli', type: 'ComposeAnswer', name: 'compose', harps: 'by-name' },
  { dir: 'cli', type: 'ScoreAnswer', name: 'score', harps: 'by-name' },
  { dir: 'cli', type: 'PhrasesAnswer', name: 'phrases', harps: 'by-name' },
  { dir: 'cli', type: 'LessonAnswer', name: 'lesson', harps: 'by-name' },
  { dir: 'cli', type: 'PathAnswer', name: 'path', harps: 'by-name' },
  { dir: 'cli', type: 'FitAnswer', name: 'fit', harps: 'by-name' },
  { dir: 'cli', type: 'SummaryAnswer', name: 'summary', harps: 'by-name' },
  { dir: 'cli', type: 'AdaptAnswer', name: 'adapt', harps: 'by-name' },
  { dir: 'cli', type: 'ConvertAnswer', name: 'convert', harps: 'by-name' },
  { dir: 'cli', type: 'BackingAnswer', name: 'backing', harps: 'by-name' },
];
