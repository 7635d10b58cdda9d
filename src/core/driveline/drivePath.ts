import type { Bike, ChainPath } from '../bike/index.ts';
import type { BeltEnd, DrivelineSolution, SolvedBelt, SolvedChain } from './solveDriveline.ts';
import type { SidePoint } from './tensionTypes.ts';

/** A straight run of chain or belt in the side view [m]. */
export type StraightRun = readonly [SidePoint, SidePoint];

/** Points a quarter turn on the round parts of a path. */
const STEPS_PER_QUARTER = 9;
/** A belt's thickness as a share of its top width, for the picture. */
const BELT_THICKNESS = 0.4;

/**
 * The two straight runs of an open chain or belt: outer tangents of its pitch circles of radius r1 about `from` and
 * r2 about `to`; the normal leans from the line of centers by acos((r1 − r2)/C).
 * @returns the run on the left of the way from `from` to `to` first
 * @source derived, outer tangents of two circles
 */
export function straightRuns(
  from: SidePoint,
  to: SidePoint,
  r1: number,
  r2: number,
): readonly [StraightRun, StraightRun] {
  const line = Math.atan2(to.z - from.z, to.x - from.x);
  const center = Math.hypot(to.x - from.x, to.z - from.z);
  // Circles that overlap have no open runs; the picture then shows them touching.
  const lean = Math.acos(Math.max(-1, Math.min(1, (r1 - r2) / center)));
  const run = (side: 1 | -1): StraightRun => [
    around(from, r1, line + side * lean),
    around(to, r2, line + side * lean),
  ];
  return [run(1), run(-1)];
}

/** Every chain and belt as a closed line round its sprockets or sheaves, in the plane it runs in; belts as at launch. */
export function drivePaths(solution: DrivelineSolution, bike: Bike): readonly ChainPath[] {
  return [
    ...Object.values(solution.chains).flatMap((chain) => chainPath(chain, bike)),
    ...Object.values(solution.belts).flatMap((belt) => beltPath(belt, belt.low, bike)),
  ];
}

function chainPath(solved: SolvedChain, bike: Bike): ChainPath[] {
  const { stage, chain, driver, driven } = solved;
  const size = { width: 2 * chain.halfWidth, height: chain.plateHeight };
  return pathOf(stage, bike, [driver.pitchDiameter / 2, driven.pitchDiameter / 2], size);
}

function beltPath({ stage }: SolvedBelt, end: BeltEnd, bike: Bike): ChainPath[] {
  const size = { width: stage.beltTopWidth, height: BELT_THICKNESS * stage.beltTopWidth };
  return pathOf(stage, bike, [end.driverDiameter / 2, end.drivenDiameter / 2], size);
}

function pathOf(
  stage: { readonly id: string; readonly from: string; readonly to: string },
  bike: Bike,
  [r1, r2]: readonly [number, number],
  size: { readonly width: number; readonly height: number },
): ChainPath[] {
  const [from, to] = [bike.shafts[stage.from], bike.shafts[stage.to]];
  const line = bike.ladder.lines.find((one) => one.drive === stage.id);
  if (!from || !to || !line) return [];
  const [left, right] = straightRuns(from, to, r1, r2);
  const angle = (center: SidePoint, at: SidePoint) => Math.atan2(at.z - center.z, at.x - center.x);
  const points = [
    ...arc(to, r2, angle(to, left[1]), angle(to, right[1])),
    ...arc(from, r1, angle(from, right[0]), angle(from, left[0])),
  ];
  return [{ drive: stage.id, y: line.drivenY, points, ...size }];
}

/** Points of an arc, clockwise from one direction to the other. */
function arc(center: SidePoint, radius: number, start: number, end: number): SidePoint[] {
  const sweep = -((start - end + 4 * Math.PI) % (2 * Math.PI));
  const steps = Math.max(2, Math.ceil((-sweep / (Math.PI / 2)) * STEPS_PER_QUARTER));
  return Array.from({ length: steps + 1 }, (_, i) => around(center, radius, start + (sweep * i) / steps));
}

const around = (center: SidePoint, radius: number, angle: number): SidePoint => ({
  x: center.x + radius * Math.cos(angle),
  z: center.z + radius * Math.sin(angle),
});
