import { type Pattern, textPattern, textPatterns } from './pattern.js';

/** Tablature that repeats one thing. */
export const TAB_PATTERNS: readonly Pattern[] = textPatterns({
  blows: '4 ',
  draws: '-4 ',
  bends: "-3'' ",
  'words all unlike': (at) => `-${(at % 9) + 1}:${at + 1}/9999 `,
  lengths: '-2:1/2 ',
  rests: 'r:2 ',
  chords: '(-1-2-3) ',
  'open brackets': '(',
  'open brackets and spaces': '( 4 ',
  brackets: '()',
  'bar lines': '| ',
  lines: '4\n',
  'empty lines': '\n',
  'holes in one word': '4',
  'holes joined': '4&',
  'signs of bend': "'",
  colons: ':',
  'lengths in one word': ':1',
  arrows: '4↑ 4↓ ',
  letters: '4B 3D ',
  underlines: '4\u0332 4 ',
  'no tab': 'x ',
  spaces: ' ',
});

/** Forms and chord charts that repeat one thing. */
export const FORM_PATTERNS: readonly Pattern[] = textPatterns({
  bars: 'I7 | ',
  'chords in one bar': 'I7 ',
  'bar lines': '|',
  repeats: '|: I7 :|',
  'open repeats': '|: ',
  'closed repeats': ':| ',
  endings: '1. I7 | ',
  'numbers of endings': '1.',
  'bars again': '% | ',
  'beats again': '/ ',
  lines: 'I7\n',
  'empty lines': '\n',
  'chords by name': 'G7 | ',
  'chords over a bass': 'C/E ',
  'chords all unlike': (at) => `C${at} | `,
  colons: ':',
  'one letter': 'x',
  spaces: ' ',
  metres: '12/8 ',
  'no chords': 'N.C. | ',
});

/** Scala files that repeat one thing. */
export const SCALA_PATTERNS: readonly Pattern[] = [
  ...textPatterns(
    {
      ratios: '3/2\n',
      cents: '700.0\n',
      comments: '! x\n',
      'empty lines': '\n',
      remarks: '3/2 x\n',
      spaces: ' ',
      digits: '9',
      slashes: '/',
      points: '.',
      letters: 'x',
      signs: '-',
      returns: '\r\n',
    },
    'a scale\n12\n',
  ),
  ...textPatterns({
    'comments and nothing else': '!\n',
    'a long description': 'x',
    'a long number of notes': '1',
  }),
  textPattern('a count as large as the file', '3/2\n', 'a scale\n1024\n'),
];

const noteOf = (at: number): string =>
  `{"start":${at * 960},"duration":960,"pitch":${60 + (at % 12)}}`;

/** JSON of a line that repeats one thing. */
export const LINE_PATTERNS: readonly Pattern[] = [
  textPattern(
    'notes',
    (at) => `${at === 0 ? '' : ','}${noteOf(at)}`,
    '{"metre":"4/4","pickup":0,"notes":[',
    ']}',
  ),
  textPattern('notes in each other', '[', '{"notes":'),
  textPattern('objects in each other', '{"notes":'),
  textPattern('a long title', 'x', '{"metre":"4/4","pickup":0,"notes":[],"title":"', '"}'),
  textPattern('fields', (at) => `"f${at}":0,`, '{', '"metre":"4/4","pickup":0,"notes":[]}'),
  textPattern(
    'notes at once',
    (at) => `${at === 0 ? '' : ','}{"start":0,"duration":1,"pitch":60}`,
    '{"metre":"4/4","pickup":0,"notes":[',
    ']}',
  ),
  ...textPatterns({
    digits: '1',
    quotes: '"',
    brackets: '[]',
    spaces: ' ',
    letters: 'n',
    commas: ',',
  }),
];

/** What people type, of no length that anyone would. */
export const NAME_PATTERNS: readonly Pattern[] = textPatterns({
  sharps: '#',
  flats: 'b',
  'the letter C': 'C',
  digits: '7',
  slashes: '/',
  brackets: '(',
  spaces: ' ',
  minors: 'm',
  words: 'add9 ',
  'C and spaces': 'C ',
  lines: '\n',
  signs: '+-',
  degrees: 'IV',
  suffixes: 'maj7',
  commas: ',',
  points: '.',
  'letters of no name': 'x',
  'signs beyond the basic plane': '𝄞',
  'hole 1': 'hole 1 ',
  'C on G': 'C/G',
});

const NO_END = {
  'lists in each other': '[',
  'objects in each other': '{"a":',
  quotes: '"',
  digits: '1',
  spaces: ' ',
  'signs of escape': '\\u0000',
};

/** JSON that repeats one thing, whole and broken off. */
export const JSON_PATTERNS: readonly Pattern[] = [
  ...textPatterns(NO_END),
  textPattern('numbers', '1,', '{"notes":[', '1]}'),
  textPattern('fields', (at) => `"f${at}":0,`, '{', '"id":"a"}'),
  textPattern('bars', '{"chords":[{"chord":"G7"}]},', '{"bars":[', '{}]}'),
  textPattern('holes', '{"blow":60,"draw":62},', '{"holes":[', '{}]}'),
  textPattern('soundings', '"-2",', '{"soundings":[', '"4"]}'),
  textPattern('a long name', 'x', '{"id":"', '"}'),
];
