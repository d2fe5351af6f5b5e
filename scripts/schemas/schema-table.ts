/** A JSON Schema to publish: which exported type of which package it describes. */
export interface SchemaRow {
  /** Folder of the package under packages/. */
  readonly dir: string;
  readonly type: string;
  /** Name of the schema: the file is `schemas/<name>.json`. */
  readonly name: string;
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
  { dir: 'playability', type: 'EffortModel', name: 'effort-model' },
  { dir: 'study', type: 'StudyTune', name: 'study-tune' },
  { dir: 'study', type: 'StudyResult', name: 'study-result' },
  { dir: 'cli', type: 'PickReport', name: 'pick' },
  { dir: 'cli', type: 'MapReport', name: 'map' },
  { dir: 'cli', type: 'TuningsReport', name: 'tunings' },
  { dir: 'cli', type: 'RetuneReport', name: 'retune' },
  { dir: 'cli', type: 'TemperReport', name: 'temper' },
  { dir: 'cli', type: 'ScaleReport', name: 'scale' },
  { dir: 'cli', type: 'SetlistReport', name: 'setlist' },
  { dir: 'cli', type: 'ChartReport', name: 'chart' },
  { dir: 'cli', type: 'FormsReport', name: 'forms' },
  { dir: 'cli', type: 'RecogniseReport', name: 'recognise' },
  { dir: 'cli', type: 'TargetReport', name: 'target' },
  { dir: 'cli', type: 'PracticeReport', name: 'practice' },
  { dir: 'cli', type: 'ScoreReport', name: 'score' },
  { dir: 'cli', type: 'PathReport', name: 'path' },
  { dir: 'cli', type: 'FitReport', name: 'fit' },
  { dir: 'cli', type: 'SummaryReport', name: 'summary' },
  { dir: 'cli', type: 'AdaptReport', name: 'adapt' },
  { dir: 'cli', type: 'ConvertReport', name: 'convert' },
  { dir: 'cli', type: 'BackingReport', name: 'backing' },
];
