import type { CatalogueRow } from './catalogue-row.js';
import { EXTENDED_TUNING_ROWS } from './tuning-rows-extended.js';
import { PATTERNED_TUNING_ROWS } from './tuning-rows-patterned.js';

const TRADE = 'common practice';
const MEMORY = 'from memory';
const OWN = 'own construction';
const KNOWN_IDEA = 'worked out here from an idea known to the trade';
const SPECIALLY_TUNED = 'Wikipedia, "Richter-tuned harmonica", Specially-tuned instruments';
const VARIANTS = 'Wikipedia, "Richter tuning", Variants';

/** Blow reeds of most harps: the major or the minor triad of the key, up three octaves. */
const MAJOR_BLOW = 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7';
const MINOR_BLOW = 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7';

const USUAL_ROWS = [
  [
    'standard',
    'Standard (Richter)',
    'Blues in second position, tunes in first; the layout most harps are sold in.',
    'Wikipedia, "Richter-tuned harmonica"; OEIS A291810, 2017',
    MAJOR_BLOW,
    'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
    { aliases: ['richter'] },
  ],
  [
    'raised-third-blow',
    'Raised third blow reed',
    'Tunes in first and second position: the sixth above the low tonic without a bend.',
    'Meade, "The Harmonica and Irish Traditional Music", 2012 (opening); common practice',
    'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  ],
  [
    'raised-fifth-draw',
    'Raised fifth draw reed (country)',
    'Major tunes in second position: its seventh is major in the middle octave.',
    SPECIALLY_TUNED,
    MAJOR_BLOW,
    'D4 G4 B4 D5 F#5 A5 B5 D6 F6 A6',
    { aliases: ['country'] },
  ],
  [
    'raised-fifth-and-ninth-draw',
    'Raised fifth and ninth draw reeds (double country)',
    'Major tunes in second position over the whole range.',
    VARIANTS,
    MAJOR_BLOW,
    'D4 G4 B4 D5 F#5 A5 B5 D6 F#6 A6',
    { aliases: ['double-country'] },
  ],
  [
    'raised-third-blow-and-fifth-draw',
    'Raised third blow and fifth draw reeds',
    'Fiddle tunes in second position in the lower two octaves.',
    MEMORY,
    'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    'D4 G4 B4 D5 F#5 A5 B5 D6 F6 A6',
  ],
  [
    'raised-third-blow-and-fifth-and-ninth-draw',
    'Raised third blow, fifth and ninth draw reeds',
    'Major tunes in second position, named by the key they are played in.',
    SPECIALLY_TUNED,
    'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    'D4 G4 B4 D5 F#5 A5 B5 D6 F#6 A6',
    { label: 'G', labelPosition: 2 },
  ],
  [
    'natural-minor',
    'Natural minor, second position',
    'Minor blues in second position: minor I on the draw, minor IV on the blow.',
    SPECIALLY_TUNED,
    MINOR_BLOW,
    'D4 G4 Bb4 D5 F5 A5 Bb5 D6 F6 A6',
    { aliases: ['natural-minor-second-position'], label: 'Gm', labelPosition: 2 },
  ],
  [
    'natural-minor-first-position',
    'Natural minor, first position',
    'The natural minor scale in first position.',
    MEMORY,
    MINOR_BLOW,
    'D4 G4 Bb4 D5 F5 Ab5 Bb5 D6 F6 Ab6',
    { label: 'Cm' },
  ],
  [
    'harmonic-minor',
    'Harmonic minor, first position',
    'Tunes in harmonic minor in first position, with the major V on the draw.',
    SPECIALLY_TUNED,
    MINOR_BLOW,
    'D4 G4 B4 D5 F5 Ab5 B5 D6 F6 Ab6',
    { aliases: ['harmonic-minor-first-position'], label: 'Cm' },
  ],
  [
    'melodic-minor',
    'Flat third, first position (melodic minor)',
    'Minor over a major draw chord: only the thirds of the blow row are lowered.',
    MEMORY,
    MINOR_BLOW,
    'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
    { aliases: ['flat-third-first-position'], label: 'Cm' },
  ],
  [
    'harmonic-minor-second-position',
    'Harmonic minor, second position',
    'Harmonic minor with the bends of second position, and its major V within reach.',
    OWN,
    MINOR_BLOW,
    'D4 G4 Bb4 D5 F#5 A5 Bb5 D6 F#6 A6',
    { label: 'Gm', labelPosition: 2 },
  ],
  [
    'dorian',
    'Flat third, second position (dorian)',
    'Minor in second position over a major IV; natural minor in third position.',
    'Missin, article AHN3, 2005; common practice',
    MAJOR_BLOW,
    'D4 G4 Bb4 D5 F5 A5 Bb5 D6 F6 A6',
    {
      aliases: ['flat-third-second-position', 'dorian-second-position'],
      label: 'Gm',
      labelPosition: 2,
    },
  ],
  [
    'lowered-second-and-third-draw',
    'Lowered second and third draw reeds (minor draw chord)',
    'Low end without bends: draw 1 to 4 is the minor chord of third position; the 7th of first position comes on 7 draw only.',
    TRADE,
    MAJOR_BLOW,
    'D4 F4 A4 D5 F5 A5 B5 D6 F6 A6',
    { aliases: ['minor-draw-chord'] },
  ],
  [
    'lowered-second-draw',
    'Lowered second draw reed',
    'Low end without bends: the fourth above the low tonic is an unbent note.',
    OWN,
    MAJOR_BLOW,
    'D4 F4 B4 D5 F5 A5 B5 D6 F6 A6',
  ],
  [
    'exchanged-top',
    'Exchanged reeds in holes 7 to 10',
    'Every draw reed is the higher of its pair, so that all bends are draw bends.',
    KNOWN_IDEA,
    'C4 E4 G4 C5 E5 G5 B5 D6 F6 A6',
    'D4 G4 B4 D5 F5 A5 C6 E6 G6 C7',
  ],
  [
    'repeated-low-end',
    'Low end repeated on top',
    'Holes 7 to 10 answer holes 1 to 4 two octaves up, with the same draw bends and chord.',
    KNOWN_IDEA,
    MAJOR_BLOW,
    'D4 G4 B4 D5 F5 A5 D6 G6 B6 D7',
  ],
] as const satisfies readonly CatalogueRow[];

/**
 * The catalogue: rows of the harp that carries `label`, all written so that the notes are those
 * of a harp in C. Data only; the order is that of the printed list.
 */
export const TUNING_ROWS = /* @__PURE__ */ (() =>
  [...USUAL_ROWS, ...PATTERNED_TUNING_ROWS, ...EXTENDED_TUNING_ROWS] as const)();
