// What a consumer's compiler must see: the packages' own types, not `any`.
import { midi, ReedplateError } from '@reedplate/pitch';
import * as reedplate from 'reedplate';

export const middleC: number = midi('C4');

// @ts-expect-error a MIDI number is no text
export const notText: string = midi('C4');

// @ts-expect-error a note is named by text
export const notNumber = (): number => midi(60);

export const sameFunction: typeof midi = reedplate.midi;

export const codeOf = (error: unknown): string | undefined =>
  error instanceof ReedplateError ? error.code : undefined;

// @ts-expect-error no such export
export const missing = reedplate.noSuchExport;
