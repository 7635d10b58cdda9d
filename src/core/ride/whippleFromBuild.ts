import {
  type Inertia,
  type Layout,
  type Lump,
  type MassPart,
  type MassSummary,
  massOfBody,
  type Stance,
} from '../bike/index.ts';
import { along3, directionToWorld, type Frame3, type Point3, toWorld } from '../geometry/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import { type WhippleParameters, whippleMatrices } from './whipple.ts';

/** What the model, which knows left from right only by its mirror image, leaves out of a real bike. */
export interface Asymmetry {
  /** Center of mass of the whole bike left of the center plane [m]. */
  readonly y: number;
  /** Tensor entries of the whole bike about its center [kg·m²]. */
  readonly Ixy: number;
  readonly Iyz: number;
  /** Front assembly and front wheel: center left of the plane [m]; the model wants 0. */
  readonly frontY: number;
}

export interface WhippleOfBuild {
  readonly parameters: WhippleParameters;
  readonly asymmetry: Asymmetry;
}

export interface WhippleOfBuildInput {
  readonly layout: Layout;
  readonly masses: MassSummary;
  /** Stance in which the bike rolls; left out: `sag`, the loaded one. */
  readonly stance?: keyof Layout['stances'];
  /** g [m/s²]; left out: standard gravity. */
  readonly gravity?: number;
}

/** g, standard gravity [m/s²]. @source nist-sp-811, appendix B.8 */
export const STANDARD_GRAVITY = 9.80665;

/**
 * The 25 parameters of a placed bike in the axes of the publication: x forward, y right, z down, so that heights and
 * the entry Ixz change sign. Fork and bars are the front assembly, discs and sprockets on a hub belong to the wheel,
 * all else with a rigid rider is the rear body. Parts are placed at the design stance and carried into the one asked for.
 * @issue conflict — a bike with which the model means nothing, such as a front end without mass
 * @source whipple-2007, appendix A; derived, parallel axis theorem
 */
export function whippleFromBuild(input: WhippleOfBuildInput): Outcome<WhippleOfBuild> {
  const { layout, masses, gravity = STANDARD_GRAVITY } = input;
  const stance = layout.stances[input.stance ?? 'sag'];
  const sag = forkSag(layout, stance);
  const carried = masses.parts.map((part) =>
    carry(part, stance.frame, part.body === 'frontWheel' ? sag : 0, layout.steeringAxis),
  );
  const body = (...names: MassPart['body'][]): Lump => massOfBody({ ...masses, parts: carried }, names);
  const [rear, front] = [body('rearWheel'), body('frontWheel')];
  const [b, h] = [body('frame', 'rider'), body('front')];
  const x = (lump: Lump): number => lump.center.x - rear.center.x;
  const parameters: WhippleParameters = {
    w: x(front),
    c: stance.trail,
    lam: stance.rake,
    g: gravity,
    rR: stance.rearRadius,
    mR: rear.mass,
    IRxx: rear.inertia[0],
    IRyy: rear.inertia[1],
    xB: x(b),
    zB: -b.center.z,
    mB: b.mass,
    IBxx: b.inertia[0],
    IBzz: b.inertia[2],
    IBxz: -b.inertia[5],
    xH: x(h),
    zH: -h.center.z,
    mH: h.mass,
    IHxx: h.inertia[0],
    IHzz: h.inertia[2],
    IHxz: -h.inertia[5],
    rF: stance.frontRadius,
    mF: front.mass,
    IFxx: front.inertia[0],
    IFyy: front.inertia[1],
  };
  const [first, ...more] = whippleIssues(parameters);
  if (first) return bad(first, ...more);
  const all = body('frame', 'rider', 'front', 'rearWheel', 'frontWheel');
  return good({
    parameters,
    asymmetry: {
      y: all.center.y,
      Ixy: all.inertia[3],
      Iyz: all.inertia[4],
      frontY: body('front', 'frontWheel').center.y,
    },
  });
}

/**
 * Why the equations mean nothing with these parameters; empty when they do.
 * @issue conflict — a length, radius or mass that is not above 0, or a mass matrix that is not positive definite
 * @source derived, kinetic energy is positive for every motion
 */
export function whippleIssues(p: WhippleParameters): Issue[] {
  const refuse = (path: string, reason: string): Issue => ({ code: 'conflict', path, reason });
  const above = (['w', 'rR', 'rF'] as const).filter((name) => !(p[name] > 0));
  if (above.length > 0)
    return above.map((name) => refuse(name, 'a wheelbase or a wheel radius is more than 0'));
  const negative = (
    ['mR', 'mB', 'mH', 'mF', 'IRxx', 'IRyy', 'IFxx', 'IFyy', 'IBxx', 'IBzz', 'IHxx', 'IHzz'] as const
  ).filter((name) => p[name] < 0);
  if (negative.length > 0)
    return negative.map((name) => refuse(name, 'no mass or moment of inertia is below 0'));
  if (!(p.mH + p.mF > 0))
    return [refuse('mF', 'the front assembly and the front wheel have no mass together')];
  const [[m11, m12], [, m22]] = whippleMatrices(p).M;
  if (m11 > 0 && m11 * m22 - m12 * m12 > 0) return [];
  return [refuse('IHzz', 'no body has these moments of inertia: the mass matrix is not positive definite')];
}

/** Compression of the fork along the axis [m]: what brings the pitched frame's front tire onto the ground. */
function forkSag({ shafts, steeringAxis }: Layout, { frame, frontRadius }: Stance): number {
  const axle = toWorld(frame, shafts.frontAxle!);
  return (frontRadius - axle.z) / directionToWorld(frame, steeringAxis).z;
}

/** A part as it lies in another stance: moved along the steering axis with the fork, then pitched with the frame. */
function carry(part: MassPart, frame: Frame3, along: number, axis: Point3): MassPart {
  return {
    ...part,
    center: toWorld(frame, along3(part.center, axis, along)),
    inertia: turned(part.inertia, frame),
  };
}

/** R·I·Rᵀ, R's columns the axes of the frame. */
function turned([xx, yy, zz, xy, yz, xz]: Inertia, frame: Frame3): Inertia {
  const tensor = [
    [xx, xy, xz],
    [xy, yy, yz],
    [xz, yz, zz],
  ] as const;
  const columns = [frame.x, frame.y, frame.z];
  const row = (of: (p: Point3) => number): readonly number[] => columns.map(of);
  const [rx, ry, rz] = [row((p) => p.x), row((p) => p.y), row((p) => p.z)];
  const entry = (a: readonly number[], b: readonly number[]): number =>
    tensor.reduce(
      (sum, line, i) => sum + line.reduce((inner, value, j) => inner + a[i]! * value * b[j]!, 0),
      0,
    );
  return [entry(rx, rx), entry(ry, ry), entry(rz, rz), entry(rx, ry), entry(ry, rz), entry(rx, rz)];
}
