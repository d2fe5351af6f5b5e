import { type Pattern, textPattern, textPatterns } from './pattern.js';

const ATTRIBUTES =
  '<attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes>';
const HEAD = '<score-partwise><part-list><score-part id="P1"/></part-list><part id="P1">';
const TAIL = '</part></score-partwise>';
const note = (inside = ''): string =>
  `<note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration>${inside}</note>`;
const bar = (inside: string): string => `<measure>${ATTRIBUTES}${inside}</measure>`;
const ending = (number: number | string): string =>
  `<measure><barline location="left"><ending number="${number}" type="start"/></barline>${note()}<barline location="right"><ending number="${number}" type="stop"/><repeat direction="backward"/></barline></measure>`;

/** MusicXML that repeats one thing. */
export const XML_PATTERNS: readonly Pattern[] = [
  ...textPatterns(
    {
      bars: bar(note()),
      'a staff a bar': (at) => bar(note(`<staff>${at + 1}</staff>`)),
      'bars to repeat': `<measure>${note()}<barline location="right"><repeat direction="backward"/></barline></measure>`,
      'endings alike': ending('1,2'),
      'endings of sixteen numbers': ending([...Array(16).keys()].map((at) => at + 1).join()),
      'jumps back': `<measure>${note()}<sound dacapo="yes"/></measure>`,
      'empty bars': '<measure/>',
    },
    HEAD,
    TAIL,
  ),
  ...textPatterns(
    {
      notes: note(),
      'notes at once': note('<chord/>'),
      ties: note('<tie type="start"/>'),
      'grace notes': '<note><grace/><pitch><step>C</step><octave>4</octave></pitch></note>',
      words: note('<lyric><text>la</text></lyric>'),
      'steps back': '<backup><duration>1</duration></backup>',
      chords: '<harmony><root><root-step>C</root-step></root><kind>major</kind></harmony>',
      directions: '<direction><direction-type><words>D.C.</words></direction-type></direction>',
      tempos: '<sound tempo="90"/>',
      'unknown elements': '<x/>',
      comments: '<!-- x -->',
      entities: '&amp;',
      'character data': '<![CDATA[x]]>',
      text: 'x ',
    },
    `${HEAD}<measure>${ATTRIBUTES}`,
    `</measure>${TAIL}`,
  ),
  textPattern('elements in each other', '<x>', '<score-partwise>'),
  textPattern('attributes', (at) => ` a${at}="x"`, '<score-partwise', '/>'),
  textPattern('one attribute again', ' a="x"', '<score-partwise', '/>'),
  {
    name: 'parts',
    ofSize: (bytes) => {
      const ids = Array.from({ length: bytes / 60 }, (_, at) => `P${at}`);
      const list = ids.map((id) => `<score-part id="${id}"/>`).join('');
      const parts = ids.map((id) => `<part id="${id}"><measure/></part>`).join('');
      return `<score-partwise><part-list>${list}</part-list>${parts}</score-partwise>`;
    },
  },
  textPattern(
    'bars of parts turned',
    (at) => `<measure><part id="P${at % 50}">${note()}</part></measure>`,
    '<score-timewise>',
    '</score-timewise>',
  ),
];
