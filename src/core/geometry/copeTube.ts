import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';
import { type CopeJoint, type CopeProfile, controllingPosition, copePosition, copeProfile } from './cope.ts';
import type { Loop } from './loop.ts';
import type { Point3 } from './point.ts';
import { along3, angleAbout3, cross3, dot3, scale3, subtract3, unit3 } from './vec3.ts';

/** A straight line in space. */
export interface Axis {
  readonly point: Point3;
  /** Any length but 0. */
  readonly direction: Point3;
}

/** How a branch lies on a trunk in space. */
export interface CopePlace {
  /** θ [rad], 0 < θ ≤ π/2: the trunk's direction is turned so that the branch leans along it. */
  readonly angle: number;
  /** e, offset of the branch axis from the trunk axis along `side` [m]; its sign follows from `side`. */
  readonly offset: number;
  /** Unit vector across the branch toward its heel, φ = 0. */
  readonly heel: Point3;
  /** Unit vector across the branch toward φ = π/2. */
  readonly side: Point3;
  /** Unit vector along the branch, away from the trunk. */
  readonly away: Point3;
  /** Point of the branch axis from which s is measured, level with the trunk's axis. */
  readonly origin: Point3;
}

/** A straight tube coped at both ends. */
export interface TwoCopes {
  /** Length along the tube's axis between the two trunks' axis planes [m], > 0. */
  readonly length: number;
  readonly start: CopeJoint;
  readonly end: CopeJoint;
  /**
   * From the heel of the start cope to the heel of the end cope [rad], in the sense of the start cope's φ:
   * clockwise as seen from the tube's end toward its start.
   */
  readonly clocking: number;
}

/** Both cuts on one tube, at the same lines along it. */
export interface TwoCopesProfile {
  /** At each φ of the start cope: cut positions from the start trunk's axis plane and the wall left between them [m]. */
  readonly lines: readonly {
    readonly around: number;
    readonly startCut: number;
    readonly endCut: number;
    readonly wallLength: number;
  }[];
  readonly start: CopeProfile;
  readonly end: CopeProfile;
  /** Straight piece that both cuts come out of, from the least startCut to the greatest endCut [m]. */
  readonly blankLength: number;
}

export interface WrapOptions {
  readonly joint: CopeJoint;
  /** `outside` for a cutter held square to the tube, `controlling` to cut clear of the trunk through the wall. */
  readonly line: 'outside' | 'controlling';
  /** Paper thickness [m], ≥ 0. The paper's middle lies half of it outside the tube, so the flat is π·thickness longer. */
  readonly paperThickness: number;
  /** Paper below the shortest wall [m], > 0. */
  readonly margin: number;
  /** φ at the seam, the left and right edge of the flat paper [rad]. */
  readonly seam: number;
  /** Step of the cut line around the tube [rad], > 0. */
  readonly step: number;
}

/**
 * A paper to wrap around the branch, printed face out, as it lies flat: x to the right around the tube, y up toward the
 * trunk, the lower edge square to the tube. φ runs to the right from the seam. The cut line is the upper edge.
 */
export interface WrapTemplate {
  readonly outline: Loop;
  /** Around the tube, edge to edge [m]. */
  readonly width: number;
  /** Lower edge to the longest wall [m]. */
  readonly height: number;
  /** Lines along the tube at heel, sides and crotch: φ [rad], x [m] and the height y of the cut line there [m]. */
  readonly marks: readonly { readonly around: number; readonly x: number; readonly y: number }[];
  /** y of the trunk's axis plane, s = 0 [m]. */
  readonly axisPlaneY: number;
}

const TURN = 2 * Math.PI;

/**
 * Angle, offset and clocking reference of a branch on a trunk from their axes in space; `branch.direction` points from
 * the joint into the branch. On a square joint both sides are obtuse, and the heel lies on the side that the trunk's
 * given direction points to.
 * @issue conflict — the axes are parallel
 * @source derived, common perpendicular of two lines
 */
export function copePlace(branch: Axis, trunk: Axis): Outcome<CopePlace> {
  const away = unit3(branch.direction);
  const given = unit3(trunk.direction);
  const lean = dot3(away, given);
  const along = lean >= 0 ? given : scale3(given, -1);
  const across = subtract3(away, scale3(along, Math.abs(lean)));
  const sinAngle = Math.hypot(across.x, across.y, across.z);
  if (sinAngle < 1e-9)
    return bad({ code: 'conflict', path: '', reason: 'the tubes are parallel and do not meet at an angle' });
  const up = scale3(across, 1 / sinAngle);
  const side = cross3(up, along);
  const toBranch = subtract3(branch.point, trunk.point);
  return good({
    angle: Math.atan2(sinAngle, Math.abs(lean)),
    offset: dot3(toBranch, side),
    heel: subtract3(scale3(up, Math.abs(lean)), scale3(along, sinAngle)),
    side,
    away,
    origin: along3(branch.point, away, -dot3(toBranch, up) / sinAngle),
  });
}

/** Clocking of {@link TwoCopes} from the two places of one tube [rad], −π to π. */
export const clockingOf = (start: CopePlace, end: CopePlace): number =>
  angleAbout3(start.heel, end.heel, scale3(start.away, -1));

/**
 * Both copes of a straight tube at common lines: at φ the start cut is s₁(φ) and the end cut L − s₂(clocking − φ),
 * because seen from its own trunk each cope's φ runs the same way.
 * @issue the issues of {@link copeProfile} under `start.` and `end.`; conflict — the cuts meet and no wall is left
 * @source derived
 */
export function copeBothEnds(tube: TwoCopes, step: number = Math.PI / 36): Outcome<TwoCopesProfile> {
  const start = copeProfile(tube.start, step);
  const end = copeProfile(tube.end, step);
  const [first, ...rest] = [...prefixed(start, 'start.'), ...prefixed(end, 'end.')];
  if (first) return bad(first, ...rest);
  if (!start.ok || !end.ok) throw new Error('a cope without issues has a profile');
  const lines = start.value.outside.map(({ around, position }) => {
    const endCut = tube.length - copePosition(tube.end, tube.clocking - around);
    return { around, startCut: position, endCut, wallLength: endCut - position };
  });
  if (lines.some((line) => !(line.wallLength > 0))) {
    return bad({
      code: 'conflict',
      path: 'length',
      reason: 'the two copes meet and leave no tube between them',
    });
  }
  const blankLength = tube.length - end.value.lowest.position - start.value.lowest.position;
  return good({ lines, start: start.value, end: end.value, blankLength });
}

/**
 * The flat paper template of a cope: x = (r + t/2)·(φ − seam), t the paper's thickness; y falls by s.
 * @issue the issues of {@link copeProfile}
 * @source derived, unwrapped cylinder
 */
export function wrapTemplate(options: WrapOptions): Outcome<WrapTemplate> {
  const { joint, paperThickness, margin, seam } = options;
  if (!(paperThickness >= 0 && margin > 0))
    throw new RangeError('a template needs paper: thickness ≥ 0 and a margin above 0');
  const profile = copeProfile(joint, options.step);
  if (!profile.ok) return profile;
  const at = options.line === 'outside' ? copePosition : controllingPosition;
  const radius = joint.branchRadius + paperThickness / 2;
  const count = profile.value.outside.length - 1;
  const cut = Array.from({ length: count + 1 }, (_, k) => {
    const turn = (TURN * k) / count;
    return { x: radius * turn, s: at(joint, seam + turn) };
  });
  const marks = [0, 1, 2, 3].map((k) => ({ around: (k * Math.PI) / 2, s: at(joint, (k * Math.PI) / 2) }));
  const highest = Math.max(...[...cut, ...marks].map((p) => p.s));
  const y = (s: number): number => margin + highest - s;
  const upper = cut.map((p) => ({ x: p.x, y: y(p.s), bulge: 0 })).reverse();
  const width = TURN * radius;
  return good({
    outline: [{ x: 0, y: 0, bulge: 0 }, { x: width, y: 0, bulge: 0 }, ...upper],
    width,
    height: Math.max(...upper.map((p) => p.y)),
    marks: marks.map((m) => ({ around: m.around, x: radius * turnFrom(seam, m.around), y: y(m.s) })),
    axisPlaneY: y(0),
  });
}

const turnFrom = (seam: number, around: number): number =>
  around - seam - TURN * Math.floor((around - seam) / TURN);

const prefixed = (outcome: Outcome<CopeProfile>, prefix: string): Issue[] =>
  outcome.ok ? [] : outcome.issues.map((issue) => ({ ...issue, path: `${prefix}${issue.path}` }));
