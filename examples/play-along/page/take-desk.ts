import { lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import type { ThemeId } from '@reedplate/picture';
import type { Session } from '../src/session.js';
import type { SetUp } from '../src/set-up.js';
import { type JudgedTake, judgeTake, lineOfPass } from '../src/take.js';
import { byId } from './elements.js';
import { showNoResult, showResult } from './result.js';
import { openTake, saveTake, type TakeFormat } from './takes.js';

/** What a take is judged by and shown in. */
interface Around {
  readonly session: Session;
  readonly theme: ThemeId;
  readonly setUp: SetUp;
}

/** Judges, shows, saves and opens takes. */
export function makeTakeDesk(around: () => Around, complain: (words: string) => void) {
  let take: JudgedTake | undefined;
  const guarded = async (work: () => Promise<void>): Promise<void> => {
    try {
      await work();
    } catch (error) {
      complain(error instanceof Error ? error.message : 'that did not work');
    }
  };
  const show = (made: JudgedTake): void => {
    take = made;
    const { session, theme } = around();
    showResult(made, session, theme);
  };
  const judge = (notes: readonly NoteInSeconds[]): void => {
    const { session, setUp } = around();
    const line = lineOfPass(notes, session);
    if (line.notes.length === 0) {
      take = undefined;
      showNoResult('Nothing was heard in this chorus. Is the microphone on, and near the harp?');
      return;
    }
    guarded(async () => show(judgeTake(line, session, setUp.latency > 0)));
  };
  for (const format of ['json', 'midi', 'musicxml'] as const) {
    byId(`save-${format}`, HTMLButtonElement).addEventListener('click', () =>
      guarded(async () => save(format)),
    );
  }
  const save = async (format: TakeFormat): Promise<void> => {
    if (take !== undefined) await saveTake(take.line, around().session, format);
  };
  byId('open', HTMLInputElement).addEventListener('change', ({ target }) => {
    const file = (target as HTMLInputElement).files?.[0];
    if (file !== undefined) guarded(async () => openFile(file));
  });
  const openFile = async (file: File): Promise<void> => {
    const { session } = around();
    const line = /\.wav$/iu.test(file.name)
      ? await lineOfRecording(file, session)
      : (await openTake(file)).line;
    show(judgeTake(line, session, false));
  };
  return { judge };
}

/** A recording whose first note is bar 1. */
async function lineOfRecording(file: File, { song, harp, level }: Session) {
  const { hearNotes, readWav } = await import('@reedplate/listen');
  const { notes } = hearNotes(readWav(await file.arrayBuffer()), { harp, level });
  const { tempo = 96, metre } = song;
  return lineFromSeconds(notes, { tempo, metre, from: notes[0]?.start ?? 0 });
}
