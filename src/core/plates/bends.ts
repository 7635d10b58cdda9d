import { add2, type Loop, type LoopVertex, left2, type Point, plateBend, scale2 } from '../geometry/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';
import { bendingOf } from '../standards/index.ts';
import { atPath } from './openings.ts';
import type { BendLine, FlatPattern } from './pattern.ts';

/** A bend in the plate's material: what it takes of the flat. */
export interface PlateBendPlan {
  readonly angle: number;
  readonly insideRadius: number;
  /** BA [m] */
  readonly allowance: number;
  /** OSSB [m] */
  readonly setback: number;
  /** BD [m] */
  readonly deduction: number;
}

/** How a hand bend is made so that its line ends up where it is drawn (common practice). */
export const BEND_NOTE =
  'Clamp flush with the line, start the bend at about 45 degrees, then move the plate in about 1 mm and finish it.';

/**
 * Bend of a plate, K from the material's row: BA = θ·(R + K·T), OSSB = (R + T)·tan(θ/2), BD = 2·OSSB − BA.
 * @issue out-of-range — from the bend's own limits
 * @source machinerys-handbook-31, p. 1421
 */
export function planBend(
  bend: { readonly angle: number; readonly insideRadius?: number | undefined },
  plate: { readonly thickness: number; readonly material: FlatPattern['material'] },
  path: string,
): Outcome<PlateBendPlan> {
  const insideRadius = bend.insideRadius ?? plate.thickness;
  const { kFactor } = bendingOf(plate.material);
  const lengths = atPath(
    plateBend({ thickness: plate.thickness, insideRadius, angle: bend.angle, kFactor }),
    path,
  );
  if (!lengths.ok) return lengths;
  const { allowance, outsideSetback: setback, deduction } = lengths.value;
  return good({ angle: bend.angle, insideRadius, allowance, setback, deduction });
}

/** A flange at the end of a plate. Distances run along `direction` from the plate's origin. */
export interface Flange {
  /** Unit vector toward the flange. */
  readonly direction: Point;
  /** Middle of the flange across `direction`, left of it positive [m]. */
  readonly across: number;
  readonly width: number;
  /** Where the outside face of the flange stands when it is bent [m]. */
  readonly face: number;
  /** Outside length, from the outside face of the plate to the edge of the flange [m]. */
  readonly length: number;
  readonly bend: PlateBendPlan;
}

/** Point of the flat at `along` the direction and `across` to the left of it. */
export const flangePoint = (flange: Pick<Flange, 'direction'>, along: number, across: number): Point =>
  add2(scale2(flange.direction, along), scale2(left2(flange.direction), across));

/** Where the bend begins, in the flat [m]. */
export const bendStart = (flange: Flange): number => flange.face - flange.bend.setback;

/** Where a point of the flange `out` from the outside face of the plate lies in the flat [m]. */
export const onFlange = (flange: Flange, out: number): number => flange.face - flange.bend.deduction + out;

/** Bend line of a flange: the middle of the bend. */
export function flangeBendLine(flange: Flange, direction: 'up' | 'down'): BendLine {
  const at = bendStart(flange) + flange.bend.allowance / 2;
  const { angle, insideRadius, allowance } = flange.bend;
  return {
    from: flangePoint(flange, at, flange.across - flange.width / 2),
    to: flangePoint(flange, at, flange.across + flange.width / 2),
    angle,
    insideRadius,
    direction,
    allowance,
    note: BEND_NOTE,
  };
}

/**
 * The flange added to an outline that has the line where the bend begins as one of its edges.
 * @issue conflict — the outline reaches past that line, or the flange is shorter than its bend
 */
export function withFlange(outline: Loop, flange: Flange, path: string): Outcome<Loop> {
  const refuse = (reason: string) => bad({ code: 'conflict', path, reason });
  if (flange.length < flange.bend.setback)
    return refuse(`the bend alone takes ${(flange.bend.setback * 1e3).toFixed(1)} mm of the flange`);
  const corner = (along: number, side: 1 | -1): Point =>
    flangePoint(flange, along, flange.across + (side * flange.width) / 2);
  const [start, end] = [bendStart(flange), onFlange(flange, flange.length)];
  const at = outline.findIndex(
    (v, i) =>
      v.bulge === 0 &&
      near(v, corner(start, -1)) &&
      near(outline[(i + 1) % outline.length]!, corner(start, 1)),
  );
  if (at < 0) return refuse('the rest of the plate reaches past the line where the flange is bent');
  const added: LoopVertex[] = [corner(end, -1), corner(end, 1)].map((p) => ({ ...p, bulge: 0 }));
  return good([...outline.slice(0, at + 1), ...added, ...outline.slice(at + 1)]);
}

const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 1e-9;
