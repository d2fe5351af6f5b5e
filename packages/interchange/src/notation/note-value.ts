/** A note value as it is printed. */
export interface NoteValue {
  /** Ticks it lasts, tuplet and dots counted. */
  readonly ticks: number;
  /** Name in MusicXML: `quarter`, `eighth`, `16th`. */
  readonly type: string;
  readonly dots: number;
  /** Whether it is one of three in the time of two. */
  readonly triplet: boolean;
}

const TYPES = [
  ['whole', 3840],
  ['half', 1920],
  ['quarter', 960],
  ['eighth', 480],
  ['16th', 240],
  ['32nd', 120],
  ['64th', 60],
] as const;

/** Of a half note: three in the time of a whole bar. */
const LONGEST_TRIPLET = 1280;

const VALUES: readonly NoteValue[] = /* @__PURE__ */ TYPES.flatMap(([type, ticks]) => [
  { type, ticks, dots: 0, triplet: false },
  { type, ticks: ticks * 1.5, dots: 1, triplet: false },
  { type, ticks: ticks * 1.75, dots: 2, triplet: false },
  { type, ticks: (ticks * 2) / 3, dots: 0, triplet: true },
]).filter(({ ticks, triplet }) => Number.isInteger(ticks) && !(triplet && ticks > LONGEST_TRIPLET));

const VALUE_OF_TICKS: ReadonlyMap<number, NoteValue> = new Map(
  VALUES.map((value) => [value.ticks, value]),
);

/** Note values that tie together, the longest first, without triplets. */
const LONGEST_FIRST = VALUES.filter(({ triplet, dots }) => !triplet && dots < 2).sort(
  (a, b) => b.ticks - a.ticks,
);
const TRIPLETS = VALUES.filter(({ triplet }) => triplet);
const LONGEST_TRIPLET_FIRST = [...TRIPLETS].sort((a, b) => b.ticks - a.ticks);

/**
 * The printed values that last so long together, to be tied; one where there is one. A length that
 * no values make, as in a take played by hand, is `undefined`.
 */
export function noteValues(ticks: number): readonly NoteValue[] | undefined {
  const whole = VALUE_OF_TICKS.get(ticks);
  if (whole !== undefined) return [whole];
  const plain = plainValues(ticks);
  if (plain !== undefined) return plain;
  for (const triplet of TRIPLETS) {
    const before = plainValues(ticks - triplet.ticks);
    if (before !== undefined) return [...before, triplet];
  }
  return undefined;
}

function plainValues(ticks: number): readonly NoteValue[] | undefined {
  const values: NoteValue[] = [];
  let left = ticks;
  while (left > 0) {
    const next = LONGEST_FIRST.find((value) => value.ticks <= left);
    if (next === undefined) return undefined;
    values.push(next);
    left -= next.ticks;
  }
  return left === 0 ? values : undefined;
}

/** The triplet values that last so long together, the longest first; `undefined` where none do. */
export function tripletValues(ticks: number): readonly NoteValue[] | undefined {
  const values: NoteValue[] = [];
  let left = ticks;
  for (const value of LONGEST_TRIPLET_FIRST) {
    while (value.ticks <= left) {
      values.push(value);
      left -= value.ticks;
    }
  }
  return left === 0 ? values : undefined;
}
