import type { PlacedStack } from '../../../bike/index.ts';
import type { Length, Pressure, Torque } from '../../../quantity/index.ts';
import { enduranceLimit, notchFactors } from '../../shaft/enduranceLimit.ts';
import { sectionFactors } from '../../shaft/shaftFatigue.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { UtilizationRow } from './utilizationRow.ts';

/** Thread of an axle that reaches past the outer face of what holds it. */
export interface AxleThread {
  readonly axle: 'frontAxle' | 'rearAxle';
  readonly side: 'left' | 'right';
  /** What holds the axle there: a plate or a leg. */
  readonly holder: string;
  /** How far past its outer face, and how thick it is [m]. */
  readonly reach: number;
  readonly thickness: number;
  /** Where the thread ends, along the bike's y [m]. */
  readonly end: number;
  readonly pitch: number;
}

/** Moments of the daily bump at a place of an axle [N·m]. */
export interface BumpMoments {
  readonly swing: number;
  readonly mean: number;
}

/** Reaches of less than this are within what can be measured [m]. */
const LEAST_REACH = 2e-4;
const RELIABILITY = 90;
/** d3 = d − 1.226869·p. @source machinerys-handbook-31, root of the ISO metric thread */
const ROOT = 1.226869;
/** A bar of at least this strength counts as one of the higher classes [Pa]. */
const HIGH_CLASS = 600e6;
/** Torque over tension and diameter, dry. @source shigley-9, table 8-15 */
const NUT_FACTOR = 0.2;

/** Threads of an axle that run into its plates or legs; none where the stack does not say. */
export function axleThreads(stack: PlacedStack | undefined, kind: 'plate' | 'leg'): readonly AxleThread[] {
  const axle = stack?.axle;
  const id = stack?.shaft;
  if (!axle || (id !== 'frontAxle' && id !== 'rearAxle')) return [];
  const holders = stack.items.filter(
    (item) => item.kind === kind && Number.isFinite(item.left) && Number.isFinite(item.right),
  );
  if (holders.length < 2) return [];
  const [left, right] = [
    holders.reduce((a, b) => (b.left > a.left ? b : a)),
    holders.reduce((a, b) => (b.right < a.right ? b : a)),
  ];
  const ends = [
    {
      side: 'left',
      item: left,
      end: axle.left - axle.threadLeft,
      face: left.left,
      sign: 1,
      has: axle.threadLeft,
    },
    {
      side: 'right',
      item: right,
      end: axle.right + axle.threadRight,
      face: right.right,
      sign: -1,
      has: axle.threadRight,
    },
  ] as const;
  return ends.flatMap(({ side, item, end, face, sign, has }): AxleThread[] => {
    const reach = sign * (face - end);
    if (!(has > 0) || !(reach > LEAST_REACH)) return [];
    const thickness = item.left - item.right;
    return [{ axle: id, side, holder: item.id, reach, thickness, end, pitch: axle.pitch }];
  });
}

/**
 * Goodman at the root of a cut thread under daily bumps, with the nuts' tension where their torque is told:
 * 1/n = Kf·(σa/Se + σm/Sut) + F/(A3·Sut) on the root's section: a steady pull is not raised by the notch.
 * @source shigley-9, equation 7-7 and section 8-11; table 8-16 for Kf from memory
 */
export function threadFatigue(of: {
  readonly diameter: number;
  readonly pitch: number;
  readonly torque?: number;
  readonly moments: BumpMoments;
  readonly tensile: number;
  readonly yield: number;
}): number | undefined {
  const tensile = of.tensile as Pressure;
  const root = (of.diameter - ROOT * of.pitch) as Length;
  const name = of.tensile >= HIGH_CLASS ? 'cut-thread-high-class' : 'cut-thread-low-class';
  const notch = notchFactors(name, tensile, root);
  const endurance = enduranceLimit({
    tensile,
    diameter: root,
    surface: 'machined',
    reliability: RELIABILITY,
    rotating: false,
  });
  if (!notch.ok || !endurance.ok || !(root > 0)) return undefined;
  const bending = sectionFactors(
    {
      bendingAmplitude: of.moments.swing as Torque,
      bendingMean: of.moments.mean as Torque,
      torqueAmplitude: 0 as Torque,
      torqueMean: 0 as Torque,
      bendingFactor: notch.value.bending,
      torsionFactor: notch.value.torsion,
    },
    { endurance: endurance.value.limit, tensile, yield: of.yield as Pressure },
    root,
  ).fatigue.goodman;
  const area = (Math.PI / 4) * root ** 2;
  const pull = of.torque === undefined ? 0 : of.torque / (NUT_FACTOR * of.diameter) / area;
  return 1 / (1 / bending + pull / tensile);
}

export const threadRow = (
  { axle, side, holder, reach }: AxleThread,
  factor: number,
  settings: LoadSettings,
): UtilizationRow => ({
  part: axle,
  case: `bump-${axle === 'frontAxle' ? 'front' : 'rear'}`,
  where: `thread that runs ${(reach * 1000).toFixed(1)} mm past the outer face of ${holder}`,
  check: 'axleThread',
  place: side,
  quantity: 'fatigue factor of the thread root under daily bumps, Goodman',
  value: factor,
  limit: settings.fatigueFactor,
  kind: 'ratio',
  utilization: settings.fatigueFactor / factor,
  source: { key: 'memory', where: 'Shigley table 8-16, cut thread; equation 7-7' },
});
