/** A program that ends with an error of ours, of each package a program may load; `it` is the package. */
export const UNCAUGHT = [
  row('@reedplate/pitch', 'KEY_UNKNOWN', "it.parseKey('H')"),
  row(
    '@reedplate/line',
    'LINE_INVALID',
    "it.makeLine([{ start: 0, duration: 960, pitch: 'x'.repeat(1e6) }])",
  ),
  row('@reedplate/form', 'FORM_SYNTAX', "it.parseForm('| I7 | what |')"),
  row(
    '@reedplate/layout',
    'HARP_INVALID',
    "it.soundings({ holes: Array(100000).fill(0), firstPosition: 'C' })",
  ),
  row('@reedplate/position', 'OPTION_UNKNOWN', "it.pickHarps('G', { chrat: 'basic' })"),
  row('@reedplate/tab', 'TAB_SYNTAX', "it.parseTab('4 '.repeat(20000) + '??')"),
  row('@reedplate/chord-tone', 'CHORD_UNKNOWN', "it.targetsOf('c7', 'C')"),
  row('@reedplate/playability', 'MODEL_UNKNOWN', "it.effortModelById('beginer')"),
  row(
    '@reedplate/interchange',
    'FORMAT_UNKNOWN',
    "it.detectFormat('Dear reader\\n'.repeat(100000))",
  ),
  row(
    '@reedplate/interchange',
    'MUSICXML_MALFORMED',
    "it.readMusicXml('<score-partwise>' + '<a>'.repeat(90))",
  ),
  row('@reedplate/backing', 'CHART_INVALID', 'it.makeBacking({ spans: [] })'),
  row('@reedplate/practice', 'PHRASE_UNKNOWN', "it.phraseById('no-such-phrase')"),
  row('@reedplate/picture', 'HARP_INVALID', 'it.harpPicture({ holes: [] })'),
  row('@reedplate/files', 'FILE_UNREADABLE', "it.readText('/no/such/file')"),
  row('@reedplate/study', 'STUDY_INVALID', 'it.makeStudySetup({ positions: [] })'),
  row('reedplate', 'KEY_UNKNOWN', "it.makeChart('basic', { key: 'G' })"),
] as const;

function row<Code extends string>(packageName: string, code: Code, program: string) {
  return { packageName, code, program };
}
