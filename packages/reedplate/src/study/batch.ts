import { makeStudySetup, type StudySetup, studyTune } from '@reedplate/playability';

/** Some lines of a study's input. */
export interface StudyBatch {
  /** Number of the first line, from 1. */
  readonly first: number;
  readonly texts: readonly string[];
}

/** What came of a batch: lines of output, and what was wrong with lines of input. */
export interface StudiedBatch {
  /** One JSON value a line, each line closed. */
  readonly out: string;
  readonly tunes: number;
  readonly failures: readonly { readonly number: number; readonly message: string }[];
}

/** What a worker is given: a batch, and the setup as JSON so that workers can tell it is the same. */
export interface StudyTask extends StudyBatch {
  readonly setup: string;
}

/** Studies the tunes of a batch in order; blank lines are passed over. Also runs in a worker. */
export function studyBatch({ first, texts, setup }: StudyTask): StudiedBatch {
  const readSetup = setupOf(setup);
  const found = texts.flatMap((text, at) =>
    text.trim() === '' ? [] : [studyTune(text, first + at, readSetup)],
  );
  return {
    out: found.map((result) => `${JSON.stringify(result)}\n`).join(''),
    tunes: found.length,
    failures: found.flatMap((result) =>
      'error' in result ? [{ number: result.number, message: result.error.message }] : [],
    ),
  };
}

/** The last setup read: what is worked out for its model serves all batches of a study. */
let last: { readonly text: string; readonly setup: StudySetup } | undefined;

function setupOf(text: string): StudySetup {
  if (last?.text !== text) last = { text, setup: makeStudySetup(JSON.parse(text)) };
  return last.setup;
}
