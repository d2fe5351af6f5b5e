import * as reedplate from './everything.fixture.js';
import { BAND, SOUND, WAV } from './inputs.fixture.js';

const chart = reedplate.makeChart('quick-change', 'G', { tempo: 120 });
const line = reedplate.makeLine([{ start: 0, duration: 960, pitch: 67 }], { tempo: 120 });
const backing = reedplate.makeBacking(chart);
const [event] = reedplate.bandEvents(backing) as [reedplate.BandEvent];

/** Right calls of what plays a band, and of what hears and keeps sound. */
export const BAND_CALLS = {
  bandEvents: [backing],
  bandOfLines: [[line]],
  eventSound: [event],
  hearBand: [BAND],
  hearNotes: [SOUND],
  makeBacking: [chart],
  readWav: [WAV],
  renderBand: [{ line, chart }],
  summariseBacking: [backing],
  swingRatio: ['band', 120],
  writeWav: [SOUND],
} as const;
