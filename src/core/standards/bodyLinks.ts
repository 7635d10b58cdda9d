import table from '../../../data/standards/body-links.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

export type BodySegment = 'head' | 'trunk' | 'upperArm' | 'forearm' | 'thigh' | 'shank' | 'foot';

/** Links of a seated rider [m]. */
export interface BodyLinks {
  readonly stature: number;
  /** Crotch to floor. */
  readonly inseam: number;
  /** Hip to knee. */
  readonly thigh: number;
  /** Knee to ankle. */
  readonly shank: number;
  /** Ankle above the sole. */
  readonly ankleHeight: number;
  readonly foot: number;
  /** Hip to shoulder. */
  readonly torso: number;
  /** Shoulder to elbow. */
  readonly upperArm: number;
  /** Elbow to the center of the grip. */
  readonly forearm: number;
  /** Hip above the seat surface. */
  readonly hipAboveSeat: number;
  readonly hipSpacing: number;
  readonly shoulderSpacing: number;
  readonly headRadius: number;
  readonly headAboveShoulder: number;
  /** Ankle behind, and toe ahead of, the middle of the peg. */
  readonly ankleBehindPeg: number;
  readonly toeAheadOfPeg: number;
  readonly trunkDepth: number;
  readonly trunkWidth: number;
}

/** A part of the body with its share of the mass. */
export interface SegmentMass {
  readonly segment: BodySegment;
  /** Of the body's mass, one of a pair. */
  readonly massFraction: number;
  /** 2 for limbs. */
  readonly count: number;
  /** From the end nearer the trunk, as a share of the link. */
  readonly centerFraction: number;
}

export interface RestPosture {
  /** Elbow angle that the trunk leans for [rad]. */
  readonly elbow: number;
  /** Most that it leans [rad]. */
  readonly mostLean: number;
  readonly source: SourceRef;
}

const { medians, figure, posture, segments, trunkBox } = table;

export const segmentMasses: readonly SegmentMass[] = segments.rows.map((row) => ({
  ...row,
  segment: row.segment as BodySegment,
}));

export const bodySources = {
  links: medians.source,
  figure: figure.source,
  segments: segments.source,
} satisfies Record<string, SourceRef>;

export const restPosture: RestPosture = {
  elbow: (posture.elbowDegrees * Math.PI) / 180,
  mostLean: (posture.mostLeanDegrees * Math.PI) / 180,
  source: posture.source,
};

/**
 * Links of a rider: means of the men's and women's medians as shares of stature, the legs as shares of the inseam
 * where it is given. Without a stature it follows from the inseam, without either it is the mean of the medians.
 * @param rider stature and inseam [m]
 * @source ansur-2, medians; practice for hip, shoulder and head places
 */
export function bodyLinks(rider: {
  readonly stature?: number | undefined;
  readonly inseam?: number | undefined;
}): BodyLinks {
  const inseamShare = share('crotchHeightMm', 'statureMm');
  const stature = rider.stature ?? (rider.inseam ? rider.inseam / inseamShare : meanStature());
  const inseam = rider.inseam ?? stature * inseamShare;
  const of = (row: keyof Median): number => stature * share(row, 'statureMm');
  const leg = (row: keyof Median): number => inseam * share(row, 'crotchHeightMm');
  const foot = of('footLengthMm');
  const hipAboveSeat = stature * figure.hipAboveSeatPerStature;
  const shoulderAboveSeat = of('sittingHeightMm') - (stature - of('acromionHeightMm'));
  return {
    stature,
    inseam,
    thigh: leg('thighMm'),
    shank: leg('shankMm'),
    ankleHeight: of('ankleHeightMm'),
    foot,
    torso: shoulderAboveSeat - hipAboveSeat,
    upperArm: of('upperArmMm'),
    forearm: of('forearmToGripMm'),
    hipAboveSeat,
    hipSpacing: stature * figure.hipSpacingPerStature,
    shoulderSpacing: stature * figure.shoulderSpacingPerStature,
    headRadius: stature * figure.headRadiusPerStature,
    headAboveShoulder: stature * figure.headCenterAboveShoulderPerStature,
    ankleBehindPeg: foot * figure.ankleBehindPegPerFoot,
    toeAheadOfPeg: foot * figure.toeAheadOfPegPerFoot,
    trunkDepth: stature * trunkBox.depthPerStature,
    trunkWidth: stature * trunkBox.widthPerStature,
  };
}

type Median = Omit<(typeof medians.rows)[number], 'group'>;

const share = (part: keyof Median, whole: keyof Median): number =>
  medians.rows.reduce((sum, row) => sum + row[part] / row[whole], 0) / medians.rows.length;

const meanStature = (): number =>
  medians.rows.reduce((sum, row) => sum + row.statureMm, 0) / medians.rows.length / 1000;
