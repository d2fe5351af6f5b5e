// Publications that forms and turnarounds rest on, as the catalogue names them.

export const TWELVE_BAR = 'Wikipedia, "Twelve-bar blues"';
export const TWELVE_BAR_JAZZ =
  'Wikipedia, "Twelve-bar blues", section "In jazz" of editions up to 2010 (later ones have "Bebop blues")';
export const BIRD = 'Wikipedia, "Bird changes", edition of October 2018';
export const BEBOP = 'guitar4free, "Bebop Blues"';
export const MINOR_FLAT_SIX = 'Jazz Piano Blog, "How to play a minor blues: 3 tips"';
export const MINOR_PLAIN = '"10 Essential Minor Blues Songs", "Minor blues chords: basic changes"';
export const EIGHT_BAR = 'Wikipedia, "Eight-bar blues"';
export const EIGHT_BAR_OLDER = 'Wikipedia, "Eight-bar blues", an older revision';
export const SIXTEEN_BAR = 'Wikipedia, "Sixteen-bar blues"';
export const SIXTEEN_BAR_OLDER = 'Wikipedia, "Sixteen-bar blues", an older revision';
export const RAGTIME = 'Wikipedia, "Ragtime progression"';
export const MINOR = 'OnMusic Dictionary, "12-bar minor blues"';
export const MAGAZINE = 'Premier Guitar, "Style Guide: Essential Blues Progressions", p. 3';
export const MAGAZINE_SECOND =
  'common practice for the second eight-bar tune that Premier Guitar, "Style Guide: Essential Blues Progressions", p. 3 names (its figures were not read)';
export const COKER = 'Coker, Improvising Jazz, 1964 (in a transcription)';
export const DOUBLED = 'Jarrett and Day, Music Composition For Dummies, 2008, p. 153';
export const COMMON_PRACTICE = 'common practice';
export const MEMORY = 'from memory';
