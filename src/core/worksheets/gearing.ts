import { z } from 'zod';
import {
  countField,
  derived,
  type Figure,
  good,
  lengthField,
  type Outcome,
  resultField,
} from '../quantity/index.ts';
import {
  type ClutchModel,
  clutchOf,
  type EngineCurve,
  engineCurve,
  type GearingInput,
  type GearingRow,
  gearingTable,
  torqueAt,
} from '../ride/index.ts';
import { findChain } from '../standards/index.ts';
import { atPath } from './atPath.ts';
import { AIR_DENSITY, bikeFields, clutchFields, dragAreaField, torqueCurveField } from './launchFields.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const teeth = (description: string) =>
  z
    .array(countField('Teeth.', { min: 6, max: 300 }))
    .min(1)
    .max(100)
    .meta({ description });

const input = z.strictObject({
  driverTeeth: teeth('Driving sprockets to try.'),
  drivenTeeth: teeth('Driven sprockets to try.'),
  otherRatio: bikeFields.ratio
    .meta({ description: 'Of all other stages; 1 if left out.', kind: 'ratio', unit: '' })
    .optional(),
  mass: bikeFields.mass,
  wheelRadius: bikeFields.wheelRadius,
  efficiency: bikeFields.efficiency.optional(),
  torque: torqueCurveField,
  governed: bikeFields.governed.optional(),
  clutch: clutchFields.optional(),
  CdA: dragAreaField.optional(),
  rollingCoefficient: bikeFields.rollingCoefficient.optional(),
  airDensity: bikeFields.airDensity.optional(),
  grade: bikeFields.grade.optional(),
  chain: z
    .string()
    .max(20)
    .meta({ description: 'Chain size, for clearances and lengths, e.g. #35.' })
    .optional(),
  place: z
    .strictObject({
      height: lengthField('Center of the driven sprocket above the ground.', { above: 0, max: 2000 }),
      offset: lengthField('Sprocket plane from the center plane.', { above: 0, max: 1000 }),
      halfTire: lengthField('Half the width of the tire with its growth.', { min: 0, max: 500 }).optional(),
    })
    .meta({ description: 'Where the driven sprocket sits.' })
    .optional(),
  centers: z
    .strictObject({
      shortest: lengthField('Shortest center distance that the slots give.', { above: 0, max: 10_000 }),
      longest: lengthField('Longest.', { above: 0, max: 10_000 }),
      now: lengthField('Present one.', { above: 0, max: 10_000 }),
    })
    .meta({ description: 'What the present slots give.' })
    .optional(),
  offsetLinks: z.boolean().meta({ description: 'Odd counts too, closed with an offset link.' }).optional(),
});

const row = z.object({
  driverTeeth: resultField('count', 'Driver.'),
  drivenTeeth: resultField('count', 'Driven.'),
  ratio: resultField('ratio', 'Engine turns per wheel turn.'),
  launchForce: resultField('force', 'At the tire from standstill.'),
  topSpeed: resultField('speed', 'Top speed on the grade given.'),
  topSpeedLimitedBy: z.enum(['resistance', 'engine-speed', 'force-drop', 'wheel-lift', 'grip', 'no-launch']),
  steepestHill: resultField('ratio', 'Rise over run that it can just start on.'),
  lockUpSpeed: resultField(
    'speed',
    'Road speed at lock-up; absent without a clutch or when it never locks.',
  ).optional(),
  governedSpeed: resultField('speed', 'Road speed at the governed speed.'),
  groundGap: resultField('length', 'Chain over the driven sprocket to the ground, upright.').optional(),
  leanToTouch: resultField('angle', 'Lean at which it touches.').optional(),
  tireGap: resultField('length', 'Side of the chain to the tire.').optional(),
  links: resultField('count', 'Links that fit the slots; absent when none do.').optional(),
  centerDistance: resultField('length', 'Center distance of those links.').optional(),
});

const output = z.object({
  rows: z.array(row).meta({ description: 'One a pair, driver by driver.' }),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const gearingWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'gearing',
  title: 'Gearing explorer',
  summary:
    'Table of sprocket pairs: launch force, top speed, steepest hill, road speed at lock-up, chain clearance to tire and ground, and the chain length that fits the slots as they are.',
  input,
  output,
  run,
  formulas: [
    'G = N2/N1 · other stages',
    'F = T·G·η/R',
    'v = ω·R/G',
    'gap = h − (PD + plate height)/2, tan φ = gap/offset',
  ],
  sources: [derived('force balance at the rear tire'), { key: 'asme-b29-1', where: 'sprocket diameters' }],
  example: {
    title: '12 teeth on 72 and 96, 1036 mm rollout, 3600 rpm: 37 and 28 km/h',
    input: {
      driverTeeth: [12],
      drivenTeeth: [72, 96],
      mass: 129,
      wheelRadius: 1036 / (2 * Math.PI),
      torque: [
        [2500, 12],
        [3600, 10.4],
      ],
      governed: 3600,
      clutch: { engages: 2000, locks: 2600 },
      chain: '#35',
      place: { height: 1036 / (2 * Math.PI), offset: 95 },
      centers: { shortest: 370, longest: 390, now: 380 },
    },
    expected: [
      { path: 'rows.0.governedSpeed', value: 37.296 / 3.6, tolerance: 1e-9 },
      { path: 'rows.0.lockUpSpeed', value: 26.936 / 3.6, tolerance: 1e-8 },
      { path: 'rows.0.links', value: 124, tolerance: 0 },
      { path: 'rows.0.centerDistance', value: 379.6, tolerance: 0.05 },
      { path: 'rows.1.governedSpeed', value: 27.972 / 3.6, tolerance: 1e-9 },
    ],
    source: derived('3600 rpm · 1.036 m/6; link equation solved with a general numeric library'),
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const engine = engineCurve({
    points: given.torque.map(([speed, torque]) => ({ speed, torque })),
    ...(given.governed === undefined ? {} : { governed: given.governed }),
  });
  if (!engine.ok) return engine;
  const clutch = clutchGiven(given, engine.value);
  if (!clutch.ok) return clutch;
  const table = tableInput(given, engine.value, clutch.value);
  if (!table.ok) return table;
  const rows = gearingTable(table.value);
  if (!rows.ok) return rows;
  return good({
    result: { rows: rows.value.map(rowResult) },
    figures: rows.value.flatMap((one) => figuresOf(given, one)),
  });
}

function clutchGiven(given: Input, engine: EngineCurve): Outcome<ClutchModel | undefined> {
  if (!given.clutch) return good(undefined);
  const { engages, locks, capacity } = given.clutch;
  return atPath(clutchOf({ engages, locks, capacity: capacity ?? torqueAt(engine, locks) }), 'clutch.locks');
}

function tableInput(
  given: Input,
  engine: EngineCurve,
  clutch: ClutchModel | undefined,
): Outcome<GearingInput> {
  const chain = given.chain === undefined ? undefined : atPath(findChain(given.chain), 'chain');
  if (chain && !chain.ok) return chain;
  const { place } = given;
  return good({
    launch: {
      road: {
        mass: given.mass,
        dragArea: given.CdA ?? 0,
        airDensity: given.airDensity ?? AIR_DENSITY,
        rollingCoefficient: given.rollingCoefficient ?? 0,
        grade: given.grade ?? 0,
      },
      drive: {
        ratio: given.otherRatio ?? 1,
        efficiency: given.efficiency ?? 1,
        wheelRadius: given.wheelRadius,
        ...(clutch ? { clutch } : {}),
      },
      engine,
      rotatingInertia: 0,
    },
    driverTeeth: given.driverTeeth,
    drivenTeeth: given.drivenTeeth,
    ...(chain ? { chain: chain.value } : {}),
    ...(place
      ? {
          place: {
            height: place.height,
            offset: place.offset,
            ...(place.halfTire === undefined ? {} : { halfTire: place.halfTire }),
          },
        }
      : {}),
    ...(given.centers ? { centers: given.centers } : {}),
    ...(given.offsetLinks === undefined ? {} : { offsetLinks: given.offsetLinks }),
  });
}

function rowResult(one: GearingRow): Result['rows'][number] {
  const { top, hill, lockUp, governed, fit, ...rest } = one;
  return {
    ...rest,
    topSpeed: top.speed,
    topSpeedLimitedBy: top.limitedBy,
    steepestHill: hill.grade,
    ...(lockUp === undefined ? {} : { lockUpSpeed: lockUp }),
    governedSpeed: governed,
    ...(fit ? { links: fit.links, centerDistance: fit.center } : {}),
  };
}

function figuresOf(given: Input, one: GearingRow): Figure[] {
  const pair = `${one.driverTeeth}/${one.drivenTeeth}`;
  return [
    {
      id: `gearing.${pair}.governedSpeed`,
      symbol: 'v_g',
      name: `road speed at the governed speed, ${pair}`,
      value: one.governed,
      kind: 'speed',
      formula: 'v = ω·R/G',
      inputs: [
        { name: 'R', value: given.wheelRadius, kind: 'length' },
        { name: 'G', value: one.ratio, kind: 'ratio' },
      ],
      source: derived('measured rollout'),
    },
  ];
}
