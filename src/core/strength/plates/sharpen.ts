import type { CutLine } from './crossings.ts';
import type { CutPlate } from './cutPlate.ts';
import { addSections, type NetSection, openingReaches } from './netSection.ts';

/** A cut and its share of what is allowed, squared. */
export interface RatedCut {
  readonly section: NetSection;
  readonly square: number;
}

/** Turns tried on both sides of the worst cut of a sweep, half a step of it and less [rad]. */
const TURNS = [Math.PI / 24, Math.PI / 48];
const ROUNDS = 2;
/** Ways to move: turn, and shift by that share of the turn at the end of the cut. */
const MOVES: readonly (readonly [turn: number, shift: number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

/** The worst cut near to one found by a sweep: turned and shifted a little as long as that makes it worse. */
export function sharpened(cut: CutPlate, found: RatedCut, rate: (section: NetSection) => number): RatedCut {
  let best = found;
  for (const turn of TURNS)
    for (let round = 0; round < ROUNDS; round++) {
      const before = best;
      for (const [a, b] of MOVES) {
        const section = movedCut(cut, before.section, a * turn, (b * turn * before.section.width) / 2);
        if (!section) continue;
        const square = rate(section);
        if (square > best.square) best = { section, square };
      }
      if (best === before) break;
    }
  return best;
}

/** The cut through the same metal along a line that is turned about its middle and shifted across. */
function movedCut({ plate }: CutPlate, of: NetSection, turn: number, shift: number): NetSection | undefined {
  const angle = of.line.angle + turn;
  const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
  const { x, y } = of.centroid;
  const line: CutLine = { angle, nx, ny, offset: x * nx + y * ny + shift };
  const sections: NetSection[] = [];
  addSections(plate, line, openingReaches(plate, angle), sections);
  const away = (one: NetSection): number => (one.centroid.x - x) ** 2 + (one.centroid.y - y) ** 2;
  return sections.reduce<NetSection | undefined>(
    (nearest, one) => (nearest && away(nearest) <= away(one) ? nearest : one),
    undefined,
  );
}
