import type { KnownForms } from '@reedplate/form';
import type { KnownTunings } from '@reedplate/layout';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import type { KnownPhrases } from './phrase/to-phrase.js';

type Known = KnownForms & KnownTunings & KnownPhrases;

const KNOWN: OptionNames<Known> = {
  forms: true,
  tunings: true,
  temperaments: true,
  phrases: true,
};

/** What of one's own each package knows by its id; none of them takes what belongs to another. */
export function knownParts(known: Known = {}): {
  readonly forms: KnownForms;
  readonly tunings: KnownTunings;
  readonly phrases: KnownPhrases;
} {
  const { forms, tunings, temperaments, phrases } = requireOptions(known, KNOWN, 'known');
  return {
    forms: forms === undefined ? {} : { forms },
    tunings: {
      ...(tunings === undefined ? {} : { tunings }),
      ...(temperaments === undefined ? {} : { temperaments }),
    },
    phrases: phrases === undefined ? {} : { phrases },
  };
}
