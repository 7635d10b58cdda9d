import { clipLoop, dot2, type Loop, left2, subtract2, unit2 } from '../../../../geometry/index.ts';
import { type FlatPattern, openingLoop } from '../../../../plates/index.ts';
import type { FlatPlate } from '../../../plates/index.ts';

/** A plate up to its bends: what is bent away is no metal of the flat. */
export function flatBody(pattern: FlatPattern): FlatPlate {
  return { ...wholeFlat(pattern), outline: pattern.bends.reduce(withoutFlange(pattern), pattern.outline) };
}

/** A plate in the flat with its flanges. */
export const wholeFlat = (pattern: FlatPattern): FlatPlate => ({
  outline: pattern.outline,
  openings: [...pattern.openings.map((opening) => openingLoop(opening)), ...pattern.windows],
  thickness: pattern.thickness,
});

const withoutFlange =
  ({ centroid }: FlatPattern) =>
  (outline: Loop, bend: FlatPattern['bends'][number]): Loop => {
    const across = left2(unit2(subtract2(bend.to, bend.from)));
    const side = dot2(subtract2(centroid, bend.from), across) > 0 ? 1 : -1;
    return clipLoop(outline, { at: bend.from, out: { x: across.x * side, y: across.y * side } });
  };
