// The form without workers, which loads in browsers and in Node alike.
import { Inflate } from 'fflate/browser';

/** Thrown where more would come out of an archive than is allowed. */
export class TooMuchData extends Error {}

/** Little enough that even data of nothing but repeats, a thousand times larger, stays in memory. */
const PIECE = 4 * 1024;

/**
 * What was deflated, unpacked piece by piece, so that it stops as soon as more comes out than is
 * allowed. Data that cannot be inflated makes fflate throw an error of its own.
 *
 * @throws TooMuchData
 */
export function inflate(data: Uint8Array, most: number): Uint8Array {
  const pieces: Uint8Array[] = [];
  let length = 0;
  const unpacker = new Inflate((piece) => {
    length += piece.length;
    if (length > most) throw new TooMuchData();
    pieces.push(piece);
  });
  for (let at = 0; at < Math.max(1, data.length); at += PIECE) {
    unpacker.push(data.subarray(at, at + PIECE), at + PIECE >= data.length);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
