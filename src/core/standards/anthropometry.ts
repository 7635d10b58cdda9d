import table from '../../../data/standards/anthropometry.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';
import { type BodyLinks, bodyLinks } from './bodyLinks.ts';

export type BodyMeasure =
  | 'stature'
  | 'crotchHeight'
  | 'trochanterionHeight'
  | 'femoralEpicondyleHeight'
  | 'malleolusHeight'
  | 'kneeHeightSitting'
  | 'poplitealHeight'
  | 'buttockKneeLength'
  | 'sittingHeight'
  | 'acromialHeight'
  | 'upperArm'
  | 'forearmToGrip'
  | 'hipBreadthSitting'
  | 'footLength'
  | 'handBreadth'
  | 'weight'
  | 'linkHipKnee'
  | 'linkKneeAnkle'
  | 'linkShoulderGrip';

export type BodyGroup = 'men' | 'women';
export type Percentile = 5 | 50 | 95;

/** A posture's angle that most riders find comfortable [rad]. */
export interface AngleRange {
  readonly least: number;
  readonly most: number;
}

type Row = (typeof table.rows)[number];
type Sizes = Readonly<Record<string, number>>;

const rows: ReadonlyMap<string, Row> = new Map(table.rows.map((row) => [row.measure, row]));

export const bodyGroups: readonly BodyGroup[] = ['women', 'men'];
export const percentiles: readonly Percentile[] = [5, 50, 95];

/** A size of the survey [m], weight [kg]. @source ansur-2, percentiles over the public rows */
export function bodySize(measure: BodyMeasure, group: BodyGroup, percentile: Percentile): number {
  const sizes: Sizes = rowOf(measure)[group] as unknown as Sizes;
  return measure === 'weight' ? sizes[`p${percentile}Kg`]! : sizes[`p${percentile}Mm`]! / 1000;
}

/** Mean and standard deviation of a size [m], weight [kg]. @source ansur-2, moments of the public rows */
export function bodySpread(
  measure: BodyMeasure,
  group: BodyGroup,
): { readonly mean: number; readonly deviation: number } {
  const sizes: Sizes = rowOf(measure)[group] as unknown as Sizes;
  return measure === 'weight'
    ? { mean: sizes.meanKg!, deviation: sizes.sdKg! }
    : { mean: sizes.meanMm! / 1000, deviation: sizes.sdMm! / 1000 };
}

/**
 * Links of a rider each of whose sizes is of one percentile; nobody is built so, which is why the legs and arms take
 * the links' own percentiles. What the survey does not hold follows from the stature.
 * @source ansur-2, percentiles of sizes and links; practice for hip, shoulder and head places
 */
export function percentileLinks(group: BodyGroup, percentile: Percentile): BodyLinks {
  const of = (measure: BodyMeasure): number => bodySize(measure, group, percentile);
  const usual = bodyLinks({ stature: of('stature'), inseam: of('crotchHeight') });
  const shoulderAboveSeat = of('sittingHeight') - (of('stature') - of('acromialHeight'));
  const arm = of('linkShoulderGrip');
  const upperShare = of('upperArm') / (of('upperArm') + of('forearmToGrip'));
  const foot = of('footLength');
  return {
    ...usual,
    thigh: of('linkHipKnee'),
    shank: of('linkKneeAnkle'),
    ankleHeight: of('malleolusHeight'),
    foot,
    torso: shoulderAboveSeat - usual.hipAboveSeat,
    upperArm: arm * upperShare,
    forearm: arm * (1 - upperShare),
    ankleBehindPeg: (usual.ankleBehindPeg / usual.foot) * foot,
    toeAheadOfPeg: (usual.toeAheadOfPeg / usual.foot) * foot,
  };
}

/** Soles, added to barefoot heights: the thinner of the usual [m]. */
export const SHOES = table.shoesMm.low / 1000;

const range = ([least, most]: readonly number[]): AngleRange => ({
  least: (least! * Math.PI) / 180,
  most: (most! * Math.PI) / 180,
});

export const comfort = {
  knee: range(table.comfort.kneeDegrees),
  hip: range(table.comfort.hipDegrees),
  elbow: range(table.comfort.elbowDegrees),
  trunkLean: range(table.comfort.trunkLeanDegrees),
} as const;

/** Half thickness of a clothed leg [m]. */
export const limbRadius = {
  thigh: table.limbRadius.thighMm / 1000,
  knee: table.limbRadius.kneeMm / 1000,
  calf: table.limbRadius.calfMm / 1000,
} as const;

export const anthropometrySources = {
  sizes: table.source,
  shoes: table.shoesMm.source,
  comfort: table.comfort.source,
  limbs: table.limbRadius.source,
} satisfies Record<string, SourceRef>;

function rowOf(measure: BodyMeasure): Row {
  const row = rows.get(measure);
  if (!row) throw new RangeError(`no measure "${measure}" in the table`);
  return row;
}
