import { polygon } from './shapes.ts';
import type { PaperPoint, PathItem, PenRole } from './sheet.ts';

/** Length and half width of an arrowhead [mm]. */
export const arrowLength = 2.5;
const HALF_WIDTH = 0.45;

/** A filled arrowhead with its tip at `tip`, pointing along `direction` [degrees]. */
export function arrowhead(
  tip: PaperPoint,
  direction: number,
  pen: PenRole = 'dimension',
  length = arrowLength,
): PathItem {
  const turn = (direction * Math.PI) / 180;
  const half = (HALF_WIDTH * length) / arrowLength;
  const back = (side: number): PaperPoint => ({
    x: tip.x - length * Math.cos(turn) - side * half * Math.sin(turn),
    y: tip.y - length * Math.sin(turn) + side * half * Math.cos(turn),
  });
  return polygon([tip, back(1), back(-1)], pen, pen === 'accent' ? 'accent' : 'ink');
}
