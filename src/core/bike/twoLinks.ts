import { along3, distance3, dot3, type Point3, scale3, subtract3, unit3 } from '../geometry/index.ts';

/** Two links joined by a hinge, from a fixed end toward a goal. */
export interface TwoLinks {
  readonly from: Point3;
  readonly goal: Point3;
  /** L₁, from `from` to the hinge [m], > 0. */
  readonly first: number;
  /** L₂, from the hinge on [m], > 0. */
  readonly second: number;
  /** Way that the hinge points; only its part across the line to the goal counts. */
  readonly bend: Point3;
}

export interface TwoLinksPlace {
  readonly hinge: Point3;
  /** The far end: the goal, or as near as the links come. */
  readonly end: Point3;
  /** Angle at the hinge [rad], π when stretched. */
  readonly angle: number;
  readonly reached: boolean;
}

/** Shortest way in which a direction can be told [m]. */
const NO_WAY = 1e-9;

/**
 * Hinge of two links that reach a goal: cos K = (L₁² + L₂² − D²) / (2·L₁·L₂). A goal too far is met at full stretch,
 * one too near with the links folded; both are told by `reached`.
 * @source derived, law of cosines
 */
export function placeTwoLinks(links: TwoLinks): TwoLinksPlace {
  const { from, goal, first, second } = links;
  const wanted = distance3(from, goal);
  const [least, most] = [Math.abs(first - second), first + second];
  const reached = wanted >= least && wanted <= most;
  const way = wanted > NO_WAY ? unit3(subtract3(goal, from)) : unit3(links.bend);
  const distance = Math.min(Math.max(wanted, least), most);
  const cosine = (first ** 2 + second ** 2 - distance ** 2) / (2 * first * second);
  const along = distance > NO_WAY ? (first ** 2 - second ** 2 + distance ** 2) / (2 * distance) : 0;
  const across = Math.sqrt(Math.max(0, first ** 2 - along ** 2));
  const hinge = along3(along3(from, way, along), acrossWay(way, links.bend), across);
  const end = reached ? goal : along3(from, way, distance);
  return { hinge, end, angle: Math.acos(Math.min(1, Math.max(-1, cosine))), reached };
}

/** The part of the hint square to the way; when there is none, straight up or forward. */
function acrossWay(way: Point3, hint: Point3): Point3 {
  for (const direction of [hint, { x: 0, y: 0, z: 1 }, { x: 1, y: 0, z: 0 }]) {
    const part = subtract3(direction, scale3(way, dot3(direction, way)));
    if (Math.hypot(part.x, part.y, part.z) > NO_WAY) return unit3(part);
  }
  throw new Error('one of up and forward lies across any way');
}
