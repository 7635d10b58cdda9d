import { z } from 'zod';
import {
  angularSpeedField,
  bad,
  countField,
  derived,
  type Figure,
  type FigureInput,
  good,
  lengthField,
  massField,
  type Outcome,
  practice,
  ratioField,
  resultField,
  speedField,
  torqueField,
} from '../quantity/index.ts';
import {
  type ClutchModel,
  clutchCapacity,
  clutchDuty,
  clutchOf,
  clutchSpeeds,
  drumRise,
  type EngineCurve,
  engineCurve,
  launchesToBlue,
  type RoadLoad,
  shoeConstant,
  shoeMass,
  simulateLaunch,
  slipBands,
  torqueAt,
  torqueForGrade,
} from '../ride/index.ts';
import { atPath } from './atPath.ts';
import { AIR_DENSITY, bikeFields, dragAreaField, plainResult, torqueCurveField } from './launchFields.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  engages: angularSpeedField('Engine speed of first bite.', { min: 0, max: 200_000 }),
  locks: angularSpeedField('Engine speed at which it carries its capacity.', { above: 0, max: 200_000 }),
  capacity: torqueField("Torque carried at that speed; the engine's own torque there if left out.", {
    above: 0,
    max: 100_000,
  }).optional(),
  shoes: z
    .strictObject({
      count: countField('How many.', { min: 1, max: 20 }),
      friction: ratioField('Lining on drum.', { above: 0, max: 2 }),
      mass: massField('Of one shoe; worked out from the capacity if left out.', {
        above: 0,
        max: 100,
      }).optional(),
      radius: lengthField('Center of mass of a shoe from the shaft.', { above: 0, max: 1000 }),
      drumRadius: lengthField('Inside of the drum.', { above: 0, max: 1000 }),
    })
    .meta({ description: 'The shoes, where they are known.' })
    .optional(),
  torque: torqueCurveField.optional(),
  governed: bikeFields.governed.optional(),
  ratio: bikeFields.ratio,
  efficiency: bikeFields.efficiency.optional(),
  wheelRadius: bikeFields.wheelRadius.optional(),
  rollout: lengthField('Measured distance of one wheel turn, rider on; instead of wheelRadius.', {
    min: 50,
    max: 10_000,
  }).optional(),
  mass: bikeFields.mass.optional(),
  grade: bikeFields.grade.optional(),
  rollingCoefficient: bikeFields.rollingCoefficient.optional(),
  CdA: dragAreaField.optional(),
  airDensity: bikeFields.airDensity.optional(),
  rotatingInertia: bikeFields.rotatingInertia.optional(),
  speed: speedField('Speed it is mostly ridden at.', { min: 0, max: 100 }).optional(),
  drumMass: massField('Mass of the drum.', { above: 0, max: 100 }).optional(),
});

const duty = z.object({
  slipping: z.boolean().meta({ description: 'Slips for as long as it is ridden so.' }),
  torque: resultField('torque', 'Asked of the clutch.'),
  engineSpeed: resultField('angularSpeed', 'Of the engine.'),
  drivenSpeed: resultField('angularSpeed', 'Of the drum.'),
  heat: resultField('power', 'In the clutch.'),
});

const output = z.object({
  constant: plainResult('K of T = K·(ω² − ω0²).', 'N·m·s²'),
  shoeMass: resultField('mass', 'Of one shoe, for the capacity.').optional(),
  biteSpeed: resultField('speed', 'Road speed of the drum at first bite.'),
  lockUpSpeed: resultField('speed', 'Road speed at lock-up.'),
  governedSpeed: resultField('speed', 'Road speed at the governed speed.').optional(),
  governedCapacity: resultField('torque', 'Torque that it can carry at the governed speed.').optional(),
  neverLocks: z
    .boolean()
    .meta({ description: 'Holds less than the engine gives, up to the governed speed.' })
    .optional(),
  slipSpeed: resultField('angularSpeed', 'Engine speed while it slips at full throttle.').optional(),
  torqueForGrade: resultField('torque', 'At the engine, to hold the bike on the grade.').optional(),
  level: duty.meta({ description: 'Ridden at `speed` on the level.' }).optional(),
  hill: duty.meta({ description: 'Ridden at `speed` on `grade`.' }).optional(),
  launch: z
    .object({
      lockTime: plainResult('From the start to lock-up; absent when it does not lock.', 's').optional(),
      lockDistance: plainResult('To lock-up.', 'm').optional(),
      heat: plainResult('In the clutch, full throttle from standstill on `grade`.', 'J'),
      starts: z.boolean().meta({ description: 'It moves off on that grade.' }),
      drumRise: plainResult('Of the drum when all heat stays in it.', 'K').optional(),
      launchesToBlue: plainResult(
        'One after the other without cooling, until the drum is blue.',
        '',
      ).optional(),
    })
    .optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const clutchWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'clutch',
  title: 'Centrifugal clutch',
  summary:
    'Road speed at first bite, at lock-up and at the governor from the measured rollout; torque that a hill asks; whether the use keeps it slipping; heat and drum temperature of a launch.',
  input,
  output,
  run,
  formulas: [
    'v = ω·R/G, R = rollout/2π',
    'T = K·(ω² − ω0²); K = n·μ·m·r·R_d',
    'T = m·g·(sin α + C·cos α)·R/(G·η)',
    'P = T·(ω − G·v/R), ω = √(ω0² + T/K)',
    'ΔT = Q/(m_d·c)',
  ],
  sources: [
    { key: 'machine-design-problems', where: 'centrifugal clutch' },
    derived('torque balance'),
    practice('shoes blue above 600 °F'),
  ],
  example: {
    title: 'Textbook: 25 kW at 1200 rpm, bite at half of it, 4 shoes: 1.866 kg each',
    input: {
      engages: 600,
      locks: 1200,
      capacity: 198.9437,
      shoes: { count: 4, friction: 0.3, radius: 75, drumRadius: 100 },
      ratio: 6,
      rollout: 1036,
    },
    expected: [
      { path: 'shoeMass', value: 1.866408, tolerance: 0.000001 },
      { path: 'lockUpSpeed', value: (1200 / 60 / 6) * 1.036, tolerance: 1e-9 },
    ],
    source: { key: 'machine-design-problems', where: '25 kW at 1200 rpm, printed 1.866 kg' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const radius = wheelRadius(given);
  if (!radius.ok) return radius;
  const engine = engineGiven(given);
  if (!engine.ok) return engine;
  const model = clutchGiven(given, engine.value);
  if (!model.ok) return model;
  const drive = { ratio: given.ratio, efficiency: given.efficiency ?? 1, wheelRadius: radius.value };
  const { engages, locks } = given;
  const governed = given.governed ?? engine.value?.highest;
  const speeds = clutchSpeeds({ engages, locks, governed: governed ?? locks }, drive);
  const bands = engine.value ? slipBands(model.value, engine.value) : [];
  const launch = launchGiven(given, { drive, model: model.value, engine: engine.value });
  if (!launch.ok) return launch;
  const shoe = shoeMassOf(given, model.value);
  const result: Result = {
    constant: model.value.constant,
    ...(shoe === undefined ? {} : { shoeMass: shoe }),
    biteSpeed: speeds.bite,
    lockUpSpeed: speeds.lockUp,
    ...(governed === undefined
      ? {}
      : { governedSpeed: speeds.governed, governedCapacity: clutchCapacity(model.value, governed) }),
    ...(engine.value ? { neverLocks: bands.some((band) => band.endless) } : {}),
    ...(bands[0] ? { slipSpeed: bands[0].held } : {}),
    ...dutiesOf(given, model.value, drive),
    ...(launch.value ? { launch: launch.value } : {}),
  };
  return good({ result, figures: figuresOf(given, radius.value, speeds) });
}

function wheelRadius(given: Input): Outcome<number> {
  if (given.wheelRadius !== undefined && given.rollout !== undefined) {
    const reason = 'wheelRadius and rollout are both given; one follows from the other, give one';
    return bad({ code: 'conflict', path: 'rollout', reason });
  }
  if (given.rollout !== undefined) return good(given.rollout / (2 * Math.PI));
  return given.wheelRadius === undefined
    ? bad({ code: 'missing', path: 'rollout', wanted: 'rollout or wheelRadius' })
    : good(given.wheelRadius);
}

function engineGiven(given: Input): Outcome<EngineCurve | undefined> {
  if (!given.torque) return good(undefined);
  return engineCurve({
    points: given.torque.map(([speed, torque]) => ({ speed, torque })),
    ...(given.governed === undefined ? {} : { governed: given.governed }),
  });
}

function clutchGiven(given: Input, engine: EngineCurve | undefined): Outcome<ClutchModel> {
  const { engages, locks, shoes } = given;
  if (shoes?.mass !== undefined) {
    const { count, friction, mass, radius, drumRadius } = shoes;
    if (given.capacity !== undefined) {
      const reason = 'the capacity follows from the mass of the shoes; give one of them';
      return bad({ code: 'conflict', path: 'capacity', reason });
    }
    const constant = shoeConstant({ shoes: count, friction, mass, shoeRadius: radius, drumRadius });
    return atPath(clutchOf({ engages, locks, capacity: constant * (locks ** 2 - engages ** 2) }), 'locks');
  }
  const capacity = given.capacity ?? (engine ? torqueAt(engine, locks) : undefined);
  if (capacity === undefined) {
    return bad({
      code: 'missing',
      path: 'capacity',
      wanted: 'capacity, a torque curve or the mass of the shoes',
    });
  }
  const model = clutchOf({ engages, locks, capacity });
  return model.ok ? model : bad(...model.issues);
}

function shoeMassOf({ shoes, engages, locks }: Input, model: ClutchModel): number | undefined {
  if (!shoes || shoes.mass !== undefined) return undefined;
  const { count, friction, radius, drumRadius } = shoes;
  return shoeMass(
    { shoes: count, friction, shoeRadius: radius, drumRadius },
    { torque: clutchCapacity(model, locks), speed: locks, engages },
  );
}

function roadGiven(given: Input, mass: number): RoadLoad {
  return {
    mass,
    dragArea: given.CdA ?? 0,
    airDensity: given.airDensity ?? AIR_DENSITY,
    rollingCoefficient: given.rollingCoefficient ?? 0,
    grade: given.grade ?? 0,
  };
}

interface DriveGiven {
  readonly ratio: number;
  readonly efficiency: number;
  readonly wheelRadius: number;
}

function dutiesOf(
  given: Input,
  model: ClutchModel,
  drive: DriveGiven,
): Pick<Result, 'torqueForGrade' | 'level' | 'hill'> {
  if (given.mass === undefined) return {};
  const road = roadGiven(given, given.mass);
  const { speed } = given;
  return {
    torqueForGrade: torqueForGrade(road, drive),
    ...(speed === undefined
      ? {}
      : {
          level: clutchDuty(model, drive, { ...road, grade: 0 }, speed),
          hill: clutchDuty(model, drive, road, speed),
        }),
  };
}

function launchGiven(
  given: Input,
  known: { drive: DriveGiven; model: ClutchModel; engine: EngineCurve | undefined },
): Outcome<Result['launch']> {
  if (given.mass === undefined || !known.engine) return good(undefined);
  const launch = simulateLaunch({
    road: roadGiven(given, given.mass),
    drive: { ...known.drive, clutch: known.model },
    engine: known.engine,
    rotatingInertia: given.rotatingInertia ?? 0,
  });
  if (!launch.ok) return launch;
  const { lockUp, energy, top } = launch.value;
  const starts = top.limitedBy !== 'no-launch';
  const rise = given.drumMass === undefined ? undefined : drumRise(energy.clutchHeat, given.drumMass);
  return good({
    ...(lockUp ? { lockTime: lockUp.time, lockDistance: lockUp.distance } : {}),
    heat: energy.clutchHeat,
    starts,
    ...(rise === undefined ? {} : { drumRise: rise }),
    ...(rise === undefined || rise <= 0 ? {} : { launchesToBlue: launchesToBlue(rise) }),
  });
}

function figuresOf(
  given: Input,
  radius: number,
  speeds: { readonly bite: number; readonly lockUp: number },
): Figure[] {
  const wheel: FigureInput = { name: 'R', value: radius, kind: 'length' };
  const ratio: FigureInput = { name: 'G', value: given.ratio, kind: 'ratio' };
  const road = (id: string, name: string, value: number, speed: number): Figure => ({
    id: `clutch.${id}`,
    symbol: 'v',
    name,
    value,
    kind: 'speed',
    formula: 'v = ω·R/G',
    inputs: [{ name: 'ω', value: speed, kind: 'angularSpeed' }, wheel, ratio],
    source: derived('measured rollout'),
  });
  return [
    road('biteSpeed', 'road speed at first bite', speeds.bite, given.engages),
    road('lockUpSpeed', 'road speed at lock-up', speeds.lockUp, given.locks),
  ];
}
