import { z } from 'zod';
import {
  angularSpeedField,
  bad,
  derived,
  type Figure,
  good,
  type Outcome,
  ratioField,
  resultField,
  speedField,
} from '../quantity/index.ts';
import {
  type BeltShift,
  type ClutchModel,
  clutchOf,
  type EngineCurve,
  engineCurve,
  forceAt,
  hillLaunch,
  type Launch,
  type LaunchInput,
  type LaunchMark,
  motorPoints,
  type RideStretch,
  rideEnergy,
  simulateLaunch,
  type TorquePoint,
  torqueAt,
} from '../ride/index.ts';
import { atPath } from './atPath.ts';
import {
  AIR_DENSITY,
  bikeFields,
  clutchFields,
  dragAreaField,
  markResult,
  motorFields,
  motorGiven,
  plainResult,
  stanceFields,
  torqueCurveField,
} from './launchFields.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const input = z.strictObject({
  mass: bikeFields.mass,
  wheelRadius: bikeFields.wheelRadius,
  ratio: bikeFields.ratio,
  efficiency: bikeFields.efficiency.optional(),
  torque: torqueCurveField.optional(),
  motor: motorFields.optional(),
  governed: bikeFields.governed.optional(),
  droop: bikeFields.droop.optional(),
  engineInertia: bikeFields.rotatingInertia
    .meta({ description: 'Crank and flywheel, at their own speed.', kind: 'inertia', unit: 'kg·m²' })
    .optional(),
  CdA: dragAreaField.optional(),
  rollingCoefficient: bikeFields.rollingCoefficient.optional(),
  airDensity: bikeFields.airDensity.optional(),
  grade: bikeFields.grade.optional(),
  rotatingInertia: bikeFields.rotatingInertia.optional(),
  speeds: z
    .array(speedField('Speed to time.', { min: 0, max: 1000 }))
    .max(500)
    .meta({ description: 'Speeds to time.' })
    .optional(),
  startSpeed: speedField('Speed at the start; standstill if left out.', { min: 0, max: 1000 }).optional(),
  clutch: clutchFields.optional(),
  variableBelt: z
    .strictObject({
      low: ratioField('Ratio at launch, driven over driver diameter.', { above: 0, max: 20 }),
      high: ratioField('Ratio at the top.', { above: 0, max: 20 }),
      engages: angularSpeedField('Engine speed of first bite.', { above: 0, max: 200_000 }).optional(),
      shiftsAt: angularSpeedField('Engine speed held while it shifts.', { above: 0, max: 200_000 }),
    })
    .meta({
      description:
        'Variable belt drive; its ratio comes on top of `ratio`, its efficiency is in `efficiency`.',
    })
    .optional(),
  stance: stanceFields.optional(),
});

const output = z.object({
  times: z.array(markResult).meta({ description: 'Time and distance to each speed that it reaches.' }),
  unreached: z
    .array(resultField('speed', 'Speed that it does not reach.'))
    .meta({ description: 'Speeds asked for that it does not reach.' }),
  topSpeed: resultField('speed', 'Top speed.'),
  topSpeedLimitedBy: z
    .enum(['resistance', 'engine-speed', 'force-drop', 'wheel-lift', 'grip', 'no-launch'])
    .meta({ description: 'What keeps it from going faster.' }),
  launchForce: resultField('force', 'At the tire from standstill, full throttle.'),
  speedPerThousandRpm: z.object({
    low: resultField('speed', 'In the lowest ratio.'),
    high: resultField('speed', 'In the highest ratio.'),
  }),
  lockUp: markResult.meta({ description: 'Clutch or belt stops slipping.' }).optional(),
  steepestHill: z.object({
    grade: resultField('ratio', 'Rise over run that it can just start on.'),
    limitedBy: z.enum(['engine', 'grip', 'tip-back']),
    standingHeat: resultField('power', 'Heat in clutch or belt standing on it at full throttle.'),
    startGrade: resultField('ratio', 'Nine tenths of it, on which it does start.'),
    startHeat: plainResult('Heat in clutch or belt of a launch there.', 'J'),
  }),
  switches: z.array(
    markResult.extend({
      phase: z.enum(['slip', 'bite', 'fixed', 'low', 'shift', 'high']),
      throttle: z.enum(['full', 'wheel-lift', 'grip']),
    }),
  ),
  ride: z
    .object({
      energy: plainResult('Drawn from the battery.', 'W·h'),
      distance: plainResult('Of the ride.', 'm'),
      range: plainResult('On such rides, with the usable energy.', 'm').optional(),
    })
    .meta({ description: 'Battery energy of the ride asked for.' })
    .optional(),
  energy: z
    .object({
      engineWork: plainResult('Of the engine.', 'J'),
      kinetic: plainResult('Bike, rider and wheels.', 'J'),
      engineKinetic: plainResult('Of the engine itself.', 'J'),
      clutchHeat: plainResult('In the slipping clutch or belt.', 'J'),
      driveLoss: plainResult('In the other stages.', 'J'),
      air: plainResult('Air drag.', 'J'),
      rolling: plainResult('Rolling resistance.', 'J'),
      climb: plainResult('Climbing.', 'J'),
      residual: plainResult('Engine work less all the others: error of the integration.', 'J'),
    })
    .meta({ description: 'Where the work went, from the start to the end of the run.' }),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const accelerationWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'acceleration',
  title: 'Acceleration and top speed',
  summary:
    'Full-throttle run from standstill to top speed through clutch slip or belt shift: times and distances, top speed and what limits it, steepest hill, heat in the clutch. An estimate from the numbers given; try it gently.',
  input,
  output,
  run,
  formulas: [
    'F = T·G·η/R; while a belt shifts F = η·T·ω/v',
    'a = (F − m·g·(C·cos α + sin α) − ½·ρ·CdA·v²)/(m + I/R² + η·J·G²/R²)',
    'clutch T = K·(ω² − ω0²), K = T1/(ω1² − ω0²)',
    'wheel lift a = g·(b·cos α/h − sin α) − F_a·h_a/(m·h); grip F_x = μ·N_r',
    'sin(α + atan C) = F/(m·g·√(1 + C²))',
  ],
  sources: [
    derived('power balance at the rear tire, moments about the contacts'),
    { key: 'dormand-prince-1980', where: 'RK5(4)7M' },
  ],
  example: {
    title: 'Constant force of 300 N, rolling and drag: v = V·tanh(F·t/(m·V))',
    input: {
      mass: 130,
      wheelRadius: 200,
      ratio: 10,
      efficiency: 1,
      torque: [
        [0, 6],
        [20000, 6],
      ],
      CdA: '0.55 m²',
      rollingCoefficient: 0.018,
      airDensity: 1.2,
      grade: 0,
      rotatingInertia: 0,
      speeds: [4.231863883, 10.200110112, 18.150860561],
    },
    expected: [
      { path: 'times.0.time', value: 2, tolerance: 1e-8 },
      { path: 'times.1.time', value: 5, tolerance: 1e-8 },
      { path: 'times.1.distance', value: 26.059971856, tolerance: 1e-8 },
      { path: 'times.2.distance', value: 98.142985962, tolerance: 1e-8 },
      { path: 'topSpeed', value: 28.975038317, tolerance: 1e-8 },
    ],
    source: derived('closed form of constant force with quadratic drag'),
  },
};

const THOUSAND_RPM = (1000 * 2 * Math.PI) / 60;

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const engine = engineGiven(given);
  if (!engine.ok) return engine;
  const clutch = clutchGiven(given, engine.value);
  if (!clutch.ok) return clutch;
  const launchInput = launchOf(given, engine.value, clutch.value);
  const launch = simulateLaunch(launchInput);
  if (!launch.ok) return launch;
  const hill = hillLaunch(launchInput);
  if (!hill.ok) return hill;
  const ride = rideGiven(given, launchInput);
  if (!ride.ok) return ride;
  const { steepest, standingHeat, startGrade, start } = hill.value;
  const { low, high } = given.variableBelt ?? { low: 1, high: 1 };
  const perThousand = (ratio: number): number => (THOUSAND_RPM * given.wheelRadius) / ratio;
  const first = launch.value.path.segments[0];
  return good({
    result: {
      times: launch.value.times.map(markOf),
      unreached: [...launch.value.unreached],
      topSpeed: launch.value.top.speed,
      topSpeedLimitedBy: launch.value.top.limitedBy,
      launchForce: first ? forceAt(first, 0) : 0,
      speedPerThousandRpm: { low: perThousand(given.ratio * low), high: perThousand(given.ratio * high) },
      ...(launch.value.lockUp ? { lockUp: markOf(launch.value.lockUp) } : {}),
      steepestHill: { ...steepest, standingHeat, startGrade, startHeat: start.energy.clutchHeat },
      switches: launch.value.switches.map((one) => ({
        ...markOf(one),
        phase: one.phase,
        throttle: one.throttle,
      })),
      ...(ride.value ? { ride: ride.value } : {}),
      energy: launch.value.energy,
    },
    figures: figuresOf(given, launch.value, steepest.grade),
  });
}

const markOf = ({ speed, time, distance }: LaunchMark): z.output<typeof markResult> => ({
  speed,
  time,
  distance,
});

function engineGiven(given: Input): Outcome<EngineCurve> {
  const points = torqueGiven(given);
  if (!points.ok) return points;
  return engineCurve({
    points: points.value,
    ...(given.governed === undefined ? {} : { governed: given.governed }),
    ...(given.droop === undefined ? {} : { droop: given.droop }),
    ...(given.engineInertia === undefined ? {} : { inertia: given.engineInertia }),
  });
}

function torqueGiven({ torque, motor }: Input): Outcome<readonly TorquePoint[]> {
  if (torque && motor) {
    const reason = 'the torque curve follows from the motor; give one of them';
    return bad({ code: 'conflict', path: 'motor', reason });
  }
  if (motor) return motorPoints(motorGiven(motor));
  if (!torque) return bad({ code: 'missing', path: 'torque', wanted: 'a torque curve or a motor' });
  return good(torque.map(([speed, value]) => ({ speed, torque: value })));
}

function rideGiven({ motor, variableBelt }: Input, { road, drive }: LaunchInput): Outcome<Result['ride']> {
  if (!motor?.ride) return good(undefined);
  // A belt is at its top ratio on a steady ride.
  const ratio = drive.ratio * (variableBelt?.high ?? 1);
  const stretches = motor.ride.map((one) => defined<RideStretch>(one));
  const ride = rideEnergy(motorGiven(motor), { ...drive, ratio }, road, stretches);
  if (!ride.ok) return ride;
  return good({ ...ride.value, energy: ride.value.energy / WATT_HOUR });
}

const WATT_HOUR = 3600;

function clutchGiven(given: Input, engine: EngineCurve): Outcome<ClutchModel | undefined> {
  if (!given.clutch) return good(undefined);
  if (given.variableBelt?.engages !== undefined) {
    const reason = 'either the clutch or the belt takes up the drive, not both';
    return bad({ code: 'conflict', path: 'variableBelt.engages', reason });
  }
  const { engages, locks } = given.clutch;
  return atPath(
    clutchOf({ engages, locks, capacity: given.clutch.capacity ?? torqueAt(engine, locks) }),
    'clutch.locks',
  );
}

function launchOf(given: Input, engine: EngineCurve, clutch: ClutchModel | undefined): LaunchInput {
  const { stance, variableBelt } = given;
  return {
    road: {
      mass: given.mass,
      dragArea: given.CdA ?? 0,
      airDensity: given.airDensity ?? AIR_DENSITY,
      rollingCoefficient: given.rollingCoefficient ?? 0,
      grade: given.grade ?? 0,
    },
    drive: {
      ratio: given.ratio,
      efficiency: given.efficiency ?? 1,
      wheelRadius: given.wheelRadius,
      ...(clutch ? { clutch } : {}),
      ...(variableBelt ? { belt: defined<BeltShift>(variableBelt) } : {}),
    },
    engine,
    rotatingInertia: given.rotatingInertia ?? 0,
    ...(stance ? { stance: defined<NonNullable<LaunchInput['stance']>>(stance) } : {}),
    speeds: given.speeds ?? [],
    ...(given.startSpeed === undefined ? {} : { startSpeed: given.startSpeed }),
  };
}

/** Optional fields that were left out are absent, not undefined. */
function defined<T extends object>(fields: { [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;
}

function figuresOf(given: Input, launch: Launch, grade: number): Figure[] {
  const inputs = [
    { name: 'm', value: given.mass, kind: 'mass' },
    { name: 'R', value: given.wheelRadius, kind: 'length' },
    { name: 'G', value: given.ratio, kind: 'ratio' },
    { name: 'η', value: given.efficiency ?? 1, kind: 'ratio' },
    { name: 'CdA', value: given.CdA ?? 0, kind: 'area' },
    { name: 'C', value: given.rollingCoefficient ?? 0, kind: 'ratio' },
    { name: 'ρ', value: given.airDensity ?? AIR_DENSITY, kind: 'density' },
  ] as const;
  const source = derived('force balance at the rear tire');
  return [
    {
      id: 'acceleration.topSpeed',
      symbol: 'v_top',
      name: `top speed, by ${launch.top.limitedBy}`,
      value: launch.top.speed,
      kind: 'speed',
      formula: 'F(v) = m·g·(C·cos α + sin α) + ½·ρ·CdA·v², or the end of the engine curve',
      inputs,
      source,
    },
    {
      id: 'acceleration.steepestHill',
      symbol: 'tan α',
      name: 'steepest hill from standstill',
      value: grade,
      kind: 'ratio',
      formula: 'sin(α + atan C) = F/(m·g·√(1 + C²)), or grip, or tipping back',
      inputs,
      source,
    },
  ];
}
