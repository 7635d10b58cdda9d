import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { describeIssue } from '../quantity/index.ts';
import { bearingLifeWorksheet } from './bearingLife.ts';
import { beltStrengthWorksheet } from './beltStrength.ts';
import { boltJointWorksheet } from './boltJoint.ts';
import { chainStrengthWorksheet } from './chainStrength.ts';
import { fatigueWorksheet } from './fatigue.ts';
import { fitLimitsWorksheet } from './fitLimits.ts';
import { runWorksheet, type Worksheet } from './index.ts';
import { keyWorksheet } from './key.ts';
import { pressFitWorksheet } from './pressFit.ts';
import { shaftWorksheet } from './shaft.ts';
import { shaftFatigueWorksheet } from './shaftFatigue.ts';
import { weldGroupWorksheet } from './weldGroup.ts';

/** The result in edge units; its shape is that of the output schema. */
function resultOf<O extends z.ZodType>(worksheet: Worksheet<z.ZodType, O>, json: unknown): z.output<O> {
  const answer = runWorksheet(worksheet, json);
  if (!answer.ok) throw new Error(answer.issues.map(describeIssue).join('; '));
  return answer.value.result as z.output<O>;
}

function refusalOf(worksheet: Worksheet, json: unknown): string {
  const answer = runWorksheet(worksheet, json);
  if (answer.ok) throw new Error('taken');
  return answer.issues.map((issue) => `${issue.code} ${issue.path}`).join(', ');
}

const shaft = {
  segments: [{ from: 0, to: 300, diameter: 20 }],
  supports: [{ at: 0 }, { at: 300 }],
  loads: [{ at: 150, force: [0, -1000] }],
  E: 207000,
  G: '79.3 GPa',
};
const bearing = { bearing: '6203', radial: 1200, speed: 3000 };
const bolt = { thread: 'M8', boltClass: '8.8' };
const weld = { circles: [{ diameter: 25 }], leg: 4 };
const chain = { chain: '#40', teeth: 12, speed: 1800 };

describe('shaft', () => {
  test('edge units: mm, N, N·m, slopes in rad', () => {
    const result = resultOf(shaftWorksheet, shaft);
    expect(result.reactions).toEqual([
      [0, 500],
      [0, 500],
    ]);
    expect(result.maxMoment).toEqual({ value: 75, at: expect.closeTo(150, 6) });
    const slope = (1000 * 300 ** 2) / (16 * 207000 * (Math.PI / 64) * 20 ** 4);
    expect(result.slopes).toEqual([expect.closeTo(slope, 9), expect.closeTo(slope, 9)]);
    expect(result.slopePairs).toEqual([
      [0, expect.closeTo(-slope, 9)],
      [0, expect.closeTo(slope, 9)],
    ]);
    expect(result.maxDeflection!.value).toBeCloseTo((slope * 300) / 3, 9);
    expect(result.stations.map(({ at, side }) => `${at} ${side}`)).toEqual([
      '0 right',
      '150 left',
      '150 right',
      '300 left',
    ]);
  });

  test('a bearing 0.1 mm low loads the shaft without any load', () => {
    const result = resultOf(shaftWorksheet, {
      ...shaft,
      loads: [],
      supports: [{ at: 0 }, { at: 150, offset: [0, -0.1], stiffness: '100000 N/mm' }, { at: 300 }],
    });
    expect(result.reactions![1]![1]!).toBeLessThan(0);
  });

  test.each([
    [{ ...shaft, segments: [] }, 'out-of-range segments'],
    [{ ...shaft, supports: [{ at: 0 }] }, 'conflict supports'],
    [{ ...shaft, supports: [{ at: 0 }, { at: 301 }] }, 'out-of-range supports[1].at'],
    [{ ...shaft, loads: [{ at: 150, force: [1] }] }, 'out-of-range loads[0].force'],
    [{ ...shaft, E: 0 }, 'out-of-range E'],
    [{ ...shaft, masses: [{ at: 999, mass: 1 }] }, 'out-of-range loads[1].at'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(shaftWorksheet, json)).toBe(refusal);
  });
});

describe('shaft-fatigue', () => {
  const section = { diameter: 20, bendingAmplitude: 60, torqueMean: 40, tensile: 600, yield: 400 };

  test('a keyseat costs, its radius matters, and everything that made Se is told', () => {
    const plain = resultOf(shaftFatigueWorksheet, { ...section, notch: 'none' });
    const keyed = resultOf(shaftFatigueWorksheet, { ...section, notch: 'end-mill-keyseat' });
    expect(plain.bendingFactor).toBe(1);
    expect(keyed.factors!.goodman!).toBeLessThan(plain.factors!.goodman!);
    const { surface, size, reliability, specimen } = keyed.modifiers!;
    expect(keyed.endurance).toBeCloseTo(surface! * size! * reliability! * specimen!, 9);
    expect(keyed.factors!.gerber!).toBeGreaterThan(keyed.factors!.goodman!);
    expect(keyed.factors!.soderberg!).toBeLessThan(keyed.factors!.goodman!);
  });

  test('without load there is no factor', () => {
    const result = resultOf(shaftFatigueWorksheet, { diameter: 20, tensile: 600, yield: 400 });
    expect(result.factors).toEqual({});
    expect(result.yieldFactor).toBeUndefined();
  });

  test.each([
    [{ ...section, bore: 20 }, 'conflict bore'],
    [{ ...section, notch: 'none', bendingFactor: 2 }, 'conflict notch'],
    [{ ...section, endurance: 200, surface: 'ground' }, 'conflict endurance'],
    [{ ...section, reliability: 97 }, 'not-in-table reliability'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(shaftFatigueWorksheet, json)).toBe(refusal);
  });
});

describe('bearing-life', () => {
  test('the listed low rating, or the one typed', () => {
    expect(resultOf(bearingLifeWorksheet, bearing).lifeHours).toBeCloseTo(2809.04, 2);
    const own = resultOf(bearingLifeWorksheet, {
      ...bearing,
      dynamicRating: 9950,
      hours: 2000,
      seal: 'grease',
    });
    expect(own.dynamicRating).toBe(9950);
    expect(own.requiredRating).toBeCloseTo(1200 * Math.cbrt(360), 6);
    expect(own.axialLimit).toBeCloseTo(own.staticRating! / 2, 9);
  });

  test('a duty of equal parts is the steady load', () => {
    const { radial, speed } = bearing;
    const part = { radial, speed, share: 0.5 };
    const duty = resultOf(bearingLifeWorksheet, { bearing: '6203', duty: [part, part] });
    expect(duty.equivalentLoad).toBeCloseTo(1200, 9);
    expect(duty.lifeHours).toBeCloseTo(2809.04, 2);
  });

  test('no load, no life figure; 95 % is reached earlier than 90 %', () => {
    expect(resultOf(bearingLifeWorksheet, { ...bearing, radial: 0 }).lifeHours).toBeUndefined();
    const [r90, r95] = [0.9, 0.95].map((r) => resultOf(bearingLifeWorksheet, { ...bearing, reliability: r }));
    expect(r95!.reliableHours!).toBeLessThan(r90!.reliableHours!);
    // a1 of ISO 281:2007, from memory: 1 at 90 %, 0.64 at 95 %, 0.25 at 99 %.
    expect(r90!.reliableHours).toBe(r90!.lifeHours);
    expect(r95!.reliableHours! / r95!.lifeHours!).toBeCloseTo(0.64, 12);
    expect(resultOf(bearingLifeWorksheet, { ...bearing, reliability: 0.99 }).a1).toBe(0.25);
    const weibull = { ...bearing, reliability: 0.9, reliabilityRule: 'weibull' };
    expect(resultOf(bearingLifeWorksheet, weibull).a1).toBeCloseTo(0.993, 3);
    expect(resultOf(bearingLifeWorksheet, { ...weibull, reliability: 0.93 }).a1).toBeLessThan(0.993);
  });

  test('C and Fr alone do where nothing pushes along the shaft', () => {
    // L10 = (9560/1200)³ million turns: by hand 505.63; e, X and Y have no part.
    const alone = resultOf(bearingLifeWorksheet, { dynamicRating: 9560, radial: 1200, speed: 3000 });
    expect(alone.millionRevolutions).toBeCloseTo(505.63, 1);
    expect(alone).toMatchObject({ equivalentLoad: 1200, x: 1, y: 0 });
    expect(alone).not.toHaveProperty('staticRating');
    expect(alone).not.toHaveProperty('staticFactor');
    const known = resultOf(bearingLifeWorksheet, {
      dynamicRating: 9560,
      staticRating: 4800,
      radial: 1200,
      speed: 3000,
    });
    expect(known.staticFactor).toBeCloseTo(4, 9);
  });

  test.each([
    [{ radial: 1, speed: 1 }, 'missing dynamicRating'],
    [{ dynamicRating: 1, radial: 1, axial: 1, speed: 1 }, 'missing staticRating'],
    [{ ...bearing, reliability: 0.93 }, 'conflict reliability'],
    [{ dynamicRating: 2, staticRating: 1, radial: 1, axial: 1, speed: 1 }, 'missing f0'],
    [{ ...bearing, bearing: '6999' }, 'not-in-table bearing'],
    [{ bearing: '6203', speed: 1 }, 'missing radial'],
    [{ bearing: '6203', radial: 1 }, 'missing speed'],
    [{ ...bearing, duty: [{ radial: 1, speed: 1, share: 1 }] }, 'conflict duty'],
    [{ ...bearing, outerRingTurns: true }, 'conflict outerRingTurns'],
    [{ ...bearing, bore: 50 }, 'conflict bore'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(bearingLifeWorksheet, json)).toBe(refusal);
  });
});

describe('fit-limits', () => {
  test('H7/g6 is loose; a file alone does not hold H7 of 20 mm, a reamer does', () => {
    const result = resultOf(fitLimitsWorksheet, { size: 20, hole: 'H7', shaft: 'g6' });
    expect(result.kind).toBe('clearance');
    expect(result.clearance).toEqual({ least: expect.closeTo(0.007, 9), most: expect.closeTo(0.041, 9) });
    const methods = result.handBore.methods;
    const holds = (name: string) => methods.find(({ method }) => method === name)!.holds;
    expect(holds('file-to-gauge')).toBe(false);
    expect(holds('machine-reamer')).toBe(true);
    expect(result.handBore!.aim).toBeCloseTo(20.0105, 9);
    expect(result.handBore!.stopAt).toBeCloseTo(19.9, 9);
  });

  test.each([
    [{ size: 20, hole: 'g6', shaft: 'H7' }, 'conflict hole'],
    [{ size: 20, hole: 'H7', shaft: 'H7' }, 'conflict shaft'],
    [{ size: 20, hole: 'Q7', shaft: 'h6' }, 'not-in-table hole'],
    [{ size: 121, hole: 'H7', shaft: 'h6' }, 'out-of-range size'],
    [{ size: 1, hole: 'bearing', shaft: 'h6' }, 'not-in-table hole'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(fitLimitsWorksheet, json)).toBe(refusal);
  });
});

describe('press-fit', () => {
  const fit = { diameter: 35, bore: 31, interference: 0.02, length: 6 };

  test('a wide plate is the limit of a large hub; a yield gives a factor', () => {
    const wide = resultOf(pressFitWorksheet, { ...fit, hubYield: 250 });
    const large = resultOf(pressFitWorksheet, { ...fit, hubOutside: 10_000 });
    expect(large.pressure! / wide.pressure!).toBeCloseTo(1, 4);
    // Wide plate: σθ = p, σr = −p.
    expect(wide.hubFactor).toBeCloseTo(250 / (Math.sqrt(3) * wide.pressure!), 9);
    expect(resultOf(pressFitWorksheet, { ...fit, bore: undefined }).boreShrink).toBe(0);
  });

  test.each([
    [{ ...fit, bore: 35 }, 'conflict bore'],
    [{ ...fit, hubOutside: 35 }, 'conflict hubOutside'],
    [{ ...fit, interference: 0 }, 'out-of-range interference'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(pressFitWorksheet, json)).toBe(refusal);
  });
});

describe('key', () => {
  const key = { shaft: 19.05, torque: 40, length: 25.4, yield: 350 };

  test('size by the shaft; the length for a factor gives that factor back', () => {
    const result = resultOf(keyWorksheet, { ...key, factor: 2 });
    expect(result.width).toBeCloseTo(4.7625, 9);
    const again = resultOf(keyWorksheet, { ...key, length: result.neededLength });
    expect(Math.min(again.shearFactor!, again.bearingFactor!)).toBeCloseTo(2, 9);
    const energy = resultOf(keyWorksheet, { ...key, shearYield: 'distortion-energy' });
    expect(energy.shearFactor! / result.shearFactor!).toBeCloseTo(0.577 / 0.5, 9);
  });

  test.each([
    [{ ...key, shaft: 200 }, 'out-of-range shaft'],
    [{ ...key, width: 20 }, 'conflict width'],
    [{ shaft: 20, torque: 5 }, 'missing length'],
    [{ ...key, width: 5, height: 20 }, 'conflict height'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(keyWorksheet, json)).toBe(refusal);
  });
});

describe('bolt-joint', () => {
  test('torque and proof share are inverse; slots along the pull slip earlier', () => {
    const share = resultOf(boltJointWorksheet, { ...bolt, proofShare: 0.6 });
    const torque = resultOf(boltJointWorksheet, { ...bolt, torque: share.torque });
    expect(torque.proofShare).toBeCloseTo(0.6, 9);
    const slotted = resultOf(boltJointWorksheet, { ...bolt, proofShare: 0.6, hole: 'long-slot-along' });
    expect(slotted.slipLoad! / share.slipLoad!).toBeCloseTo(0.63, 9);
  });

  test('a pull takes clamp away; past separation the bolt carries it all', () => {
    const pull = resultOf(boltJointWorksheet, { ...bolt, count: 2, pull: 8000, jointConstant: 0.25 });
    const preload = pull.preload!;
    expect(pull.clamp).toBeCloseTo(preload - 0.75 * 4000, 6);
    expect(pull.separationFactor).toBeCloseTo(preload / (0.75 * 4000), 9);
    const torn = resultOf(boltJointWorksheet, { ...bolt, pull: 40_000, jointConstant: 0.25 });
    expect(torn.clamp).toBe(0);
    expect(torn.slipLoad).toBe(0);
    expect(torn.boltStress).toBeCloseTo(40_000 / torn.stressArea!, 6);
    const gripped = resultOf(boltJointWorksheet, { ...bolt, pull: 8000, grip: 30 });
    // A steel bolt in a steel grip of four diameters feels about a quarter of the pull.
    expect((gripped.boltStress! * gripped.stressArea! - gripped.preload!) / 8000).toBeGreaterThan(0.1);
    expect((gripped.boltStress! * gripped.stressArea! - gripped.preload!) / 8000).toBeLessThan(0.3);
  });

  test('a force off the center: sums of force and moment, the far bolt carries most', () => {
    const pattern = {
      bolts: [
        [0, 0],
        [80, 0],
        [0, 60],
        [80, 60],
      ],
      force: [0, -2000],
      at: [200, 30],
    };
    const { boltForces, slipFactor, slipLoad } = resultOf(boltJointWorksheet, { ...bolt, pattern });
    const forces = boltForces!;
    expect(forces.reduce((sum, [, y]) => sum + y, 0)).toBeCloseTo(-2000, 6);
    const moment = forces.reduce(
      (sum, [x, y], i) => sum + pattern.bolts[i]![0]! * y - pattern.bolts[i]![1]! * x,
      0,
    );
    expect(moment).toBeCloseTo(200 * -2000, 5);
    const largest = Math.max(...forces.map(([x, y]) => Math.hypot(x, y)));
    expect(slipFactor).toBeCloseTo(slipLoad! / 4 / largest, 9);
    expect(largest).toBeGreaterThan(500);
  });

  test('bearing, tear-out and engagement', () => {
    const plate = { thickness: 5, edge: 14, yield: 250 };
    const result = resultOf(boltJointWorksheet, { ...bolt, shear: 6000, plate, nutTensile: 250 });
    expect(result.bearingFactor).toBeCloseTo(250 / (6000 / 40), 9);
    expect(result.tearOutFactor).toBeCloseTo((0.577 * 250) / (6000 / (10 * (14 - 4.5))), 9);
    const steel = resultOf(boltJointWorksheet, { ...bolt, nutTensile: 800 }).engagement!;
    // Nuts of equal steel are 0.8 diameters high, with tolerances and spreading in them; weak metal takes far more.
    expect(steel / 8).toBeGreaterThan(0.5);
    expect(steel / 8).toBeLessThan(1.1);
    expect(result.engagement! / steel).toBeGreaterThan(1.5);
  });

  test.each([
    [{ ...bolt, thread: 'M7' }, 'not-in-table thread'],
    [{ ...bolt, boltClass: '9.9' }, 'not-in-table boltClass'],
    [{ ...bolt, torque: 10, proofShare: 0.5 }, 'conflict proofShare'],
    [{ ...bolt, shear: 1, pattern: { bolts: [[0, 0]], force: [1, 0], at: [0, 0] } }, 'conflict pattern'],
    [{ ...bolt, pattern: { bolts: [[0, 0]], force: [1, 0], at: [0, 9] } }, 'conflict pattern.bolts'],
    [{ ...bolt, shear: 1, plate: { thickness: 5, edge: 4, yield: 250 } }, 'conflict plate.edge'],
    [{ ...bolt, shear: 1, plate: { thickness: 5, edge: 14, yield: 250, hole: 7 } }, 'conflict plate.hole'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(boltJointWorksheet, json)).toBe(refusal);
  });
});

describe('weld-group', () => {
  test('rules of the allowable', () => {
    const pull = { ...weld, force: [1000, 0, 0] };
    expect(resultOf(weldGroupWorksheet, pull).allowable).toBeCloseTo(0.3 * 70 * 6.894757, 4);
    // A pull across the weld line: 90°, half as much again.
    expect(resultOf(weldGroupWorksheet, { ...pull, rule: 'aws-directional' }).allowable).toBeCloseTo(
      0.45 * 70 * 6.894757,
      4,
    );
    const eurocode = { ...pull, rule: 'en-1993-1-8', grade: 'S235', baseTensile: 360 };
    // EN 1993-1-8 with fu 360: 207.8 MPa, the figure of many tables.
    expect(resultOf(weldGroupWorksheet, eurocode).allowable).toBeCloseTo(207.8, 1);
    const based = resultOf(weldGroupWorksheet, { ...pull, baseYield: 250, thickerPart: 6 });
    expect(based.baseFactor).toBeCloseTo((0.4 * 250) / (based.stress! / Math.SQRT2), 9);
    expect(based.leastLeg).toBeCloseTo(3.175, 9);
  });

  // fu/(√3·βw·1.25) with fu 360, 430 and 490 MPa and βw 0.8, 0.85 and 0.9: 207.8, 233.7 and 251.5 MPa (Eurocode, from memory).
  test.each([
    ['S235', 207.8],
    ['S275', 233.7],
    ['S355', 251.5],
  ])('%s has its own fu by Eurocode', (grade, allowable) => {
    const found = resultOf(weldGroupWorksheet, { ...weld, rule: 'en-1993-1-8', grade });
    expect(found.allowable).toBeCloseTo(allowable, 1);
  });

  test('a leg of the size needed has factor 1', () => {
    const load = { force: [500, 800, -1500], at: [120, 10, 0], moment: [20, 0, 0] };
    const { neededLeg } = resultOf(weldGroupWorksheet, { ...weld, ...load });
    expect(resultOf(weldGroupWorksheet, { ...weld, ...load, leg: neededLeg }).factor).toBeCloseTo(1, 9);
  });

  test('one straight fillet: across itself it bends, about itself it is refused', () => {
    const line = { lines: [{ from: [0, 0], to: [60, 0] }], leg: 4 };
    const bent = resultOf(weldGroupWorksheet, { ...line, moment: [0, 0, 30] });
    const throat = 4 / Math.SQRT2;
    expect(bent.stress).toBeCloseTo(30_000 / ((throat * 60 ** 2) / 6), 6);
    expect(refusalOf(weldGroupWorksheet, { ...line, moment: [0, 30, 0] })).toBe('conflict lines');
  });

  test('without load there is no factor, and nothing is not a number', () => {
    expect(resultOf(weldGroupWorksheet, weld).factor).toBeUndefined();
  });

  test.each([
    [{ leg: 4 }, 'missing lines'],
    [{ circles: [{ diameter: 25 }] }, 'missing leg'],
    [{ ...weld, throat: 3 }, 'conflict throat'],
    [{ ...weld, lines: [{ from: [1, 1], to: [1, 1] }] }, 'conflict lines[0].to'],
    [{ ...weld, filler: 'X' }, 'not-in-table filler'],
    [{ ...weld, rule: 'own' }, 'missing allowable'],
    [{ ...weld, rule: 'en-1993-1-8' }, 'missing grade'],
    [{ ...weld, rule: 'en-1993-1-8', grade: 'S1', baseTensile: 360 }, 'not-in-table grade'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(weldGroupWorksheet, json)).toBe(refusal);
  });
});

describe('chain-strength', () => {
  test('power and torque are the same pull; a peak is told beside', () => {
    const power = 20 * ((1800 * 2 * Math.PI) / 60);
    const [a, b] = [{ power }, { torque: 20 }].map((given) =>
      resultOf(chainStrengthWorksheet, { ...chain, ...given }),
    );
    expect(a!.pull).toBeCloseTo(b!.pull!, 9);
    const peak = resultOf(chainStrengthWorksheet, { ...chain, torque: 20, peakTorque: 60 }).peak!;
    expect(peak.tension).toBeCloseTo(3 * a!.pull!, 9);
    expect(a!.serviceFactor).toBe(1.4);
    expect(a!.wantedStrengthFactor).toBe(9);
  });

  test('motorcycle sizes come without a rating, two strands carry twice', () => {
    const motorcycle = resultOf(chainStrengthWorksheet, { ...chain, chain: '428', torque: 20 });
    expect(motorcycle.rating).toBeUndefined();
    const [one, two] = [1, 2].map((strands) =>
      resultOf(chainStrengthWorksheet, { ...chain, torque: 20, strands }),
    );
    expect(two!.breakingLoad).toBeCloseTo(2 * one!.breakingLoad!, 9);
    expect(two!.rating!.power! / one!.rating!.power!).toBeCloseTo(1.7, 9);
  });

  test.each([
    [chain, 'missing power'],
    [{ ...chain, power: 1, torque: 1 }, 'conflict torque'],
    [{ ...chain, power: 1, chain: 'x' }, 'not-in-table chain'],
    [{ ...chain, power: 1, serviceFactor: 2, load: 'smooth' }, 'conflict serviceFactor'],
    [{ ...chain, power: 1, strands: 7 }, 'out-of-range strands'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(chainStrengthWorksheet, json)).toBe(refusal);
  });
});

describe('belt-strength', () => {
  test('wedging counts once', () => {
    const belt = { torque: 20, diameter: 100, wrap: 150, friction: 0.3, tight: 1000 };
    const flat = resultOf(beltStrengthWorksheet, belt);
    const wedged = resultOf(beltStrengthWorksheet, { ...belt, grooveAngle: 26 });
    expect(wedged.friction! / flat.friction!).toBeCloseTo(1 / Math.sin((13 * Math.PI) / 180), 9);
    expect(flat.tightFactor).toBeCloseTo(1000 / flat.tight!, 9);
    expect(flat.tight! - flat.slack!).toBeCloseTo(400, 9);
  });
});

describe('fatigue', () => {
  test('a listed detail brings its slope; the partial factor lowers the low end only', () => {
    const spectrum = [{ range: 60, cycles: 1000 }];
    const [kind, harsh] = [1, 1.35].map((partialFactor) =>
      resultOf(fatigueWorksheet, { detail: 'tube-node-even', partialFactor, spectrum }),
    );
    expect(kind!.nominal!.repeats).toBe(harsh!.nominal!.repeats);
    expect(kind!.low!.repeats! / harsh!.low!.repeats!).toBeCloseTo(1.35 ** 5, 9);
    expect(kind!.nominal!.repeats).toBeCloseTo((2e6 * (45 / 60) ** 5) / 1000, 6);
    expect(kind!.high!.repeats!).toBeGreaterThan(kind!.nominal!.repeats!);
  });

  test('ranges that do not count leave the life out', () => {
    const result = resultOf(fatigueWorksheet, { category: 160, spectrum: [{ range: 20, cycles: 1e9 }] });
    expect(result.damage).toBe(0);
    expect(result.nominal).toEqual({ category: 160 });
  });

  test.each([
    [{ spectrum: [{ range: 1, cycles: 1 }] }, 'missing category'],
    [{ category: 71, detail: 'open-hole', spectrum: [{ range: 1, cycles: 1 }] }, 'conflict category'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(fatigueWorksheet, json)).toBe(refusal);
  });
});
