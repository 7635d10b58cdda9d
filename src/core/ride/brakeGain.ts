import type { Bike } from '../bike/index.ts';
import type { BrakeEntry, Build } from '../build/index.ts';
import { brakeFacts, type PadKind, padFriction, type UsualRange } from '../standards/index.ts';
import { bandTorque, effectiveRadius, hydraulicForces } from './brakeForce.ts';

/** A brake from the lever to the ground, as far as its force goes. */
export type BrakeChain = (
  | {
      readonly kind: 'disc';
      /** Bore of the master cylinder [m]. */
      readonly masterBore: number;
      readonly pistonDiameter: number;
      readonly pistonsOneSide: number;
      readonly effectiveRadius: number;
    }
  | { readonly kind: 'cable-disc'; readonly effectiveRadius: number }
  | { readonly kind: 'band'; readonly radius: number; readonly wrap: number; readonly selfWraps: boolean }
  | {
      readonly kind: 'drum';
      readonly radius: number;
      /** Drum force over shoe force [-]; left out: that of one leading and one trailing shoe. */
      readonly drumFactor?: UsualRange;
    }
) & {
  /** i, lever or pedal ratio; of a mechanical brake from the hand to the pad, band or shoe [-]. */
  readonly leverRatio: number;
  /** μ of pad or lining [-]. */
  readonly friction: UsualRange;
  /** Of the cable [-]; 1 for a hydraulic line. */
  readonly efficiency: number;
  /** R, tire [m]. */
  readonly tireRadius: number;
};

/** The brake of one wheel as read from the build, or what is missing to know its force. */
export type BrakeOfWheel =
  | { readonly known: true; readonly chain: BrakeChain; readonly gain: UsualRange }
  | { readonly known: false; readonly missing: readonly string[] };

/** Wrap of a band whose file does not tell it: three quarters of the drum. @source practice */
export const USUAL_WRAP = 1.5 * Math.PI;
/** Inside of a disc's track over its outside, where neither it nor the pad is given. @source practice */
const TRACK_INSIDE = 0.6;

/**
 * Force at the ground over force at the lever, for the range of pad friction.
 * @source derived, see `hydraulicForces` and `bandTorque`; memory, factor of a drum with one leading and one trailing shoe
 */
export function brakeGain(chain: BrakeChain): UsualRange {
  const { friction } = chain;
  const at = (mu: number, drum: number): number => unitForce(chain, mu, drum);
  const drum = chain.kind === 'drum' && chain.drumFactor ? chain.drumFactor : brakeFacts.drumFactor;
  return {
    low: at(friction.low, drum.low),
    usual: at(friction.usual, drum.usual),
    high: at(friction.high, drum.high),
  };
}

/**
 * The brake of a wheel of a placed bike. A caliper with two pistons or more that does not say so is taken as opposed; a
 * disc without bores is taken as pulled by a cable. Its lever ratio must be known.
 * @param pads what the pads are made of, where it is known
 * @source derived, from the build file; practice for what it leaves out
 */
export function brakeOfWheel(
  build: Build,
  bike: Bike,
  wheel: 'front' | 'rear',
  pads: PadKind = 'unknown',
): BrakeOfWheel {
  const brake = build.brakes[wheel];
  if (!brake) return { known: false, missing: [`brakes.${wheel}`] };
  if (brake.leverRatio === undefined) return { known: false, missing: [`brakes.${wheel}.leverRatio`] };
  const tireRadius = bike.layout.stances.sag[`${wheel}Radius`];
  const chain = chainOf(brake, brake.leverRatio, tireRadius, pads);
  return { known: true, chain, gain: brakeGain(chain) };
}

function chainOf(brake: BrakeEntry, leverRatio: number, tireRadius: number, pads: PadKind): BrakeChain {
  const cable = brakeFacts.cableEfficiency.usual;
  if (brake.kind !== 'disc') {
    const shared = { leverRatio, friction: padFriction('bandLining'), efficiency: cable, tireRadius };
    const radius = brake.diameter / 2;
    return brake.kind === 'drum'
      ? { kind: 'drum', radius, ...shared }
      : { kind: 'band', radius, wrap: USUAL_WRAP, selfWraps: brake.selfWraps ?? false, ...shared };
  }
  const radius = padRadius(brake);
  const shared = { leverRatio, friction: padFriction(pads), tireRadius, effectiveRadius: radius };
  const { pistonDiameter, pistons = 2, style } = brake.caliper;
  if (brake.masterBore === undefined || pistonDiameter === undefined)
    return { kind: 'cable-disc', efficiency: cable, ...shared };
  const isOpposed = (style ?? (pistons % 2 === 0 ? 'opposed' : 'sliding')) === 'opposed';
  return {
    kind: 'disc',
    masterBore: brake.masterBore,
    pistonDiameter,
    pistonsOneSide: isOpposed ? pistons / 2 : pistons,
    efficiency: 1,
    ...shared,
  };
}

/** Worn-in effective radius: of the pad where its place is known, else of the disc's track. */
function padRadius({ disc, caliper }: Extract<BrakeEntry, { kind: 'disc' }>): number {
  const edge = disc.diameter / 2;
  const inner = (disc.inside ?? TRACK_INSIDE * disc.diameter) / 2;
  if (caliper.padEdge === undefined || caliper.padHeight === undefined)
    return effectiveRadius(inner, edge).wornIn;
  const outside = Math.min(edge, caliper.lugRadius - caliper.padEdge);
  const inside = caliper.lugRadius - caliper.padEdge - caliper.padHeight;
  return inside > 0 && outside > inside
    ? effectiveRadius(inside, outside).wornIn
    : effectiveRadius(inner, edge).wornIn;
}

/** Force at the ground for 1 N at the lever. */
function unitForce(chain: BrakeChain, mu: number, drumFactor: number): number {
  const pull = chain.leverRatio * chain.efficiency;
  switch (chain.kind) {
    case 'disc':
      return hydraulicForces({ ...chain, force: 1, padFriction: mu }).tireForce;
    case 'cable-disc':
      return (2 * mu * pull * chain.effectiveRadius) / chain.tireRadius;
    case 'band':
      return bandTorque({ ...chain, pull, friction: mu }) / chain.tireRadius;
    case 'drum':
      return (drumFactor * pull * chain.radius) / chain.tireRadius;
  }
}
