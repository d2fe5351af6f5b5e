import type { CatalogueRow } from './catalogue-row.js';

const TRADE = 'common practice';
const MEMORY = 'from memory';
const KNOWN_IDEA = 'worked out here from an idea known to the trade';

/** Layouts that repeat one pattern along the holes: solo, circular, and those of equal steps. */
export const PATTERNED_TUNING_ROWS = [
  [
    'solo-ten',
    'Solo, ten holes',
    'The major scale alike in each octave, four holes to the octave.',
    MEMORY,
    'C4 E4 G4 C5 C5 E5 G5 C6 C6 E6',
    'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6',
    { aliases: ['solo'] },
  ],
  [
    'solo-twelve',
    'Solo, twelve holes',
    'Three whole octaves of the major scale, alike in each.',
    'Wikipedia, "Solo tuning"',
    'C4 E4 G4 C5 C5 E5 G5 C6 C6 E6 G6 C7',
    'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6 A6 B6',
  ],
  [
    'solo-from-the-fifth',
    'Solo, begun on the fifth',
    'The solo layout with room below the tonic, as tunes that begin on the fifth want.',
    KNOWN_IDEA,
    'G3 C4 C4 E4 G4 C5 C5 E5 G5 C6',
    'A3 B3 D4 F4 A4 B4 D5 F5 A5 B5',
  ],
  [
    'solo-flat-seventh',
    'Solo, flat seventh for the doubled tonic',
    'The solo layout with the flat seventh in reach: dominant chords and bebop lines.',
    'Yerxa, Harmonica Sessions, April 2010 (for chromatic harps)',
    'C4 E4 G4 Bb4 C5 E5 G5 Bb5 C6 E6',
    'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6',
    { aliases: ['bebop'] },
  ],
  [
    'circular-second-draw',
    'Circular, major tonic on 2 draw',
    'All seven notes in order without gap, breath after breath; the tonic moves along the rows.',
    'Letter to the harmonica list, December 2011, message 422',
    'G3 B3 D4 F4 A4 C5 E5 G5 B5 D6',
    'A3 C4 E4 G4 B4 D5 F5 A5 C6 E6',
    { aliases: ['circular', 'spiral', 'spiral-second-draw'], label: 'G', labelPosition: 2 },
  ],
  [
    'circular-first-blow',
    'Circular, major tonic on 1 blow',
    'The circular rows begun on the tonic of the major scale.',
    TRADE,
    'C4 E4 G4 B4 D5 F5 A5 C6 E6 G6',
    'D4 F4 A4 C5 E5 G5 B5 D6 F6 A6',
    { aliases: ['spiral-first-blow'] },
  ],
  [
    'diminished',
    'Diminished',
    'Every chromatic note with bends of one semitone; the pattern repeats every hole.',
    TRADE,
    'C4 Eb4 F#4 A4 C5 Eb5 F#5 A5 C6 Eb6',
    'D4 F4 Ab4 B4 D5 F5 Ab5 B5 D6 F6',
    { aliases: ['minor-thirds'] },
  ],
  [
    'augmented',
    'Augmented',
    'Every chromatic note with bends of up to two semitones over more than three octaves.',
    MEMORY,
    'C4 E4 G#4 C5 E5 G#5 C6 E6 G#6 C7',
    'Eb4 G4 B4 Eb5 G5 B5 Eb6 G6 B6 Eb7',
    { aliases: ['major-thirds'] },
  ],
  [
    'alternating-thirds',
    'Alternating thirds, chromatic',
    'Every chromatic note with draw bends: blow in major and minor thirds by turns, so that any three blow holes sound a major or a minor chord.',
    KNOWN_IDEA,
    'C4 E4 G4 B4 D5 F#5 A5 C#6 E6 G#6',
    'Eb4 F#4 Bb4 C#5 F5 G#5 C6 Eb6 G6 B6',
  ],
  [
    'whole-tone',
    'Whole tone, narrow',
    'All twelve notes as unbent notes in less than two octaves; no semitone bends.',
    MEMORY,
    'C4 D4 E4 F#4 G#4 A#4 C5 D5 E5 F#5',
    'C#4 D#4 F4 G4 A4 B4 C#5 D#5 F5 G5',
  ],
  [
    'whole-tone-wide',
    'Whole tone, wide',
    'One whole-tone scale over three octaves, its bends in the other.',
    MEMORY,
    'C4 E4 G#4 C5 E5 G#5 C6 E6 G#6 C7',
    'D4 F#4 Bb4 D5 F#5 Bb5 D6 F#6 Bb6 D7',
  ],
] as const satisfies readonly CatalogueRow[];
