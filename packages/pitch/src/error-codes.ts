/**
 * Every code a {@link ReedplateError} can carry, with what went wrong.
 *
 * A code is stable: a program may branch on it and a translator may key on it.
 * Grouped by the package that first throws it.
 */
export const ERROR_CODES = /* @__PURE__ */ Object.freeze({
  // pitch
  NOTE_UNKNOWN: 'is not a note name',
  PITCH_RANGE: 'is outside the range of pitches',
  KEY_UNKNOWN: 'is not a key',
  CHORD_UNKNOWN: 'is not a chord symbol',
  NUMERAL_UNKNOWN: 'is not a Roman numeral of a chord',
  SCALE_UNKNOWN: 'is not a scale',
  NUMBER_RANGE: 'is not a number in range',
  LIST_EMPTY: 'holds nothing',
  OPTION_UNKNOWN: 'is not one of the choices',
  // line
  METRE_UNKNOWN: 'is not a metre',
  LINE_INVALID: 'is not part of a valid line',
  LINE_EMPTY: 'holds no note',
  TEMPO_MISSING: 'needs a tempo',
  // form
  FORM_UNKNOWN: 'is not a form of the catalogue',
  FORM_INVALID: 'is not part of a valid form',
  FORM_SYNTAX: 'cannot stand here in the notation of a form',
  CHART_INVALID: 'is not part of a valid chart',
  // layout
  TUNING_UNKNOWN: 'is not a tuning of the catalogue',
  TUNING_INVALID: 'is not part of a valid tuning',
  HARP_INVALID: 'is not part of a valid harp',
  HOLE_RANGE: 'is not a hole of this harp',
  SOUNDING_IMPOSSIBLE: 'cannot be sounded on this harp',
  PLAYER_INVALID: 'is not part of a valid player',
  TEMPERAMENT_UNKNOWN: 'is not a temperament of the catalogue',
  TEMPERAMENT_INCOMPLETE: 'has no pitch for a reed',
  SCALA_SYNTAX: 'cannot stand here in a Scala scale file',
  // tab
  TAB_SYNTAX: 'cannot stand here in tablature',
  // listen
  SOUND_INVALID: 'is not sound that can be heard',
  SOUND_MALFORMED: 'is not a sound file that can be read',
  // interchange
  ABC_SYNTAX: 'is not a tune in ABC notation',
  MIDI_MALFORMED: 'is not a well-formed MIDI file',
  MUSICXML_MALFORMED: 'is not MusicXML that can be read',
  HARP_MISSING: 'needs a harp',
  FORMAT_UNKNOWN: 'is not in a known format',
  // playability
  MODEL_UNKNOWN: 'is not an effort model of the catalogue',
  MODEL_INVALID: 'is not part of a valid effort model',
  STUDY_INVALID: 'is not part of a valid study',
  // backing
  GROOVE_INVALID: 'is not part of a valid groove',
  // practice
  COMPOSE_INVALID: 'is not part of what a line can be composed from',
  COMPOSE_IMPOSSIBLE: 'has no line that satisfies all constraints',
  PHRASE_UNKNOWN: 'is not a phrase of the catalogue',
  PHRASE_INVALID: 'is not part of a valid phrase',
  // files and commands
  FILE_UNREADABLE: 'cannot be read',
  FILE_UNWRITABLE: 'cannot be written',
  FILE_TOO_LARGE: 'is too large to read',
  JSON_MALFORMED: 'is not well-formed JSON',
  USAGE: 'is not understood by the command',
} as const);

/** The stable code of a {@link ReedplateError}; see {@link ERROR_CODES} for what each says. */
export type ErrorCode = keyof typeof ERROR_CODES;
