import type { PlayedAs, SharePoint } from '../notation/measure.js';
import { velocityOf } from './write-playing.js';
import { child, childNumber, childrenOf, type XmlElement } from './xml-tree.js';

/** Articulations that strike a note harder. */
export const ACCENTS: ReadonlySet<string> = new Set(['accent', 'strong-accent']);

/** Furthest that a curve goes, and a note as a whole lies from its pitch, in cents. */
const LARGEST_CURVE = 2400;
const LARGEST_CENTS = 100;

/**
 * How a note is played, as its element says.
 *
 * @param beside cents that its written pitch lies beside the semitone that is read
 * @param loudness velocity that the part has there, where the note says none
 */
export function playedAs(note: XmlElement, beside: number, loudness: number | undefined): PlayedAs {
  const notations = childrenOf(note, 'notations').flatMap(({ children }) => children);
  const isAccented = notations.some(
    ({ name, children }) =>
      name === 'articulations' && children.some((sign) => ACCENTS.has(sign.name)),
  );
  const bends = notations
    .filter(({ name }) => name === 'technical')
    .flatMap((technical) => childrenOf(technical, 'bend'));
  const dynamics = Number(note.attributes.get('dynamics') ?? Number.NaN);
  const velocity = dynamics >= 0 ? velocityOf(dynamics) : loudness;
  return {
    ...(velocity === undefined ? {} : { velocity }),
    ...(isAccented ? { accent: true } : {}),
    ...(bends.length === 0 ? centsOf(beside) : curveOf(bends, beside)),
  };
}

function centsOf(cents: number): Pick<PlayedAs, 'cents'> {
  return cents === 0 ? {} : { cents };
}

/** Where a bend that says nothing begins and ends, in percent: MusicXML 4.0, attribute group bend-sound. */
const USUAL_FIRST_BEAT = 25;
const USUAL_LAST_BEAT = 75;

/** Bends follow each other; a pre-bend is where the note begins. */
function curveOf(bends: readonly XmlElement[], beside: number): Pick<PlayedAs, 'cents' | 'curve'> {
  let cents = beside;
  const points: SharePoint[] = [];
  const add = (share: number): void => {
    const last = points.at(-1);
    const at = Math.max(last?.share ?? 0, Math.min(1, Math.max(0, share)));
    const bounded = Math.min(LARGEST_CURVE, Math.max(-LARGEST_CURVE, tenths(cents)));
    if (last?.share !== at || last.cents !== bounded) points.push({ share: at, cents: bounded });
  };
  for (const bend of bends) {
    const by = 100 * (childNumber(bend, 'bend-alter') ?? 0);
    if (child(bend, 'pre-bend') !== undefined) {
      cents += by;
      add(percentOf(bend, 'first-beat', 0));
    } else {
      add(percentOf(bend, 'first-beat', USUAL_FIRST_BEAT));
      cents += by;
      add(percentOf(bend, 'last-beat', USUAL_LAST_BEAT));
    }
  }
  const [first, second] = points;
  const isLevel = second === undefined && first?.share === 0;
  if (isLevel && Math.abs(first.cents) <= LARGEST_CENTS) return { cents: first.cents };
  return { curve: points };
}

function percentOf(bend: XmlElement, name: string, usual: number): number {
  const percent = Number(bend.attributes.get(name) ?? usual);
  return (Number.isFinite(percent) ? percent : usual) / 100;
}

function tenths(cents: number): number {
  return Math.round(cents * 10) / 10 + 0;
}

/** Velocities of the signs of loudness: common practice, no source. */
const VELOCITY_OF_SIGN: ReadonlyMap<string, number> = new Map([
  ['ppp', 16],
  ['pp', 33],
  ['p', 49],
  ['mp', 64],
  ['mf', 80],
  ['f', 96],
  ['ff', 112],
  ['fff', 126],
]);

/** The velocity that a direction or a sound sets from there on: a sound says it, or else the sign shown. */
export function loudnessOf(element: XmlElement): number | undefined {
  const sounds = element.name === 'sound' ? [element] : childrenOf(element, 'sound');
  const said = sounds.map(({ attributes }) => Number(attributes.get('dynamics') ?? Number.NaN));
  const percent = said.find((value) => value >= 0);
  if (percent !== undefined) return velocityOf(percent);
  const signs = childrenOf(element, 'direction-type')
    .flatMap((type) => childrenOf(type, 'dynamics'))
    .flatMap(({ children }) => children);
  return signs.map(({ name }) => VELOCITY_OF_SIGN.get(name)).find((found) => found !== undefined);
}
