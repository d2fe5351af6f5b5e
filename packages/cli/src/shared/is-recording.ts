import { kindOfFile } from '@reedplate/pitch';

/** Whether the bytes of a file are a recording that can be heard: WAV. */
export const isRecording = (bytes: Uint8Array): boolean => kindOfFile(bytes) === 'a WAV sound file';
