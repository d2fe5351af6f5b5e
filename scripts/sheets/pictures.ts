import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { writeTab } from '@reedplate/interchange';
import { makeHarp } from '@reedplate/layout';
import {
  breathPicture,
  chartPicture,
  handoutPage,
  harpPicture,
  linePicture,
  type Picture,
  positionPicture,
  scorePicture,
} from '@reedplate/picture';
import { explainPath } from '@reedplate/playability';
import { practiceLine } from '@reedplate/practice';
import { lineOfTab, parseTimedTab } from '@reedplate/tab';
import { phraseLines } from '../../packages/cli/src/verbs/handout/phrase-lines.js';

const chart = makeChart('quick-change', 'G', { tempo: 96 });
const harp = makeHarp('C');

/** A chorus of our own: it follows at first, misses a change, clashes, rests, and comes home. */
const TAKE = lineOfTab(
  parseTimedTab(
    "-2 -3':1/2 -3:1/2 -4:2 +4 -5:1/2 +5:1/2 +4:2 -2:1/2 -3':1/2 -3 -4:2 -4' -5 -4 -3'' " +
      "+4:2 +5 -6 -3:2 -4':2 -2:1/2 -3':1/2 -3 -4:2 r:4 " +
      "-4:2 -5 -6 +5 +4:3 -2 -3' -3 -4 -4:2 -1:2",
  ),
  harp,
  { title: 'A chorus in G', tempo: 96 },
);

/** A picture of the page, and the command that draws it. */
export interface ShownPicture {
  readonly name: string;
  readonly command: string;
  readonly picture: Picture;
}

/** The six pictures of the page. */
export function shownPictures(): readonly ShownPicture[] {
  const explained = explainPath(TAKE, harp);
  if (!explained.playable) throw new Error('the chorus of the page cannot be played');
  return [
    {
      name: 'harp',
      command: 'reedplate picture harp --harp C --key G --chord G7 -o harp.svg',
      picture: harpPicture(harp, { key: 'G', chord: 'G7' }),
    },
    {
      name: 'chart',
      command: 'reedplate picture chart --form quick-change --key G --harp C -o chart.svg',
      picture: chartPicture(chart, { harp }),
    },
    {
      name: 'line',
      command:
        'reedplate picture line --take chorus.json --harp C --key G --form quick-change -o line.svg',
      picture: linePicture(TAKE, harp, { chart, bars: [1, 4] }),
    },
    {
      name: 'score',
      command:
        'reedplate picture score --take chorus.json --key G --form quick-change -o score.svg',
      picture: scorePicture(scoreLine(TAKE, chart), chart),
    },
    {
      name: 'breath',
      command: 'reedplate picture breath --take chorus.json --harp C -o breath.svg',
      picture: breathPicture(explained, TAKE),
    },
    {
      name: 'position',
      command: 'reedplate picture position --key G --harp C -o position.svg',
      picture: positionPicture('G', { harps: [harp] }),
    },
  ];
}

/** The handout of the page, as the command writes it: three lines to practise, a riff and a turnaround. */
export function shownHandout(): string {
  const practice = (['roots', 'chords', 'arpeggios'] as const).map((kind) => {
    const { line, steps } = practiceLine(chart, harp, { kind });
    const title = kind.charAt(0).toUpperCase() + kind.slice(1);
    return { title, line, soundings: steps.map(({ soundings }) => soundings) };
  });
  const phrases = phraseLines(undefined, { chart, harp, level: 'bends' });
  return handoutPage(chart, harp, {
    title: 'The changes of a quick change in G',
    lines: [...practice, ...phrases],
  });
}

/** The tab of the page. */
export function shownTab(): string {
  const { line, steps } = practiceLine(chart, harp, { kind: 'arpeggios' });
  return writeTab({ line, chart, key: 'G' }, harp, {
    title: 'Arpeggios',
    subtitle: 'C harp, 2nd position',
    soundings: steps.map(({ soundings }) => soundings),
  });
}
