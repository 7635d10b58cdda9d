import table from '../../../data/standards/endurance.json' with { type: 'json' };
import type { SourceRef } from '../quantity/index.ts';

/** Surface factor ka = a·(Sut/1 ksi)^b. */
export interface SurfaceFinish {
  readonly name: string;
  readonly coefficientKsi: number;
  readonly exponent: number;
  readonly source: SourceRef;
}

/** Stress concentration of a shaft detail; `isFatigueFactor`: the values are Kf already, no notch sensitivity. */
export interface Notch {
  readonly name: string;
  readonly bending: number;
  readonly torsion: number;
  /** r/d that the values are for. */
  readonly radiusRatio?: number;
  readonly isFatigueFactor: boolean;
  readonly source: SourceRef;
}

export const surfaceFinishes: readonly SurfaceFinish[] = table.surfaces;

/** Reliability factor ke of each listed percentage. */
export const reliabilities: readonly {
  readonly percent: number;
  readonly factor: number;
  readonly source: SourceRef;
}[] = table.reliabilities;

export const notches: readonly Notch[] = [
  ...table.notches.map((row) => ({ ...row, isFatigueFactor: false })),
  ...table.threadNotches.map((row) => ({ ...row, isFatigueFactor: true })),
];
