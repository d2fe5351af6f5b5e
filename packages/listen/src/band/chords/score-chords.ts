import { type Chroma, CLASSES } from '../front/chroma.js';

/**
 * How much the bass says beside the treble: on the first beat of a chord, where it plays the root, and on the others,
 * where it walks. Chosen on one half of the tracks.
 */
export const BASS = Object.freeze({ first: 0.8, others: 0.8 });

/** A stretch of sound that one chord may last for, in seconds. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** End of its first beat. */
  readonly first: number;
}

/**
 * How well each chord fits a stretch of sound: its correlation with the treble and, by its share, with the bass; and
 * whether the bass begins with its root. About 0 in silence.
 *
 * @param templates a row of {@link CLASSES} for each chord, `root` within twelve
 * @param out one number a chord
 */
export function scoreChords(
  { between }: Chroma,
  { from, to, first }: Stretch,
  templates: Float64Array,
  out: Float64Array,
): void {
  const heard = new Float64Array(CLASSES);
  const opening = new Float64Array(CLASSES);
  if (!(to > from && first > from)) {
    out.fill(0);
    return;
  }
  between(from, first, opening);
  between(first, to, heard);
  const all = 1 / (to - from);
  for (let chord = 0; chord < out.length; chord += 1) {
    let [treble, bass] = [0, 0];
    for (let at = 0; at < 12; at += 1) {
      const template = templates[chord * CLASSES + at] as number;
      treble += template * ((heard[at] as number) + (opening[at] as number));
      bass += (templates[chord * CLASSES + 12 + at] as number) * (heard[12 + at] as number);
    }
    const root = opening[12 + (chord % 12)] as number;
    out[chord] = (treble + BASS.others * bass + BASS.first * root) * all;
  }
}
