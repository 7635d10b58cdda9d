import { describe, expect, test } from 'vitest';
import { smallBuildInput } from '../../../tests/support/smallBuild.ts';
import { describeIssue } from '../quantity/index.ts';
import { brakingWorksheet } from './braking.ts';
import { handlingWorksheet } from './handling.ts';
import { runWorksheet, type Worksheet } from './index.ts';
import { suspensionWorksheet } from './suspension.ts';

const result = (worksheet: Worksheet, json: unknown) => {
  const outcome = runWorksheet(worksheet, json);
  if (!outcome.ok) throw new Error(outcome.issues.map(describeIssue).join('; '));
  return outcome.value.result as Record<string, unknown>;
};
const issues = (worksheet: Worksheet, json: unknown): readonly string[] => {
  const outcome = runWorksheet(worksheet, json);
  return outcome.ok ? [] : outcome.issues.map(({ code, path }) => `${code} ${path}`);
};
const { speeds: _, ...benchmark } = handlingWorksheet.example.input as Record<string, unknown>;

describe('handling', () => {
  test('unused parameters are taken and change nothing', () => {
    expect(result(handlingWorksheet, { ...benchmark, IByy: 11, IHyy: 0.06 })).toEqual(
      result(handlingWorksheet, benchmark),
    );
  });
  test('a build gives its parameters back, and they give the same speeds', () => {
    const own = result(handlingWorksheet, { build: smallBuildInput, speeds: [5] });
    const again = result(handlingWorksheet, { ...(own.parameters as object), speeds: [5] });
    expect(again.weaveSpeed).toBe(own.weaveSpeed);
    expect(again.eigenvalues).toEqual(own.eigenvalues);
    expect(own.asymmetry).toBeTypeOf('object');
    expect(again.asymmetry).toBeUndefined();
  });
  test('says what is missing, doubled, impossible', () => {
    const { w, ...without } = benchmark;
    expect(issues(handlingWorksheet, without)).toEqual(['missing w']);
    expect(issues(handlingWorksheet, { w, build: smallBuildInput })).toEqual(['conflict w']);
    expect(issues(handlingWorksheet, { ...benchmark, w: 0 })).toEqual(['conflict w']);
    expect(issues(handlingWorksheet, { ...benchmark, mR: -1 })).toEqual(['conflict mR']);
    expect(issues(handlingWorksheet, { ...benchmark, mH: 0, mF: 0 })).toEqual(['conflict mF']);
    expect(issues(handlingWorksheet, { ...benchmark, IHxz: -5 })).toEqual(['conflict IHzz']);
    expect(issues(handlingWorksheet, { build: {} })).toEqual(['missing build.version']);
  });
  test('a build that reads but whose points cannot be found is an issue, not a fault', () => {
    const lost = { from: 'rearAxle', along: { toward: 'twin', distance: 20 } };
    const nodes = { ...smallBuildInput.frame.nodes, twin: { from: 'rearAxle' }, lost };
    const build = { ...smallBuildInput, frame: { ...smallBuildInput.frame, nodes } };
    expect(issues(handlingWorksheet, { build })).toEqual(['conflict build.frame.nodes.lost.along.toward']);
  });
  test('a build is taken as it was measured', () => {
    const { steering } = smallBuildInput;
    const reading = { path: 'steering.headAngle', value: 62, with: 'angle-finder' };
    const of = (build: object) => result(handlingWorksheet, { build, speeds: [5] });
    const typed = of({ ...smallBuildInput, steering: { ...steering, headAngle: 62 } });
    expect(of({ ...smallBuildInput, measured: [reading] })).toEqual(typed);
    expect(of(smallBuildInput)).not.toEqual(typed);
  });
  test('a reading of what is not in the file is an issue of the build', () => {
    const reading = { path: 'steering.headAngel', value: 62, with: 'angle-finder' };
    const build = { ...smallBuildInput, measured: [reading] };
    expect(issues(handlingWorksheet, { build })).toEqual(['unknown-name build.measured[0].path']);
  });
});

describe('braking', () => {
  const bike = { mass: 120, wheelbase: 1000, centerAhead: 420, centerHeight: 620 };
  const band = { kind: 'band', control: 80, leverRatio: 5, diameter: 114, tireRadius: 165 };
  test('a band that wraps itself on holds e^(μθ) times as much', () => {
    const of = (selfWraps: boolean) =>
      result(brakingWorksheet, { ...bike, rear: { ...band, selfWraps, friction: 0.3 } }).rear as {
        force: number;
      };
    expect(of(true).force / of(false).force).toBeCloseTo(Math.exp(0.3 * 1.5 * Math.PI), 9);
  });
  test('refuses half a hydraulic line, a track without width, no brake, a bike that tips', () => {
    const disc = {
      kind: 'disc',
      control: 80,
      leverRatio: 5,
      discOutside: 160,
      discInside: 120,
      tireRadius: 165,
    };
    expect(issues(brakingWorksheet, bike)).toEqual(['missing front']);
    expect(issues(brakingWorksheet, { ...bike, front: { ...disc, masterBore: 12 } })).toEqual([
      'missing front.pistonDiameter',
    ]);
    expect(issues(brakingWorksheet, { ...bike, front: { ...disc, discInside: 160 } })).toEqual([
      'conflict front.discInside',
    ]);
    expect(issues(brakingWorksheet, { ...bike, centerAhead: 1100, front: disc })).toEqual([
      'conflict centerAhead',
    ]);
  });
  test('a sliding caliper with one piston presses as hard as an opposed pair', () => {
    const disc = {
      kind: 'disc',
      control: 80,
      leverRatio: 5,
      discOutside: 160,
      discInside: 120,
      tireRadius: 165,
      masterBore: 11,
      pistonDiameter: 27,
    };
    const force = (more: object) =>
      (result(brakingWorksheet, { ...bike, front: { ...disc, ...more } }).front as { force: number }).force;
    expect(force({ pistons: 1, style: 'sliding' })).toBe(force({ pistons: 2, style: 'opposed' }));
    expect(force({ pistons: 2, style: 'sliding' })).toBeCloseTo(2 * force({ pistons: 2 }), 9);
  });
});

describe('suspension', () => {
  test('asks for something to do, and for the rates of a body', () => {
    expect(issues(suspensionWorksheet, {})).toEqual(['missing front']);
    const body = { mass: 100, inertia: 12, toFront: 500, toRear: 500 };
    expect(issues(suspensionWorksheet, { body })).toEqual(['missing body.frontRate']);
    expect(issues(suspensionWorksheet, { body: { ...body, frontRate: 20 } })).toEqual([
      'missing body.rearRate',
    ]);
  });
  test('a raked fork: its legs sag more than the wheel', () => {
    const front = result(suspensionWorksheet, { front: { kind: 'fork', mass: 45, rate: 12, rake: 24 } })
      .front as {
      sag: number;
      springSag: number;
      wheelRate: number;
      axialLoad: number;
    };
    expect(front.wheelRate).toBeCloseTo(14.37874, 5);
    expect(front.axialLoad).toBeCloseTo(403.147, 3);
    expect(front.springSag).toBeCloseTo(front.axialLoad / 12, 9);
    expect(front.sag).toBeCloseTo(front.springSag * Math.cos(rad(24)), 9);
  });
});

const rad = (angle: number): number => (angle * Math.PI) / 180;
