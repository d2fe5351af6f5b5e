/** Publications that forms and turnarounds rest on, as the catalogue names them. */
export const SOURCES = {
  twelveBar: 'Wikipedia, "Twelve-bar blues"',
  twelveBarJazz:
    'Wikipedia, "Twelve-bar blues", section "In jazz" of editions up to 2010 (later ones have "Bebop blues")',
  twelveBarBebop: 'Wikipedia, "Twelve-bar blues", section "Bebop blues" (read at second hand)',
  twelveBarMinor: 'Wikipedia, "Twelve-bar blues", section "Minor blues" (read at second hand)',
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
