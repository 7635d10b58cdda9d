import type { Build } from '../build/index.ts';
import { along3, distance3, type Point3 } from '../geometry/index.ts';
import { type BodyLinks, bodyLinks, restPosture } from '../standards/index.ts';
import type { Layout, RiderFigure } from './bike.ts';
import { placeTwoLinks } from './twoLinks.ts';

/** Halvings of the lean's interval: far below a hundredth of a degree. */
const HALVINGS = 40;
/** The knee points forward and up, the elbow out and down. */
const KNEE: Point3 = { x: 1, y: 0, z: 0.4 };
const ELBOW: Point3 = { x: 0, y: 0.5, z: -1 };

/** What a rider sits on and holds, left side [m]. */
export interface RiderContacts {
  /** Top of the seat where the rider sits. */
  readonly seat: Point3;
  /** Middle of the left peg. */
  readonly peg: Point3;
  readonly pegDiameter: number;
  /** Middle of the left grip. */
  readonly grip: Point3;
}

/** Seat, pegs and grips of a build. */
export const riderContacts = (build: Build, { places: { seat, peg, grip } }: Layout): RiderContacts => ({
  seat,
  peg,
  pegDiameter: build.seating.pegs.diameter,
  grip,
});

/** The build's own rider at rest. @source ansur-2, link lengths; memory, usual posture */
export const placeRider = (build: Build, layout: Layout): RiderFigure =>
  placeFigure(bodyLinks(build.rider), riderContacts(build, layout));

/**
 * A rider at rest, left side: hip on the seat, ball of the foot on the peg, hand on the grip. The trunk leans forward
 * no more than the arm needs to reach with a bent elbow. Links that cannot reach are drawn at full stretch and named.
 * @source ansur-2, link lengths; memory, usual posture
 */
export function placeFigure(links: BodyLinks, { seat, peg, pegDiameter, grip }: RiderContacts): RiderFigure {
  const hip = { x: seat.x, y: seat.y + links.hipSpacing / 2, z: seat.z + links.hipAboveSeat };
  const pegTop = peg.z + pegDiameter / 2;
  const sole = (forward: number, up: number): Point3 => ({ x: peg.x + forward, y: peg.y, z: pegTop + up });
  const leg = placeTwoLinks({
    from: hip,
    goal: sole(-links.ankleBehindPeg, links.ankleHeight),
    first: links.thigh,
    second: links.shank,
    bend: KNEE,
  });
  const lean = trunkLean(links, seat, grip);
  const shoulder = shoulderAt(links, seat, lean);
  const arm = placeTwoLinks({
    from: shoulder,
    goal: grip,
    first: links.upperArm,
    second: links.forearm,
    bend: ELBOW,
  });
  return {
    hip,
    knee: leg.hinge,
    ankle: leg.end,
    toe: leg.reached
      ? sole(links.toeAheadOfPeg, 0)
      : {
          ...leg.end,
          x: leg.end.x + links.ankleBehindPeg + links.toeAheadOfPeg,
          z: leg.end.z - links.ankleHeight,
        },
    shoulder,
    elbow: arm.hinge,
    grip: arm.end,
    // The head is held more upright than the trunk.
    head: along3(
      { ...shoulder, y: seat.y },
      { x: Math.sin(lean / 2), y: 0, z: Math.cos(lean / 2) },
      links.headAboveShoulder,
    ),
    headRadius: links.headRadius,
    outOfReach: [...(leg.reached ? [] : ['leg']), ...(arm.reached ? [] : ['arm'])],
  };
}

/** Least lean at which the grip is as near as the elbow at rest wants it; the most that is taken when it never is. */
function trunkLean(links: BodyLinks, seat: Point3, grip: Point3): number {
  const { upperArm: a, forearm: b } = links;
  const wanted = Math.sqrt(a ** 2 + b ** 2 - 2 * a * b * Math.cos(restPosture.elbow));
  const tooFar = (lean: number): boolean => distance3(shoulderAt(links, seat, lean), grip) > wanted;
  if (!tooFar(0)) return 0;
  let [far, near] = [0, restPosture.mostLean];
  if (tooFar(near)) return near;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (far + near) / 2;
    if (tooFar(middle)) far = middle;
    else near = middle;
  }
  return near;
}

const shoulderAt = (links: BodyLinks, seat: Point3, lean: number): Point3 => ({
  x: seat.x + links.torso * Math.sin(lean),
  y: seat.y + links.shoulderSpacing / 2,
  z: seat.z + links.hipAboveSeat + links.torso * Math.cos(lean),
});
