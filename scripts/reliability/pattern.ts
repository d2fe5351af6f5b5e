/** Text or bytes that can be made as long as asked for, of one thing again and again. */
export interface Pattern {
  readonly name: string;
  /** About so many bytes of it. */
  readonly ofSize: (bytes: number) => string | Uint8Array;
}

/** What is repeated: the same each time, or by its number from 0. */
type Unit = string | ((at: number) => string);

/** Text that repeats a unit between a head and a tail. */
export function textPattern(name: string, unit: Unit, head = '', tail = ''): Pattern {
  return {
    name,
    ofSize: (bytes) => {
      const parts = [head];
      let length = head.length + tail.length;
      for (let at = 0; length < bytes; at += 1) {
        const part = typeof unit === 'string' ? unit : unit(at);
        parts.push(part);
        length += part.length;
      }
      return parts.join('') + tail;
    },
  };
}

/** Patterns named by what they repeat. */
export function textPatterns(
  units: Readonly<Record<string, Unit>>,
  head = '',
  tail = '',
): readonly Pattern[] {
  return Object.entries(units).map(([name, unit]) => textPattern(name, unit, head, tail));
}
