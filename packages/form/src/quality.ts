import { chordOfNumeral, parseKey, parseNumeral } from '@reedplate/pitch';

/** Which third, fifth and seventh a chord has; undefined where it has none. */
export interface ChordColours {
  readonly third: '3' | 'b3' | undefined;
  readonly fifth: '5' | 'b5' | '#5' | undefined;
  readonly seventh: '7' | 'b7' | 'bb7' | undefined;
  /** A ninth that is not the plain one. */
  readonly altersNinth: boolean;
}

const C_MAJOR = /* @__PURE__ */ parseKey('C');
const LETTERS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;
const SIGNS = new Map([
  [-1, 'b'],
  [0, ''],
  [1, '#'],
]);

/** The third, fifth and seventh of the chord that a numeral names. */
export function coloursOf(numeral: string): ChordColours {
  const degrees = new Set<string>(
    chordOfNumeral(numeral, C_MAJOR).tones.map((tone) => tone.degree),
  );
  const firstOf = <Degree extends string>(...choices: readonly Degree[]): Degree | undefined =>
    choices.find((choice) => degrees.has(choice));
  return {
    third: firstOf('3', 'b3'),
    fifth: firstOf('5', 'b5', '#5'),
    seventh: firstOf('7', 'b7', 'bb7'),
    altersNinth: degrees.has('b9') || degrees.has('#9'),
  };
}

/** The numeral on the same degree with another quality, in canonical text: `IV7` with `m7` is `iv7`. */
export function withQuality(numeral: string, suffix: string): string {
  const { step, alteration, of } = parseNumeral(numeral);
  const target = of === undefined ? '' : `/${of.text}`;
  return parseNumeral(`${SIGNS.get(alteration)}${LETTERS[step - 1]}${suffix}${target}`).text;
}

/** Which unaltered, not secondary degree a numeral stands on; undefined for any other chord. */
export function plainStep(numeral: string): number | undefined {
  const { step, alteration, of } = parseNumeral(numeral);
  return alteration === 0 && of === undefined ? step : undefined;
}
