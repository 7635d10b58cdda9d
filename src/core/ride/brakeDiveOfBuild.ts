import { type Bike, type MassSummary, stanceChanges, steeringGeometry } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { Outcome } from '../quantity/index.ts';
import { longitudinalBike } from './brakingOfBuild.ts';
import { brakeDive, type Dive } from './steering.ts';
import type { SprungEnd } from './suspensionOfBuild.ts';

/**
 * Dive, rake and trail on the front brake of a build with a telescopic fork whose spring rate is known or follows from
 * its sag; undefined for any other.
 * @param front from `suspensionOfBuild`
 * @param deceleration by the front brake alone [m/s²], ≥ 0
 * @issue conflict — a dive with which the bike cannot stand on both wheels
 * @source derived, see `brakeDive`
 */
export function brakeDiveOfBuild(
  build: Build,
  bike: Bike,
  masses: MassSummary,
  front: SprungEnd,
  deceleration: number,
): Outcome<Dive> | undefined {
  if (front.by === 'tire') return undefined;
  const { layout } = bike;
  const tires = { rear: layout.rearTire, front: layout.frontTire };
  const upright = Math.cos(layout.stances.sag.rake);
  // The travel left counts from the sag of the whole load; without a known travel the fork is taken not to bottom.
  const { travel } = front.end;
  const travelLeft =
    travel === undefined ? Number.POSITIVE_INFINITY : Math.max(0, travel - front.result.sag) / upright;
  const { mass, height } = longitudinalBike(bike, masses);
  return brakeDive({
    design: steeringGeometry(build, tires),
    change: stanceChanges(build, tires, layout.fitted).sag,
    axialRate: front.end.wheelRate * upright ** 2,
    travelLeft,
    mass,
    height,
    deceleration,
  });
}
