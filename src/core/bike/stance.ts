import { type Frame3, type Point3, rotate3, subtract3 } from '../geometry/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';
import type { Stance } from './bike.ts';

/** What the steering is at the design ride height. */
export interface SteeringGeometry {
  /** p, wheelbase [m], > 0. */
  readonly wheelbase: number;
  /** Steering axis from the ground [rad], 0 < headAngle ≤ π/2. */
  readonly headAngle: number;
  /** d, front axle ahead of the steering axis, square to it [m], any sign. */
  readonly forkOffset: number;
  /** R_f, front tire radius [m], > 0. */
  readonly frontRadius: number;
  /** R_r, rear tire radius [m], > 0. */
  readonly rearRadius: number;
}

/** What changed against the design ride height. */
export interface StanceChange {
  /** Front tire radius now [m], > 0. */
  readonly frontRadius: number;
  /** Rear tire radius now [m], > 0. */
  readonly rearRadius: number;
  /** s_f, compression of the fork along the steering axis [m]. */
  readonly sag: number;
  /** d_r, rise of the rear axle in the frame [m]. */
  readonly rearRise: number;
}

/** Rake, trail and flop of one stance. */
export interface SteeringNumbers {
  /** ε, from vertical [rad]. */
  readonly rake: number;
  /** c, trail on the ground [m]. */
  readonly trail: number;
  /** c_n, normal trail [m]. */
  readonly normalTrail: number;
  /** f, wheel flop factor [m]. */
  readonly flop: number;
}

const AXLE_AXIS: Point3 = { x: 0, y: 1, z: 0 };

/**
 * Trail from the steering axis: c_n = R·sin ε − d; c = c_n / cos ε; f = c_n·sin ε, with ε = 90° − head angle.
 * @source cossalter-notes, trail and normal trail; derived, level ground and side view
 */
export function steeringNumbers(headAngle: number, forkOffset: number, frontRadius: number): SteeringNumbers {
  const rake = Math.PI / 2 - headAngle;
  const normalTrail = frontRadius * Math.sin(rake) - forkOffset;
  return { rake, normalTrail, trail: normalTrail / Math.cos(rake), flop: normalTrail * Math.sin(rake) };
}

/** Unit vector up a steering axis: backward and up. */
export const axisUp = (headAngle: number): Point3 => ({
  x: -Math.cos(headAngle),
  y: 0,
  z: Math.sin(headAngle),
});

/** Unit vector forward and square to a steering axis. */
export const axisForward = (headAngle: number): Point3 => ({
  x: Math.sin(headAngle),
  y: 0,
  z: Math.cos(headAngle),
});

/**
 * How the bike stands with other tires, a compressed fork or a raised rear axle. In the frame the line from the rear
 * to the front axle is v = (p, R_f − R_r) + s_f·u − (0, d_r), u up the steering axis; the frame pitches by
 * θ = atan2(v_z, v_x) − asin((R_f' − R_r') / |v|), nose down positive, until both tires touch the ground;
 * wheelbase' = |v|·cos(atan2(v_z, v_x) − θ), head angle' = head angle + θ.
 * @issue conflict — tires so unlike, or an axis so far over, that the bike cannot stand on both wheels
 * @source derived, rigid frame on level ground
 */
export function standOn(
  name: Stance['name'],
  design: SteeringGeometry,
  change: StanceChange,
): Outcome<Stance> {
  const up = axisUp(design.headAngle);
  const vx = design.wheelbase + change.sag * up.x;
  const vz = design.frontRadius - design.rearRadius + change.sag * up.z - change.rearRise;
  const span = Math.hypot(vx, vz);
  const rise = change.frontRadius - change.rearRadius;
  if (!(Math.abs(rise) < span && vx > 0)) {
    return bad({
      code: 'conflict',
      path: '',
      reason: 'the bike cannot stand on both wheels with these tires',
    });
  }
  const slope = Math.atan2(vz, vx);
  // With nothing changed the two angles are one, but for their last digit.
  const pitch = rise === vz ? 0 : slope - Math.asin(rise / span);
  const headAngle = design.headAngle + pitch;
  if (!(headAngle > 0 && headAngle < Math.PI)) {
    return bad({ code: 'conflict', path: '', reason: 'the steering axis lies on the ground in this stance' });
  }
  return good({
    name,
    frontRadius: change.frontRadius,
    rearRadius: change.rearRadius,
    pitch,
    wheelbase: span * Math.cos(slope - pitch),
    headAngle,
    ...steeringNumbers(headAngle, design.forkOffset, change.frontRadius),
    frame: pitchedFrame(pitch, design.rearRadius + change.rearRise, change.rearRadius),
  });
}

/** The design's coordinates after pitching by `pitch` about the rear axle, which comes to lie at `height`. */
function pitchedFrame(pitch: number, axleBefore: number, height: number): Frame3 {
  const turn = (v: Point3): Point3 => rotate3(v, AXLE_AXIS, pitch);
  const axle = turn({ x: 0, y: 0, z: axleBefore });
  return {
    origin: subtract3({ x: 0, y: 0, z: height }, axle),
    x: turn({ x: 1, y: 0, z: 0 }),
    y: AXLE_AXIS,
    z: turn({ x: 0, y: 0, z: 1 }),
  };
}
