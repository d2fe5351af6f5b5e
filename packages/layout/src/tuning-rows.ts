import type { CatalogueRow } from './catalogue-row.js';
import { EXTENDED_TUNING_ROWS } from './tuning-rows-extended.js';
import { PATTERNED_TUNING_ROWS } from './tuning-rows-patterned.js';

const TRADE = 'common practice';
const MEMORY = 'from memory';
const OWN = 'own construction';
const KNOWN_IDEA = 'worked out here from an idea known to the trade';
const SPECIALLY_TUNED = 'Wikipedia, "Richter-tuned harmonica", Specially-tuned instruments';
const VARIANTS = 'Wikipedia, "Richter tuning", Variants';

const USUAL_ROWS = [
  {
    id: 'standard',
    aliases: ['richter'],
    name: 'Standard (Richter)',
    use: 'Blues in second position, tunes in first; the layout most harps are sold in.',
    source: 'Wikipedia, "Richter-tuned harmonica"; OEIS A291810, 2017',
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'raised-third-blow',
    name: 'Raised third blow reed',
    use: 'Tunes in first and second position: the sixth above the low tonic without a bend.',
    source: 'Meade, "The Harmonica and Irish Traditional Music", 2012 (opening); common practice',
    blow: 'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'raised-fifth-draw',
    aliases: ['country'],
    name: 'Raised fifth draw reed (country)',
    use: 'Major tunes in second position: its seventh is major in the middle octave.',
    source: SPECIALLY_TUNED,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F6 A6',
  },
  {
    id: 'raised-fifth-and-ninth-draw',
    aliases: ['double-country'],
    name: 'Raised fifth and ninth draw reeds (double country)',
    use: 'Major tunes in second position over the whole range.',
    source: VARIANTS,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F#6 A6',
  },
  {
    id: 'raised-third-blow-and-fifth-draw',
    name: 'Raised third blow and fifth draw reeds',
    use: 'Fiddle tunes in second position in the lower two octaves.',
    source: MEMORY,
    blow: 'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F6 A6',
  },
  {
    id: 'raised-third-blow-and-fifth-and-ninth-draw',
    name: 'Raised third blow, fifth and ninth draw reeds',
    use: 'Major tunes in second position, named by the key they are played in.',
    source: SPECIALLY_TUNED,
    label: 'G',
    labelPosition: 2,
    blow: 'C4 E4 A4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F#6 A6',
  },
  {
    id: 'natural-minor',
    aliases: ['natural-minor-second-position'],
    name: 'Natural minor, second position',
    use: 'Minor blues in second position: minor I on the draw, minor IV on the blow.',
    source: SPECIALLY_TUNED,
    label: 'Gm',
    labelPosition: 2,
    blow: 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7',
    draw: 'D4 G4 Bb4 D5 F5 A5 Bb5 D6 F6 A6',
  },
  {
    id: 'natural-minor-first-position',
    name: 'Natural minor, first position',
    use: 'The natural minor scale in first position.',
    source: MEMORY,
    label: 'Cm',
    blow: 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7',
    draw: 'D4 G4 Bb4 D5 F5 Ab5 Bb5 D6 F6 Ab6',
  },
  {
    id: 'harmonic-minor',
    aliases: ['harmonic-minor-first-position'],
    name: 'Harmonic minor, first position',
    use: 'Tunes in harmonic minor in first position, with the major V on the draw.',
    source: SPECIALLY_TUNED,
    label: 'Cm',
    blow: 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7',
    draw: 'D4 G4 B4 D5 F5 Ab5 B5 D6 F6 Ab6',
  },
  {
    id: 'melodic-minor',
    aliases: ['flat-third-first-position'],
    name: 'Flat third, first position (melodic minor)',
    use: 'Minor over a major draw chord: only the thirds of the blow row are lowered.',
    source: MEMORY,
    label: 'Cm',
    blow: 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7',
    draw: 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'harmonic-minor-second-position',
    name: 'Harmonic minor, second position',
    use: 'Harmonic minor with the bends of second position, and its major V within reach.',
    source: OWN,
    label: 'Gm',
    labelPosition: 2,
    blow: 'C4 Eb4 G4 C5 Eb5 G5 C6 Eb6 G6 C7',
    draw: 'D4 G4 Bb4 D5 F#5 A5 Bb5 D6 F#6 A6',
  },
  {
    id: 'dorian',
    aliases: ['flat-third-second-position', 'dorian-second-position'],
    name: 'Flat third, second position (dorian)',
    use: 'Minor in second position over a major IV; natural minor in third position.',
    source: 'Missin, article AHN3, 2005; common practice',
    label: 'Gm',
    labelPosition: 2,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 Bb4 D5 F5 A5 Bb5 D6 F6 A6',
  },
  {
    id: 'lowered-second-and-third-draw',
    aliases: ['minor-draw-chord'],
    name: 'Lowered second and third draw reeds (minor draw chord)',
    use: 'Low end without bends: draw 1 to 4 is the minor chord of third position; the 7th of first position comes on 7 draw only.',
    source: TRADE,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 F4 A4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'lowered-second-draw',
    name: 'Lowered second draw reed',
    use: 'Low end without bends: the fourth above the low tonic is an unbent note.',
    source: OWN,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 F4 B4 D5 F5 A5 B5 D6 F6 A6',
  },
  {
    id: 'exchanged-top',
    name: 'Exchanged reeds in holes 7 to 10',
    use: 'Every draw reed is the higher of its pair, so that all bends are draw bends.',
    source: KNOWN_IDEA,
    blow: 'C4 E4 G4 C5 E5 G5 B5 D6 F6 A6',
    draw: 'D4 G4 B4 D5 F5 A5 C6 E6 G6 C7',
  },
  {
    id: 'repeated-low-end',
    name: 'Low end repeated on top',
    use: 'Holes 7 to 10 answer holes 1 to 4 two octaves up, with the same draw bends and chord.',
    source: KNOWN_IDEA,
    blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
    draw: 'D4 G4 B4 D5 F5 A5 D6 G6 B6 D7',
  },
] as const satisfies readonly CatalogueRow[];

/**
 * The catalogue: rows of the harp that carries `label`, all written so that the notes are those
 * of a harp in C. Data only; the order is that of the printed list.
 */
export const TUNING_ROWS = /* @__PURE__ */ (() =>
  [...USUAL_ROWS, ...PATTERNED_TUNING_ROWS, ...EXTENDED_TUNING_ROWS] as const)();
