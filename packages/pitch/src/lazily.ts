/**
 * A value made when it is first asked for, and kept. Tables are made in this way, so that a program
 * that never reads a chord does not pay for the dictionary of chords, and a bundler can leave it out.
 */
export function lazily<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
