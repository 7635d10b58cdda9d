import { describe, expect, test } from 'vitest';
import {
  type StanceChange,
  type SteeringGeometry,
  standOn,
  steeringNumbers,
} from '../../src/core/bike/index.ts';
import { toWorld } from '../../src/core/geometry/index.ts';
import { degrees } from '../../src/core/quantity/index.ts';

// The rows print six decimals of a meter and of a degree: half a unit of the last digit.
const LAST_DIGIT = 0.5000001e-6;

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('trail, normal trail and flop', () => {
  // c_n = R·sin ε − d, c = c_n / cos ε: lecture notes on motorcycle geometry (Cossalter). Case D is the benchmark
  // bicycle of the linearized bicycle equations (published c = 0.08 m, head angle 72°); the others follow from the formulas.
  test.each([
    { row: 'A', radius: 0.178, head: 68, offset: 0.025, trail: 0.044953, normal: 0.04168, flop: 0.015614 },
    { row: 'B', radius: 0.2035, head: 66, offset: 0.035, trail: 0.052292, normal: 0.047771, flop: 0.01943 },
    { row: 'C', radius: 0.208, head: 64, offset: 0.04, trail: 0.056944, normal: 0.051181, flop: 0.022436 },
    {
      row: 'D, published',
      radius: 0.35,
      head: 72,
      offset: 0.032071,
      trail: 0.08,
      normal: 0.076085,
      flop: 0.023511,
    },
    { row: 'E', radius: 0.3, head: 62, offset: 0.055, trail: 0.097221, normal: 0.085841, flop: 0.0403 },
    { row: 'F, upright castor', radius: 0.15, head: 90, offset: -0.03, trail: 0.03, normal: 0.03, flop: 0 },
  ])('case $row', ({ radius, head, offset, trail, normal, flop }) => {
    const got = steeringNumbers(degrees(head), offset, radius);
    // Case D's offset is itself rounded to a micrometer.
    near(got.trail, trail, 2 * LAST_DIGIT);
    near(got.normalTrail, normal, 2 * LAST_DIGIT);
    near(got.flop, flop, 2 * LAST_DIGIT);
  });
});

describe('pitch, wheelbase and trail with sag, a raised rear axle and another tire', () => {
  // Derived by another hand: a point (0.72, 0.36) m of the axis from the rear axle, rake 24° at zero pitch, front axle
  // 0.409652064 m down the axis from it, d = 0.035 m, both radii 0.2035 m.
  const R = 0.2035;
  const design: SteeringGeometry = {
    wheelbase: 0.918595,
    headAngle: degrees(66),
    forkOffset: 0.035,
    frontRadius: R,
    rearRadius: R,
  };
  const change = (sag: number, rearRise: number, frontRadius = R): StanceChange => ({
    frontRadius,
    rearRadius: R,
    sag,
    rearRise,
  });
  test.each([
    {
      what: 'as designed',
      now: change(0, 0),
      pitch: 0,
      wheelbase: 0.918595,
      rake: 24,
      trail: 0.052292,
      normal: 0.047771,
    },
    {
      what: 'fork 20 mm',
      now: change(0.02, 0),
      pitch: 1.149645,
      wheelbase: 0.910643,
      rake: 22.850355,
      trail: 0.047773,
      normal: 0.044024,
    },
    {
      what: 'fork 50 mm',
      now: change(0.05, 0),
      pitch: 2.911038,
      wheelbase: 0.899418,
      rake: 21.088962,
      trail: 0.040967,
      normal: 0.038223,
    },
    {
      what: 'rear 30 mm',
      now: change(0, 0.03),
      pitch: -1.870534,
      wheelbase: 0.919084,
      rake: 25.870534,
      trail: 0.059787,
      normal: 0.053795,
    },
    {
      what: 'both 30 mm',
      now: change(0.03, 0.03),
      pitch: -0.163951,
      wheelbase: 0.906396,
      rake: 24.163951,
      trail: 0.052941,
      normal: 0.048303,
    },
    {
      what: 'both 50 mm',
      now: change(0.05, 0.05),
      pitch: -0.275725,
      wheelbase: 0.898268,
      rake: 24.275725,
      trail: 0.053385,
      normal: 0.048665,
    },
    {
      what: 'front tire 457 mm',
      now: change(0, 0, 0.2286),
      pitch: -1.565765,
      wheelbase: 0.918252,
      rake: 25.565765,
      trail: 0.07056,
      normal: 0.063652,
    },
  ])('$what', ({ now, pitch, wheelbase, rake, trail, normal }) => {
    const got = standOn('sag', design, now);
    if (!got.ok) throw new Error('no stance');
    // The design wheelbase is given to 1 µm, which moves the angles by under 4e-6 of themselves: 1.5e-5 degrees.
    near((got.value.pitch * 180) / Math.PI, pitch, 1.5e-5);
    near((got.value.rake * 180) / Math.PI, rake, 1.5e-5);
    near(got.value.wheelbase, wheelbase, 2 * LAST_DIGIT);
    near(got.value.trail, trail, 2 * LAST_DIGIT);
    near(got.value.normalTrail, normal, 2 * LAST_DIGIT);
  });
});

describe('a smaller front wheel', () => {
  // A trade story worked out independently: wheelbase 1050, rake 27°, offset 38, front tire 410 to 355 mm, rear unchanged.
  const geometry = (forkOffset: number): SteeringGeometry => ({
    wheelbase: 1.05,
    headAngle: degrees(63),
    forkOffset,
    frontRadius: 0.205,
    rearRadius: 0.205,
  });
  const fitted = (offset: number) => {
    const got = standOn('fitted', geometry(offset), {
      frontRadius: 0.1775,
      rearRadius: 0.205,
      sag: 0,
      rearRise: 0,
    });
    if (!got.ok) throw new Error('no stance');
    return got.value;
  };
  // The story prints tenths of a millimeter and of a degree.
  const TENTH = 0.05001e-3;

  test('trail falls from 61.8 to 42.6 mm; without the pitch of 1.5° it would be taken for 47.8', () => {
    near(steeringNumbers(degrees(63), 0.038, 0.205).trail, 0.0618, TENTH);
    near(fitted(0.038).trail, 0.0426, TENTH);
    near((fitted(0.038).pitch * 180) / Math.PI, 1.5, 0.05);
    near(steeringNumbers(degrees(63), 0.038, 0.1775).trail, 0.0478, TENTH);
  });

  test('an engine plate 400 mm behind the front axle drops by 17 mm', () => {
    const plate = { x: 1.05 - 0.4, y: 0, z: 0.205 };
    // The story rounds to a millimeter.
    near(plate.z - toWorld(fitted(0.038).frame, plate).z, 0.017, 0.5e-3);
  });

  test('an offset of 20 mm gives 62.5 mm of trail, 25 mm gives 57.0', () => {
    near(fitted(0.02).trail, 0.0625, TENTH);
    near(fitted(0.025).trail, 0.057, TENTH);
  });
});
