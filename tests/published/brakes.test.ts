import { describe, expect, test } from 'vitest';
import {
  bandTorque,
  discHeat,
  discTorque,
  effectiveRadius,
  facePeak,
  hydraulicForces,
  meanDeveloped,
  newSectorForces,
  STANDARD_GRAVITY,
  sectorForces,
  stoppingDistance,
} from '../../src/core/ride/index.ts';
import { allowedDistance, stoppingFigures } from '../../src/core/standards/index.ts';

const near = (value: number | undefined, expected: number, tolerance: number): void => {
  expect(value).toBeTypeOf('number');
  expect(Math.abs(value! - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const INCH = 0.0254;
const LBF = 0.45359237 * 9.80665;
const PSI = LBF / INCH ** 2;

describe('[BRK-1] stopping figures of Directive 93/14/EEC, appendix 1', () => {
  test.each([
    ['moped-front', 40, 21.7778],
    ['moped-rear', 40, 26.8571],
    ['motorcycle-front', 60, 37.3043],
    ['motorcycle-rear', 60, 54],
    ['single-brake-unladen', 40, 28.6154],
    ['slow-moped', 25, 11.0616],
  ])('%s at %d km/h', (id, kmh, distance) => {
    const figure = stoppingFigures.find((one) => one.id === id)!;
    near(figure.testSpeed * 3.6, kmh, 1e-12);
    near(figure.distance, distance, 5.1e-5);
  });

  // V²/K with K = 2·3.6²·d: the directive's divisors are rounded, within 2.2 % of the deceleration it prints.
  test.each(stoppingFigures.map((figure) => [figure.id, figure] as const))(
    '%s: divisor against deceleration',
    (_, figure) => {
      const divisor = 2 * 3.6 ** 2 * figure.deceleration;
      expect(Math.abs(divisor / figure.divisor - 1)).toBeLessThanOrEqual(0.022);
    },
  );

  test('the delay is 0.36 s', () => {
    near(allowedDistance(10, Number.POSITIVE_INFINITY), 3.6, 1e-12);
  });
});

test('[BRK-2] mean fully developed deceleration from 32 to 4 km/h in 9.5 m', () => {
  near(meanDeveloped(32 / 3.6, 4 / 3.6, 9.5), 4.093567, 5.1e-7);
});

describe('[BRK-3] stopping distance with reaction, worked by another hand', () => {
  test.each([
    [12.5, 0.7, 1, 23.880761],
    // The speed is printed as 13.8889: 50 km/h.
    [50 / 3.6, 0.8, 1, 26.182952],
    [30 / 3.6, 0.5, 1.2, 17.081265],
  ])('%f m/s, μ %f, %f s', (speed, friction, reaction, distance) => {
    // The rounded printed speed moves the distance by up to 8e-5.
    near(
      stoppingDistance(speed, friction * STANDARD_GRAVITY, reaction),
      distance,
      speed === 12.5 ? 5.1e-7 : 1e-4,
    );
  });
});

describe('[BRK-4] hydraulic chain, worked by another hand', () => {
  const chain = {
    leverRatio: 6,
    masterBore: 12.7e-3,
    pistonDiameter: 27e-3,
    pistonsOneSide: 1,
    tireRadius: 0.2,
  };
  test('100 N on a 12.7 mm master and opposed 27 mm pistons', () => {
    const forces = hydraulicForces({ ...chain, force: 100, padFriction: 0.38, effectiveRadius: 0.08 });
    near(forces.pressure / 1e6, 4.736461, 5.1e-7);
    near(forces.clamp, 2711.885, 5.1e-4);
    near(forces.torque, 164.8826, 5.1e-5);
    near(forces.tireForce, 824.413, 5.1e-4);
    // Printed as 4.519810; (27/12.7)² is 4.519809.
    near(forces.areaRatio, 4.51981, 1e-6);
  });
  test('80 N on an 11 mm master', () => {
    const forces = hydraulicForces({
      ...chain,
      force: 80,
      leverRatio: 5,
      masterBore: 11e-3,
      padFriction: 0.4,
      effectiveRadius: 0.07,
    });
    near(forces.pressure / 1e6, 4.209056, 5.1e-7);
    near(forces.clamp, 2409.917, 5.1e-4);
    near(forces.areaRatio, 6.024793, 5.1e-7);
    near(forces.torque, 134.9554, 5.1e-5);
    near(forces.tireForce, 674.777, 5.1e-4);
  });
});

describe('[BRK-5] sector pads', () => {
  /** `ugural`, worked example. */
  test('Ugural, Mechanical Design of Machine Components, example 13.6: two 60° pads, one friction face', () => {
    // Published to three and four digits: 1309 lb and 982 lb·in.
    const pad = { inside: 2.5 * INCH, outside: 5 * INCH, angle: Math.PI / 3, friction: 0.2 };
    const one = sectorForces(pad, 1);
    const torque = (200 * PSI) / one.pressure;
    const forces = sectorForces(pad, torque);
    near(forces.force / LBF, 1309, 0.5);
    near(forces.force / LBF, 1308.997, 5.1e-4);
    // Printed as the torque of both shoes; it is that of one face.
    near(torque / (LBF * INCH), 982, 0.5);
    near(torque / (LBF * INCH), 981.748, 5.1e-4);
  });

  test('Shigley, example 16-3 (from memory): 13 000 lbf·in on two pads of two faces', () => {
    const pad = { inside: 3.875 * INCH, outside: 5.5 * INCH, angle: (108 * Math.PI) / 180, friction: 0.37 };
    const torque = (13_000 * LBF * INCH) / 2;
    const worn = sectorForces(pad, torque);
    near(worn.pressure / PSI, 315.751, 5.1e-4);
    near(worn.force / LBF, 3747.75, 5.1e-3);
    near(worn.effectiveRadius / INCH, 4.6875, 1e-12);
    near(worn.forceRadius / INCH, 4.02372, 5.1e-6);
    near(worn.force / LBF / ((Math.PI / 4) * 1.5 ** 2), 2120.8, 0.051);
    const fresh = newSectorForces(pad, torque);
    near(fresh.pressure / PSI, 258.432, 5.1e-4);
    near(fresh.force / LBF, 3710.59, 5.1e-3);
    near(fresh.effectiveRadius / INCH, 4.73444, 5.1e-6);
    near(fresh.forceRadius / INCH, 4.06402, 5.1e-6);
  });

  test('coursework variant: 1350 N·m on 110° pads from 100 to 140 mm', () => {
    const forces = sectorForces(
      { inside: 0.1, outside: 0.14, angle: (110 * Math.PI) / 180, friction: 0.4 },
      1350 / 2,
    );
    near(forces.pressure / 1e6, 1.831186, 5.1e-7);
    near(forces.force, 14_062.5, 1e-8);
    near(forces.forceRadius * 1e3, 102.4014, 5.1e-5);
    near(forces.force / (Math.PI * 0.02 ** 2) / 1e6, 11.19058, 5.1e-6);
  });

  test('Bhandari, caliper of a motorcycle (from memory): 1500 N·m, μ 0.35', () => {
    const radius = effectiveRadius(0.1, 0.15).new;
    near(radius * 1e3, 126.6667, 5.1e-5);
    near(1500 / discTorque(1, 0.35, radius), 16_917.29, 5.1e-3);
  });
});

describe('[BRK-6] heat', () => {
  test('Bhandari, example 12.14: 16 792.04 J into 5 kg', () => {
    // A flywheel of 100 kg and k = 0.35 m at 500 rpm has the energy of 100 kg at k·ω.
    const speed = (0.35 * 500 * 2 * Math.PI) / 60;
    const heat = discHeat({
      mass: 100,
      speed,
      share: 1,
      discMass: 5,
      heatCapacity: 460,
      discArea: 0,
      cooling: 0,
      interval: 1,
      stops: 1,
    });
    near(heat.energy, 16_792.04, 5.1e-3);
    near(heat.rise, 7.300885, 5.1e-7);
  });
  test.each([
    { mass: 140, speed: 12.5, share: 1, discMass: 0.45, rise: 52.838 },
    { mass: 140, speed: 12.5, share: 0.9, discMass: 0.45, rise: 43.75, heatCapacity: 500 },
    { mass: 130, speed: 15, share: 0.7, discMass: 1, rise: 22.2554 },
  ])('one stop of $mass kg', ({ rise, heatCapacity = 460, ...stop }) => {
    const heat = discHeat({ ...stop, heatCapacity, discArea: 0.02, cooling: 30, interval: 60, stops: 1 });
    near(heat.rise, rise, rise === 22.2554 ? 5.1e-5 : 5.1e-4);
    near(heat.after[0], heat.rise, 0);
  });
  test('repeated stops are the geometric series', () => {
    const heat = discHeat({
      mass: 130,
      speed: 15,
      share: 0.7,
      discMass: 1,
      heatCapacity: 460,
      discArea: 0.03,
      cooling: 20,
      interval: 60,
      stops: 8,
    });
    const q = Math.exp((-20 * 0.03 * 60) / 460);
    near(heat.after.at(-1), (heat.rise * (1 - q ** 8)) / (1 - q), 1e-10);
    near(heat.limit, heat.rise / (1 - q), 1e-10);
  });
  test('peak of the face, exact constant (a handbook has 71.613)', () => {
    const peak = facePeak({ flow: 1e6, time: 3, density: 7850, heatCapacity: 460, conductivity: 45 });
    near(peak, 72.275, 5.1e-4);
    near((peak * Math.sqrt(5 / 18)) / Math.sqrt(8 / (9 * Math.PI)), 71.613, 5.1e-4);
  });
});

describe('[BRK-7] band', () => {
  const band = { pull: 100, wrap: 1.5 * Math.PI, friction: 0.35, radius: 0.06 };
  test('self-wrapping over unwrapping is e^(μθ)', () => {
    const ratio = bandTorque({ ...band, selfWraps: true }) / bandTorque({ ...band, selfWraps: false });
    near(ratio, Math.exp(0.35 * 1.5 * Math.PI), 1e-12);
  });
  test('tension along the band summed as friction, 100 000 pieces', () => {
    // Second way: march dT = μ·T·dθ from the pulled slack end and sum the friction's moment.
    const pieces = 100_000;
    let [tension, moment] = [band.pull, 0];
    for (let k = 0; k < pieces; k += 1) {
      const grip = (tension * band.friction * band.wrap) / pieces;
      moment += grip * band.radius;
      tension += grip;
    }
    // First-order march: relative error about (μθ)²/(2n).
    near(bandTorque({ ...band, selfWraps: true }) / moment, 1, 3e-5);
  });
});
