import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

export interface PlateBend {
  /** T, thickness of the plate [m], > 0. */
  readonly thickness: number;
  /** R, inside radius of the bend [m], ≥ 0. */
  readonly insideRadius: number;
  /** θ, bend angle: how far the leg is turned from flat [rad], 0 < θ < π. */
  readonly angle: number;
  /** K, distance of the unstretched layer from the inside face as a share of the thickness, 0 to 1. */
  readonly kFactor: number;
}

export interface PlateBendLengths {
  /** BA = θ·(R + K·T), flat length that goes into the bend [m]. */
  readonly allowance: number;
  /** OSSB = (R + T)·tan(θ/2), outside mold line to tangent [m]. */
  readonly outsideSetback: number;
  /** BD = 2·OSSB − BA, outside legs less this is the flat length [m]. */
  readonly deduction: number;
}

/**
 * BA = θ·(R + K·T), flat length that goes into a bend [m]; any angle above 0.
 * @source machinerys-handbook-31, p. 1421 (lengths of straight stock for bends); derived, neutral layer at K·T
 */
export const bendAllowance = (bend: PlateBend): number =>
  bend.angle * (bend.insideRadius + bend.kFactor * bend.thickness);

/**
 * Bend allowance, setback and deduction of a plate.
 * @issue out-of-range — thickness, radius, angle or K outside its range
 * @source machinerys-handbook-31, p. 1421 (straight parts plus allowances); derived, neutral layer at K·T
 */
export function plateBend(bend: PlateBend): Outcome<PlateBendLengths> {
  const { thickness: T, insideRadius: R, angle } = bend;
  const [first, ...rest] = plateBendIssues(bend);
  if (first) return bad(first, ...rest);
  const allowance = bendAllowance(bend);
  const outsideSetback = (R + T) * Math.tan(angle / 2);
  return good({ allowance, outsideSetback, deduction: 2 * outsideSetback - allowance });
}

export interface FlatPattern {
  /** Length of the flat plate [m]. */
  readonly length: number;
  /** Where each bend lies on the flat, from the edge of the first leg [m]; the bend line is at `middle`. */
  readonly bends: readonly { readonly start: number; readonly middle: number; readonly end: number }[];
}

/**
 * Flat pattern of a plate from its outside legs, measured to the mold lines where the outside faces cross [m]:
 * length = sum of legs less the deductions of the bends between them. Legs are one more than bends.
 * @issue conflict — the number of legs does not fit, or a leg is shorter than the setbacks of its bends
 * @source derived, legs less setbacks plus allowances
 */
export function flatPattern(
  outsideLegs: readonly number[],
  bends: readonly PlateBend[],
): Outcome<FlatPattern> {
  if (outsideLegs.length !== bends.length + 1) {
    const reason = `${bends.length} bends join ${bends.length + 1} legs; found ${outsideLegs.length}`;
    return bad({ code: 'conflict', path: 'legs', reason });
  }
  const results = bends.map(plateBend);
  const issues = results.flatMap((r, i) =>
    r.ok ? [] : r.issues.map((issue) => ({ ...issue, path: `bends[${i}].${issue.path}` })),
  );
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const lengths = results.flatMap((r) => (r.ok ? [r.value] : []));
  const setback = (i: number): number => lengths[i]?.outsideSetback ?? 0;
  const [short, ...others] = outsideLegs.flatMap((leg, i) => legIssues(leg, setback(i - 1) + setback(i), i));
  if (short) return bad(short, ...others);
  let at = 0;
  const places = lengths.map(({ allowance }, i) => {
    const start = at + outsideLegs[i]! - setback(i - 1) - setback(i);
    at = start + allowance;
    return { start, middle: start + allowance / 2, end: at };
  });
  return good({ length: at + outsideLegs.at(-1)! - setback(bends.length - 1), bends: places });
}

/**
 * Angle to bend to, so that it springs back to `angle` [rad]: angle + springback.
 * @source practice, springback read from a sample bend: bent to 90° and measured
 */
export const overbentAngle = (angle: number, springback: number): number => angle + springback;

/**
 * Plate bend after springback from the bend before it: Ri/Rf = 4x³ − 3x + 1 with x = Ri·Y/(E·T), and the angles as
 * (2Ri/T + 1)/(2Rf/T + 1), the length of the middle layer kept.
 * @source memory, Kalpakjian & Schmid springback formula
 * @issue conflict — the plate springs back straight (x of 1/2 or more)
 */
export function sprungBack(bend: {
  /** T [m] */
  readonly thickness: number;
  /** Ri, inside radius under the tool [m] */
  readonly radius: number;
  /** angle under the tool [rad] */
  readonly angle: number;
  /** Y [Pa] */
  readonly yieldStrength: number;
  /** E [Pa] */
  readonly elasticModulus: number;
}): Outcome<{ readonly radius: number; readonly angle: number }> {
  const { thickness: T, radius, angle } = bend;
  const x = (radius * bend.yieldStrength) / (bend.elasticModulus * T);
  if (!(x >= 0 && x < 0.5)) {
    return bad({
      code: 'conflict',
      path: 'radius',
      reason: 'the bend is so gentle that the plate springs back straight',
    });
  }
  const final = radius / (4 * x ** 3 - 3 * x + 1);
  return good({ radius: final, angle: (angle * ((2 * radius) / T + 1)) / ((2 * final) / T + 1) });
}

function plateBendIssues({ thickness, insideRadius, angle, kFactor }: PlateBend): Issue[] {
  const issues: Issue[] = [];
  if (!(thickness > 0))
    issues.push({ code: 'conflict', path: 'thickness', reason: 'a plate needs a thickness above 0' });
  if (!(insideRadius >= 0)) {
    issues.push({
      code: 'out-of-range',
      path: 'insideRadius',
      given: insideRadius * 1e3,
      min: 0,
      unit: 'mm',
    });
  }
  if (!(angle > 0 && angle < Math.PI)) {
    issues.push({
      code: 'out-of-range',
      path: 'angle',
      given: (angle * 180) / Math.PI,
      min: 0,
      max: 180,
      unit: '°',
    });
  }
  if (!(kFactor >= 0 && kFactor <= 1)) {
    issues.push({ code: 'out-of-range', path: 'kFactor', given: kFactor, min: 0, max: 1, unit: '' });
  }
  return issues;
}

function legIssues(leg: number, needed: number, i: number): Issue[] {
  if (leg >= needed - 1e-9) return [];
  const reason = `the bends take ${(needed * 1e3).toFixed(2)} mm of this leg, which is ${(leg * 1e3).toFixed(2)} mm long`;
  return [{ code: 'conflict', path: `legs[${i}]`, reason }];
}
