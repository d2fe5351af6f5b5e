import { lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import { requireSome } from '@reedplate/pitch';

/** Notes in seconds with every value checked, as for a line. */
export function requireNotesInSeconds(notes: readonly NoteInSeconds[]): readonly NoteInSeconds[] {
  lineFromSeconds(notes, { tempo: 60 });
  return requireSome(notes, 'one note');
}
