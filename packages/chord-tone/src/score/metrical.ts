/**
 * Strength of a place in the bar, 0 to 1, after the metrical tree of Longuet-Higgins and Lee
 * (1984) as syncopation indices use it, value from memory: in 4/4 the first beat has 0, the third
 * −1, the second and fourth −2, off-beat eighths −3, sixteenths −4. Here (4 + value) / 4, a design
 * choice: 1, 0.75, 0.5, 0.25, 0. Triplets count as off-beat eighths (extension, no source).
 */
export const METRICAL_STRENGTH = Object.freeze({
  downbeat: 1,
  halfBar: 0.75,
  beat: 0.5,
  offBeat: 0.25,
  between: 0,
});

/**
 * How near to a place an onset must be to count as on it, in felt beats: nearer than a twelfth, a
 * little less so that rounding does not decide. Design choice, no source.
 */
const NEAR = 1 / 12 - 1e-9;

/** The strength of a time counted in felt beats from the first beat of its bar. */
export function metricalStrength(beats: number, beatsPerBar: number): number {
  const nearest = Math.round(beats);
  if (Math.abs(beats - nearest) < NEAR) {
    const beat = ((nearest % beatsPerBar) + beatsPerBar) % beatsPerBar;
    if (beat === 0) return METRICAL_STRENGTH.downbeat;
    return beat * 2 === beatsPerBar ? METRICAL_STRENGTH.halfBar : METRICAL_STRENGTH.beat;
  }
  const within = beats - Math.floor(beats);
  const isOffBeat =
    Math.abs(within - 1 / 2) < NEAR ||
    Math.abs(within - 1 / 3) < NEAR / 2 ||
    Math.abs(within - 2 / 3) < NEAR;
  return isOffBeat ? METRICAL_STRENGTH.offBeat : METRICAL_STRENGTH.between;
}
