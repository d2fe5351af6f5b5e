import { type Line, makeLine } from '@reedplate/line';

/** A melody of eighths and quarters that wanders over a C harp, the same for the same length. */
export function melodyOf(count: number): Line {
  const scale = [
    60, 62, 64, 65, 67, 68, 69, 70, 71, 72, 74, 75, 76, 77, 79, 81, 82, 83, 84,
  ] as const;
  let at = 0;
  let start = 0;
  const notes = Array.from({ length: count }, (_, index) => {
    at =
      (at + ([1, 2, 16, 1, 3, 17, 18, 2][(index * 5 + Math.floor(index / 7)) % 8] ?? 1)) %
      scale.length;
    const duration = index % 3 === 0 ? 960 : 480;
    const note = { start, duration, pitch: scale[at] ?? 60 };
    start += duration + (index % 32 === 31 ? 1920 : 0);
    return note;
  });
  return makeLine(notes, { tempo: 110 });
}
