import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { centsBetween, frequency, midi, noteNameWithOctave } from './index.js';

/** Names beside values, as tables print them. */
const pairs = (text: string): (readonly [string, number])[] =>
  text
    .trim()
    .split(/\s+/u)
    .map((pair): readonly [string, number] => {
      const [name = '', value = ''] = pair.split('=');
      return [name, Number(value)];
    });

published('schnupp', 'equal-tempered frequencies to a hundredth of a hertz, from C2 to F6', () => {
  test.each(
    pairs(`
      C2=65.41 C#2=69.30 D2=73.42 D#2=77.78 E2=82.41 F2=87.31 F#2=92.50 G2=98.00 G#2=103.83 A2=110.00
      A#2=116.54 B2=123.47 C3=130.81 C#3=138.59 D3=146.83 D#3=155.56 E3=164.81 F3=174.61 F#3=185.00
      G3=196.00 G#3=207.65 A3=220.00 A#3=233.08 B3=246.94 C4=261.63 C#4=277.18 D4=293.66 D#4=311.13
      E4=329.63 F4=349.23 F#4=369.99 G4=392.00 G#4=415.30 A4=440.00 A#4=466.16 B4=493.88 C5=523.25
      C#5=554.37 D5=587.33 D#5=622.25 E5=659.26 F5=698.46 F#5=739.99 G5=783.99 G#5=830.61 A5=880.00
      A#5=932.33 B5=987.77 C6=1046.50 C#6=1108.73 D6=1174.66 D#6=1244.51 E6=1318.51 F6=1396.91`),
  )('frequency of %s is %d Hz', (name, hertz) => {
    expect(frequency(midi(name))).toBeCloseTo(hertz, 2);
  });
});

published('suits', 'its two worked examples', () => {
  test.each(pairs('C5=523.3 C4=261.6'))('frequency of %s is %d Hz', (name, hertz) => {
    expect(frequency(midi(name)).toFixed(1)).toBe(hertz.toFixed(1));
  });
});

published('oeis-frequencies', 'the notes of an octave to ten decimals', () => {
  test.each(
    pairs(`C4=261.6255653005 C#4=277.1826309768 D4=293.6647679174 D#4=311.1269837220
      E4=329.6275569128 F4=349.2282314330 F#4=369.9944227116 G4=391.9954359817 G#4=415.3046975799
      A4=440 A#4=466.1637615180 B4=493.8833012561`),
  )('frequency of %s is %d Hz', (name, hertz) => {
    expect(frequency(midi(name))).toBeCloseTo(hertz, 9);
  });
});

published('engineering-toolbox', 'the octaves from 0 to 8, to four figures', () => {
  test.each([
    [0, '16.35 17.32 18.35 19.45 20.60 21.83 23.12 24.50 25.96 27.50 29.14 30.87'],
    [1, '32.70 34.65 36.71 38.89 41.20 43.65 46.25 49.00 51.91 55.00 58.27 61.74'],
    [2, '65.41 69.30 73.42 77.78 82.41 87.31 92.50 98.00 103.8 110.0 116.5 123.5'],
    [3, '130.8 138.6 146.8 155.6 164.8 174.6 185.0 196.0 207.7 220.0 233.1 246.9'],
    [4, '261.6 277.2 293.7 311.1 329.6 349.2 370.0 392.0 415.3 440.0 466.2 493.9'],
    [5, '523.3 554.4 587.3 622.3 659.3 698.5 740.0 784.0 830.6 880.0 932.3 987.8'],
    [6, '1047 1109 1175 1245 1319 1397 1480 1568 1661 1760 1865 1976'],
    [7, '2093 2217 2349 2489 2637 2794 2960 3136 3322 3520 3729 3951'],
    [8, '4186 4435 4699 4978 5274 5588 5920 6272 6645 7040 7459 7902'],
  ])('frequency gives octave %i as printed', (octave, printed) => {
    const ours = Array.from({ length: 12 }, (_, step) =>
      frequency(12 * (octave + 1) + step).toPrecision(4),
    );
    expect(ours.map(Number)).toEqual(printed.split(' ').map(Number));
  });
});

published(
  'midi-tuning',
  'examples of frequency data: a semitone and 14 bits of its fraction',
  () => {
    test.each([
      ['00 00 00', 8.1758, 4],
      ['01 00 00', 8.662, 4],
      ['0C 00 00', 16.3516, 4],
      ['3C 00 00', 261.6256, 4],
      ['3D 00 00', 277.1827, 3],
      ['44 7F 7F', 439.9984, 4],
      ['45 00 00', 440, 4],
      ['45 00 01', 440.0016, 4],
      ['78 00 00', 8372.019, 2],
      ['78 00 01', 8372.063, 1],
      ['7F 00 00', 12543.88, 1],
      ['7F 00 01', 12543.92, 1],
      ['7F 7F 7E', 13289.73, 0],
    ])('frequency of %s is %d Hz', (bytes, hertz, decimals) => {
      const [semitone = 0, high = 0, low = 0] = bytes
        .split(' ')
        .map((byte) => Number.parseInt(byte, 16));
      // Our frequency takes whole semitones and fractions alike; the last of the range lies above 127.
      const pitch = semitone + (high * 128 + low) / 2 ** 14;
      const reached = pitch <= 127 ? frequency(pitch) : frequency(pitch - 12) * 2;
      expect(reached).toBeCloseTo(hertz, decimals);
    });
  },
);

published('hansson-tuning', 'sizes of a semitone and of a raised reference pitch', () => {
  test('frequency rises by a factor of 1.05946 a semitone', () => {
    expect((frequency(61) / frequency(60)).toFixed(5)).toBe('1.05946');
  });

  test('centsBetween finds A4 = 443 Hz 12 cents above 440', () => {
    expect(Math.round(centsBetween(440, 443))).toBe(12);
    expect(noteNameWithOctave(69)).toBe('A4');
  });
});
