import * as r from 'reedplate';
import { describe, expect, test } from 'vitest';

const chart = r.makeChart('basic', 'G');
const line = r.makeLine([{ start: 0, duration: 960, pitch: 67 }]);
const harp = r.makeHarp('C');
/** As plain JavaScript sees the functions: nothing is asked of what they are given. */
const loose: {
  readonly [Name in 'bestPath' | 'makeChart' | 'makeHarp' | 'pickHarps']: (
    ...given: readonly unknown[]
  ) => unknown;
} = r as never;

/** What is written by a slip, and all that is said of it. */
const SLIPS: readonly (readonly [slip: string, call: () => unknown, message: string])[] = [
  [
    'makeLine([], null)',
    () => r.makeLine([], null as never),
    'null is not one of the choices: expected an object with options of makeLine: metre, pickup, countIn, tempo, tempoChanges, title',
  ],
  [
    `makeLine('C4')`,
    () => r.makeLine('C4' as never),
    '"C4" is not part of a valid line (notes): expected a list of notes',
  ],
  [
    'makeLine([67])',
    () => r.makeLine([67] as never),
    '67 is not part of a valid line (notes[0]): expected a note with start, duration and pitch',
  ],
  [
    `makeLine([{ pitch: 'C4', start: 0, duration: 960 }])`,
    () => r.makeLine([{ pitch: 'C4', start: 0, duration: 960 }] as never),
    '"C4" is not part of a valid line (notes[0].pitch): expected a MIDI note number, a whole number from 0 to 127',
  ],
  [
    'makeLine([{ pitch: 60, start: 0.5, duration: 960 }])',
    () => r.makeLine([{ pitch: 60, start: 0.5, duration: 960 }]),
    '0.5 is not part of a valid line (notes[0].start): expected whole ticks, a whole number from 0 to 1099511627776; did you mean 1?',
  ],
  [
    'makeLine([], { metre: 4 })',
    () => r.makeLine([], { metre: 4 } as never),
    '4 is not a metre: expected a time signature such as 4/4, 3/4, 6/8 or 12/8, of 1 to 32 units',
  ],
  [
    `makeLine([], { tempo: '120' })`,
    () => r.makeLine([], { tempo: '120' } as never),
    '"120" is not part of a valid line (tempo): expected felt beats a minute, above 0 and at most 1000',
  ],
  [`readLine('[')`, () => r.readLine('['), '"[" is not well-formed JSON: expected JSON text'],
  [
    'transposeLine([67], 2)',
    () => r.transposeLine([67] as never, 2),
    'a list of 1 is not part of a valid line: expected a line, as makeLine gives it',
  ],
  [
    `transposeLine(line, '2')`,
    () => r.transposeLine(line, '2' as never),
    '"2" is not a number in range: expected semitones, a whole number',
  ],
  [
    'secondsAt(960, {})',
    () => r.secondsAt(960, {}),
    'an object needs a tempo: expected a tempo in felt beats a minute: without one there are no seconds',
  ],
  [
    'secondsAt(960, null)',
    () => r.secondsAt(960, null as never),
    'null needs a tempo: expected a tempo in felt beats a minute: without one there are no seconds',
  ],
  [
    'tickAt({ bar: 1 }, line)',
    () => r.tickAt({ bar: 1 } as never, line),
    'nothing is not a number in range (bar 1): expected a beat on a tick, from 1 to less than 5, not before the line begins',
  ],
  [
    'makeTuning(null)',
    () => r.makeTuning(null as never),
    'null is not one of the choices: expected an object with options of makeTuning: id, aliases, name, use, source, label, labelPosition, blow, draw',
  ],
  [
    `makeTuning({ id: 'own', blow: 'C4', draw: 'H4' })`,
    () => r.makeTuning({ id: 'own', blow: 'C4', draw: 'H4' }),
    '"H4" is not part of a valid tuning (hole 1, breath draw): expected a note with its octave, such as C4 or Bb3',
  ],
  [
    `makeHarp('H')`,
    () => r.makeHarp('H' as never),
    '"H" is not a key: expected a tonic such as G, Bb or F#, with m for minor; did you mean B?',
  ],
  [
    'makeHarp()',
    () => loose.makeHarp(),
    'nothing is not a key: expected a tonic such as G, Bb or F#, with m for minor',
  ],
  [
    `makeHarp('c#m7')`,
    () => r.makeHarp('c#m7' as never),
    '"c#m7" is not a key: expected a tonic such as G, Bb or F#, with m for minor; did you mean C#m?',
  ],
  [
    `makeHarp('C', 'low')`,
    () => r.makeHarp('C', 'low' as never),
    '"low" is not one of the choices: expected an object with options of makeHarp: tuning, register, known',
  ],
  [
    `makeHarp('C', { tuning: 'natural' })`,
    () => r.makeHarp('C', { tuning: 'natural' }),
    '"natural" is not a tuning of the catalogue: expected the id of a tuning in the catalogue; did you mean natural-minor?',
  ],
  [
    `makeHarp('C', { key: 'G' })`,
    () => r.makeHarp('C', { key: 'G' } as never),
    '"key" is not one of the choices: expected an option of makeHarp: tuning, register, known',
  ],
  [
    'soundings(7)',
    () => r.soundings(7 as never),
    '7 is not part of a valid harp: expected a harp, or the name of one such as C or low F',
  ],
  [
    `soundings({ key: 'C' })`,
    () => r.soundings({ key: 'C' } as never),
    'an object is not part of a valid harp: expected a harp, or the name of one such as C or low F',
  ],
  [
    'soundings({ ...harp, holes: [null] })',
    () => r.soundings({ ...harp, holes: [null] } as never),
    'null is not part of a valid harp (holes[0]): expected a hole of a harp',
  ],
  [
    `soundings('C', { level: 'bend' })`,
    () => r.soundings('C', { level: 'bend' as never }),
    '"bend" is not one of the choices: expected a level, natural, bends, overbends, or a player; did you mean bends?',
  ],
  [
    `soundings('C', { level: null })`,
    () => r.soundings('C', { level: null as never }),
    'null is not one of the choices: expected a level, natural, bends, overbends, or a player',
  ],
  [
    `soundingsAt('C', 11, 'draw')`,
    () => r.soundingsAt('C', 11, 'draw'),
    '11 is not a hole of this harp (breath draw): expected a hole, 1 to 10',
  ],
  [
    `soundingsAt('C', 'draw', 3)`,
    () => r.soundingsAt('C', 'draw' as never, 3 as never),
    '3 is not one of the choices: expected a breath: blow, draw',
  ],
  [
    `soundingsOfPitch('C', 'G4')`,
    () => r.soundingsOfPitch('C', 'G4' as never),
    '"G4" is not a number in range: expected a MIDI note number, 0 to 127',
  ],
  [
    `parseHarp('low')`,
    () => r.parseHarp('low'),
    '"low" is not part of a valid harp: expected a key with an optional register before and tuning after it, such as low F',
  ],
  [
    'parseHarp(null)',
    () => r.parseHarp(null as never),
    'null is not part of a valid harp: expected a key with an optional register before and tuning after it, such as low F',
  ],
  [
    `makePlayer('natural')`,
    () => r.makePlayer('natural' as never),
    '"natural" is not part of a valid player (skills): expected a list with something in it',
  ],
  [
    `temperHarp('C', 'just')`,
    () => r.temperHarp('C', 'just' as never),
    '"just" is not a temperament of the catalogue: expected a temperament: equal, five-limit, seven-limit, nineteen-limit, five-limit-minor-chord, pythagorean-seventh, compromise',
  ],
  [
    'makeForm(bars, null)',
    () => r.makeForm([[{ numeral: 'I7', weight: 1 }]], null as never),
    'null is not one of the choices: expected an object with options of makeForm: id, name, description, metre, feel, use, source',
  ],
  [
    `makeForm('| I7 |')`,
    () => r.makeForm('| I7 |' as never),
    '"| I7 |" is not part of a valid form: expected a list of 1 to 1024 bars',
  ],
  [
    `parseForm('| I7 | H7 |')`,
    () => r.parseForm('| I7 | H7 |'),
    '"H7" cannot stand here in the notation of a form (bar 2, line 1, column 8): expected a Roman numeral such as I7 or iv, N.C., % or a bar line; did you mean I7?',
  ],
  [
    `parseForm('| G7 | C7 |')`,
    () => r.parseForm('| G7 | C7 |'),
    '"G7" cannot stand here in the notation of a form (bar 1, line 1, column 3): expected a Roman numeral such as I7, or a key in which to read chord names; did you mean I7?',
  ],
  [
    'recogniseForm({})',
    () => r.recogniseForm({} as never),
    'an object cannot stand here in the notation of a form: expected text of at most 100000 characters',
  ],
  [
    `recogniseForm(['G7', null])`,
    () => r.recogniseForm(['G7', null] as never),
    'null cannot stand here in the notation of a form: expected text of at most 100000 characters',
  ],
  [
    `makeChart('basic', { key })`,
    () => r.makeChart('basic', { key: 'G' } as never),
    'an object is not a key: expected a tonic such as G, Bb or F#, with m for minor',
  ],
  [
    `makeChart('basic')`,
    () => loose.makeChart('basic'),
    'nothing is not a key: expected a tonic such as G, Bb or F#, with m for minor',
  ],
  [
    `makeChart('G', 'basic')`,
    () => r.makeChart('G', 'basic' as never),
    '"G" is not a form of the catalogue: expected one of the 68 ids of the catalogue, such as basic or quick-change',
  ],
  [
    `makeChart('12-bar', 'G')`,
    () => r.makeChart('12-bar', 'G'),
    '"12-bar" is not a form of the catalogue: expected one of the 68 ids of the catalogue, such as basic or quick-change; did you mean basic?',
  ],
  [
    `makeChart('basic', 'G', 2)`,
    () => r.makeChart('basic', 'G', 2 as never),
    '2 is not one of the choices: expected an object with options of makeChart: metre, feel, tempo, choruses, pickup, intro, ending, breaks, known',
  ],
  [
    `makeChart('basic', 'G', { chorus: 2 })`,
    () => r.makeChart('basic', 'G', { chorus: 2 } as never),
    '"chorus" is not one of the choices: expected an option of makeChart: metre, feel, tempo, choruses, pickup, intro, ending, breaks, known; did you mean choruses?',
  ],
  [
    `makeChart('basic', 'G', { feel: 'swing' })`,
    () => r.makeChart('basic', 'G', { feel: 'swing' as never }),
    '"swing" is not one of the choices: expected a feel: straight, shuffle, slow-12/8',
  ],
  [
    `makeChart(12, 'G')`,
    () => r.makeChart(12 as never, 'G'),
    '12 is not part of a valid form: expected a form, or the id of one such as basic or quick-change',
  ],
  [
    `chordAt('basic', 0)`,
    () => r.chordAt('basic' as never, 0),
    '"basic" is not part of a valid chart: expected a chart, as makeChart gives it',
  ],
  [
    'chordAt(0, chart)',
    () => r.chordAt(0 as never, chart as never),
    '0 is not part of a valid chart: expected a chart, as makeChart gives it',
  ],
  [
    `withBreak('basic', 4)`,
    () => r.withBreak('basic', 4 as never),
    '4 is not a number in range (bars): expected a list of bars',
  ],
  [
    `varyForm('basic', 'minor')`,
    () => r.varyForm('basic', 'minor' as never),
    '"minor" is not one of the choices (variations): expected a list of variations',
  ],
  [
    `targetsOf('C', 'G7')`,
    () => r.targetsOf('C', 'G7' as never),
    '"G7" is not a key: expected a tonic such as G, Bb or F#, with m for minor; did you mean Gb?',
  ],
  [
    `targetsOf('g7', 'C')`,
    () => r.targetsOf('g7', 'C'),
    '"g7" is not a chord symbol: expected a capital root and a suffix, such as G7, Bbm or F#m7b5; did you mean G7?',
  ],
  [
    `targetsOf(null, 'C')`,
    () => r.targetsOf(null as never, 'C'),
    'null is not a chord symbol: expected a capital root and a suffix, such as G7, Bbm or F#m7b5',
  ],
  [
    `harpRows('C', null)`,
    () => r.harpRows('C', null as never),
    'null is not one of the choices: expected an object with options of harpRows: level, valved, known, key, chord',
  ],
  [
    'chordNow(chart, 960)',
    () => r.chordNow(chart, 960 as never),
    '960 is not a number in range: expected a place, by its tick or its seconds',
  ],
  [
    'scoreLine(chart, line)',
    () => r.scoreLine(chart as never, line as never),
    'nothing is not part of a valid chart (form): expected a chart, as makeChart gives it',
  ],
  [
    `scoreLine(line, 'basic')`,
    () => r.scoreLine(line, 'basic' as never),
    '"basic" is not part of a valid chart: expected a chart, as makeChart gives it',
  ],
  [
    `scoreLine(line, chart, 'C')`,
    () => r.scoreLine(line, chart, 'C' as never),
    '"C" is not one of the choices: expected an object with options of scoreLine: latency, swing, countIn, bars, harp, playedOnHarp, level, dialect, style, weights',
  ],
  [
    'pickHarps()',
    () => loose.pickHarps(),
    'nothing is not a key: expected a tonic such as G, Bb or F#, with m for minor',
  ],
  [
    `pickHarps('G', { level: 'expert' })`,
    () => r.pickHarps('G', { level: 'expert' as never }),
    '"expert" is not one of the choices: expected a level, natural, bends, overbends, or a player',
  ],
  [
    `pickHarps('G', { own: 'C' })`,
    () => r.pickHarps('G', { own: 'C' as never }),
    '"C" is not one of the choices: expected a list of at least one harp',
  ],
  [
    `pickHarps('G', { own: ['Q'] })`,
    () => r.pickHarps('G', { own: ['Q'] }),
    '"Q" is not a key: expected a tonic such as G, Bb or F#, with m for minor',
  ],
  [
    `planSetList(['G', 'C'])`,
    () => r.planSetList(['G', 'C'] as never),
    '"G" is not one of the choices (songs[0]): expected an object with options of a song: chart, numerals, scale, line, key, title',
  ],
  [
    `pickForKeys([{ keys: 'G' }])`,
    () => r.pickForKeys([{ keys: 'G' }] as never),
    '"keys" is not one of the choices (sections[0]): expected an option of a song: chart, numerals, scale, line, key, length; did you mean key?',
  ],
  [
    'bestPath(line)',
    () => loose.bestPath(line),
    'nothing is not part of a valid harp: expected a harp, or the name of one such as C or low F',
  ],
  [
    `bestPath('C', line)`,
    () => r.bestPath('C' as never, line as never),
    'an object is not part of a valid harp: expected a harp, or the name of one such as C or low F',
  ],
  [
    `bestPath(line, 'C', { model: 'expert' })`,
    () => r.bestPath(line, 'C', { model: 'expert' }),
    '"expert" is not an effort model of the catalogue: expected the id of an effort model: beginner, intermediate, advanced',
  ],
  [
    `fitHarps(line, 'C')`,
    () => r.fitHarps(line, 'C' as never),
    '"C" is not one of the choices: expected a list of at least one harp',
  ],
  [
    `practiceLine(chart, 'C', { kind: 'root' })`,
    () => r.practiceLine(chart, 'C', { kind: 'root' as never }),
    '"root" is not one of the choices: expected a kind of practice line: roots, chords, guide-tones, arpeggios; did you mean roots?',
  ],
  [
    `makeBacking('basic')`,
    () => r.makeBacking('basic' as never),
    '"basic" is not part of a valid chart: expected a chart, as makeChart gives it',
  ],
  [
    `parseTab('-11', { holes: 10 })`,
    () => r.parseTab('-11', { holes: 10 }),
    `"-11" cannot stand here in tablature (line 1, column 1): expected holes from 1 to 10 with their breath: +4 blow, -4 draw, an apostrophe a semitone of bend, o for an overbend: -3'' +6o`,
  ],
  [
    `lineOfTab(parseTimedTab('-11'), 'C')`,
    () => r.lineOfTab(r.parseTimedTab('-11'), 'C'),
    '11 is not a hole of this harp (breath draw): expected a hole, 1 to 10',
  ],
  [
    `formatTab('-2')`,
    () => r.formatTab('-2' as never),
    '"-2" cannot stand here in tablature (events): expected a list of what sounds, as parseTab gives it',
  ],
  [
    `parseTab('-2 ?')`,
    () => r.parseTab('-2 ?'),
    `"?" cannot stand here in tablature (line 1, column 4): expected holes from 1 to 16 with their breath: +4 blow, -4 draw, an apostrophe a semitone of bend, o for an overbend: -3'' +6o`,
  ],
  [
    'readPiece(png)',
    () => r.readPiece(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10)),
    '"a PNG picture" is not in a known format: expected a line as JSON, a Standard MIDI File, MusicXML 4.0 (compressed files are read), ABC notation 2.1, harmonica tablature with rhythm (for a harp)',
  ],
  [
    'readPiece(null)',
    () => r.readPiece(null as never),
    'null is not in a known format: expected text or bytes (a Uint8Array or ArrayBuffer)',
  ],
  [
    `readPiece('-2 +3')`,
    () => r.readPiece('-2 +3'),
    '"-2 +3" needs a harp: expected a harp besides: tablature says holes, not notes',
  ],
  [
    `readMidi('MThd')`,
    () => r.readMidi('MThd' as never),
    '"MThd" is not a well-formed MIDI file (index 0): expected bytes (a Uint8Array or ArrayBuffer)',
  ],
  [
    'writeMidi(line)',
    () => r.writeMidi(line as never),
    'nothing is not part of a valid line: expected a line, as makeLine gives it',
  ],
  [
    `writePiece({ line }, 'pdf')`,
    () => r.writePiece({ line }, 'pdf' as never),
    '"pdf" is not in a known format: expected a format: line, midi, musicxml, abc, tab',
  ],
  [
    `harpPicture('C', { theme: 'blue' })`,
    () => r.harpPicture('C', { theme: 'blue' as never }),
    '"blue" is not one of the choices: expected a theme: screen, dark, print, large',
  ],
  [
    `chartPicture('basic')`,
    () => r.chartPicture('basic' as never),
    '"basic" is not part of a valid chart: expected a chart, as makeChart gives it',
  ],
  [
    `midi('H4')`,
    () => r.midi('H4'),
    '"H4" is not a note name: expected a letter A to G, sharps or flats, and an octave, such as C4 or Bb3; did you mean B4?',
  ],
  [
    'midi(60)',
    () => r.midi(60 as never),
    '60 is not a note name: expected a letter A to G, sharps or flats, and an octave, such as C4 or Bb3',
  ],
  [
    `noteName('C4')`,
    () => r.noteName('C4' as never),
    '"C4" is not a number in range: expected a MIDI note number, a whole number from 0 to 127',
  ],
  [
    `parseChord('H7')`,
    () => r.parseChord('H7'),
    '"H7" is not a chord symbol: expected a capital root and a suffix, such as G7, Bbm or F#m7b5; did you mean B7?',
  ],
  [
    `parseScale('blue')`,
    () => r.parseScale('blue'),
    '"blue" is not a scale: expected a scale such as blues, minor pentatonic or mixolydian; did you mean blues?',
  ],
  [
    `frequency('A4')`,
    () => r.frequency('A4' as never),
    '"A4" is not a number in range: expected a MIDI note number',
  ],
  [
    `transposeKey('G', 'up')`,
    () => r.transposeKey('G', 'up' as never),
    '"up" is not a number in range: expected semitones, a whole number',
  ],
];

describe('a slip in plain JavaScript', () => {
  test.each(SLIPS)('%s says what is wrong', (_, call, message) => {
    const said = (): string => {
      try {
        return `no error: ${typeof call()}`;
      } catch (error) {
        return r.isReedplateError(error) ? error.message : String(error);
      }
    };
    expect(said()).toBe(message);
  });

  test('is tried in 60 ways and more', () => {
    expect(SLIPS.length).toBeGreaterThanOrEqual(60);
  });
});
