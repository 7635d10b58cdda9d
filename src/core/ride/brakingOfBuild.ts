import type { Bike, MassSummary } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { brakeFacts, type PadKind } from '../standards/index.ts';
import { type BrakeOfWheel, brakeOfWheel } from './brakeGain.ts';
import { type DiscHeat, discHeat } from './brakeHeat.ts';
import { type BrakeSide, type Braking, type BrakingInput, brakingOf } from './braking.ts';
import type { LongitudinalBike } from './statics.ts';

/** What the file does not tell about a stop. */
export interface BrakingQuestion {
  /** μ, tire on road [-]; left out: 0.8, dry road. */
  readonly friction?: number;
  /** [m/s]; left out: 11.1 m/s, 40 km/h. */
  readonly speed?: number;
  /** [s]; left out: 1 s. */
  readonly reaction?: number;
  /** Force on lever and pedal [N]; left out: 100 N. */
  readonly control?: number;
  readonly pads?: PadKind;
  /** Stops one after the other, and the time between them [s]; left out: 10, 60 s apart. */
  readonly stops?: number;
  readonly interval?: number;
}

export interface BrakingOfBuild {
  readonly input: BrakingInput;
  readonly braking: Braking;
  readonly front: BrakeOfWheel;
  readonly rear: BrakeOfWheel;
  /** Of a disc whose mass is known from the parts; with the least cooling of the table. */
  readonly frontHeat?: DiscHeat;
  readonly rearHeat?: DiscHeat;
  /** From stop to stop, of the heat [s]. */
  readonly interval: number;
}

const USUAL = { friction: 0.8, speed: 40 / 3.6, reaction: 1, control: 100, stops: 10, interval: 60 } as const;

/** The bike of the statics: center of mass against the rear contact of the loaded stance, with rider. @source derived */
export function longitudinalBike(bike: Bike, masses: MassSummary): LongitudinalBike {
  const rear = bike.shafts.rearAxle?.x ?? 0;
  const front = bike.shafts.frontAxle?.x ?? bike.layout.stances.design.wheelbase;
  return {
    mass: masses.total,
    wheelbase: front - rear,
    ahead: masses.center.x - rear,
    height: masses.center.z,
  };
}

/**
 * Braking of a placed bike, with what the file leaves open taken as usual.
 * @source derived, see `brakingOf`, `brakeGain` and `discHeat`
 */
export function brakingOfBuild(
  build: Build,
  bike: Bike,
  masses: MassSummary,
  question: BrakingQuestion = {},
): BrakingOfBuild {
  const asked = { ...USUAL, ...question };
  const front = brakeOfWheel(build, bike, 'front', asked.pads);
  const rear = brakeOfWheel(build, bike, 'rear', asked.pads);
  const side = (brake: BrakeOfWheel): BrakeSide | undefined =>
    brake.known ? { gain: brake.gain, control: asked.control } : undefined;
  const [frontSide, rearSide] = [side(front), side(rear)];
  const input: BrakingInput = {
    bike: longitudinalBike(bike, masses),
    friction: asked.friction,
    speed: asked.speed,
    reaction: asked.reaction,
    ...(frontSide ? { front: frontSide } : {}),
    ...(rearSide ? { rear: rearSide } : {}),
  };
  const braking = brakingOf(input);
  const heat = (wheel: 'front' | 'rear'): DiscHeat | undefined => {
    const brake = build.brakes[wheel];
    const part = masses.parts.find(({ id }) => id === `brakes.${wheel}`);
    if (brake?.kind !== 'disc' || !part) return undefined;
    const outside = brake.disc.diameter / 2;
    const inside = (brake.disc.inside ?? 0) / 2;
    const frontShare = braking.frontShare ?? (frontSide ? 1 : 0);
    return discHeat({
      mass: masses.total,
      speed: asked.speed,
      share: wheel === 'front' ? frontShare : 1 - frontShare,
      discMass: part.mass,
      heatCapacity: brakeFacts.heatCapacity,
      discArea: 2 * Math.PI * (outside ** 2 - inside ** 2),
      cooling: brakeFacts.cooling[0]!,
      interval: asked.interval,
      stops: asked.stops,
    });
  };
  const [frontHeat, rearHeat] = [heat('front'), heat('rear')];
  return {
    input,
    braking,
    front,
    rear,
    interval: asked.interval,
    ...(frontHeat ? { frontHeat } : {}),
    ...(rearHeat ? { rearHeat } : {}),
  };
}
