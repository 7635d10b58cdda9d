import type { Build, LoadCaseName } from '../../../build/index.ts';
import { practice, type QuantityKind, type SourceRef } from '../../../quantity/index.ts';

/** A value that the build file left out, and what stood in for it. */
export interface LoadAssumption {
  /** Path in the build file that would say it. */
  readonly path: string;
  readonly name: string;
  readonly value: number;
  readonly kind: QuantityKind;
  readonly source: SourceRef;
}

export interface SpectrumBlock {
  readonly case: LoadCaseName;
  /** Share of that case [-]. */
  readonly scale: number;
  /** [1/km] */
  readonly perKilometer: number;
}

export interface DutyShare {
  /** Shares of time, largest torque and highest speed [-]. */
  readonly time: number;
  readonly torque: number;
  readonly speed: number;
}

/** Loads and limits as used: the file's, or the stand-ins, which are listed. SI. */
export interface LoadSettings {
  readonly bumpFactor: number;
  readonly potholeRearward: number;
  readonly brakingGrip: number;
  readonly drivingGrip: number;
  readonly cornering: number;
  readonly dropHeight: number;
  readonly tireRate: number;
  readonly pegGive: number;
  readonly pegLoad: number;
  readonly barPull: number;
  readonly standFactor: number;
  readonly yieldFactor: number;
  readonly fatigueFactor: number;
  /** [km] */
  readonly life: number;
  /** [h] */
  readonly bearingLife: number;
  readonly spectrum: readonly SpectrumBlock[];
  readonly duty: readonly DutyShare[];
  readonly legWall: number;
  readonly stemOutside: number;
  readonly stemWall: number;
  readonly shaftYield: number;
  readonly shaftTensile: number;
  readonly filler: string;
  readonly assumptions: readonly LoadAssumption[];
}

const memory = (where: string): SourceRef => ({ key: 'memory', where });

/** A yard and path mix: many small bumps, few full ones, a start and a stop every half kilometer. @source practice */
const SPECTRUM: readonly SpectrumBlock[] = [
  { case: 'bump-front', scale: 1, perKilometer: 0.05 },
  { case: 'bump-front', scale: 0.5, perKilometer: 2 },
  { case: 'bump-front', scale: 0.25, perKilometer: 40 },
  { case: 'bump-rear', scale: 1, perKilometer: 0.05 },
  { case: 'bump-rear', scale: 0.5, perKilometer: 2 },
  { case: 'bump-rear', scale: 0.25, perKilometer: 40 },
  { case: 'pothole', scale: 1, perKilometer: 0.01 },
  { case: 'braking-front', scale: 0.5, perKilometer: 2 },
  { case: 'driving', scale: 1, perKilometer: 2 },
  { case: 'cornering', scale: 0.5, perKilometer: 1 },
  { case: 'bar-pull', scale: 0.5, perKilometer: 1 },
];

/** @source practice */
const DUTY: readonly DutyShare[] = [
  { time: 0.2, torque: 1, speed: 0.7 },
  { time: 0.5, torque: 0.5, speed: 0.8 },
  { time: 0.3, torque: 0.1, speed: 1 },
];

/** The file's value, or the stand-in, which is listed. */
type Given = (
  path: string,
  name: string,
  value: number | undefined,
  standIn: readonly [number, QuantityKind, SourceRef],
) => number;

type Loads = NonNullable<Build['loads']>;

/** Reads `loads` of the build file and fills in what it leaves out. */
export function loadSettings(build: Build): LoadSettings {
  const { loads = {}, use } = build;
  const assumptions: LoadAssumption[] = [];
  const given: Given = (path, name, value, [instead, kind, source]) => {
    if (value !== undefined) return value;
    assumptions.push({ path: `loads.${path}`, name, value: instead, kind, source });
    return instead;
  };
  return {
    ...wheelLoads(given, loads, use),
    ...fallLoads(given, loads),
    ...riderLoads(given, loads),
    ...limitsAsked(given, loads),
    spectrum: loads.spectrum?.map(({ scale = 1, ...rest }) => ({ scale, ...rest })) ?? SPECTRUM,
    duty: loads.duty ?? DUTY,
    ...boughtFork(given, loads),
    ...shaftStock(given, loads),
    filler: loads.filler ?? 'E70',
    assumptions,
  };
}

function wheelLoads(given: Given, loads: Loads, use: Build['use']) {
  const cases = memory('chassis practice: 3 g bump, 2 g along, 1 g across');
  return {
    bumpFactor: given('bumpFactor', 'wheel load over a bump', loads.bumpFactor, [3, 'ratio', cases]),
    potholeRearward: given('potholeRearward', 'rearward push at a pothole', loads.potholeRearward, [
      2,
      'ratio',
      cases,
    ]),
    brakingGrip: given('brakingGrip', 'grip while braking', loads.brakingGrip, [
      1,
      'ratio',
      memory('rubber on dry pavement, 0.8 to 1'),
    ]),
    drivingGrip: given('drivingGrip', 'grip while driving', loads.drivingGrip ?? use?.grip, [
      1,
      'ratio',
      memory('rubber on dry pavement, 0.8 to 1'),
    ]),
    cornering: given('cornering', 'side force on the wheels', loads.cornering, [0.7, 'ratio', cases]),
  };
}

function fallLoads(given: Given, loads: Loads) {
  return {
    dropHeight: given('dropHeight', 'drop', loads.dropHeight, [0.1, 'length', practice('height of a curb')]),
    tireRate: given('tireRate', 'rate of one tire', loads.tireRate, [
      115e3,
      'stiffness',
      practice('small pneumatic tire at riding pressure'),
    ]),
    pegGive: given('pegGive', 'give of peg and ground', loads.pegGive, [
      0.02,
      'length',
      practice('sod, rubber and a bending peg'),
    ]),
  };
}

function riderLoads(given: Given, loads: Loads) {
  return {
    pegLoad: given('pegLoad', 'load on one peg', loads.pegLoad, [
      1500,
      'force',
      memory('bicycle frame tests load a pedal with 1000 to 1200 N'),
    ]),
    barPull: given('barPull', 'pull at each grip', loads.barPull, [
      450,
      'force',
      memory('bicycle bar tests, pull of a strong rider'),
    ]),
    standFactor: given('standFactor', 'side stand load', loads.standFactor, [
      1.5,
      'ratio',
      practice('rider sits down on the parked bike'),
    ]),
  };
}

function limitsAsked(given: Given, loads: Loads) {
  return {
    yieldFactor: given('yieldFactor', 'yield over stress', loads.yieldFactor, [
      1.5,
      'ratio',
      practice('static load times factor, yield at least 1.5'),
    ]),
    fatigueFactor: given('fatigueFactor', 'endurance over stress of shafts', loads.fatigueFactor, [
      1.5,
      'ratio',
      practice('loads known by calculation only'),
    ]),
    life: given('life', 'distance that welds should last, in km', loads.life, [
      5000,
      'ratio',
      practice('some years of a small bike'),
    ]),
    bearingLife: given('bearingLife', 'hours that bearings should last', loads.bearingLife, [
      500,
      'ratio',
      practice('light occasional machines, 500 h'),
    ]),
  };
}

/** A bought fork's walls cannot be seen. */
function boughtFork(given: Given, loads: Loads) {
  return {
    legWall: given('fork.legWall', 'wall of a fork leg', loads.fork?.legWall, [
      0.002,
      'length',
      practice('bought fork, wall not known'),
    ]),
    stemOutside: given('fork.stemOutside', 'steering stem', loads.fork?.stemOutside, [
      0.0254,
      'length',
      practice('1 in stem'),
    ]),
    stemWall: given('fork.stemWall', 'wall of the stem', loads.fork?.stemWall, [
      0.003,
      'length',
      practice('bought fork, wall not known'),
    ]),
  };
}

function shaftStock(given: Given, loads: Loads) {
  return {
    shaftYield: given('shafts.yield', 'yield of shafts and axles', loads.shafts?.yield, [
      370e6,
      'pressure',
      memory('1018 cold-drawn'),
    ]),
    shaftTensile: given('shafts.tensile', 'tensile strength of shafts and axles', loads.shafts?.tensile, [
      440e6,
      'pressure',
      memory('1018 cold-drawn'),
    ]),
  };
}
