import { oneOf, type Random } from './random.js';

/** Numbers that readers trip over. */
const NUMBERS = [
  '0',
  '-1',
  '1',
  '999',
  '65536',
  '2147483648',
  '1e309',
  '0.1',
  '00',
  'NaN',
] as const;
/** Signs of all notations, and some of none. */
const SIGNS = [...'|:[](){}"\'<>&%/\\-+=^_,.;#!~$ \n\t', '\u0000', '\uFEFF', '𝄞', 'é'] as const;

/** Words, numbers, tags and signs of a text. */
const TOKEN = /<[^<>]{0,200}>|[A-Za-z]+|\d+|\s+|./gsu;

/** A text with some of its parts taken out, doubled, moved, repeated or put in the place of others. */
export function mutateText(text: string, others: readonly string[], random: Random): string {
  let tokens = tokensOf(text);
  for (let changes = 1 + random(6); changes > 0; changes -= 1) {
    tokens = changeTokens(tokens, others, random);
  }
  return tokens.join('');
}

const known = new Map<string, readonly string[]>();

/** Seeds are few and come again and again. */
function tokensOf(text: string): readonly string[] {
  const before = known.get(text);
  if (before !== undefined) return before;
  const tokens: readonly string[] = text.match(TOKEN) ?? [];
  known.set(text, tokens);
  return tokens;
}

function changeTokens(
  tokens: readonly string[],
  others: readonly string[],
  random: Random,
): readonly string[] {
  const at = random(tokens.length + 1);
  const to = Math.min(tokens.length, at + 1 + random(12));
  const part = tokens.slice(at, to);
  const before = tokens.slice(0, at);
  const after = tokens.slice(to);
  switch (random(8)) {
    case 0:
      return [...before, ...after];
    case 1:
      return [
        ...before,
        ...Array(2 + random(30))
          .fill(part)
          .flat(),
        ...after,
      ];
    case 2:
      return [...before, oneOf(NUMBERS, random), ...tokens.slice(at + 1)];
    case 3:
      return [...before, oneOf(SIGNS, random), ...tokens.slice(at)];
    case 4:
      return before;
    case 5:
      return [...after, ...part, ...before];
    case 6: {
      const other = tokensOf(oneOf(others, random));
      const from = random(other.length + 1);
      return [...before, ...other.slice(from, from + 20), ...after];
    }
    default:
      return [...before, ...[...part].reverse(), ...after];
  }
}

/** Bytes with some of them set, taken out or doubled. */
export function mutateBytes(bytes: Uint8Array, random: Random): Uint8Array {
  let changed = [...bytes];
  for (let changes = 1 + random(6); changes > 0; changes -= 1) {
    const at = random(changed.length + 1);
    const count = 1 + random(8);
    const how = random(4);
    if (how === 0) changed.splice(at, 1, random(256));
    else if (how === 1) changed.splice(at, count);
    else if (how === 2) changed.splice(at, 0, ...changed.slice(at, at + count));
    else changed = changed.slice(0, at);
  }
  return Uint8Array.from(changed);
}

/** The tracks of a MIDI file, its header left out. */
function tracksOf(file: Uint8Array): Uint8Array[] {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const tracks: Uint8Array[] = [];
  for (let at = 14; at + 8 <= file.length; ) {
    const end = at + 8 + view.getUint32(at + 4);
    tracks.push(file.slice(at + 8, end));
    at = end;
  }
  return tracks;
}

/** A MIDI file whose tracks hold other events, with chunks that are whole. */
export function mutateMidi(
  file: Uint8Array,
  write: (tracks: readonly Uint8Array[]) => Uint8Array,
  random: Random,
): Uint8Array {
  const tracks = tracksOf(file);
  const at = random(tracks.length);
  const chosen = tracks[at];
  if (chosen === undefined) return file;
  tracks[at] = random(2) === 0 ? mutateBytes(chosen, random) : addEvent(chosen, random);
  if (random(4) === 0) tracks.push(oneOf(tracks, random));
  return write(tracks);
}

/** Puts an event of any kind, with data of any value, somewhere into a track. */
function addEvent(track: Uint8Array, random: Random): Uint8Array {
  const delta = random(3) === 0 ? [0xff, 0xff, random(128)] : [random(128)];
  const status = 0x80 + random(0x70);
  const meta = [
    0xff,
    oneOf([1, 3, 6, 0x2f, 0x51, 0x58, 0x59], random),
    3,
    random(256),
    random(9),
    7,
  ];
  const event = random(2) === 0 ? meta : [status, random(128), random(128)];
  const at = random(track.length + 1);
  return Uint8Array.from([...track.slice(0, at), ...delta, ...event, ...track.slice(at)]);
}
