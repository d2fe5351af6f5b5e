import { type Pattern, textPattern, textPatterns } from './pattern.js';

const HEAD = 'X:1\nM:4/4\nL:1/4\nK:C\n';

/** ABC that repeats one thing. */
export const ABC_PATTERNS: readonly Pattern[] = [
  ...textPatterns(
    {
      bars: 'CDEF|',
      'lines of bars': 'CDEF|GABc|\n',
      'one bar': 'C',
      'chord symbols and no note': '"C7"',
      'chord symbols and bar lines': '"C7"|',
      'tempos between chord symbols': '"C7"[Q:1/4=90]',
      'keys between notes': 'C[K:G]',
      'metres between notes': 'C[M:3/4]',
      'a voice a line': (at) => `V:${at}\nC|\n`,
      'a metre for each of many voices': (at) => (at % 2 === 0 ? `V:${at}\n` : `M:${at}/4\n`),
      chords: '[CEG]2',
      decorations: '!coda!',
      'ties after decorations': '!fine!-',
      'dots after decorations': 'S>',
      'grace notes': '{gab}C',
      triplets: '(3CDE',
      ties: 'C-',
      layers: '&C',
      repeats: '|:C:|',
      'endings of two numbers': '[1,2C:|',
      'endings of sixteen numbers': '[1-16C:|',
      'rests of 999 bars': 'Z999|',
      'words below': 'w:la la\n',
      'signs out of use': '$#',
      'open quotation marks': '"',
      'open brackets': '[(',
      'lengths of slashes': 'C///',
      'text to skip': '%%begintext\nC|\n%%endtext\n',
      'labels of parts': (at) => `P:${String.fromCharCode(65 + (at % 26))}\nC|\n`,
    },
    HEAD,
  ),
  textPattern('clefs in a key', 'clef=', 'X:1\nK:C '),
  textPattern('names of a voice', 'name="', 'X:1\nK:C\nV:1 '),
  textPattern('beats of a tempo', '1/4 ', 'X:1\nQ:', '\nK:C\n'),
  textPattern('beats of a tempo, run together', '111/', 'X:1\nQ:1/', '\nK:C\n'),
  textPattern('tunes', (at) => `X:${at}\nK:C\nC|\n\n`),
  textPattern('fields of the file', 'T:x\n', '', '\nX:1\nK:C\nC|\n'),
  {
    name: 'fields of the file, and tunes',
    ofSize: (bytes) =>
      `${'T:x\n'.repeat(bytes / 8)}\n${'X:1\nK:C\nC|\n\n'.repeat(Math.ceil(bytes / 26))}`,
  },
  {
    name: 'a part played again and again',
    ofSize: (bytes) => `X:1\nP:(A9)9\nK:C\nP:A\n${'C|'.repeat(bytes / 2)}`,
  },
];
