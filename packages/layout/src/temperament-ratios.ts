/** A temperament as the ratios of its degrees to the tonic of first position. */
export interface TemperamentRatios {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** From the unison up, one for each semitone: `5/4`. */
  readonly ratios: string;
}

/**
 * Just temperaments as ratios, for the chords of the standard layout. The sources give its seven
 * degrees (1, 2, 3, 4, 5, 6 and 7); the five others, which only alternate tunings have, are completed
 * in the same limit: design choice, no source. On another layout the chords are others, and may come
 * out impure: `impureFifths` of a tuned harp says where.
 */
export const TEMPERAMENT_RATIOS = [
  {
    id: 'five-limit',
    name: 'Just, 5-limit, pure in first position',
    source: 'Hansson, ji_hca01.scl, 17 July 2004',
    ratios: '1/1 16/15 9/8 6/5 5/4 4/3 45/32 3/2 8/5 5/3 9/5 15/8',
  },
  {
    id: 'seven-limit',
    name: 'Just, 7-limit: draw 2 to 5 is 4:5:6:7',
    source: 'Hansson, ji_hca02.scl, 17 July 2004; Missin, audio page, 2004',
    ratios: '1/1 16/15 9/8 6/5 5/4 21/16 45/32 3/2 8/5 27/16 9/5 15/8',
  },
  {
    id: 'nineteen-limit',
    name: 'Just, 19-limit: draw 4 to 6 is 16:19:24',
    source: 'Hansson, "Tuning", table 8B',
    ratios: '1/1 16/15 9/8 19/16 5/4 171/128 45/32 3/2 8/5 27/16 57/32 15/8',
  },
  {
    id: 'five-limit-minor-chord',
    name: 'Just, 5-limit: draw 4 to 6 is 10:12:15',
    source: 'Hansson, ji_hca03.scl, 17 July 2004',
    ratios: '1/1 16/15 9/8 6/5 5/4 27/20 45/32 3/2 8/5 27/16 9/5 15/8',
  },
  {
    id: 'pythagorean-seventh',
    name: 'Just draw chord with a Pythagorean seventh (16/9)',
    source: 'Missin, tuning-list post, 16 July 1996; Hansson, ji_hca23.scl, 17 July 2004',
    ratios: '1/1 16/15 9/8 6/5 5/4 4/3 45/32 3/2 8/5 27/16 16/9 15/8',
  },
] as const satisfies readonly TemperamentRatios[];

/**
 * The compromise: thirds of the I and V chords (degrees 3 and 7) midway between just and equal,
 * as Missin, tuning-list post, 16 July 1996, tells of many harps. Schemes differ most in the fourth
 * degree: the same post tells of its being tuned sharper and sharper, by some nearly to a just minor
 * chord. That of the 19-limit lies between these, and is our choice; so are the other degrees.
 */
export const COMPROMISE = {
  id: 'compromise',
  name: 'Compromise: thirds midway between just and equal',
  source: 'Missin, tuning-list post, 16 July 1996, for degrees 3 and 7; own construction',
  halved: [4, 11],
  ratios: '1/1 16/15 9/8 19/16 5/4 171/128 45/32 3/2 8/5 27/16 57/32 15/8',
} as const;
