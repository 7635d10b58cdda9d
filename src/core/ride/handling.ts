import type { WhippleMatrices, WhippleParameters } from './whipple.ts';
import { whippleMatrices } from './whipple.ts';
import { whippleIssues } from './whippleFromBuild.ts';
import { type WhippleSpeeds, whippleEigenvalues, whippleSpeeds } from './whippleModes.ts';

/** A row of the table of what moves the speeds. */
export interface HandlingChange {
  readonly id: string;
  /** What was changed, in plain words. */
  readonly change: string;
  readonly weave?: number;
  readonly capsize?: number;
  /** The first self-stable range [m/s]; absent: none. */
  readonly selfStable?: { readonly from: number; readonly to?: number };
}

export interface Handling {
  readonly parameters: WhippleParameters;
  readonly matrices: WhippleMatrices;
  readonly speeds: WhippleSpeeds;
  /** First row: as it is. */
  readonly changes: readonly HandlingChange[];
}

/** One curve of the picture: the four eigenvalues of a speed. */
export interface EigenvaluesAtSpeed {
  /** [m/s] */
  readonly speed: number;
  /** Re and Im [1/s], by falling real part. */
  readonly eigenvalues: readonly (readonly [number, number])[];
}

/** How much is changed in the table: what a builder can move with a file or a plate. */
const TRAIL_STEP = 10e-3;
const ANGLE_STEP = Math.PI / 180;
const PLACE_STEP = 50e-3;
const WHEELBASE_STEP = 50e-3;
const SHARE_STEP = 0.2;

/**
 * Matrices, speeds and the table of what moves them for one set of parameters.
 * @param gearedSpin see `whippleSums`
 * @source whipple-2007, appendix A; derived, one parameter changed at a time
 */
export function handlingOf(parameters: WhippleParameters, gearedSpin = 0): Handling {
  const matrices = whippleMatrices(parameters, gearedSpin);
  return {
    parameters,
    matrices,
    speeds: whippleSpeeds(matrices),
    changes: handlingChanges(parameters, gearedSpin),
  };
}

/** Eigenvalues over speeds, for tables and pictures. @source whipple-2007, eigenvalues over speed */
export const eigenvaluesOver = (matrices: WhippleMatrices, speeds: readonly number[]): EigenvaluesAtSpeed[] =>
  speeds.map((speed) => ({
    speed,
    eigenvalues: whippleEigenvalues(matrices, speed).map(({ re, im }) => [re, im] as const),
  }));

/**
 * How weave, capsize and the self-stable range move with trail, head angle, wheelbase and the placing of mass, one
 * change at a time. Changes that no bike can have (a mass matrix that is not positive) are left out.
 * @source derived, the model solved anew for each change
 */
export function handlingChanges(parameters: WhippleParameters, gearedSpin = 0): readonly HandlingChange[] {
  return changedParameters(parameters)
    .filter(({ changed }) => whippleIssues(changed).length === 0)
    .map(({ id, change, changed }) => {
      const { weave, capsize, selfStable } = whippleSpeeds(whippleMatrices(changed, gearedSpin));
      return {
        id,
        change,
        ...(weave === undefined ? {} : { weave }),
        ...(capsize === undefined ? {} : { capsize }),
        ...(selfStable[0] === undefined ? {} : { selfStable: selfStable[0] }),
      };
    });
}

interface Changed {
  readonly id: string;
  readonly change: string;
  readonly changed: WhippleParameters;
}

function changedParameters(p: WhippleParameters): Changed[] {
  const both = (
    id: string,
    words: readonly [string, string],
    by: (sign: number) => Partial<WhippleParameters>,
  ): Changed[] => [
    { id: `${id}.more`, change: words[0], changed: { ...p, ...by(1) } },
    { id: `${id}.less`, change: words[1], changed: { ...p, ...by(-1) } },
  ];
  return [
    { id: 'asIs', change: 'as it is', changed: p },
    ...both('trail', ['trail 10 mm more (less fork offset)', 'trail 10 mm less (more fork offset)'], (s) => ({
      c: p.c + s * TRAIL_STEP,
    })),
    ...both('headAngle', ['head angle 1° steeper, same fork', 'head angle 1° slacker, same fork'], (s) =>
      sameFork(p, p.lam - s * ANGLE_STEP),
    ),
    ...both(
      'headAngleOnly',
      ['head angle 1° steeper, same trail', 'head angle 1° slacker, same trail'],
      (s) => ({
        lam: p.lam - s * ANGLE_STEP,
      }),
    ),
    ...both('wheelbase', ['front end 50 mm further forward', 'front end 50 mm further back'], (s) => ({
      w: p.w + s * WHEELBASE_STEP,
      xH: p.xH + s * WHEELBASE_STEP,
    })),
    ...both('rearBodyForward', ['rider and frame 50 mm forward', 'rider and frame 50 mm back'], (s) => ({
      xB: p.xB + s * PLACE_STEP,
    })),
    ...both('rearBodyUp', ['rider and frame 50 mm up', 'rider and frame 50 mm down'], (s) => ({
      zB: p.zB - s * PLACE_STEP,
    })),
    ...both(
      'barsForward',
      ['mass of fork and bars 50 mm forward', 'mass of fork and bars 50 mm back'],
      (s) => ({
        xH: p.xH + s * PLACE_STEP,
      }),
    ),
    ...both(
      'frontSpin',
      ['front wheel 20 % more spin inertia', 'front wheel 20 % less spin inertia'],
      (s) => ({
        IFyy: p.IFyy * (1 + s * SHARE_STEP),
        IFxx: p.IFxx * (1 + s * SHARE_STEP),
      }),
    ),
  ];
}

/** Another head angle with the offset of the fork kept: d = R·sin λ − c·cos λ. */
function sameFork(p: WhippleParameters, lam: number): Partial<WhippleParameters> {
  const offset = p.rF * Math.sin(p.lam) - p.c * Math.cos(p.lam);
  return { lam, c: (p.rF * Math.sin(lam) - offset) / Math.cos(lam) };
}
