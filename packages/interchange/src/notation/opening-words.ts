import type { Feel } from '@reedplate/form';

const FEEL_WORDS: Readonly<Record<Feel, string>> = Object.freeze({
  straight: 'even eighths',
  shuffle: 'shuffle',
  'slow-12/8': 'slow 12/8',
});

/** What is known of how a tune goes. */
export interface Opening {
  readonly feel?: Feel | undefined;
  /** Felt beats a minute. */
  readonly tempo?: number | undefined;
}

/** Tempo and feel as a sheet says them over the first bar: `Medium, shuffle`; empty where nothing is known. */
export function openingWords({ feel, tempo }: Opening): string {
  const how = feel === undefined ? [] : [FEEL_WORDS[feel]];
  // One word is enough for a slow 12/8.
  const words = [...tempoWords(tempo).filter((word) => !how[0]?.startsWith(word)), ...how];
  const said = words.join(', ');
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** How a band says a tempo. The bounds are a design choice, no source. */
function tempoWords(tempo: number | undefined): readonly string[] {
  if (tempo === undefined) return [];
  if (tempo < 76) return ['slow'];
  return [tempo < 132 ? 'medium' : 'fast'];
}
