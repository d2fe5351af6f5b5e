/** Thrown inside the unpacker where data cannot be inflated; never seen outside. */
export class DamagedArchive extends Error {}

/** Thrown inside the unpacker where more would come out than is allowed; never seen outside. */
export class TooMuchData extends Error {}

/** A Huffman code: how many codes each length has, and the symbols in the order of their codes. */
interface Code {
  readonly counts: Uint16Array;
  readonly symbols: Uint16Array;
}

interface BitReader {
  /** A number of so many bits, the lowest first. */
  readonly bits: (count: number) => number;
  /** The next symbol of a code. */
  readonly symbol: (code: Code) => number;
  /** Whole bytes, after the rest of the open one is passed over. */
  readonly bytes: (count: number) => Uint8Array;
}

const LONGEST_CODE = 15;

/**
 * Inflates raw DEFLATE data, never to more than `most` bytes. RFC 1951.
 *
 * @throws DamagedArchive, TooMuchData
 */
export function inflate(data: Uint8Array, most: number): Uint8Array {
  const reader = readBits(data);
  const output = makeOutput(most);
  let isLast = false;
  while (!isLast) {
    isLast = reader.bits(1) === 1;
    const kind = reader.bits(2);
    if (kind === 0) copyStored(reader, output);
    else if (kind === 1) inflateBlock(reader, output, fixedCodes());
    else if (kind === 2) inflateBlock(reader, output, readCodes(reader));
    else throw new DamagedArchive('no kind of block');
  }
  return output.all();
}

function readBits(data: Uint8Array): BitReader {
  let at = 0;
  let held = 0;
  let count = 0;
  const byte = (): number => {
    if (at >= data.length) throw new DamagedArchive('data run out');
    at += 1;
    return data[at - 1] as number;
  };
  const bits = (wanted: number): number => {
    while (count < wanted) {
      held |= byte() << count;
      count += 8;
    }
    const value = held & ((1 << wanted) - 1);
    held >>>= wanted;
    count -= wanted;
    return value;
  };
  const symbol = ({ counts, symbols }: Code): number => {
    let code = 0;
    let first = 0;
    let index = 0;
    for (let length = 1; length <= LONGEST_CODE; length += 1) {
      code |= bits(1);
      const these = counts[length] ?? 0;
      if (code - first < these) return symbols[index + code - first] as number;
      index += these;
      first = (first + these) << 1;
      code <<= 1;
    }
    throw new DamagedArchive('no such code');
  };
  const bytes = (wanted: number): Uint8Array => {
    held = 0;
    count = 0;
    if (wanted > data.length - at) throw new DamagedArchive('data run out');
    at += wanted;
    return data.subarray(at - wanted, at);
  };
  return { bits, symbol, bytes };
}

interface Output {
  readonly put: (byte: number) => void;
  /** Repeats what came so many bytes before. */
  readonly repeat: (length: number, distance: number) => void;
  readonly all: () => Uint8Array;
}

function makeOutput(most: number): Output {
  let bytes = new Uint8Array(Math.min(most, 65_536));
  let length = 0;
  const put = (byte: number): void => {
    if (length >= most) throw new TooMuchData();
    if (length === bytes.length) {
      const larger = new Uint8Array(Math.min(most, bytes.length * 2));
      larger.set(bytes);
      bytes = larger;
    }
    bytes[length] = byte;
    length += 1;
  };
  return {
    put,
    repeat: (count, distance) => {
      if (distance > length) throw new DamagedArchive('a repeat of what did not come');
      for (let left = count; left > 0; left -= 1) put(bytes[length - distance] as number);
    },
    all: () => bytes.subarray(0, length),
  };
}

function copyStored(reader: BitReader, output: Output): void {
  const [a = 0, b = 0, c = 0, d = 0] = reader.bytes(4);
  const length = a | (b << 8);
  if ((length ^ 0xffff) !== (c | (d << 8))) throw new DamagedArchive('a length that is none');
  for (const byte of reader.bytes(length)) output.put(byte);
}

interface Codes {
  readonly lengths: Code;
  readonly distances: Code;
}

const END_OF_BLOCK = 256;
const LENGTH_BASE = [
  3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131,
  163, 195, 227, 258,
];
const LENGTH_BITS = [
  0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0,
];
const DISTANCE_BASE = [
  1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049,
  3073, 4097, 6145, 8193, 12_289, 16_385, 24_577,
];

function inflateBlock(reader: BitReader, output: Output, { lengths, distances }: Codes): void {
  for (;;) {
    const symbol = reader.symbol(lengths);
    if (symbol === END_OF_BLOCK) return;
    if (symbol < END_OF_BLOCK) {
      output.put(symbol);
      continue;
    }
    const base = LENGTH_BASE[symbol - 257];
    const far = reader.bits(LENGTH_BITS[symbol - 257] ?? 0);
    const place = reader.symbol(distances);
    const distance = DISTANCE_BASE[place];
    if (base === undefined || distance === undefined) throw new DamagedArchive('no such length');
    const extra = reader.bits(Math.max(0, (place >> 1) - 1));
    output.repeat(base + far, distance + extra);
  }
}

function makeCode(lengths: readonly number[]): Code {
  const counts = new Uint16Array(LONGEST_CODE + 1);
  for (const length of lengths) if (length > 0) counts[length] = (counts[length] ?? 0) + 1;
  const places = new Uint16Array(LONGEST_CODE + 2);
  for (let length = 1; length <= LONGEST_CODE; length += 1) {
    places[length + 1] = (places[length] ?? 0) + (counts[length] ?? 0);
  }
  const symbols = new Uint16Array(lengths.length);
  for (const [symbol, length] of lengths.entries()) {
    if (length === 0) continue;
    symbols[places[length] ?? 0] = symbol;
    places[length] = (places[length] ?? 0) + 1;
  }
  return { counts, symbols };
}

/** The codes of a block that brings none. */
function fixedCodes(): Codes {
  const lengths = Array.from({ length: 288 }, (_, at) =>
    at < 144 ? 8 : at < 256 ? 9 : at < 280 ? 7 : 8,
  );
  return { lengths: makeCode(lengths), distances: makeCode(Array.from({ length: 30 }, () => 5)) };
}

/** Order in which the lengths of the code of lengths come. */
const LENGTH_ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];

function readCodes(reader: BitReader): Codes {
  const literals = reader.bits(5) + 257;
  const distances = reader.bits(5) + 1;
  const given = reader.bits(4) + 4;
  const own = Array.from({ length: 19 }, () => 0);
  for (const place of LENGTH_ORDER.slice(0, given)) own[place] = reader.bits(3);
  const lengths = readLengths(reader, makeCode(own), literals + distances);
  return {
    lengths: makeCode(lengths.slice(0, literals)),
    distances: makeCode(lengths.slice(literals)),
  };
}

function readLengths(reader: BitReader, code: Code, wanted: number): readonly number[] {
  const lengths: number[] = [];
  while (lengths.length < wanted) {
    const symbol = reader.symbol(code);
    if (symbol < 16) lengths.push(symbol);
    else if (symbol === 16) again(lengths, lengths.at(-1), 3 + reader.bits(2));
    else if (symbol === 17) again(lengths, 0, 3 + reader.bits(3));
    else again(lengths, 0, 11 + reader.bits(7));
  }
  if (lengths.length > wanted) throw new DamagedArchive('too many lengths');
  return lengths;
}

function again(lengths: number[], length: number | undefined, times: number): void {
  if (length === undefined) throw new DamagedArchive('no length to repeat');
  for (let left = times; left > 0; left -= 1) lengths.push(length);
}
