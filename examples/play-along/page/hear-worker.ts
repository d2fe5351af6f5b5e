import type { Harp } from '@reedplate/layout';
import { hearNotes } from '@reedplate/listen';

/** What is to be heard, and on which harp. */
export interface HearRequest {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  readonly harp: Harp;
  readonly level: 'natural' | 'bends' | 'overbends';
}

self.onmessage = ({ data }: MessageEvent<HearRequest>) => {
  const { samples, sampleRate, harp, level } = data;
  try {
    self.postMessage(hearNotes({ samples, sampleRate }, { harp, level }).notes);
  } catch (error) {
    self.postMessage(error instanceof Error ? error.message : 'nothing could be heard');
  }
};
