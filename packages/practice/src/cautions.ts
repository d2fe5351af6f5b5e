/** Common practice. What dizziness means is for a doctor to say, not for us. */
export const PRACTICE_CAUTIONS: readonly string[] = Object.freeze([
  'Play softly and rest between choruses. Stop if long blows or draws make you dizzy; if it does not pass, ask a doctor.',
]);
