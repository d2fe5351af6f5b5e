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

/** A number in bytes of seven bits, as files write times and lengths. */
export function variable(value: number): readonly number[] {
  const low = value % 128;
  const bytes = [low];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128)) {
    bytes.unshift((rest % 128) + 128);
  }
  return bytes;
}

/** A channel message after so many ticks. */
export function message(delta: number, ...data: readonly number[]): readonly number[] {
  return [...variable(delta), ...data];
}

/** The end of a track. */
export const END = [0, 0xff, 0x2f, 0] as const;
