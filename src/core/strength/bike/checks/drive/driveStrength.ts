import type { Bike } from '../../../../bike/index.ts';
import type { Build } from '../../../../build/index.ts';
import type { DrivelineSolution } from '../../../../driveline/index.ts';
import type {
  AngularSpeed,
  Density,
  Force,
  Length,
  Mass,
  Power,
  Pressure,
  SourceRef,
  Torque,
} from '../../../../quantity/index.ts';
import {
  type Bearing,
  findBearing,
  keyForShaft,
  serviceFactors,
  tensionShares,
} from '../../../../standards/index.ts';
import {
  equivalentLoad,
  lifeHours,
  meanDuty,
  ratingLife,
  speedLimit,
  staticLoad,
} from '../../../bearing/bearingLife.ts';
import { chainRating, chainSpeed, jointPressure } from '../../../chain/chainRating.ts';
import { keyStress, longestKey, shearYieldShare } from '../../../key/keyStrength.ts';
import { criticalSpeed } from '../../../shaft/criticalSpeed.ts';
import { enduranceLimit, notchFactors } from '../../../shaft/enduranceLimit.ts';
import { sectionFactors } from '../../../shaft/shaftFatigue.ts';
import { type ShaftSolution, shaftStateAt, solveShaft } from '../../../shaft/solveShaft.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import { type DrivePull, drivePulls } from '../../loads/drivePull.ts';
import type { DriveLimits } from '../../loads/loadCases.ts';
import { type DriveShaftModel, driveShafts } from '../../loads/shaftModel.ts';
import type { BikeFrame } from '../../model/bikeFrame.ts';
import type { UtilizationRow } from '../frameStrength.ts';

/** A shaft with its diagrams and what its bearings carry. */
export interface DriveShaftStrength {
  readonly id: string;
  readonly model: DriveShaftModel;
  readonly solution: ShaftSolution;
  readonly diagrams: ShaftDiagrams;
  readonly bearings: readonly BearingStrength[];
  /** Fastest it turns [rad/s]. */
  readonly speed: number;
  readonly critical?: number;
  /** Fatigue factor at each keyed plane. */
  readonly keyseats: readonly { readonly at: number; readonly item: string; readonly factor: number }[];
  /** With and without an outboard bearing, where it has one or a drive hangs out. */
  readonly outboard?: OutboardComparison;
}

/** Along the shaft, from its right end to its left [m, N·m, m]: resultants for the drawing, and both planes. */
export interface ShaftDiagrams {
  readonly at: readonly number[];
  readonly shear: readonly (readonly [number, number])[];
  readonly moment: readonly (readonly [number, number])[];
  readonly torque: readonly number[];
  readonly deflection: readonly (readonly [number, number])[];
}

export interface BearingStrength {
  readonly item: string;
  readonly at: number;
  readonly designation?: string;
  /** Reaction under the largest pull, resultant [N]. */
  readonly radial: number;
  readonly slope: number;
  readonly slopeLimit: number;
  /** L10h under the duty, with the low and the high rating that makers print [h]. */
  readonly hours?: { readonly low: number; readonly high: number };
  /** C0/P0. */
  readonly staticFactor?: number;
  readonly speedShare?: number;
}

export interface ShaftSide {
  readonly maxMoment: number;
  readonly maxStress: number;
  readonly maxDeflection: number;
  readonly maxSlope: number;
  readonly maxReaction: number;
}

/** One shaft with and without a bearing beyond its outermost drive. */
export interface OutboardComparison {
  /** True where the bike has it; else it was tried at the end of the shaft. */
  readonly isThere: boolean;
  readonly with: ShaftSide;
  readonly without: ShaftSide;
}

export interface ChainStrength {
  readonly drive: string;
  readonly tension: number;
  readonly limit: number;
  readonly factorOfBreaking: number;
  readonly speed: number;
  readonly pressure: number;
  /** Rated over design power, where the rating formula is for this chain. */
  readonly powerFactor?: number;
}

export interface BeltStrength {
  readonly drive: string;
  readonly tight: number;
  readonly slack: number;
  readonly initial: number;
}

export interface DriveStrength {
  readonly shafts: readonly DriveShaftStrength[];
  readonly chains: readonly ChainStrength[];
  readonly belts: readonly BeltStrength[];
  readonly rows: readonly UtilizationRow[];
  readonly notChecked: readonly string[];
}

export interface DriveInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
  readonly limits: DriveLimits;
}

const CASE = 'chain-pull';
const DIAGRAM_POINTS = 81;
/** Largest tilt of a shaft in its bearing [rad]. @source shigley-9, table 7-2 */
const SLOPE = { bore: 0.003, flange: 0.052 };
const SLOPE_SOURCE: SourceRef = { key: 'shigley-9', where: 'table 7-2, deep groove and self-aligning ball' };
const STEEL_DENSITY = 7850;
/** Share of the critical speed that a shaft should stay below. @source shigley-9, section 7-6 */
const CRITICAL_SHARE = 0.5;
/** Reliability of the endurance limit, percent. */
const RELIABILITY = 90;

/** Shafts, bearings, keys, chains and belts under the largest torque of the engine. */
export function driveStrength(input: DriveInput): DriveStrength {
  const { build, bike, driveline, frame, limits } = input;
  const pulls = drivePulls(build, bike, driveline, limits.torque);
  const notChecked: string[] = [];
  const shafts = driveShafts(build, bike, frame.bearings, pulls).flatMap((model) =>
    shaftOf(input, model, notChecked),
  );
  const chains = pulls.flatMap((pull) => chainOf(input, pull));
  const belts = pulls
    .filter((pull) => pull.kind === 'variable-belt')
    .map(({ drive, tight, slack }) => ({ drive, tight, slack, initial: (tight + slack) / 2 }));
  return {
    shafts,
    chains,
    belts,
    notChecked,
    rows: [
      ...shafts.flatMap((shaft) => shaftRows(input, shaft)),
      ...chains.flatMap((chain) => chainRows(input, chain)),
    ],
  };
}

/** Highest speed of a shaft [rad/s]: engine at its governed speed, belts in their highest gear. */
function shaftSpeed({ build, driveline }: Pick<DriveInput, 'build' | 'driveline'>, shaft: string): number {
  const { governed, torque, motor } = build.engine;
  let speed =
    governed ??
    (motor ? motor.battery.voltage / motor.constant : Math.max(0, ...(torque ?? []).map(({ at }) => at)));
  for (const stage of build.driveline.stages) {
    if (stage.kind === 'clutch') continue;
    if (stage.from === shaft) return speed;
    if (stage.kind === 'chain') speed = (speed * stage.driverTeeth) / stage.drivenTeeth;
    else speed /= driveline.belts[stage.id]?.high.ratio ?? 1;
    if (stage.to === shaft) return speed;
  }
  return speed;
}

function shaftOf(input: DriveInput, model: DriveShaftModel, notChecked: string[]): DriveShaftStrength[] {
  const solved = solveShaft(model.shaft);
  if (!solved.ok) {
    notChecked.push(`shaft ${model.id}: it is not held, or its stack is not solved`);
    return [];
  }
  const solution = solved.value;
  const speed = shaftSpeed(input, model.id);
  const masses = model.stack.items
    .filter(({ kind }) => kind === 'sprocket' || kind === 'sheave' || kind === 'disc')
    .map((item) => ({ at: ((item.left + item.right) / 2) as Length, mass: itemMass(item) as Mass }));
  const critical = criticalSpeed(model.shaft, STEEL_DENSITY as Density, masses);
  const outboard = compareOutboard(input, model, solution);
  return [
    {
      id: model.id,
      model,
      solution,
      diagrams: diagramsOf(model, solution),
      bearings: bearingsOf(input, model, solution, speed, notChecked),
      speed,
      ...(critical.ok ? { critical: critical.value } : {}),
      keyseats: keyseatsOf(input, model, solution),
      ...(outboard ? { outboard } : {}),
    },
  ];
}

/** A turned disc of steel, half of it cut away. */
const itemMass = (item: {
  readonly outside: number;
  readonly bore: number;
  readonly length: number;
}): number =>
  Math.max(1e-3, 0.5 * STEEL_DENSITY * (Math.PI / 4) * (item.outside ** 2 - item.bore ** 2) * item.length);

function diagramsOf({ shaft }: DriveShaftModel, solution: ShaftSolution): ShaftDiagrams {
  const from = Math.min(...shaft.segments.map((one) => one.from));
  const to = Math.max(...shaft.segments.map((one) => one.to));
  const stations = [...shaft.supports, ...shaft.loads].map(({ at }) => at as number);
  const even = Array.from(
    { length: DIAGRAM_POINTS },
    (_, k) => from + ((to - from) * k) / (DIAGRAM_POINTS - 1),
  );
  const at = [...new Set([...even, ...stations])].sort((a, b) => a - b);
  const states = at.flatMap((x) => [
    shaftStateAt(shaft, solution, x, 'left'),
    shaftStateAt(shaft, solution, x, 'right'),
  ]);
  return {
    at: at.flatMap((x) => [x, x]),
    shear: states.map((state) => state.shear),
    moment: states.map((state) => state.moment),
    torque: states.map((state) => state.torque),
    deflection: states.map((state) => state.deflection),
  };
}

/** A keyseat wherever something that drives or is driven sits. */
function keyseatsOf({ settings }: DriveInput, model: DriveShaftModel, solution: ShaftSolution) {
  const diameter = model.diameter as Length;
  const tensile = settings.shaftTensile as Pressure;
  const endurance = enduranceLimit({
    tensile,
    diameter,
    surface: 'machined',
    reliability: RELIABILITY,
    rotating: true,
  });
  const notch = notchFactors('end-mill-keyseat', tensile, diameter);
  if (!endurance.ok || !notch.ok) return [];
  return model.stack.items
    .filter(({ planes }) => planes.some(({ runs }) => runs === 'sprocket' || runs === 'sheave'))
    .map((item) => {
      const states = [item.left, item.right, ...item.planes.map(({ y }) => y)].flatMap((x) =>
        (['left', 'right'] as const).map((side) => shaftStateAt(model.shaft, solution, x, side)),
      );
      const bending = Math.max(...states.map(({ moment }) => Math.hypot(...moment)));
      const torque = Math.max(...states.map((state) => Math.abs(state.torque)));
      const factors = sectionFactors(
        {
          bendingAmplitude: bending as Torque,
          bendingMean: 0 as Torque,
          torqueAmplitude: 0 as Torque,
          torqueMean: torque as Torque,
          bendingFactor: notch.value.bending,
          torsionFactor: notch.value.torsion,
        },
        { endurance: endurance.value.limit, tensile, yield: settings.shaftYield as Pressure },
        diameter,
      );
      return { at: (item.left + item.right) / 2, item: item.id, factor: factors.fatigue.goodman };
    });
}

function bearingsOf(
  input: DriveInput,
  model: DriveShaftModel,
  solution: ShaftSolution,
  speed: number,
  notChecked: string[],
): BearingStrength[] {
  return model.bearings.map((placed, i) => {
    const support = solution.supports[i]!;
    const radial = Math.hypot(...support.force);
    const entry = placed.plate === undefined ? undefined : input.build.plates[placed.plate];
    const seat =
      entry && 'seat' in entry && entry.seat !== 'saddle' && entry.seat !== 'flat' ? entry.seat : undefined;
    const base = {
      item: placed.item,
      at: placed.y,
      radial,
      slope: support.slope,
      slopeLimit: seat?.kind === 'bore' ? SLOPE.bore : SLOPE.flange,
    };
    const bearing = seat?.bearing === undefined ? undefined : ballBearing(seat.bearing);
    if (!bearing) {
      notChecked.push(`bearing ${placed.item}: no bearing of the table is named for it`);
      return base;
    }
    return { ...base, ...lifeOf(input.settings, bearing, radial, speed) };
  });
}

/** A deep groove bearing by its number; an insert bearing UC204 has the balls of a 6204. @source practice */
function ballBearing(text: string): Bearing | undefined {
  const direct = findBearing(text);
  if (direct.ok) return direct.value;
  const insert = /[A-Z](2\d\d)\b/i.exec(text)?.[1];
  const found = insert ? findBearing(`6${insert}`) : undefined;
  return found?.ok ? found.value : undefined;
}

/** Radial load only: a countershaft without helical gears has next to no push along it. */
function lifeOf(settings: LoadSettings, bearing: Bearing, radial: number, speed: number) {
  const hours = (end: 'low' | 'high'): number => {
    const rating = {
      dynamicRating: bearing.dynamicRating[end],
      staticRating: bearing.staticRating[end],
      f0: bearing.f0[end],
    };
    const duty = meanDuty(
      settings.duty.map(({ time, torque, speed: share }) => ({
        load: equivalentLoad({ radial: (radial * torque) as Force, axial: 0 as Force }, rating).load,
        speed: (speed * share) as AngularSpeed,
        share: time,
      })),
    );
    return lifeHours(ratingLife(rating.dynamicRating, duty.load), duty.speed);
  };
  return {
    designation: bearing.designation,
    hours: { low: hours('low'), high: hours('high') },
    staticFactor: bearing.staticRating.low / staticLoad({ radial: radial as Force, axial: 0 as Force }),
    speedShare: speed / speedLimit(bearing.bore, bearing.outside, 'sealed'),
  };
}

/** The shaft without the bearings of outboard supports. */
function compareOutboard(
  { build }: DriveInput,
  model: DriveShaftModel,
  solution: ShaftSolution,
): OutboardComparison | undefined {
  const kept = model.bearings.map(
    ({ plate }) => plate === undefined || build.plates[plate]?.recipe !== 'outboard-support',
  );
  if (kept.every(Boolean)) return tryOutboard(model, solution);
  if (kept.filter(Boolean).length < 2) return undefined;
  const supports = model.shaft.supports.filter((_, i) => kept[i]);
  const without = solveShaft({ ...model.shaft, supports });
  return without.ok ? { isThere: true, with: sideOf(solution), without: sideOf(without.value) } : undefined;
}

/** A bearing more at the end of the shaft beyond the drive that hangs out furthest. */
function tryOutboard(model: DriveShaftModel, solution: ShaftSolution): OutboardComparison | undefined {
  const { supports, loads, segments } = model.shaft;
  const [least, most] = [
    Math.min(...supports.map(({ at }) => at)),
    Math.max(...supports.map(({ at }) => at)),
  ];
  const [right, left] = [
    least - Math.min(...loads.map(({ at }) => at)),
    Math.max(...loads.map(({ at }) => at)) - most,
  ];
  if (!(Math.max(right, left) > 0)) return undefined;
  const at =
    left > right ? Math.max(...segments.map(({ to }) => to)) : Math.min(...segments.map(({ from }) => from));
  const held = solveShaft({ ...model.shaft, supports: [...supports, { at: at as Length }] });
  return held.ok ? { isThere: false, with: sideOf(held.value), without: sideOf(solution) } : undefined;
}

const sideOf = (solution: ShaftSolution): ShaftSide => ({
  maxMoment: solution.maxMoment.value,
  maxStress: solution.maxStress.value,
  maxDeflection: solution.maxDeflection.value,
  maxSlope: Math.max(...solution.supports.map(({ slope }) => slope)),
  maxReaction: Math.max(...solution.supports.map(({ force }) => Math.hypot(...force))),
});

function shaftRows({ settings }: DriveInput, shaft: DriveShaftStrength): UtilizationRow[] {
  const { id, solution, model } = shaft;
  const allowed = settings.shaftYield / settings.yieldFactor;
  const base = { part: id, case: CASE };
  const mm = (y: number): string =>
    `${Math.abs(Math.round(y * 1000))} mm ${y < 0 ? 'right' : 'left'} of the middle`;
  return [
    {
      ...base,
      where: mm(solution.maxStress.at),
      quantity: 'equivalent stress',
      value: solution.maxStress.value,
      limit: allowed,
      kind: 'pressure',
      utilization: solution.maxStress.value / allowed,
      source: { key: 'shigley-9', where: 'section 7-4' },
    },
    ...shaft.keyseats.map(
      (seat): UtilizationRow => ({
        ...base,
        where: `keyseat of ${seat.item}`,
        quantity: 'fatigue factor, Goodman',
        value: seat.factor,
        limit: settings.fatigueFactor,
        kind: 'ratio',
        utilization: settings.fatigueFactor / seat.factor,
        source: { key: 'shigley-9', where: 'equations 7-7 and 7-8, end-mill keyseat' },
      }),
    ),
    ...keyRows(settings, model),
    ...shaft.bearings.flatMap((bearing) => bearingRows(settings, id, bearing)),
    ...(shaft.critical === undefined
      ? []
      : [
          {
            ...base,
            where: 'whole shaft',
            quantity: 'speed against half the critical speed',
            value: shaft.speed,
            limit: CRITICAL_SHARE * shaft.critical,
            kind: 'angularSpeed',
            utilization: shaft.speed / (CRITICAL_SHARE * shaft.critical),
            source: { key: 'shigley-9', where: 'section 7-6' },
          } satisfies UtilizationRow,
        ]),
  ];
}

/** Keys by the size of the shaft, of the steel of the shaft, as long as their hub. */
function keyRows(settings: LoadSettings, model: DriveShaftModel): UtilizationRow[] {
  const key = keyForShaft(model.diameter);
  if (!key.ok) return [];
  const { width, height } = key.value;
  return model.stack.items
    .filter(({ planes }) => planes.some(({ runs }) => runs === 'sprocket' || runs === 'sheave'))
    .flatMap((item): UtilizationRow[] => {
      const planes = item.planes.map(({ y }) => y);
      const torque = Math.abs(
        model.shaft.loads
          .filter(({ at }) => planes.some((y) => Math.abs(y - at) < 1e-4))
          .reduce((sum, load) => sum + (load.torque ?? 0), 0),
      );
      const shaft = model.diameter as Length;
      const length = Math.min(item.length, longestKey(shaft)) as Length;
      const stress = keyStress({ shaft, torque: torque as Torque, width, height, length });
      const yielding = settings.shaftYield / settings.yieldFactor;
      const shear = shearYieldShare('distortion-energy') * yielding;
      const share = Math.max(stress.shear / shear, stress.bearing / yielding);
      const isShear = stress.shear / shear >= stress.bearing / yielding;
      return [
        {
          part: model.id,
          case: CASE,
          where: `key of ${item.id}, ${Math.round(length * 1000)} mm long`,
          quantity: isShear ? 'shear of the key' : 'pressure on the key',
          value: isShear ? stress.shear : stress.bearing,
          limit: isShear ? shear : yielding,
          kind: 'pressure',
          utilization: share,
          source: { key: 'shigley-9', where: 'section 7-7' },
        },
      ];
    });
}

function bearingRows(settings: LoadSettings, shaft: string, bearing: BearingStrength): UtilizationRow[] {
  const base = { part: shaft, case: CASE, where: `bearing ${bearing.item}` };
  const rows: UtilizationRow[] = [
    {
      ...base,
      quantity: 'tilt of the shaft in the bearing',
      value: bearing.slope,
      limit: bearing.slopeLimit,
      kind: 'angle',
      utilization: bearing.slope / bearing.slopeLimit,
      source: SLOPE_SOURCE,
    },
  ];
  if (bearing.hours && Number.isFinite(bearing.hours.low))
    rows.push({
      ...base,
      quantity: `life of ${bearing.designation}, hours of the stated duty`,
      value: bearing.hours.low,
      limit: settings.bearingLife,
      kind: 'ratio',
      utilization: settings.bearingLife / bearing.hours.low,
      source: { key: 'iso-281', where: 'basic rating life, lowest printed rating' },
    });
  if (bearing.staticFactor !== undefined && Number.isFinite(bearing.staticFactor))
    rows.push({
      ...base,
      quantity: 'static factor C0/P0',
      value: bearing.staticFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / bearing.staticFactor,
      source: { key: 'iso-76', where: 'static safety factor of ball bearings, smooth running' },
    });
  if (bearing.speedShare !== undefined)
    rows.push({
      ...base,
      quantity: 'speed over the limit of a sealed bearing',
      value: bearing.speedShare,
      limit: 1,
      kind: 'ratio',
      utilization: bearing.speedShare,
      source: { key: 'memory', where: 'n·dm of sealed deep groove bearings' },
    });
  return rows;
}

const enginePower = (build: Build): number =>
  Math.max(0, ...(build.engine.torque ?? []).map(({ at, torque }) => at * torque));

function chainOf(input: DriveInput, pull: DrivePull): ChainStrength[] {
  const { build, driveline } = input;
  const solved = driveline.chains[pull.drive];
  if (!solved) return [];
  const { chain, stage } = solved;
  const share = tensionShares.find(({ name }) => name === 'slip-fit')?.share ?? 9;
  const small = Math.min(stage.driverTeeth, stage.drivenTeeth);
  const fast = shaftSpeed(input, stage.driverTeeth <= stage.drivenTeeth ? stage.from : stage.to);
  const rating = chainRating(chain, small, fast as AngularSpeed);
  const service = serviceFactors.find(({ load }) => load === 'some-impact')?.engine ?? 1;
  const power = enginePower(build);
  return [
    {
      drive: pull.drive,
      tension: pull.tight,
      limit: chain.minimumTensileStrength / share,
      factorOfBreaking: chain.minimumTensileStrength / pull.tight,
      speed: chainSpeed(chain.pitch, small, fast as AngularSpeed),
      pressure: jointPressure(chain, pull.tight as Force),
      ...(rating && power > 0 ? { powerFactor: (rating.rating as Power) / (power * service) } : {}),
    },
  ];
}

function chainRows(_input: DriveInput, chain: ChainStrength): UtilizationRow[] {
  const base = { part: chain.drive, case: CASE, where: 'tight strand' };
  const rows: UtilizationRow[] = [
    {
      ...base,
      quantity: 'working tension against 1/9 of the minimum strength',
      value: chain.tension,
      limit: chain.limit,
      kind: 'force',
      utilization: chain.tension / chain.limit,
      source: { key: 'roller-chain-sheet', where: 'working tension, joining link with slip fit' },
    },
  ];
  if (chain.powerFactor !== undefined)
    rows.push({
      ...base,
      where: 'small sprocket at full speed',
      quantity: 'rated over design power',
      value: chain.powerFactor,
      limit: 1,
      kind: 'ratio',
      utilization: 1 / chain.powerFactor,
      source: {
        key: 'roller-chain-sheet',
        where: 'power formula for 15 000 h, service factor of some impact',
      },
    });
  return rows;
}
