import { makeHarp, makePlayer, makeTuning, type PlayerLike } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { easiestPath, withOneHome } from './easiest-path.js';

/** G4, which a C harp has at 2 draw and at 3 blow, between two draw notes. */
const line = makeLine([71, 67, 74].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));
const C = makeHarp('C');
const places = (level: PlayerLike, tonic: number): readonly string[] =>
  (easiestPath(line, C, level, tonic)?.soundings ?? [])
    .flat()
    .map(({ hole, breath }) => `${hole} ${breath}`);

describe('easiestPath', () => {
  const apart = makePlayer([
    { technique: 'natural', breath: 'blow' },
    { technique: 'natural', breath: 'draw' },
  ]);

  it('easiestPath plays the tonic at 2 draw, for a player whose blow and draw are told apart too', () => {
    expect(places('natural', 67)).toEqual(['3 draw', '2 draw', '4 draw']);
    expect(places(apart, 67)).toEqual(['3 draw', '2 draw', '4 draw']);
  });

  it('easiestPath takes 3 blow for who does not hold 2 draw yet', () => {
    const beginner = makePlayer(['natural'], { holdsTwoDraw: false });
    expect(places(beginner, 67)).toEqual(['3 draw', '3 blow', '4 draw']);
  });

  it('easiestPath takes the only place that a player has', () => {
    const only = makePlayer([
      { technique: 'natural', breath: 'blow', holes: [3] },
      { technique: 'natural', breath: 'draw', holes: [3, 4] },
    ]);
    expect(places(only, 67)).toEqual(['3 draw', '3 blow', '4 draw']);
  });

  it('easiestPath is undefined where the line cannot be played', () => {
    expect(easiestPath(makeLine([{ start: 0, duration: 960, pitch: 61 }]), C, 'natural', 67)).toBe(
      undefined,
    );
  });
});

describe('withOneHome', () => {
  it.each([
    ['a harp of one hole', makeTuning({ id: 'one', blow: 'C4', draw: 'D4' })],
    ['a harp without the note at both', 'circular-first-blow'],
  ])('withOneHome leaves the player of %s as they are', (_, tuning) => {
    expect(withOneHome(makeHarp('C', { tuning }), 'bends', 67)).toBe('bends');
  });
});
