import {
  type Harp,
  type Hole,
  type Player,
  type PlayerLike,
  type PlayerSkill,
  toPlayer,
} from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { itemAt, toPitchClass } from '@reedplate/pitch';
import { bestPath, type LinePath } from '@reedplate/playability';

/**
 * The easiest path on which 2 draw and 3 blow are not mixed, where both sound the same: one note, one place.
 * Where that note is the tonic it is 2 draw, the home of cross harp, for who holds it (common practice, no
 * source); else the place that costs less. Undefined where the line cannot be played.
 */
export function easiestPath(
  line: Line,
  harp: Harp,
  level: PlayerLike,
  tonic: number,
): LinePath | undefined {
  const paths = waysOf(harp, level, tonic).flatMap((way) => {
    const path = bestPath(line, harp, { level: way });
    return path.playable ? [path] : [];
  });
  const least = Math.min(...paths.map(({ effort }) => effort));
  const found = paths.find(({ effort }) => effort === least);
  if (found !== undefined) return found;
  const any = bestPath(line, harp, { level });
  return any.playable ? any : undefined;
}

function waysOf(harp: Harp, level: PlayerLike, tonic: number): readonly PlayerLike[] {
  const [, second, third] = harp.holes;
  if (second === undefined || second.draw !== third?.blow) return [level];
  const player = toPlayer(level);
  const onBlow = { ...player, holdsTwoDraw: false };
  if (!player.holdsTwoDraw) return [onBlow];
  const onDraw = withoutThreeBlow(player, harp);
  return toPitchClass(second.draw) === toPitchClass(tonic) ? [onDraw] : [onDraw, onBlow];
}

/**
 * The player with one place for the note that 2 draw and 3 blow share: 3 blow among the blow notes of first
 * position and for who cannot hold 2 draw, else 2 draw. Common practice, no source.
 */
export function withOneHome(harp: Harp, level: PlayerLike, tonic: number): PlayerLike {
  const [onDraw = level, onBlow = onDraw] = waysOf(harp, level, tonic);
  const isFirst = toPitchClass(tonic) === toPitchClass(itemAt(harp.holes, 0).blow);
  return isFirst ? onBlow : onDraw;
}

/** The player with every unbent note but 3 blow by itself. */
function withoutThreeBlow(player: Player, { holes }: Harp): Player {
  const others = holes.map(({ hole }) => hole).filter((hole) => hole !== 3);
  const skills = player.skills.flatMap((skill): readonly PlayerSkill[] => {
    if (skill.technique !== 'natural' || skill.breath === 'draw') return [skill];
    const blow: readonly Hole[] = (skill.holes ?? others).filter((hole) => hole !== 3);
    const onDraw: PlayerSkill[] = skill.breath === 'blow' ? [] : [{ ...skill, breath: 'draw' }];
    return blow.length === 0 ? onDraw : [...onDraw, { ...skill, breath: 'blow', holes: blow }];
  });
  return { ...player, skills };
}
