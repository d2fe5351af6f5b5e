import type { NoteInSeconds } from '@reedplate/line';
import type { HearRequest } from './hear-worker.js';

/** Something that hears a player. Seconds are those of the audio clock. */
export interface Ears {
  /** What was played from one second to another, counted from the first. */
  readonly notesBetween: (from: number, to: number) => Promise<readonly NoteInSeconds[]>;
  /** Samples, where there are any. */
  readonly samplesBetween: (from: number, to: number) => Float32Array<ArrayBuffer>;
  readonly close: () => void;
}

/** What is known of the player. */
export type Known = Pick<HearRequest, 'harp' | 'level'>;

interface Chunk {
  readonly from: number;
  readonly samples: Float32Array;
}

/** Seconds of sound that are kept: the longest chorus that is judged. */
const KEPT = 180;

/** Opens the microphone, with nothing of what makes speech clear and music wrong. */
export async function openMicrophone(context: AudioContext, known: () => Known): Promise<Ears> {
  const audio = { echoCancellation: false, noiseSuppression: false, autoGainControl: false };
  const stream = await navigator.mediaDevices.getUserMedia({ audio });
  await context.audioWorklet.addModule(new URL('recorder.js', document.baseURI));
  const recorder = new AudioWorkletNode(context, 'recorder');
  const chunks: Chunk[] = [];
  const begun = new Promise<void>((resolve) => {
    recorder.port.onmessage = ({ data }: MessageEvent<Chunk>) => {
      chunks.push(data);
      while ((chunks[0]?.from ?? 0) < data.from - KEPT) chunks.shift();
      resolve();
    };
  });
  // A node that leads nowhere is not asked for samples.
  const mute = context.createGain();
  mute.gain.value = 0;
  const source = context.createMediaStreamSource(stream);
  source.connect(recorder).connect(mute).connect(context.destination);
  await begun;
  const samplesBetween = (from: number, to: number): Float32Array<ArrayBuffer> =>
    joined(chunks, { from, to }, context.sampleRate);
  return {
    samplesBetween,
    notesBetween: (from, to) =>
      hear({ samples: samplesBetween(from, to), sampleRate: context.sampleRate, ...known() }),
    close: () => {
      source.disconnect();
      for (const track of stream.getTracks()) track.stop();
    },
  };
}

function joined(
  chunks: readonly Chunk[],
  { from, to }: { readonly from: number; readonly to: number },
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.max(0, Math.round((to - from) * sampleRate)));
  for (const chunk of chunks) {
    const place = Math.round((chunk.from - from) * sampleRate);
    const first = Math.max(0, -place);
    const room = samples.length - place;
    const part = chunk.samples.subarray(first, Math.max(first, room));
    if (part.length > 0) samples.set(part, place + first);
  }
  return samples;
}

let worker: Worker | undefined;

/** Hears notes beside the page, which goes on meanwhile. */
function hear(request: HearRequest): Promise<readonly NoteInSeconds[]> {
  worker ??= new Worker(new URL('./hear-worker.ts', import.meta.url), { type: 'module' });
  const hearing = worker;
  return new Promise((resolve, reject) => {
    hearing.onmessage = ({ data }: MessageEvent<readonly NoteInSeconds[] | string>) =>
      typeof data === 'string' ? reject(new Error(data)) : resolve(data);
    hearing.postMessage(request, [request.samples.buffer]);
  });
}

/** Opens every MIDI instrument that is plugged in. */
export async function openMidi(context: AudioContext): Promise<Ears> {
  if (!('requestMIDIAccess' in navigator)) throw new Error('this browser has no Web MIDI');
  const access = await navigator.requestMIDIAccess();
  const held = new Map<number, { readonly from: number; readonly velocity: number }>();
  const played: { from: number; to: number; pitch: number; velocity: number }[] = [];
  const listen = ({ data, timeStamp }: MIDIMessageEvent): void => {
    const [status = 0, pitch = 0, velocity = 0] = data ?? [];
    const now = context.currentTime - (performance.now() - timeStamp) / 1000;
    const kind = status & 0xf0;
    const before = held.get(pitch);
    if (before !== undefined && (kind === NOTE_OFF || kind === NOTE_ON)) {
      played.push({ ...before, to: now, pitch });
      held.delete(pitch);
      while ((played[0]?.to ?? now) < now - KEPT) played.shift();
    }
    if (kind === NOTE_ON && velocity > 0) held.set(pitch, { from: now, velocity });
  };
  const inputs = [...access.inputs.values()];
  if (inputs.length === 0) throw new Error('no MIDI instrument is plugged in');
  for (const input of inputs) input.addEventListener('midimessage', listen);
  return {
    samplesBetween: () => new Float32Array(),
    notesBetween: async (from, to) =>
      played
        .filter((note) => note.to > from && note.from < to)
        .map((note) => ({
          start: Math.max(0, note.from - from),
          duration: Math.max(0.01, note.to - Math.max(from, note.from)),
          pitch: note.pitch,
          velocity: note.velocity,
        })),
    close: () => {
      for (const input of inputs) input.removeEventListener('midimessage', listen);
    },
  };
}

const NOTE_ON = 0x90;
const NOTE_OFF = 0x80;
