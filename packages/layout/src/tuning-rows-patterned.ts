import type { CatalogueRow } from './catalogue-row.js';

const TRADE = 'common practice';
const MEMORY = 'from memory';
const KNOWN_IDEA = 'worked out here from an idea known to the trade';

/** Layouts that repeat one pattern along the holes: solo, circular, and those of equal steps. */
export const PATTERNED_TUNING_ROWS = [
  {
    id: 'solo-ten',
    aliases: ['solo'],
    name: 'Solo, ten holes',
    use: 'The major scale alike in each octave, four holes to the octave.',
    source: MEMORY,
    blow: 'C4 E4 G4 C5 C5 E5 G5 C6 C6 E6',
    draw: 'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6',
  },
  {
    id: 'solo-twelve',
    name: 'Solo, twelve holes',
    use: 'Three whole octaves of the major scale, alike in each.',
    source: 'Wikipedia, "Solo tuning"',
    blow: 'C4 E4 G4 C5 C5 E5 G5 C6 C6 E6 G6 C7',
    draw: 'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6 A6 B6',
  },
  {
    id: 'solo-from-the-fifth',
    name: 'Solo, begun on the fifth',
    use: 'The solo layout with room below the tonic, as tunes that begin on the fifth want.',
    source: KNOWN_IDEA,
    blow: 'G3 C4 C4 E4 G4 C5 C5 E5 G5 C6',
    draw: 'A3 B3 D4 F4 A4 B4 D5 F5 A5 B5',
  },
  {
    id: 'solo-flat-seventh',
    name: 'Solo, flat seventh for the doubled tonic',
    use: 'The solo layout with the flat seventh in reach: dominant chords and bebop lines.',
    source: KNOWN_IDEA,
    blow: 'C4 E4 G4 Bb4 C5 E5 G5 Bb5 C6 E6',
    draw: 'D4 F4 A4 B4 D5 F5 A5 B5 D6 F6',
  },
  {
    id: 'circular-second-draw',
    aliases: ['circular', 'spiral', 'spiral-second-draw'],
    name: 'Circular, major tonic on 2 draw',
    use: 'All seven notes in order without gap, breath after breath; the tonic moves along the rows.',
    source: TRADE,
    label: 'G',
    labelPosition: 2,
    blow: 'G3 B3 D4 F4 A4 C5 E5 G5 B5 D6',
    draw: 'A3 C4 E4 G4 B4 D5 F5 A5 C6 E6',
  },
  {
    id: 'circular-first-blow',
    aliases: ['spiral-first-blow'],
    name: 'Circular, major tonic on 1 blow',
    use: 'The circular rows begun on the tonic of the major scale.',
    source: TRADE,
    blow: 'C4 E4 G4 B4 D5 F5 A5 C6 E6 G6',
    draw: 'D4 F4 A4 C5 E5 G5 B5 D6 F6 A6',
  },
  {
    id: 'diminished',
    aliases: ['minor-thirds'],
    name: 'Diminished',
    use: 'Every chromatic note with bends of one semitone; the pattern repeats every hole.',
    source: TRADE,
    blow: 'C4 Eb4 F#4 A4 C5 Eb5 F#5 A5 C6 Eb6',
    draw: 'D4 F4 Ab4 B4 D5 F5 Ab5 B5 D6 F6',
  },
  {
    id: 'augmented',
    aliases: ['major-thirds'],
    name: 'Augmented',
    use: 'Every chromatic note with bends of up to two semitones over more than three octaves.',
    source: MEMORY,
    blow: 'C4 E4 G#4 C5 E5 G#5 C6 E6 G#6 C7',
    draw: 'Eb4 G4 B4 Eb5 G5 B5 Eb6 G6 B6 Eb7',
  },
  {
    id: 'alternating-thirds',
    name: 'Alternating thirds, chromatic',
    use: 'Every chromatic note with draw bends: blow in major and minor thirds by turns, so that any three blow holes sound a major or a minor chord.',
    source: KNOWN_IDEA,
    blow: 'C4 E4 G4 B4 D5 F#5 A5 C#6 E6 G#6',
    draw: 'Eb4 F#4 Bb4 C#5 F5 G#5 C6 Eb6 G6 B6',
  },
  {
    id: 'whole-tone',
    name: 'Whole tone, narrow',
    use: 'All twelve notes as unbent notes in less than two octaves; no semitone bends.',
    source: MEMORY,
    blow: 'C4 D4 E4 F#4 G#4 A#4 C5 D5 E5 F#5',
    draw: 'C#4 D#4 F4 G4 A4 B4 C#5 D#5 F5 G5',
  },
  {
    id: 'whole-tone-wide',
    name: 'Whole tone, wide',
    use: 'One whole-tone scale over three octaves, its bends in the other.',
    source: MEMORY,
    blow: 'C4 E4 G#4 C5 E5 G#5 C6 E6 G#6 C7',
    draw: 'D4 F#4 Bb4 D5 F#5 Bb5 D6 F#6 Bb6 D7',
  },
] as const satisfies readonly CatalogueRow[];
