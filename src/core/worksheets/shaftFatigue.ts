import { z } from 'zod';
import type { Length, Outcome, Pressure, Torque } from '../quantity/index.ts';
import {
  bad,
  good,
  lengthField,
  pressureField,
  ratioField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import { notches, surfaceFinishes } from '../standards/index.ts';
import {
  type EnduranceLimit,
  enduranceLimit,
  type FatigueCriterion,
  notchFactors,
  type SectionLoad,
  type SectionStrength,
  sectionDiameter,
  sectionFactors,
  sectionFigures,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const MOMENT = { min: 0, max: 1e6 };
const CRITERIA: readonly FatigueCriterion[] = ['goodman', 'gerber', 'asme-elliptic', 'soderberg'];

const input = z.strictObject({
  diameter: lengthField('Outside diameter at the section.', { above: 0, max: 1000 }),
  bore: lengthField('Bore; left out: solid.', { min: 0, max: 1000 }).optional(),
  bendingAmplitude: torqueField('Ma: the whole bending of a turning shaft.', MOMENT).optional(),
  bendingMean: torqueField('Mm.', MOMENT).optional(),
  torqueAmplitude: torqueField('Ta.', MOMENT).optional(),
  torqueMean: torqueField('Tm.', MOMENT).optional(),
  notch: oneOf(
    'Detail at the section; instead of bendingFactor and torsionFactor.',
    notches.map(({ name }) => name),
  ).optional(),
  radius: lengthField('Fillet radius of the detail; left out: that of its table.', {
    above: 0,
    max: 100,
  }).optional(),
  bendingFactor: ratioField('Kf, fatigue stress concentration in bending.', { min: 1, max: 20 }).optional(),
  torsionFactor: ratioField('Kfs, in torsion.', { min: 1, max: 20 }).optional(),
  tensile: pressureField('Sut.', { above: 0, max: 5000 }),
  yield: pressureField('Sy.', { above: 0, max: 5000 }),
  endurance: pressureField('Se of the part, if known; instead of surface.', {
    above: 0,
    max: 5000,
  }).optional(),
  surface: oneOf(
    'Surface finish; left out: machined.',
    surfaceFinishes.map(({ name }) => name),
  ).optional(),
  reliability: ratioField('Percent of parts that reach it: 50, 90, 95, 99 or 99.9; left out: 50.', {
    min: 50,
    max: 99.9,
  }).optional(),
  still: z.boolean().meta({ description: 'The axle does not turn under the load.' }).optional(),
  factor: ratioField('Factor for which a diameter is wanted.', { above: 0, max: 100 }).optional(),
});

const byCriterion = (kind: 'ratio' | 'length', doc: string) =>
  z
    .object({
      goodman: resultField(kind, 'DE-Goodman.').optional(),
      gerber: resultField(kind, 'DE-Gerber.').optional(),
      'asme-elliptic': resultField(kind, 'DE-ASME elliptic.').optional(),
      soderberg: resultField(kind, 'DE-Soderberg.').optional(),
    })
    .meta({ description: doc });

const output = z.object({
  bendingFactor: resultField('ratio', 'Kf used.'),
  torsionFactor: resultField('ratio', 'Kfs used.'),
  endurance: resultField('pressure', 'Se used.'),
  modifiers: z
    .object({
      surface: resultField('ratio', 'ka.'),
      size: resultField('ratio', 'kb.'),
      reliability: resultField('ratio', 'ke.'),
      specimen: resultField('pressure', "Se', of a polished specimen."),
    })
    .meta({ description: 'What Se was made of; left out when it was given.' })
    .optional(),
  factors: byCriterion('ratio', 'Fatigue factor; left out without load.'),
  yieldFactor: resultField('ratio', 'Against first-cycle yield; left out without load.').optional(),
  neededDiameter: byCriterion('length', 'Solid diameter for the wanted factor.').optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const shaftFatigueWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'shaft-fatigue',
  title: 'Fatigue of a shaft section',
  summary:
    'Fatigue and yield factors of a shaft at a keyseat, shoulder or thread under bending and torsion, by four criteria of distortion energy, with the endurance modifiers listed.',
  input,
  output,
  run,
  formulas: [
    'A = √(4(Kf·Ma)² + 3(Kfs·Ta)²), B = √(4(Kf·Mm)² + 3(Kfs·Tm)²)',
    '1/n = 16/(π·d³)·(A/Se + B/Sut) (Goodman)',
    "Se = ka·kb·ke·Se', Se' = 0.5·Sut up to 700 MPa",
    'Kf = 1 + q·(Kt − 1)',
  ],
  sources: [
    { key: 'shigley-9', where: 'section 7-4, section 6-9, tables 6-2, 6-5 and 7-1' },
    { key: 'memory', where: 'Neuber notch sensitivity, ground, hot-rolled and forged surfaces, threads' },
  ],
  example: {
    title: 'Bending 70 ± 55 and torque 45 ± 35 N·m, factor 2',
    input: {
      diameter: 27.27,
      bendingAmplitude: 70,
      bendingMean: 55,
      torqueAmplitude: 45,
      torqueMean: 35,
      bendingFactor: 2.2,
      torsionFactor: 1.8,
      endurance: 210,
      tensile: 700,
      yield: 560,
      factor: 2,
    },
    expected: [
      { path: 'neededDiameter.goodman', value: 27.27, tolerance: 0.005 },
      { path: 'neededDiameter.gerber', value: 25.85, tolerance: 0.005 },
      { path: 'neededDiameter.asme-elliptic', value: 25.77, tolerance: 0.005 },
      { path: 'neededDiameter.soderberg', value: 27.7, tolerance: 0.005 },
      { path: 'factors.goodman', value: 2, tolerance: 0.001 },
    ],
    source: { key: 'shigley-9', where: 'problem 7-1, solution of the 10th edition' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const bore = (given.bore ?? 0) as Length;
  if (bore >= given.diameter)
    return bad({ code: 'conflict', path: 'bore', reason: 'the bore is smaller than the diameter' });
  const factors = notchOf(given);
  if (!factors.ok) return factors;
  const endurance = enduranceOf(given);
  if (!endurance.ok) return endurance;
  const load: SectionLoad = {
    bendingAmplitude: given.bendingAmplitude ?? (0 as Torque),
    bendingMean: given.bendingMean ?? (0 as Torque),
    torqueAmplitude: given.torqueAmplitude ?? (0 as Torque),
    torqueMean: given.torqueMean ?? (0 as Torque),
    bendingFactor: factors.value.bending,
    torsionFactor: factors.value.torsion,
  };
  const strength: SectionStrength = {
    endurance: endurance.value.limit,
    tensile: given.tensile,
    yield: given.yield,
  };
  const section = sectionFactors(load, strength, given.diameter, bore);
  const made = endurance.value.made;
  const result: Result = {
    bendingFactor: load.bendingFactor,
    torsionFactor: load.torsionFactor,
    endurance: strength.endurance,
    ...(made === undefined ? {} : { modifiers: made }),
    factors: finiteOnly(section.fatigue),
    ...(Number.isFinite(section.yield) ? { yieldFactor: section.yield } : {}),
    ...(given.factor === undefined ? {} : { neededDiameter: diametersFor(load, strength, given.factor) }),
  };
  const figures = sectionFigures(
    { load, strength, diameter: given.diameter, factors: section, ...(made ? { endurance: made } : {}) },
    { id: 'shaftFatigue', of: 'shaft section' },
  );
  return good({ result, figures });
}

function notchOf(given: Input): Outcome<{ readonly bending: number; readonly torsion: number }> {
  const { notch, bendingFactor, torsionFactor, tensile, diameter, radius } = given;
  if (notch !== undefined && (bendingFactor !== undefined || torsionFactor !== undefined))
    return bad({
      code: 'conflict',
      path: 'notch',
      reason: 'notch stands for bendingFactor and torsionFactor; give one or the others',
    });
  if (notch === undefined) return good({ bending: bendingFactor ?? 1, torsion: torsionFactor ?? 1 });
  return atPath(notchFactors(notch, tensile, diameter, radius), 'notch');
}

function enduranceOf(given: Input): Outcome<{ readonly limit: Pressure; readonly made?: EnduranceLimit }> {
  const { endurance, surface, reliability, tensile, diameter } = given;
  if (endurance !== undefined) {
    if (surface === undefined && reliability === undefined) return good({ limit: endurance });
    const reason = 'endurance is that of the part; surface and reliability are already in it';
    return bad({ code: 'conflict', path: 'endurance', reason });
  }
  const made = enduranceLimit({
    tensile,
    diameter,
    surface: surface ?? 'machined',
    ...(reliability === undefined ? {} : { reliability }),
    rotating: given.still !== true,
  });
  return made.ok ? good({ limit: made.value.limit, made: made.value }) : made;
}

const finiteOnly = (factors: Readonly<Record<FatigueCriterion, number>>): Result['factors'] =>
  Object.fromEntries(Object.entries(factors).filter(([, factor]) => Number.isFinite(factor)));

const diametersFor = (load: SectionLoad, strength: SectionStrength, factor: number): Result['factors'] =>
  Object.fromEntries(
    CRITERIA.map((criterion) => [criterion, sectionDiameter(load, strength, factor, criterion)]),
  );
