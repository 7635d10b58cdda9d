import type { Bike, MassSummary } from '../bike/index.ts';
import type { BeltStage, Build, ClutchStage } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import { bad, derived, good, type Outcome, practice } from '../quantity/index.ts';
import {
  type Assumption,
  BELT_EFFICIENCY,
  CHAIN_EFFICIENCY,
  CLUTCH_SOURCE,
  DRAG_AREA,
  DRAG_SOURCE,
  EFFICIENCY_SOURCE,
  GRADE,
  GRADE_SOURCE,
  GROUND_SOURCE,
  GROUNDS,
  LOCK_OVER_BITE,
  OTHER_EFFICIENCY,
  SHIFT_SHARE,
  SHIFT_SOURCE,
  SPEED_SOURCE,
  YARD_SPEED,
} from './assumptions.ts';
import { type ClutchModel, clutchOf } from './clutch.ts';
import { DRUM_SHARE } from './clutchUse.ts';
import type { BeltShift } from './drivePath.ts';
import { type ElectricMotor, motorPoints } from './electricMotor.ts';
import { type EngineCurve, engineCurve, type TorquePoint, torqueAt } from './engine.ts';
import type { LaunchInput } from './launchTypes.ts';
import { airDensity, derate, standardPressure } from './rating.ts';
import type { RideStance, RoadLoad } from './roadLoad.ts';

/** A placed bike as the ride room sees it. */
export interface Ride {
  /** On the level, at full throttle. */
  readonly launch: LaunchInput;
  readonly motor?: ElectricMotor;
  /** Bite and lock-up of a clutch, governed speed [rad/s]. */
  readonly speeds: { readonly engages?: number; readonly locks?: number; readonly governed: number };
  /** Steepest hill to start on, and the speed it is mostly ridden at [m/s]. */
  readonly use: { readonly grade: number; readonly speed: number };
  /** Of the clutch [kg]; absent where its mass is not known. */
  readonly drumMass?: number;
  readonly assumptions: readonly Assumption[];
}

interface Notes {
  readonly build: Build;
  readonly assumptions: Assumption[];
}

const WATT_HOUR = 3600;

/**
 * Inputs of the ride from a placed bike: rolling radius of the tire now on (measured rollout where given), masses as
 * weighed, ratios and belt ends as solved, torque of the file corrected for height and heat. What the file leaves out is
 * taken from `assumptions.ts` and listed.
 * @issue missing — neither a torque curve nor an electric motor · conflict — no drive reaches the rear wheel
 * @source derived
 */
export function rideOf(
  build: Build,
  bike: Bike,
  driveline: DrivelineSolution,
  masses: MassSummary,
): Outcome<Ride> {
  const notes: Notes = { build, assumptions: [] };
  const points = torquePoints(build);
  if (!points.ok) return points;
  const engine = engineOf(notes, points.value);
  if (!engine.ok) return engine;
  const clutch = clutchOfBuild(notes, engine.value);
  if (!clutch.ok) return clutch;
  const { stages } = build.driveline;
  if (!stages.some((stage) => stage.kind !== 'clutch')) {
    return bad({ code: 'missing', path: 'driveline.stages', wanted: 'a chain or belt to the rear wheel' });
  }
  const belt = beltOf(notes, driveline, engine.value);
  const wheelRadius = bike.layout.fitted.rear.radius;
  const launch: LaunchInput = {
    road: roadOf(notes, masses),
    drive: {
      ratio: fixedRatio(build),
      efficiency: efficiencyOf(notes),
      wheelRadius,
      ...(clutch.value ? { clutch: clutch.value.model } : {}),
      ...(belt ? { belt } : {}),
    },
    engine: engine.value,
    rotatingInertia: turningInertia(bike, masses),
    stance: stanceOf(notes, bike, masses),
  };
  const motor = motorOf(build);
  return good({
    launch,
    ...(motor ? { motor } : {}),
    speeds: { ...(clutch.value?.speeds ?? biteOf(belt)), governed: engine.value.governed },
    use: {
      grade: given(notes, 'use.grade', 'steepest hill', build.use?.grade, {
        value: GRADE,
        kind: 'ratio',
        source: GRADE_SOURCE,
      }),
      speed: given(notes, 'use.speed', 'riding speed', build.use?.speed, {
        value: YARD_SPEED,
        kind: 'speed',
        source: SPEED_SOURCE,
      }),
    },
    ...drumOf(notes, clutch.value?.stage),
    assumptions: notes.assumptions,
  });
}

/** The file's value, or the stand-in, which is then noted. */
function given(
  notes: Notes,
  path: string,
  name: string,
  value: number | undefined,
  instead: Omit<Assumption, 'path' | 'name'>,
): number {
  if (value !== undefined) return value;
  notes.assumptions.push({ path, name, ...instead });
  return instead.value;
}

function motorOf({ engine: { motor } }: Build): ElectricMotor | undefined {
  if (!motor) return undefined;
  const { drag, battery, ...rest } = motor;
  return {
    ...rest,
    ...(drag === undefined ? {} : { drag }),
    battery: {
      voltage: battery.voltage,
      ...(battery.resistance === undefined ? {} : { resistance: battery.resistance }),
      ...(battery.energy === undefined ? {} : { energy: battery.energy * WATT_HOUR }),
    },
  };
}

function torquePoints(build: Build): Outcome<readonly TorquePoint[]> {
  const motor = motorOf(build);
  if (motor) return motorPoints(motor);
  const { torque } = build.engine;
  if (!torque) {
    return bad({ code: 'missing', path: 'engine.torque', wanted: 'the torque curve, or `engine.motor`' });
  }
  return good(torque.map((point) => ({ speed: point.at, torque: point.torque })));
}

function engineOf({ build, assumptions }: Notes, points: readonly TorquePoint[]): Outcome<EngineCurve> {
  const { governed, droop, inertia, motor } = build.engine;
  const { altitude = 0, temperature = 25 } = build.use ?? {};
  // The rating's own air is that of 25 °C near the sea: without a place it is left alone.
  const isPlaced = build.use?.altitude !== undefined || build.use?.temperature !== undefined;
  const factor = isPlaced && !motor ? derate(altitude, temperature) : 1;
  if (factor !== 1) {
    const source = { key: 'sae-j1349', where: 'spark-ignition correction' };
    assumptions.push({
      path: '',
      name: 'torque at this height and heat, as a share',
      value: factor,
      kind: 'ratio',
      source,
    });
  }
  return engineCurve({
    points,
    factor,
    ...(governed === undefined ? {} : { governed }),
    ...(droop === undefined ? {} : { droop }),
    ...(inertia === undefined ? {} : { inertia }),
  });
}

interface BuildClutch {
  readonly stage: ClutchStage;
  readonly model: ClutchModel;
  readonly speeds: { readonly engages: number; readonly locks: number };
}

/** At its lock-up speed a clutch carries the torque of the file, or else the engine's full torque there. */
function clutchOfBuild(notes: Notes, engine: EngineCurve): Outcome<BuildClutch | undefined> {
  const index = notes.build.driveline.stages.findIndex((one) => one.kind === 'clutch');
  const stage = notes.build.driveline.stages[index];
  if (stage?.kind !== 'clutch') return good(undefined);
  const path = `driveline.stages[${index}]`;
  const locks = given(notes, `${path}.locks`, 'lock-up of the clutch', stage.locks, {
    value: LOCK_OVER_BITE * stage.engages,
    kind: 'angularSpeed',
    source: CLUTCH_SOURCE,
  });
  const capacity = given(
    notes,
    `${path}.capacity`,
    'torque that the clutch carries at lock-up',
    stage.capacity,
    {
      value: torqueAt(engine, Math.min(locks, engine.highest)),
      kind: 'torque',
      source: practice("the engine's full torque at that speed"),
    },
  );
  const model = clutchOf({ engages: stage.engages, locks, capacity });
  if (!model.ok) return bad(...withPath(model.issues, path));
  return good({ stage, model: model.value, speeds: { engages: stage.engages, locks } });
}

type Issues = Extract<Outcome<never>, { ok: false }>['issues'];

const withPath = (issues: Issues, path: string): Issues =>
  issues.map((issue) => ({ ...issue, path: `${path}.${issue.path}` })) as unknown as Issues;

const beltStage = (build: Build): BeltStage | undefined =>
  build.driveline.stages.find((stage) => stage.kind === 'variable-belt');

function beltOf(notes: Notes, driveline: DrivelineSolution, engine: EngineCurve): BeltShift | undefined {
  const stage = beltStage(notes.build);
  const solved = stage && driveline.belts[stage.id];
  if (!stage || !solved) return undefined;
  const index = notes.build.driveline.stages.indexOf(stage);
  const shiftsAt = given(
    notes,
    `driveline.stages[${index}].shiftsAt`,
    'engine speed while the belt shifts',
    stage.shiftsAt,
    {
      value: Math.max(SHIFT_SHARE * engine.governed, stage.engages ?? 0),
      kind: 'angularSpeed',
      source: SHIFT_SOURCE,
    },
  );
  return {
    low: solved.low.ratio,
    high: solved.high.ratio,
    shiftsAt,
    ...(stage.engages === undefined ? {} : { engages: stage.engages }),
  };
}

const biteOf = (belt: BeltShift | undefined): { engages?: number } =>
  belt?.engages === undefined ? {} : { engages: belt.engages };

const fixedRatio = (build: Build): number =>
  build.driveline.stages.reduce(
    (ratio, stage) => (stage.kind === 'chain' ? (ratio * stage.drivenTeeth) / stage.driverTeeth : ratio),
    1,
  );

/** Stages multiply. */
function efficiencyOf({ build, assumptions }: Notes): number {
  let product = OTHER_EFFICIENCY;
  const note = (name: string, value: number) =>
    assumptions.push({ path: '', name, value, kind: 'ratio', source: EFFICIENCY_SOURCE });
  note('efficiency of bearings, seals and dragging brakes', OTHER_EFFICIENCY);
  for (const [index, stage] of build.driveline.stages.entries()) {
    if (stage.kind === 'chain') {
      product *= CHAIN_EFFICIENCY;
      note(`efficiency of chain ${stage.id}`, CHAIN_EFFICIENCY);
    }
    if (stage.kind !== 'variable-belt') continue;
    product *= given(
      { build, assumptions },
      `driveline.stages[${index}].efficiency`,
      `efficiency of belt ${stage.id}`,
      stage.efficiency,
      { value: BELT_EFFICIENCY, kind: 'ratio', source: EFFICIENCY_SOURCE },
    );
  }
  return product;
}

function groundOf(notes: Notes): { rollingCoefficient: number; grip: number } {
  const { use } = notes.build;
  const ground = GROUNDS[use?.ground ?? 'path'];
  const ratio = (path: string, name: string, value: number | undefined, instead: number) =>
    given(notes, path, name, value, { value: instead, kind: 'ratio', source: GROUND_SOURCE });
  return {
    rollingCoefficient: ratio(
      'use.rollingCoefficient',
      'rolling resistance, share of the load',
      use?.rollingCoefficient,
      ground.rollingCoefficient,
    ),
    grip: ratio('use.grip', 'friction of the rear tire', use?.grip, ground.grip),
  };
}

function roadOf(notes: Notes, masses: MassSummary): RoadLoad {
  const { use } = notes.build;
  const { altitude = 0, temperature = 15 } = use ?? {};
  return {
    mass: masses.total,
    dragArea: given(notes, 'use.dragArea', 'drag area', use?.dragArea, {
      value: DRAG_AREA,
      kind: 'area',
      source: DRAG_SOURCE,
    }),
    airDensity: airDensity(standardPressure(altitude), temperature),
    rollingCoefficient: groundOf(notes).rollingCoefficient,
    grade: 0,
  };
}

function stanceOf(notes: Notes, bike: Bike, masses: MassSummary): RideStance {
  const { use } = notes.build;
  return {
    wheelbase: bike.layout.stances.fitted.wheelbase,
    centerForward: masses.center.x,
    centerHeight: masses.center.z,
    grip: use?.grip ?? GROUNDS[use?.ground ?? 'path'].grip,
  };
}

/** I = I_rear + I_front·(R_rear/R_front)², of all that turns with each wheel, about its axle. */
function turningInertia(bike: Bike, masses: MassSummary): number {
  const { rear, front } = bike.layout.fitted;
  const spin = (body: 'rearWheel' | 'frontWheel'): number =>
    masses.parts.filter((part) => part.body === body).reduce((sum, part) => sum + part.inertia[1], 0);
  return spin('rearWheel') + spin('frontWheel') * (rear.radius / front.radius) ** 2;
}

function drumOf({ assumptions }: Notes, stage: ClutchStage | undefined): { drumMass?: number } {
  if (stage?.mass === undefined) return {};
  const drumMass = DRUM_SHARE * stage.mass;
  assumptions.push({
    path: '',
    name: 'mass of the drum, as a share of that of the clutch',
    value: drumMass,
    kind: 'mass',
    source: derived(`${DRUM_SHARE} of the clutch, common practice`),
  });
  return { drumMass };
}
