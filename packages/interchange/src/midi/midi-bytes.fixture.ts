/** A number of so many bytes, the highest first. */
export function number(value: number, bytes: number): readonly number[] {
  return Array.from(
    { length: bytes },
    (_, at) => Math.floor(value / 256 ** (bytes - 1 - at)) % 256,
  );
}

/** A chunk: name, length, data. */
export function chunk(name: string, data: readonly number[]): readonly number[] {
  return [...name].map((letter) => letter.charCodeAt(0)).concat(number(data.length, 4), data);
}

/** A file of such tracks, with 96 ticks to the quarter unless told. */
export function midiFile(tracks: readonly (readonly number[])[], division = 96): Uint8Array {
  const head = [...number(1, 2), ...number(tracks.length, 2), ...number(division, 2)];
  return Uint8Array.from([
    ...chunk('MThd', head),
    ...tracks.flatMap((data) => chunk('MTrk', data)),
  ]);
}

/** Text as a meta event at delta 0. */
export function text(type: number, words: string): readonly number[] {
  const bytes = [...Buffer.from(words, 'utf8')];
  return [0, 0xff, type, bytes.length, ...bytes];
}
