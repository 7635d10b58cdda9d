import { type Bike, riderContacts } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { bikeFrame, composeFrames, directionToWorld, toWorld } from '../geometry/index.ts';
import { bodyGroups, bodyLinks, percentileLinks, percentiles } from '../standards/index.ts';
import {
  type FittedRider,
  type Obstacle,
  type RiderFit,
  type RiderFitInput,
  riderFit,
  type SeatTriangle,
  seatTriangle,
} from './riderFit.ts';

export interface RiderFitOfBuild {
  readonly triangle: SeatTriangle;
  /** Seat above the ground in the loaded stance [m]. */
  readonly seatHeight: number;
  /** The build's own rider. */
  readonly own: RiderFit;
  /** 5th, 50th and 95th percentile of women and men, in that order, for tables and the picture. */
  readonly survey: readonly RiderFit[];
}

/** Bodies that get hot, by their names. */
const HOT = /exhaust|muffler|silencer|header|tail ?pipe/i;

/** The six riders of the survey. @source ansur-2, percentiles of sizes and links */
export const surveyRiders: readonly FittedRider[] = bodyGroups.flatMap((group) =>
  percentiles.map((percentile) => ({
    label: `${group}, ${percentile}th percentile`,
    links: percentileLinks(group, percentile),
    group,
    percentile,
  })),
);

/**
 * How the build's rider and those of the survey sit on a placed bike, in its loaded stance.
 * @source ansur-2, sizes; derived, linked figure
 */
export function riderFitOfBuild(build: Build, bike: Bike): RiderFitOfBuild {
  const input = fitInput(build, bike);
  const own: FittedRider = { label: 'own rider', links: bodyLinks(build.rider) };
  return {
    triangle: seatTriangle(input.contacts),
    seatHeight: input.contacts.seat.z,
    own: riderFit(input, own),
    survey: surveyRiders.map((rider) => riderFit(input, rider)),
  };
}

function fitInput(build: Build, bike: Bike): RiderFitInput {
  const { frame } = bike.layout.stances.sag;
  const contacts = riderContacts(build, bike.layout);
  const { lock } = build.steering;
  return {
    contacts: {
      ...contacts,
      seat: toWorld(frame, contacts.seat),
      peg: toWorld(frame, contacts.peg),
      grip: toWorld(frame, contacts.grip),
    },
    seatWidth: build.seating.seat.width,
    ...(lock === undefined
      ? {}
      : {
          lock: {
            angle: lock,
            through: toWorld(frame, bike.layout.points.neckBottom!),
            axis: directionToWorld(frame, bike.layout.steeringAxis),
          },
        }),
    obstacles: obstaclesOf(build, bike).map((box) => ({ ...box, frame: composeFrames(frame, box.frame) })),
  };
}

function obstaclesOf(build: Build, bike: Bike): Obstacle[] {
  const bodies = Object.entries(build.bodies ?? {}).map(
    ([name, body]): Obstacle => ({
      name: `bodies.${name}`,
      frame: { ...bikeFrame, origin: bike.layout.places.bodies[name]! },
      half: { x: body.length / 2, y: body.width / 2, z: body.height / 2 },
      isHot: HOT.test(name) || HOT.test(body.name),
    }),
  );
  return [{ name: 'engine', ...bike.engine.box, isHot: true }, ...bodies];
}
