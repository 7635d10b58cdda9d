import { add3, cross3, type Point3, scale3, subtract3 } from '../../../geometry/index.ts';
import type { FrameLoads, MemberLoad, NodeLoad } from '../../frame/index.ts';
import { memberMiddle } from '../model/bikeFrame.ts';
import type { BikeFrame, Carrier } from '../model/frameTypes.ts';

/** A load from outside, or one of a pair between two parts. */
export interface AppliedLoad {
  readonly what: string;
  readonly carrier: Carrier;
  readonly at: Point3;
  readonly force: Point3;
  readonly moment?: Point3;
  /** Part of a pair that adds up to nothing over the bike: chains, arms. */
  readonly inner?: boolean;
}

/** How the rider's weight and swing reach the frame: by weights on where he is held. */
export type RiderHold = readonly { readonly node: string; readonly weight: number }[];

/** A load case with what balances it. */
export interface BalancedCase {
  readonly loads: FrameLoads;
  /** Acceleration of the bike as a rigid body, gravity included [m/s²], and about its center [rad/s²]. */
  readonly acceleration: Point3;
  readonly angular: Point3;
  /** Sum of all forces that act [N], for comparison with what is left over. */
  readonly scale: number;
}

const ZERO: Point3 = { x: 0, y: 0, z: 0 };

interface PointMass {
  readonly mass: number;
  readonly center: Point3;
  readonly inertia: readonly number[];
}

/** Masses of a frame in the form the balance needs; worked out once a frame. */
export interface FrameMasses {
  readonly total: number;
  readonly center: Point3;
  /** About the center, row by row [kg·m²]. */
  readonly tensor: readonly number[];
  readonly members: readonly { readonly id: string; readonly lineMass: number; readonly middle: Point3 }[];
}

/** Sums over bodies and members, a member as a point mass in its middle, as its uniform load acts. */
export function frameMasses(frame: BikeFrame, withRider: boolean): FrameMasses {
  const members = frame.model.members
    .filter((member) => (member.density ?? 0) > 0)
    .map(({ id, from, to, density, area }) => {
      const [a, b] = [frame.draft.nodes.get(from)!, frame.draft.nodes.get(to)!];
      const length = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
      return { id, lineMass: density! * area, length, middle: memberMiddle(frame, from, to) };
    });
  const points: PointMass[] = [
    ...frame.bodies
      .filter((body) => withRider || body.carrier.by !== 'rider')
      .map(({ mass, center, inertia: [xx, yy, zz, xy, yz, xz] }) => ({
        mass,
        center,
        inertia: [xx, xy, xz, xy, yy, yz, xz, yz, zz],
      })),
    ...members.map(({ lineMass, length, middle }) => ({
      mass: lineMass * length,
      center: middle,
      inertia: new Array<number>(9).fill(0),
    })),
  ];
  const total = points.reduce((sum, { mass }) => sum + mass, 0);
  const center = scale3(
    points.reduce((sum, point) => add3(sum, scale3(point.center, point.mass)), ZERO),
    1 / total,
  );
  const tensor = new Array<number>(9).fill(0);
  for (const { mass, center: at, inertia } of points) {
    const own = steiner(mass, subtract3(at, center));
    for (let i = 0; i < 9; i++) tensor[i] = tensor[i]! + own[i]! + inertia[i]!;
  }
  return { total, center, tensor, members };
}

function steiner(m: number, { x, y, z }: Point3): readonly number[] {
  return [
    m * (y * y + z * z),
    -m * x * y,
    -m * x * z,
    -m * x * y,
    m * (x * x + z * z),
    -m * y * z,
    -m * x * z,
    -m * y * z,
    m * (x * x + y * y),
  ];
}

/**
 * Loads of a case together with −m·a and −I·α of every part, so that the whole is in balance and the supports carry
 * nothing: a = ΣF/m, α = I⁻¹·ΣM about the center.
 * @param gravity on every part [m/s²]
 * @source derived, d'Alembert
 */
export function balanceCase(
  frame: BikeFrame,
  masses: FrameMasses,
  of: {
    readonly applied: readonly AppliedLoad[];
    readonly gravity: Point3;
    readonly hold: RiderHold;
    readonly withRider: boolean;
  },
): BalancedCase {
  const { total, center, tensor, members } = masses;
  let [force, moment, scale] = [ZERO, ZERO, 0];
  for (const load of of.applied) {
    scale += Math.hypot(load.force.x, load.force.y, load.force.z);
    force = add3(force, load.force);
    moment = add3(moment, add3(load.moment ?? ZERO, cross3(subtract3(load.at, center), load.force)));
  }
  // Gravity pulls on every part alike and falls out of what balances.
  const acceleration = scale3(force, 1 / total);
  const angular = solve3(tensor, moment);
  const field = (at: Point3): Point3 =>
    scale3(add3(acceleration, cross3(angular, subtract3(at, center))), -1);
  const nodes: NodeLoad[] = [];
  const carry = (load: AppliedLoad): void => {
    nodes.push(...nodeLoads(frame, load, of.hold));
  };
  for (const load of of.applied) carry(load);
  for (const body of frame.bodies) {
    if (body.carrier.by === 'rider' && !of.withRider) continue;
    const { mass, center: at, inertia } = body;
    carry({
      what: body.id,
      carrier: body.carrier,
      at,
      force: scale3(field(at), mass),
      moment: scale3(turned(inertia, angular), -1),
    });
  }
  const memberLoads: MemberLoad[] = members.map(({ id, lineMass, middle }) => ({
    member: id,
    w: scale3(field(middle), lineMass),
  }));
  return {
    loads: { nodes, members: memberLoads },
    acceleration: add3(acceleration, of.gravity),
    angular,
    scale: scale + total * Math.hypot(of.gravity.x, of.gravity.y, of.gravity.z),
  };
}

const turned = ([xx, yy, zz, xy, yz, xz]: readonly number[], a: Point3): Point3 => ({
  x: xx! * a.x + xy! * a.y + xz! * a.z,
  y: xy! * a.x + yy! * a.y + yz! * a.z,
  z: xz! * a.x + yz! * a.y + zz! * a.z,
});

/** Brings a load to the nodes that carry it. */
function nodeLoads(frame: BikeFrame, load: AppliedLoad, hold: RiderHold): NodeLoad[] {
  const { carrier } = load;
  if (carrier.by === 'node') return [onNode(frame, load, carrier.node)];
  if (carrier.by === 'wheel') return onWheel(frame, load, carrier.wheel);
  const spots =
    carrier.by === 'rider' ? hold : carrier.nodes.map((node) => ({ node, weight: 1 / carrier.nodes.length }));
  return spreadLoad(frame, load, spots);
}

function onNode(frame: BikeFrame, { at, force, moment = ZERO }: AppliedLoad, node: string): NodeLoad {
  const arm = subtract3(at, frame.draft.nodes.get(node)!);
  return { node, force, moment: add3(moment, cross3(arm, force)) };
}

/**
 * A wheel turns freely: its two bearings take forces, and moments across by pairs of forces. What is left about the
 * axle is a brake's, and goes where the caliper is held.
 */
function onWheel(
  frame: BikeFrame,
  { at, force, moment = ZERO }: AppliedLoad,
  wheel: 'front' | 'rear',
): NodeLoad[] {
  const { hub, hubY } = frame.wheels[wheel];
  const [left, right] = hub;
  const [a, b] = [frame.draft.nodes.get(left)!, frame.draft.nodes.get(right)!];
  const span = hubY[0] - hubY[1];
  const middle = scale3(add3(a, b), 0.5);
  const m = add3(moment, cross3(subtract3(at, middle), force));
  const pair: Point3 = { x: -m.z / span, y: 0, z: m.x / span };
  const half = scale3(force, 0.5);
  return [
    { node: left, force: add3(half, pair) },
    { node: right, force: subtract3(half, pair) },
    { node: frame.brakeNodes[wheel], moment: { x: 0, y: m.y, z: 0 } },
  ];
}

/**
 * A force and moment spread over points by weights, with the least sum of f²/w: f = w·(F/Σw + β × d), β from the moment
 * about the weighted middle. Points on one line cannot take a moment about it; that part stays at the first.
 * @source derived, least squares with equilibrium
 */
export function spreadLoad(
  frame: BikeFrame,
  { at, force, moment = ZERO }: AppliedLoad,
  spots: RiderHold,
): NodeLoad[] {
  const whole = spots.reduce((sum, { weight }) => sum + weight, 0);
  const places = spots.map(({ node, weight }) => ({
    weight: weight / whole,
    at: frame.draft.nodes.get(node)!,
  }));
  const middle = places.reduce((sum, spot) => add3(sum, scale3(spot.at, spot.weight)), ZERO);
  const about = add3(moment, cross3(subtract3(at, middle), force));
  const tensor = new Array<number>(9).fill(0);
  for (const spot of places) {
    const own = steiner(spot.weight, subtract3(spot.at, middle));
    for (let i = 0; i < 9; i++) tensor[i] = tensor[i]! + own[i]!;
  }
  const flat = determinant(tensor) <= 1e-9 * (tensor[0]! + tensor[4]! + tensor[8]!) ** 3;
  const swing = flat ? ZERO : solve3(tensor, about);
  return spots.map(({ node }, i) => {
    const { weight, at: spot } = places[i]!;
    const share = scale3(add3(force, cross3(swing, subtract3(spot, middle))), weight);
    return flat && i === 0 ? { node, force: share, moment: about } : { node, force: share };
  });
}

function determinant([a, b, c, d, e, f, g, h, i]: readonly number[]): number {
  return a! * (e! * i! - f! * h!) - b! * (d! * i! - f! * g!) + c! * (d! * h! - e! * g!);
}

/** x of T·x = m, T row by row. */
function solve3(t: readonly number[], m: Point3): Point3 {
  const [a, b, c, d, e, f, g, h, i] = t as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const det = determinant(t);
  return {
    x: (m.x * (e * i - f * h) - b * (m.y * i - f * m.z) + c * (m.y * h - e * m.z)) / det,
    y: (a * (m.y * i - f * m.z) - m.x * (d * i - f * g) + c * (d * m.z - m.y * g)) / det,
    z: (a * (e * m.z - m.y * h) - b * (d * m.z - m.y * g) + m.x * (d * h - e * g)) / det,
  };
}
