import { deepFreeze } from '@reedplate/pitch';
import type { Player, PlayerSkill, SplitWidth } from './player.js';
import type { TechniqueLevel } from './sounding.js';

/** All widths of splits, narrowest first. */
export const SPLIT_WIDTHS: readonly SplitWidth[] = Object.freeze([3, 4, 5]);

const NATURAL: readonly PlayerSkill[] = [{ technique: 'natural' }];
const BENDS: readonly PlayerSkill[] = [
  ...NATURAL,
  { technique: 'bend' },
  { technique: 'valved-bend' },
];
const OVERBENDS: readonly PlayerSkill[] = [
  ...BENDS,
  { technique: 'overblow' },
  { technique: 'overdraw' },
];

/** The players that the levels are short words for. */
export const PLAYERS: Readonly<Record<TechniqueLevel, Player>> = /* @__PURE__ */ deepFreeze({
  natural: playerOf('natural', 'Unbent notes', NATURAL),
  bends: playerOf('bends', 'Unbent notes and bends', BENDS),
  overbends: playerOf('overbends', 'Unbent notes, bends and overbends', OVERBENDS),
});

function playerOf(id: TechniqueLevel, name: string, skills: readonly PlayerSkill[]): Player {
  return { id, name, skills, splits: SPLIT_WIDTHS, holdsTwoDraw: true };
}
