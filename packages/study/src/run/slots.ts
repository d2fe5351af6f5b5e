/**
 * Memory that a batch of a study is handed over in. It is shared between threads and used again and
 * again: text or bytes made anew for each batch would pile up before they are thrown away, and make
 * the memory of a long study grow.
 */
export interface Slot {
  /** Lines of input in UTF-8, from the beginning on. */
  readonly lines: Uint8Array;
  /** Room for results. */
  readonly room: Uint8Array;
}

/** Slots of a study: as many as are under way at once. */
export interface Slots {
  /** A slot that no batch is in, with the lines given copied into it. */
  readonly take: (lines: Uint8Array) => Slot;
  readonly giveBack: (slot: Slot) => void;
}

/** Input that most batches need, and results that most bring. */
const LINES = 64 * 1024;
const ROOM = 512 * 1024;
/** Largest memory for lines that is kept: what one huge line needed is not. */
const LARGEST_KEPT = 1024 * 1024;

/** No slots yet; they are made as they are needed. */
export function makeSlots(): Slots {
  const free: Slot[] = [];
  return {
    take: (lines) => {
      const slot = free.pop() ?? { lines: shared(LINES), room: shared(ROOM) };
      const fits = lines.length <= slot.lines.length;
      const larger = fits ? slot : { lines: shared(lines.length), room: slot.room };
      larger.lines.set(lines);
      return larger;
    },
    giveBack: ({ lines, room }) => {
      free.push({ lines: lines.length > LARGEST_KEPT ? shared(LINES) : lines, room });
    },
  };
}

const shared = (size: number): Uint8Array => new Uint8Array(new SharedArrayBuffer(size));
