// What writers return goes where programs send files, under every TypeScript from 5.0 on: their
// `Uint8Array` is generic from 5.7 on, and `Blob` then takes no bytes that may be shared.
import { readMidi, readPiece, writeMidi, writePiece } from '@reedplate/interchange';
import { makeLine } from '@reedplate/line';

const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
const bytes = writeMidi({ line });
const file = writePiece({ line }, 'musicxml');

export const blob: Blob = new Blob([bytes, file], { type: 'audio/midi' });
export const response: Response = new Response(bytes);
export const also: Response = new Response(file);
export const send = (): Promise<Response> => fetch('/', { method: 'POST', body: bytes });
export const buffer: ArrayBuffer = bytes.buffer;
export const plain: Uint8Array = bytes;

export const received = async (answer: Response): Promise<number> =>
  readMidi(await answer.arrayBuffer()).line.notes.length;
export const dropped = async (given: File): Promise<number> =>
  readPiece(await given.arrayBuffer()).parts.length + readPiece(await given.text()).parts.length;
export const kept = (data: Uint8Array): number => readMidi(data).parts.length;

// @ts-expect-error a MIDI file is no text
export const text = readMidi('MThd');
