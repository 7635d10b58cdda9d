import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut, placeBike, weigh } from '../bike/index.ts';
import { type Build, readBuild } from '../build/index.ts';
import { solveDriveline } from '../driveline/index.ts';
import type { Outcome } from '../quantity/index.ts';
import { launchFigures, type Ride, rideAnswers, rideOf, torqueAt } from './index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

function rideOfBuild(build: Build): Outcome<Ride> {
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  return rideOf(build, bike, driveline, weigh(build, bike, []));
}

const torque = [
  { at: 1800, torque: 11 },
  { at: 3600, torque: 10 },
];
const running: Patch = { engine: { governed: 3600, torque } };

const demo = (name: string): Build => {
  const path = fileURLToPath(new URL(`../../../demo/${name}.build.json`, import.meta.url));
  return must(readBuild(readFileSync(path, 'utf8')));
};

describe('what a build does not say', () => {
  test('without a torque curve there is no ride, and the field is named', () => {
    const ride = rideOfBuild(smallBuild());
    expect(ride).toMatchObject({ ok: false, issues: [{ code: 'missing', path: 'engine.torque' }] });
  });

  test('every stand-in is listed once, with a source; what is given is not', () => {
    const bare = must(rideOfBuild(smallBuild(running)));
    const names = bare.assumptions.map((one) => one.name);
    expect(new Set(names).size).toBe(names.length);
    expect(bare.assumptions.every((one) => Number.isFinite(one.value) && one.source.where !== '')).toBe(true);
    const use = {
      speed: '15 km/h',
      grade: '10 %',
      rollingCoefficient: 0.02,
      grip: 0.7,
      dragArea: '0.5 m²',
    };
    const given = must(rideOfBuild(smallBuild({ ...running, use })));
    expect(given.assumptions.filter((one) => one.path.startsWith('use.'))).toEqual([]);
    expect(given.launch.road).toMatchObject({ rollingCoefficient: 0.02, dragArea: 0.5 });
    expect(given.use.grade).toBeCloseTo(0.1, 12);
    expect(given.use.speed).toBeCloseTo(15 / 3.6, 12);
    expect(given.launch.stance!.grip).toBe(0.7);
  });

  test('height and heat take torque and thin the air', () => {
    const low = must(rideOfBuild(smallBuild(running)));
    const high = must(rideOfBuild(smallBuild({ ...running, use: { altitude: '1500 m', temperature: 30 } })));
    const share = torqueAt(high.launch.engine, 300) / torqueAt(low.launch.engine, 300);
    // SAE J1349: 845 hPa and 30 °C give CF 1.214; the standard atmosphere has 845.6 hPa at 1500 m.
    expect(Math.abs(share - 1 / 1.2135)).toBeLessThan(0.002);
    expect(high.launch.road.airDensity).toBeLessThan(low.launch.road.airDensity);
  });

  test('a clutch that locks no faster than it bites is an issue at its place', () => {
    const stages = [
      { id: 'clutch', kind: 'clutch', on: 'engine', engages: 2600, locks: 2600 },
      {
        id: 'final',
        kind: 'chain',
        from: 'engine',
        to: 'rearAxle',
        chain: '#35',
        driverTeeth: 12,
        drivenTeeth: 72,
      },
    ];
    const ride = rideOfBuild(smallBuild({ ...running, driveline: { stages } }));
    expect(ride).toMatchObject({ ok: false, issues: [{ path: 'driveline.stages[0].locks' }] });
  });
});

test('an electric motor takes the place of the torque curve', () => {
  const motor = {
    constant: 0.12,
    resistance: 0.05,
    motorCurrent: 150,
    batteryCurrent: 80,
    battery: { voltage: 48, resistance: 0.04, energy: 500 },
  };
  const stages = [
    {
      id: 'final',
      kind: 'chain',
      from: 'engine',
      to: 'rearAxle',
      chain: '#35',
      driverTeeth: 12,
      drivenTeeth: 72,
    },
  ];
  const ride = must(rideOfBuild(smallBuild({ engine: { motor }, driveline: { stages } })));
  expect(ride.motor!.battery.energy).toBe(500 * 3600);
  const answers = must(rideAnswers(ride));
  expect(answers.launch.path.segments.every((segment) => segment.phase === 'fixed')).toBe(true);
  expect(answers.clutch).toBeUndefined();
  expect(answers.launch.top.speed).toBeGreaterThan(5);
});

describe.each(['light', 'heavy'])('%s demo', (name) => {
  const ride = must(rideOfBuild(demo(name)));
  const answers = must(rideAnswers(ride));
  test('rides: finite figures with formula and source, each id once', () => {
    const figures = launchFigures(ride, answers);
    expect(figures.length).toBeGreaterThan(5);
    expect(new Set(figures.map((figure) => figure.id)).size).toBe(figures.length);
    for (const figure of figures) {
      expect(Number.isFinite(figure.value), figure.id).toBe(true);
      expect(figure.inputs.every((input) => Number.isFinite(input.value))).toBe(true);
      expect(figure.formula).not.toBe('');
    }
  });
  test('its energy balance closes and the road goes with the ratio', () => {
    const { energy } = answers.launch;
    expect(Math.abs(energy.residual) / energy.engineWork).toBeLessThan(1e-8);
    const { drive } = ride.launch;
    const [low, high] = [answers.perThousand.low, answers.perThousand.high];
    expect(high / low).toBeCloseTo((drive.belt?.low ?? 1) / (drive.belt?.high ?? 1), 12);
  });
});
