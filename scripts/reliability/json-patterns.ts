import { type Pattern, textPattern, textPatterns } from './pattern.js';

/** JSON that repeats one thing, broken off or whole. */
export const JSON_PATTERNS: readonly Pattern[] = [
  ...textPatterns({
    'lists in each other': '[',
    'lists in each other, closed': '[]',
    'objects in each other': '{"a":',
    quotes: '"',
    digits: '1',
    spaces: ' ',
    lines: '\n',
    commas: ',',
    letters: 'n',
    'signs of escape': '\\u0000',
  }),
  textPattern('numbers', '1,', '{"notes":[', '1]}'),
  textPattern('fields', (at) => `"f${at}":0,`, '{', '"id":"a"}'),
  textPattern('one field again', '"id":"a",', '{', '"id":"a"}'),
  textPattern('bars', '{"chords":[{"chord":"G7"}]},', '{"bars":[', '{}]}'),
  textPattern('chords', '{"start":0,"duration":1,"symbol":"G7"},', '{"chords":[', '{}]}'),
  textPattern('holes', '{"blow":60,"draw":62},', '{"holes":[', '{}]}'),
  textPattern('soundings', '"-2",', '{"skills":[', '"4"]}'),
  textPattern('notes of a phrase', '{"at":0,"length":1,"degree":"1"},', '{"notes":[', '{}]}'),
  textPattern('a long name', 'x', '{"id":"', '"}'),
  textPattern('a long list of nothing', 'null,', '[', 'null]'),
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
  ...JSON_PATTERNS,
];
