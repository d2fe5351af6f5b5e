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
  { dir: 'layout', type: 'Temperament', name: 'temperament' },
  { dir: 'layout', type: 'RetuningPlan', name: 'retuning-plan' },
  { dir: 'form', type: 'Form', name: 'form' },
  { dir: 'form', type: 'Chart', name: 'chart' },
  { dir: 'form', type: 'FormRecognition', name: 'recognition' },
  { dir: 'line', type: 'Line', name: 'line' },
  { dir: 'chord-tone', type: 'Score', name: 'score' },
  { dir: 'playability', type: 'EffortModel', name: 'effort-model' },
  { dir: 'playability', type: 'StudyTune', name: 'study-tune' },
  { dir: 'playability', type: 'StudyResult', name: 'study-result' },
  { dir: 'reedplate', type: 'PickReport', name: 'pick' },
  { dir: 'reedplate', type: 'MapReport', name: 'map' },
  { dir: 'reedplate', type: 'TuningsReport', name: 'tunings' },
  { dir: 'reedplate', type: 'RetuneReport', name: 'retune' },
  { dir: 'reedplate', type: 'TuneReport', name: 'tune' },
  { dir: 'reedplate', type: 'ScaleReport', name: 'scale' },
  { dir: 'reedplate', type: 'SetReport', name: 'set' },
  { dir: 'reedplate', type: 'ChartReport', name: 'chart' },
  { dir: 'reedplate', type: 'FormsReport', name: 'forms' },
  { dir: 'reedplate', type: 'RecogniseReport', name: 'recognise' },
  { dir: 'reedplate', type: 'TargetReport', name: 'target' },
  { dir: 'reedplate', type: 'PracticeReport', name: 'practice' },
  { dir: 'reedplate', type: 'ScoreReport', name: 'score' },
  { dir: 'reedplate', type: 'PathReport', name: 'path' },
  { dir: 'reedplate', type: 'FitReport', name: 'fit' },
  { dir: 'reedplate', type: 'SummaryReport', name: 'summary' },
  { dir: 'reedplate', type: 'DesignReport', name: 'design' },
  { dir: 'reedplate', type: 'ConvertReport', name: 'convert' },
  { dir: 'reedplate', type: 'BackingReport', name: 'backing' },
];
