import { deepFreeze, type ErrorPlace } from '@reedplate/pitch';

/** What a reader left out, changed or could not make sense of, and what a format does not hold. */
export const PIECE_WARNINGS = {
  'grace-notes': 'grace notes cannot be read and are left out',
  'cue-notes': 'cue notes are left out: another part plays them',
  ornaments: 'ornaments and playing signs are left out',
  words: 'words under the notes are left out',
  'chord-unknown': 'a chord symbol is not known, and the chord before it goes on',
  'chord-alternative': 'a second chord symbol at the same place is left out',
  'symbol-unknown': 'a sign is not known and is passed over',
  'field-unknown': 'a field cannot be read and is passed over',
  'key-missing': 'no key is given: C major is taken',
  'metre-missing': 'no metre is given: 4/4 is taken',
  'metre-change': 'the metre changes; the line keeps the first one',
  'key-change': 'the key changes; the chart keeps the first one',
  'bars-off-grid': 'a bar has not the length of its metre, so later bars are counted anew',
  'tie-open': 'a tie leads to no note of its pitch',
  'pitch-range': 'a note is too low or too high for MIDI and is left out',
  'notes-missing': 'no note is found',
  'note-open': 'a note is not ended and is ended where the part ends',
  'note-empty': 'a note of no length is left out',
  'pitch-bend': 'a bend is larger than two octaves and is cut off there',
  'part-doubtful': 'no part looks like a melody, and this one is taken for it',
  'part-tie': 'these parts look as much like the melody, and the first of them is taken',
  'tab-ambiguous': 'tablature can be read in another way',
  percussion: 'percussion without pitch is left out',
  'data-malformed': 'the end of a part is damaged and is left out',
  'repeat-jump': 'a jump such as D.C., or an order of parts, is not clear and is not played',
  'notes-apart': 'notes struck together are not on one breath of this harp: no one plays them so',
  'chart-unwritten': 'the format holds no chords: they are not written',
  'parts-unwritten': 'the format holds one line: other parts are not written',
  'percussion-unwritten': 'the format holds no percussion here: it is not written',
  'head-unwritten': 'the format has no place for this, which is not written',
  'playing-unwritten': 'the format has no place for how notes are played, which is not written',
} as const;
Object.freeze(PIECE_WARNINGS);

/** Stable code of a {@link PieceWarning}. */
export type PieceWarningCode = keyof typeof PIECE_WARNINGS;

/** Something of a file that is not in what was read from it, or of a sheet that a format leaves out. */
export interface PieceWarning {
  readonly code: PieceWarningCode;
  readonly message: string;
  /** How often it came, from 1. */
  readonly count: number;
  /** What it was, the first time, as written. */
  readonly value?: string;
  /** Where it stood the first time. */
  readonly where: ErrorPlace;
}

/** Gathers warnings while a file is read: the same one again is only counted. */
export interface WarningList {
  readonly add: (code: PieceWarningCode, where?: ErrorPlace, value?: string) => void;
  readonly all: () => readonly PieceWarning[];
}

const LONGEST_VALUE = 60;

/** A list without warnings yet. */
export function makeWarningList(): WarningList {
  const found = new Map<PieceWarningCode, PieceWarning>();
  return {
    add: (code, where = {}, value) => {
      const before = found.get(code);
      const first = before ?? {
        code,
        message: PIECE_WARNINGS[code],
        count: 0,
        ...(value === undefined ? {} : { value: value.slice(0, LONGEST_VALUE) }),
        where,
      };
      found.set(code, { ...first, count: first.count + 1 });
    },
    all: () => deepFreeze([...found.values()]),
  };
}
