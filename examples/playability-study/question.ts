import { makeStudySetup, type StudySetup, type StudyTune } from '@reedplate/study';
import { type Line, parseKey, transposeLine } from 'reedplate';

/** The tunings compared: the standard one, and those made for melodies. */
export const TUNINGS = [
  'standard',
  'raised-third-blow',
  'raised-fifth-draw',
  'raised-third-blow-and-fifth-draw',
] as const;

/** The setup of the study, for a model. */
export function setupFor(model: string): StudySetup {
  return makeStudySetup({
    model,
    tunings: TUNINGS,
    positions: [1, 2, 3, 12],
    levels: ['natural', 'bends', 'overbends'],
    octaves: [-1, 0, 1],
  });
}

/** Every nth tune in a major key, moved so that a C harp plays it in second position. */
export function inSecondPosition(tunes: readonly StudyTune[], nth: number): readonly Line[] {
  const home = parseKey('G').pitchClass;
  return tunes
    .filter(({ key }) => parseKey(key).mode === 'major')
    .filter((_, at) => at % nth === 0)
    .map(({ key, line }) => {
      const up = (home - parseKey(key).pitchClass + 12) % 12;
      return transposeLine(line, up > 6 ? up - 12 : up);
    });
}
