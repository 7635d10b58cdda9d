/**
 * Seats, belts, chains and shafts out of line against tables, closed forms and integrals. What rests on a table from
 * memory says so; there the check is that the table is read as written, not that it is right.
 */
import { describe, expect, test } from 'vitest';
import {
  type AngularSpeed,
  degrees,
  type Force,
  inches,
  mm,
  newtons,
  type Pressure,
  poundsForce,
  rpm,
} from '../../src/core/quantity/index.ts';
import { findChain, internalClearance, jointPressureLimit } from '../../src/core/standards/index.ts';
import { threadFatigue } from '../../src/core/strength/bike/checks/axleThreads.ts';
import { misalignmentOf } from '../../src/core/strength/bike/checks/drive/misalignment.ts';
import type { DriveShaftModel } from '../../src/core/strength/bike/loads/shaftModel.ts';
import { clampForce } from '../../src/core/strength/chain/beltTension.ts';
import { gallingSpeed } from '../../src/core/strength/chain/chainRating.ts';
import {
  beltTensions,
  fitPair,
  grooveFriction,
  outerRaceway,
  pressFit,
} from '../../src/core/strength/index.ts';

describe('bearings pressed into plates', () => {
  /** ISO 286 hole rows and class Normal rings: interference of a 35 mm ring, printed as least to most. */
  test.each([
    ['H7', -36, 0],
    ['K7', -18, 18],
    ['M7', -11, 25],
    ['N7', -3, 33],
    ['P7', 6, 42],
  ])('35 mm ring in %s: %d to %d µm', (fit, least, most) => {
    const pair = fitPair(mm(35), fit, 'bearing');
    if (!pair.ok) throw new Error(fit);
    // Whole micrometers of the tables.
    expect(pair.value.interference.least * 1e6).toBeCloseTo(least, 6);
    expect(pair.value.interference.most * 1e6).toBeCloseTo(most, 6);
  });

  /** Handbook rule: 60 to 80 % of the interference of a ring is taken from the clearance inside. */
  test('a 6204 in a steel plate loses that share', () => {
    const steel = { elasticModulus: 206e9 as Pressure, poisson: 0.3 };
    const fit = pressFit({
      diameter: mm(47),
      interference: mm(0.033),
      innerBore: outerRaceway(mm(20), mm(47)),
      hubOutside: mm(75),
      length: mm(6.35),
      friction: 0.12,
      hub: steel,
      inner: steel,
    });
    expect(fit.boreShrink / mm(0.033)).toBeGreaterThan(0.6);
    expect(fit.boreShrink / mm(0.033)).toBeLessThan(0.8);
    // The same ring with a raceway of 42 mm, solved for its boundary values: 12.8895 MPa; 41.6 mm is stiffer.
    expect(fit.pressure / 1e6).toBeGreaterThan(12.8895);
    expect(fit.pressure / 1e6).toBeLessThan(1.1 * 12.8895);
  });

  /** From memory, ISO 5753-1: 18 to 24 mm, group N 5 to 20, C3 13 to 28 µm; 10 to 18 mm, 3 to 18 and 11 to 25. */
  test.each([
    [20, 5, 20, 13, 28],
    [15, 3, 18, 11, 25],
  ])('clearance of a %d mm bore', (bore, a, b, c, d) => {
    const um = (group: 'N' | 'C3') => {
      const { least, most } = internalClearance(mm(bore), group)!;
      return [least * 1e6, most * 1e6].map((value) => Math.round(value));
    };
    expect([...um('N'), ...um('C3')]).toEqual([a, b, c, d]);
  });
});

describe('V-belt in its sheaves', () => {
  /** Normal force of a V on both faces, added up along the wrap: dN = F·dθ/(2·sin(β/2)), its axial part times cos(β/2). */
  test.each([
    [26, 150, 0.3],
    [28, 140, 0.25],
    [34, 170, 0.2],
  ])(
    'groove %d°, wrap %d°, friction %d: the clamp is the integral over the rim',
    (groove, wrap, friction) => {
      const [beta, theta] = [degrees(groove), degrees(wrap)];
      const grip = grooveFriction(friction, beta);
      const { tight, slack } = beltTensions({
        torque: 20 as never,
        diameter: mm(100),
        wrap: theta,
        friction: grip,
      });
      const steps = 20_000;
      let axial = 0;
      for (let i = 0; i < steps; i++) {
        const tension = slack * Math.exp((grip * theta * (i + 0.5)) / steps);
        axial += ((tension * theta) / steps / (2 * Math.sin(beta / 2))) * Math.cos(beta / 2);
      }
      // Midpoint rule with 20 000 steps: error of the order of 1e-8.
      expect(clampForce(newtons(tight - slack), friction, beta) / axial).toBeCloseTo(1, 6);
    },
  );

  /** Rule of clamped pulleys: torque 2·µ·S·R/cos(β/2). */
  test('turned round it is the torque that a clamp carries', () => {
    const [torque, radius, friction, beta] = [30, 0.08, 0.3, degrees(26)];
    const clamp = clampForce((torque / radius) as Force, friction, beta);
    expect((2 * friction * clamp * radius) / Math.cos(beta / 2)).toBeCloseTo(torque, 9);
  });
});

describe('chain joints', () => {
  const chain = (name: string) => {
    const found = findChain(name);
    if (!found.ok) throw new Error(name);
    return found.value;
  };

  /** Table from memory, 17 teeth: 22.4 MPa at 1000 rpm for 12.7 and 15.875 mm, 19.0 for 19.05 mm. */
  test.each([
    ['#40', 1000, 17, 22.4],
    ['#50', 1000, 17, 22.4],
    ['#60', 1000, 17, 19],
    ['#40', 1100, 17, 21.7],
    ['#40', 1000, 27, 1.1 * 22.4],
  ])('%s at %d rpm, %d teeth', (name, speed, teeth, expected) => {
    const limit = jointPressureLimit(chain(name).pitch, rpm(speed), teeth)!;
    expect(limit.pressure / 1e6).toBeCloseTo(expected, 9);
    expect(limit.table).toBe('inside');
  });

  test('a smaller pitch is taken as the smallest and says so; a higher speed has no limit', () => {
    expect(jointPressureLimit(chain('#35').pitch, rpm(1000), 17)!.table).toBe('smaller-pitch');
    expect(jointPressureLimit(chain('#40').pitch, rpm(2801), 17)).toBeUndefined();
  });

  /** Equation from memory, worked by hand for 1 in pitch: (82.5/(7.95·1.0278^17·1.323^0.5))^(1/1.873) thousand rpm. */
  test('galling at 1 in pitch, 17 teeth, 500 lbf', () => {
    const found = (gallingSpeed(inches(1), 17, poundsForce(500)) * 60) / (2 * Math.PI);
    const byHand =
      1000 *
      Math.exp((Math.log(82.5) - Math.log(7.95) - 17 * Math.log(1.0278) - 0.5 * Math.log(1.323)) / 1.873);
    expect(found).toBeCloseTo(byHand, 6);
    // Printed rating tables of 1 in chain end between 2000 and 3500 rpm for such sprockets (from memory).
    expect(found).toBeGreaterThan(2000);
    expect(found).toBeLessThan(3500);
  });

  test('a longer pitch, more pull and more teeth gall sooner', () => {
    const at = (pitch: number, teeth: number, pull: number): AngularSpeed =>
      gallingSpeed(inches(pitch), teeth, newtons(pull));
    expect(at(0.625, 17, 1000)).toBeLessThan(at(0.5, 17, 1000));
    expect(at(0.5, 17, 3000)).toBeLessThan(at(0.5, 17, 1000));
    expect(at(0.5, 21, 1000)).toBeLessThan(at(0.5, 17, 1000));
  });
});

describe('a bearing out of line', () => {
  /** Beam on two supports, 2L apart, pushed δ up in its middle: F = 48·E·I·δ/(2L)³; stress F·2L/4·(d/2)/I. */
  test('the middle of three', () => {
    const [length, diameter, modulus] = [0.15, 0.025, 205e9];
    const second = (Math.PI / 64) * diameter ** 4;
    const model = {
      id: 'countershaft',
      diameter,
      bearings: ['left', 'middle', 'right'].map((item, i) => ({ item, y: (i - 1) * length, node: item })),
      shaft: {
        segments: [{ from: -length, to: length, diameter }],
        supports: [-1, 0, 1].map((i) => ({ at: i * length })),
        loads: [{ at: 0, force: [1000, 0] }],
        elasticModulus: modulus,
        shearModulus: 80e9,
      },
    } as unknown as DriveShaftModel;
    const { reaction, stress, loaded, offset } = misalignmentOf(model)!;
    const force = (48 * modulus * second * offset) / (2 * length) ** 3;
    // Rounding of a solution in closed form.
    expect(reaction / force).toBeCloseTo(1, 9);
    expect(loaded).toBe('middle');
    expect(stress / ((force * 2 * length * (diameter / 2)) / (4 * second))).toBeCloseTo(1, 9);
  });
});

describe('thread of an axle', () => {
  /** d3 of M12×1.5 is 10.160 mm (ISO 724, printed); Kf 2.8 of a cut thread of a soft steel, from memory. */
  test('fully reversed bending at the root: Se over Kf times 32·M/(π·d3³)', () => {
    const [diameter, pitch, tensile, moment] = [0.012, 0.0015, 440e6, 10];
    const root = 0.01016;
    // Se by hand: ka = 2.7·(440/6.894757)^−0.265, kb of 0.37·d3, ke 0.897, half of Sut.
    const ka = 2.7 * (440 / 6.894757) ** -0.265;
    const kb = ((0.37 * root) / 0.00762) ** -0.107;
    const endurance = ka * kb * 0.897 * 0.5 * tensile;
    const stress = (32 * moment) / (Math.PI * root ** 3);
    const found = threadFatigue({
      diameter,
      pitch,
      moments: { swing: moment, mean: 0 },
      tensile,
      yield: 370e6,
    })!;
    // The printed root has four digits, to the third power.
    expect(found / (endurance / (2.8 * stress))).toBeCloseTo(1, 3);
  });

  test('a tightened nut adds its tension to the mean: 1/n grows by F/(A3·Sut)', () => {
    const of = {
      diameter: 0.012,
      pitch: 0.0015,
      moments: { swing: 10, mean: 5 },
      tensile: 440e6,
      yield: 370e6,
    };
    const grown = 1 / threadFatigue({ ...of, torque: 40 })! - 1 / threadFatigue(of)!;
    const area = (Math.PI / 4) * (0.012 - 1.226869 * 0.0015) ** 2;
    expect(grown).toBeCloseTo(40 / (0.2 * 0.012) / area / 440e6, 9);
  });
});
