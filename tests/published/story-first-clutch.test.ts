/**
 * A first build with a centrifugal clutch, from the build file to its numbers. Trade story with results worked
 * separately: rider 88 kg, bike 41 kg, rollout 1036 mm, 3600 rpm, #35, 12 teeth, 15 % path. Values as printed there, so
 * tolerances are half of the last digit. The story does not print its losses and rolling resistance; the documented
 * defaults (path 0.03, chain 0.96, bearings and brakes 0.96) give its torques.
 */
import { describe, expect, test } from 'vitest';
import { layOut, placeBike, weigh } from '../../src/core/bike/index.ts';
import type { Build } from '../../src/core/build/index.ts';
import { solveDriveline } from '../../src/core/driveline/index.ts';
import type { Outcome } from '../../src/core/quantity/index.ts';
import { gearingTable, type Ride, rideAnswers, rideOf } from '../../src/core/ride/index.ts';
import { findChain } from '../../src/core/standards/index.ts';
import { type Patch, smallBuild } from '../support/smallBuild.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

const tire = { rollout: 1036, width: 90 };
/** 196 cc class: 12 N·m at 2500 rpm, falling to 3600 rpm (bmep 7.7 bar, from memory). */
const torque = [
  { at: 1800, torque: 11.4 },
  { at: 2500, torque: 12 },
  { at: 3600, torque: 10.4 },
];

function storyBuild(drivenTeeth: number, engineMass: number): Build {
  const stages = [
    { id: 'clutch', kind: 'clutch', on: 'engine', engages: 2000, locks: 2600, mass: 1.2 },
    {
      id: 'final',
      kind: 'chain',
      from: 'engine',
      to: 'rearAxle',
      chain: '#35',
      driverTeeth: 12,
      drivenTeeth,
      links: drivenTeeth === 72 ? 124 : undefined,
      adjust: 'rearAxle',
    },
  ];
  const patch: Patch = {
    rider: { mass: 88 },
    wheels: { rear: { tire: { ...tire, diameter: null } }, front: { tire: { ...tire, diameter: null } } },
    engine: { mass: engineMass, governed: 3600, torque },
    driveline: { shafts: { rearAxle: { slide: { direction: 180, travel: 60, slack: 30 } } }, stages },
    use: { speed: '20 km/h', grade: '15 %', ground: 'path' },
  };
  return smallBuild(patch);
}

function placed(build: Build) {
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  return { build, driveline, bike, masses: weigh(build, bike, []) };
}

/** The engine is given the mass that makes the bike 41 kg, as in the story. */
function storyRide(drivenTeeth: number): Ride {
  const first = placed(storyBuild(drivenTeeth, 16));
  const { build, bike, driveline, masses } = placed(storyBuild(drivenTeeth, 16 + 41 - first.masses.bare));
  expect(masses.total).toBeCloseTo(129, 9);
  return must(rideOf(build, bike, driveline, masses));
}

const kmh = (speed: number): number => speed * 3.6;

describe('6:1, 72 teeth', () => {
  const ride = storyRide(72);
  const answers = must(rideAnswers(ride));
  test('top 37 km/h at the governor, lock-up at 27 km/h', () => {
    expect(answers.launch.top.limitedBy).toBe('engine-speed');
    expect(Math.abs(kmh(answers.launch.top.speed) - 37)).toBeLessThan(0.5);
    expect(Math.abs(kmh(answers.clutch!.speeds.lockUp) - 27)).toBeLessThan(0.5);
    // The launch itself locks where the clutch holds full torque.
    expect(answers.launch.lockUp!.speed).toBeCloseTo(answers.clutch!.speeds.lockUp, 6);
  });
  test('a 20 km/h yard keeps it slipping', () => {
    expect(answers.clutch!.keptSlipping).toBe(true);
    expect(answers.clutch!.level.slipping).toBe(true);
    expect(answers.clutch!.level.heat).toBeGreaterThan(0);
  });
  test('engine torque on 15 %: 6.7 N·m', () => {
    expect(Math.abs(answers.torqueForHill - 6.7)).toBeLessThan(0.05);
  });
  test('heat of a launch is at least the work passed on', () => {
    const { clutchHeat, engineWork } = answers.launch.energy;
    expect(clutchHeat).toBeGreaterThan(0);
    expect(clutchHeat).toBeLessThan(engineWork);
    expect(answers.clutch!.launchRise!).toBeGreaterThan(1);
    expect(answers.clutch!.hillRise!).toBeGreaterThan(answers.clutch!.launchRise!);
  });
});

describe('8:1, 96 teeth', () => {
  const answers = must(rideAnswers(storyRide(96)));
  test('lock-up at 20, top 28 km/h; 5.0 N·m on 15 %', () => {
    expect(Math.abs(kmh(answers.clutch!.speeds.lockUp) - 20)).toBeLessThan(0.5);
    expect(Math.abs(kmh(answers.launch.top.speed) - 28)).toBeLessThan(0.5);
    expect(Math.abs(answers.torqueForHill - 5.0)).toBeLessThan(0.05);
  });
  test('the yard no longer keeps it slipping on the level', () => {
    expect(answers.clutch!.level.slipping).toBe(false);
  });
});

describe('the table of pairs', () => {
  const ride = storyRide(72);
  const chain = must(findChain('#35'));
  const rows = must(
    gearingTable({
      launch: { ...ride.launch, drive: { ...ride.launch.drive, ratio: 1 } },
      driverTeeth: [12],
      drivenTeeth: [72, 96],
      chain,
      place: { height: ride.launch.drive.wheelRadius, offset: 0.095, halfTire: 0.045 },
      centers: { shortest: 0.37, longest: 0.39, now: 0.38 },
    }),
  );
  const [six, eight] = rows;
  test('124 links at 379.6 mm for about 380 mm', () => {
    expect(six!.fit!.links).toBe(124);
    expect(Math.abs(six!.fit!.center - 0.3796)).toBeLessThan(0.00005);
  });
  test('72 teeth clear 50 mm upright and touch at about 28 degrees; 96 are too big', () => {
    expect(Math.abs(six!.groundGap! - 0.05)).toBeLessThan(0.003);
    expect(Math.abs((six!.leanToTouch! * 180) / Math.PI - 28)).toBeLessThan(1);
    expect(eight!.groundGap!).toBeLessThan(0.02);
  });
  test('lock-up and top as above', () => {
    expect(Math.abs(kmh(six!.lockUp!) - 27)).toBeLessThan(0.5);
    expect(Math.abs(kmh(eight!.governed) - 28)).toBeLessThan(0.5);
  });
});
