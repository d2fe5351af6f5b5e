/** Common practice; whoever has trouble with breath or heart asks a doctor, not us. */
export const PRACTICE_CAUTIONS: readonly string[] = Object.freeze([
  'Play softly and rest between choruses; stop if you feel dizzy from long blows or draws.',
]);
