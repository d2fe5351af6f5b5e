/** Publications that forms and turnarounds rest on, as the catalogue names them. */
export const SOURCES = {
  twelveBar: 'Wikipedia, "Twelve-bar blues"',
  twelveBarJazz:
    'Wikipedia, "Twelve-bar blues", section "In jazz" of editions up to 2010 (later ones have "Bebop blues")',
  bird: 'Wikipedia, "Bird changes", edition of October 2018',
  bebop: 'guitar4free, "Bebop Blues"',
  minorFlatSix: 'Jazz Piano Blog, "How to play a minor blues: 3 tips"',
  minorPlain: '"10 Essential Minor Blues Songs", "Minor blues chords: basic changes"',
  eightBar: 'Wikipedia, "Eight-bar blues"',
  eightBarOlder: 'Wikipedia, "Eight-bar blues", an older revision',
  sixteenBar: 'Wikipedia, "Sixteen-bar blues"',
  sixteenBarOlder: 'Wikipedia, "Sixteen-bar blues", an older revision',
  ragtime: 'Wikipedia, "Ragtime progression"',
  minor: 'OnMusic Dictionary, "12-bar minor blues"',
  magazine: 'Premier Guitar, "Style Guide: Essential Blues Progressions", p. 3',
  magazineSecond:
    'common practice for the second eight-bar tune that Premier Guitar, "Style Guide: Essential Blues Progressions", p. 3 names (its figures were not read)',
  coker: 'Coker, Improvising Jazz, 1964 (in a transcription)',
  doubled: 'Jarrett and Day, Music Composition For Dummies, 2008, p. 153',
  commonPractice: 'common practice',
  memory: 'from memory',
} as const;
