import { describe, expect, test } from 'vitest';
import {
  brakeDive,
  contactLean,
  crownLean,
  groundSteer,
  headDrop,
  turningCircle,
  turnLean,
} from '../../src/core/ride/index.ts';

// Worked by another hand from the geometry, to the printed digits.

const rad = (angle: number): number => (angle * Math.PI) / 180;
const deg = (angle: number): number => (angle * 180) / Math.PI;
const near = (value: number | undefined, expected: number, tolerance: number): void => {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('[STL-1] drop of the head: head angle 66°, R 0.2035 m, d 0.035 m', () => {
  const head = { radius: 0.2035, forkOffset: 0.035, rake: rad(24) };
  test.each([
    [5, 7.37341437e-5, 5.1e-14],
    [15, 6.45664792e-4, 5.1e-13],
    [30, 2.345447497e-3, 5.1e-13],
  ])('%d°', (steer, drop, tolerance) => {
    near(headDrop({ ...head, steer: rad(steer) }), drop, tolerance);
  });
  test('a small angle is the flop factor', () => {
    const flop = (head.radius * Math.sin(head.rake) - head.forkOffset) * Math.sin(head.rake);
    const steer = 1e-4;
    near(headDrop({ ...head, steer }) / ((flop * steer ** 2) / 2), 1, 1e-7);
  });
  test('lowest point of the turned wheel, point by point', () => {
    // Second way: points of the rim turned about the axis; the drop is how far the lowest falls below R.
    const { radius, forkOffset, rake } = head;
    const steer = rad(30);
    const up = [-Math.sin(rake), 0, Math.cos(rake)] as const;
    const [c, s] = [Math.cos(steer), Math.sin(steer)];
    const turnedZ = (x: number, z: number): number => {
      const along = x * up[0] + z * up[2];
      const cross = up[0] * 0 - 0 * x;
      return z * c + cross * s + up[2] * along * (1 - c);
    };
    const foot = { x: -forkOffset * Math.cos(rake), z: -forkOffset * Math.sin(rake) };
    let lowest = Number.POSITIVE_INFINITY;
    const count = 200_000;
    for (let k = 0; k < count; k += 1) {
      const a = (2 * Math.PI * k) / count;
      lowest = Math.min(
        lowest,
        foot.z + turnedZ(radius * Math.cos(a) - foot.x, radius * Math.sin(a) - foot.z),
      );
    }
    // The rim's lowest of 200 000 points lies within R·(π/n)²/2 of the true one; upright it is at −R. The turned one
    // lies less deep, and the head comes down by the difference.
    near(lowest + radius, headDrop({ ...head, steer }), 1e-10);
  });
});

describe('[STL-2] angle on the ground and turning circle: rake 24°, wheelbase 1.05 m', () => {
  test.each([
    [10, 9.150753, 6.51839],
    [20, 18.392139, 3.157863],
    [35, 32.605885, 1.641468],
  ])('%d°', (steer, ground, radius) => {
    near(deg(groundSteer(rad(24), rad(steer))), ground, 5.1e-7);
    near(turningCircle(1.05, rad(24), rad(steer), 0.1)?.rearRadius, radius, 5.1e-7);
  });
  test('no lock, no circle', () => {
    expect(turningCircle(1.05, rad(24), 0, 0.1)).toBeUndefined();
  });
});

describe('[STL-3] lean in a turn and what a round tread adds', () => {
  test.each([
    [5, 10, 14.301735, 1.241648],
    [10, 25, 22.189884, 1.898533],
    // The speed is printed as 13.8889: 50 km/h.
    [50 / 3.6, 40, 26.18621, 2.218453],
  ])('%f m/s on %d m', (speed, radius, lean, added) => {
    const thin = turnLean(speed, radius);
    near(deg(thin), lean, 2e-4 * (speed > 12 ? 1 : 0) + 5.1e-7);
    near(deg(crownLean(thin, 0.05, 0.62)), added, 2e-5 * (speed > 12 ? 1 : 0) + 5.1e-7);
  });
});

describe('[STL-4] lean to contact', () => {
  test.each([
    [0.3, 0.2, 0, 33.690068],
    [0.3, 0.2, 0.05, 35.138156],
    [0.22, 0.12, 0.06, 30.510237],
  ])('at %f m across and %f m up, crown %f m', (across, height, crown, lean) => {
    near(deg(contactLean({ across, height, crown, radius: 0 })!), lean, 5.1e-7);
    near(deg(contactLean({ across: -across, height, crown, radius: 0 })!), lean, 5.1e-7);
  });
  test('already on the ground, and never', () => {
    expect(contactLean({ across: 0.1, height: 0.02, radius: 0.03, crown: 0.05 })).toBe(0);
    // In the center plane between the crowns' centers nothing comes down before the bike lies flat.
    expect(contactLean({ across: 0, height: 0.06, radius: 0, crown: 0.05 })).toBeUndefined();
  });
});

describe('[STL-6] trail on the front brake', () => {
  // The fork's row of a table of sag worked by another hand: 20 mm along the axis take 52.292 mm of trail to 47.773.
  const design = {
    wheelbase: 0.918595,
    headAngle: rad(66),
    forkOffset: 0.035,
    frontRadius: 0.2035,
    rearRadius: 0.2035,
  };
  const still = { frontRadius: 0.2035, rearRadius: 0.2035, sag: 0, rearRise: 0 };
  const [mass, height, deceleration] = [120, 0.62, 5];
  const push = mass * deceleration * ((height / 0.918595) * Math.cos(rad(24)) + Math.sin(rad(24)));
  const asked = {
    design,
    change: still,
    mass,
    height,
    deceleration,
    axialRate: push / 0.02,
    travelLeft: 0.1,
  };
  const dived = (more: object) => {
    const found = brakeDive({ ...asked, ...more });
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    return found.value;
  };
  test('a push that compresses the fork by 20 mm', () => {
    const { dive, bottoms, stance } = dived({});
    near(dive, 0.02, 1e-12);
    expect(bottoms).toBe(false);
    near(stance.trail, 0.047773, 5.1e-7);
    // The wheelbase is printed to a micrometer, which moves the pitch by up to 1e-6 of its 1.15°.
    near(deg(stance.rake), 22.850355, 1.7e-6);
  });
  test('no further than the travel left', () => {
    const { dive, bottoms } = dived({ travelLeft: 0.012 });
    expect([dive, bottoms]).toEqual([0.012, true]);
  });
  test('without braking nothing dives', () => {
    expect(dived({ deceleration: 0 }).dive).toBe(0);
  });
});
