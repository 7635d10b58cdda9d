import type { Bike } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { Length, Pressure, Torque } from '../../../quantity/index.ts';
import { enduranceLimit, notchFactors } from '../../shaft/enduranceLimit.ts';
import type { Shaft, ShaftLoad } from '../../shaft/shaft.ts';
import { sectionFactors } from '../../shaft/shaftFatigue.ts';
import { type ShaftSolution, shaftStateAt, solveShaft } from '../../shaft/solveShaft.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import { acrossShaft } from '../loads/shaftModel.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import { type AxleThread, axleThreads, type BumpMoments, threadFatigue, threadRow } from './axleThreads.ts';
import type { UtilizationRow } from './utilizationRow.ts';

/** An axle in its worst case, free to tilt where it is held, and clamped there. */
export interface AxleStrength {
  readonly id: 'frontAxle' | 'rearAxle';
  readonly case: string;
  readonly shaft: Shaft;
  readonly solution: ShaftSolution;
  /** Largest stress if its nuts clamp it without give [Pa]; the truth lies between. */
  readonly clampedStress: number;
  /** Fatigue factor of bump after bump, at the place of the largest moment. */
  readonly fatigue?: number;
  /** Threads that run into what holds the axle. */
  readonly threads: readonly AxleThread[];
  readonly rows: readonly UtilizationRow[];
}

export interface AxleInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly frame: BikeFrame;
  readonly cases: readonly LoadCase[];
  readonly settings: LoadSettings;
}

const E_STEEL = 205e9;
const G_STEEL = 80e9;
/** Bump of every day, as a share of the largest. @source practice */
const DAILY_BUMP = 0.5;
const RELIABILITY = 90;

/** Axles under the forces of their hub's two bearings, in both planes, in every case. @source derived */
export function axleStrengths(input: AxleInput): readonly AxleStrength[] {
  const { frame, cases, settings } = input;
  return (['front', 'rear'] as const).flatMap((wheel): AxleStrength[] => {
    const id = `${wheel}Axle` as const;
    const line = frame.draft.lines.get(id);
    if (!line) return [];
    const solved = cases.flatMap((one) => solvedAxle(frame, wheel, one, false));
    const worst = solved.reduce(
      (most, next) =>
        most === undefined || next.solution.maxStress.value > most.solution.maxStress.value ? next : most,
      solved[0],
    );
    if (!worst) return [];
    const clamped = solveShaft(axleShaft(frame, wheel, worst.one, true));
    const fatigue = dailyFatigue(solved, wheel, settings, line.stock.outside);
    const stack = Object.values(input.bike.stacks).find((one) => one.shaft === id);
    const threads = axleThreads(stack, wheel === 'front' ? 'leg' : 'plate');
    return [
      {
        id,
        case: worst.one.id,
        shaft: worst.shaft,
        solution: worst.solution,
        clampedStress: (clamped.ok ? clamped.value : worst.solution).maxStress.value,
        ...(fatigue === undefined ? {} : { fatigue }),
        threads,
        rows: [
          bendingRow(id, worst.one.id, worst.solution, settings),
          ...(fatigue === undefined ? [] : [fatigueRow(id, `bump-${wheel}`, fatigue, settings)]),
          ...threads.flatMap((thread) => threadRows(input, wheel, thread, line.stock.outside)),
        ],
      },
    ];
  });
}

function bendingRow(
  part: string,
  one: string,
  { maxStress }: ShaftSolution,
  settings: LoadSettings,
): UtilizationRow {
  const allowed = settings.shaftYield / settings.yieldFactor;
  return {
    part,
    case: one,
    where: `${Math.round(maxStress.at * 1000)} mm from the middle, taken as free to tilt in its plates`,
    check: 'axleBending',
    quantity: 'bending stress as a beam',
    value: maxStress.value,
    limit: allowed,
    kind: 'pressure',
    utilization: maxStress.value / allowed,
    source: { key: 'shigley-9', where: 'section 7-4' },
  };
}

const fatigueRow = (part: string, one: string, factor: number, settings: LoadSettings): UtilizationRow => ({
  part,
  case: one,
  where: 'at the largest moment',
  check: 'axleFatigue',
  quantity: 'fatigue factor of daily bumps, Goodman',
  value: factor,
  limit: settings.fatigueFactor,
  kind: 'ratio',
  utilization: settings.fatigueFactor / factor,
  source: { key: 'shigley-9', where: 'equation 7-7; half of the largest bump' },
});

/** The axle along the bike's y, from its right holder to its left, under what its hub brings. */
function axleShaft(frame: BikeFrame, wheel: 'front' | 'rear', one: LoadCase, clamped: boolean): Shaft {
  const line = frame.draft.lines.get(`${wheel}Axle`)!;
  const { hub, held } = frame.wheels[wheel];
  const yOf = (node: string): Length => frame.draft.nodes.get(node)!.y as Length;
  const loads: ShaftLoad[] = hub.flatMap((node) =>
    (one.balanced.loads.nodes ?? [])
      .filter((load) => load.node === node && load.force !== undefined)
      .map((load) => ({ at: yOf(node), force: acrossShaft(load.force!) })),
  );
  const [left, right] = [yOf(held[0]), yOf(held[1])];
  return {
    segments: [{ from: right, to: left, diameter: line.stock.outside as Length }],
    supports: [right, left].map((at) => ({ at, ...(clamped ? { clamped } : {}) })),
    loads,
    elasticModulus: E_STEEL as Pressure,
    shearModulus: G_STEEL as Pressure,
  };
}

interface SolvedAxle {
  readonly one: LoadCase;
  readonly shaft: Shaft;
  readonly solution: ShaftSolution;
}

function solvedAxle(
  frame: BikeFrame,
  wheel: 'front' | 'rear',
  one: LoadCase,
  clamped: boolean,
): readonly SolvedAxle[] {
  const shaft = axleShaft(frame, wheel, one, clamped);
  const solution = solveShaft(shaft);
  return solution.ok ? [{ one, shaft, solution: solution.value }] : [];
}

/** Half the swing of a daily bump at a place, and the mean about which it swings. */
function bumpMoments(
  solved: readonly SolvedAxle[],
  wheel: 'front' | 'rear',
  at?: number,
): BumpMoments | undefined {
  const rest = solved.find(({ one }) => one.id === 'seated');
  const bump = solved.find(({ one }) => one.id === `bump-${wheel}`);
  if (!rest || !bump) return undefined;
  const place = (at ?? bump.solution.maxMoment.at) as Length;
  // At a clamped end there is a moment on one side only.
  const moment = ({ shaft, solution }: SolvedAxle): number =>
    Math.max(
      ...(['left', 'right'] as const).map((on) =>
        Math.hypot(...shaftStateAt(shaft, solution, place, on).moment),
      ),
    );
  const swing = (DAILY_BUMP * Math.abs(moment(bump) - moment(rest))) / 2;
  return { swing, mean: moment(rest) + swing };
}

/**
 * A thread that ends between the places where its axle is held, free to tilt there or clamped: the worse. Every root from
 * the holder to the end is a notch; moments run straight between the hub's faces, so one of these places is the worst.
 */
function threadRows(
  { build, frame, cases, settings }: AxleInput,
  wheel: 'front' | 'rear',
  thread: AxleThread,
  diameter: number,
): UtilizationRow[] {
  const { held, hubY } = frame.wheels[wheel];
  const [left, right] = held.map((node) => frame.draft.nodes.get(node)!.y) as [number, number];
  if (!(thread.end < left && thread.end > right)) return [];
  const holder = thread.side === 'left' ? left : right;
  const isThreaded = (y: number): boolean => (y - thread.end) * (y - holder) <= 0;
  const places = [thread.end, holder, ...hubY].filter(isThreaded);
  const two = cases.filter(({ id }) => id === 'seated' || id === `bump-${wheel}`);
  const torque = Object.values(build.stacks).find(({ shaft }) => shaft === thread.axle)?.axle?.torque;
  const factors = [false, true].flatMap((clamped): number[] => {
    const solved = two.flatMap((one) => solvedAxle(frame, wheel, one, clamped));
    const all = places.flatMap((place) => bumpMoments(solved, wheel, place) ?? []);
    const of = { diameter, pitch: thread.pitch, ...(torque === undefined ? {} : { torque }) };
    const { shaftTensile: tensile, shaftYield } = settings;
    return all.flatMap((moments) => threadFatigue({ ...of, moments, tensile, yield: shaftYield }) ?? []);
  });
  return factors.length === 0 ? [] : [threadRow(thread, Math.min(...factors), settings)];
}

function dailyFatigue(
  solved: readonly SolvedAxle[],
  wheel: 'front' | 'rear',
  settings: LoadSettings,
  outside: number,
): number | undefined {
  const tensile = settings.shaftTensile as Pressure;
  const diameter = outside as Length;
  const endurance = enduranceLimit({
    tensile,
    diameter,
    surface: 'machined',
    reliability: RELIABILITY,
    rotating: false,
  });
  const notch = notchFactors('none', tensile, diameter);
  const moments = bumpMoments(solved, wheel);
  if (!moments || !endurance.ok || !notch.ok) return undefined;
  return sectionFactors(
    {
      bendingAmplitude: moments.swing as Torque,
      bendingMean: moments.mean as Torque,
      torqueAmplitude: 0 as Torque,
      torqueMean: 0 as Torque,
      bendingFactor: notch.value.bending,
      torsionFactor: notch.value.torsion,
    },
    { endurance: endurance.value.limit, tensile, yield: settings.shaftYield as Pressure },
    diameter,
  ).fatigue.goodman;
}
