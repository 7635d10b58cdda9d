import { findRoot } from '../numerics/index.ts';
import type { Angle, Issue, Length, Outcome } from '../quantity/index.ts';
import { bad, good } from '../quantity/index.ts';
import { positiveLengthIssues } from './teeth.ts';

/** Two sheaves of an open belt. */
export interface SheavePair {
  /** d1, pitch diameter of the driver [m], > 0. */
  readonly driverDiameter: Length;
  /** d2, pitch diameter of the driven sheave [m], > 0. */
  readonly drivenDiameter: Length;
}

export interface BeltWraps {
  /** Angle over which the belt lies on the driver [rad]. */
  readonly driver: Angle;
  /** Angle over which the belt lies on the driven sheave [rad]. */
  readonly driven: Angle;
}

/** One position of a variable pair at fixed belt length and center distance. */
export interface CoupledSheaves extends SheavePair {
  /** i = d2/d1. */
  readonly ratio: number;
  readonly wraps: BeltWraps;
}

export interface VariableBelt {
  /** L, pitch length of the belt [m]. */
  readonly length: Length;
  /** C [m]. */
  readonly center: Length;
}

/** Lengths are solved to this [m]: far below any that can be set. */
const TOLERANCE = 1e-14;

/**
 * Pitch length of an open belt: L = √(4C² − (D − d)²) + ½·(D·θD + d·θd), θ = π ± 2·asin((D − d)/2C).
 * @returns L [m]
 * @issue out-of-range — center below half the sum of the diameters
 * @source shigley-9, flat belts, open drive
 */
export function beltLength(pair: SheavePair, center: Length): Outcome<Length> {
  const [first, ...rest] = [...sheaveIssues(pair), ...centerIssues(pair, center)];
  return first ? bad(first, ...rest) : good(openBelt(pair, center).length as Length);
}

/**
 * Wraps of an open belt: π ∓ 2·asin((d2 − d1)/2C).
 * @issue out-of-range — center below half the sum of the diameters
 * @source shigley-9, flat belts, open drive
 */
export function beltWraps(pair: SheavePair, center: Length): Outcome<BeltWraps> {
  const [first, ...rest] = [...sheaveIssues(pair), ...centerIssues(pair, center)];
  return first ? bad(first, ...rest) : good(wrapsOf(openBelt(pair, center).alpha));
}

/**
 * Center distance of a belt of given pitch length: inverse of {@link beltLength}.
 * @returns C [m]
 * @issue out-of-range — the belt is too short to go round touching sheaves
 * @source derived, root of the length equation to 1e-12
 */
export function beltCenter(pair: SheavePair, length: Length): Outcome<Length> {
  const [first, ...rest] = [...sheaveIssues(pair), ...positiveLengthIssues('length', length)];
  if (first) return bad(first, ...rest);
  const low = (pair.driverDiameter + pair.drivenDiameter) / 2;
  const shortest = openBelt(pair, low).length;
  if (length < shortest) {
    return bad({
      code: 'out-of-range',
      path: 'length',
      given: length * 1000,
      min: shortest * 1000,
      unit: 'mm',
    });
  }
  const center = findRoot((c) => openBelt(pair, c).length - length, low, length, { tolerance: TOLERANCE });
  if (!center.ok) throw new Error(`belt length must bracket the center distance: ${center.reason}`);
  return good(center.value as Length);
}

/**
 * Driven diameter that keeps a belt of fixed length taut on fixed centers, for a driver opened to a diameter.
 * @returns d2 [m]
 * @issue conflict — the driver is so large or small that no driven sheave keeps the belt taut
 * @source derived, root of the length equation in d2, which grows with it
 */
export function coupledDrivenDiameter(belt: VariableBelt, driverDiameter: Length): Outcome<Length> {
  const issues = [
    ...positiveLengthIssues('length', belt.length),
    ...positiveLengthIssues('center', belt.center),
    ...positiveLengthIssues('driverDiameter', driverDiameter),
  ];
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const driven = findRoot(
    (d) => openBelt({ driverDiameter, drivenDiameter: d as Length }, belt.center).length - belt.length,
    0,
    2 * belt.center - driverDiameter,
    { tolerance: TOLERANCE },
  );
  return driven.ok ? good(driven.value as Length) : bad(noSheave(driverDiameter));
}

/**
 * Both pitch diameters of a variable pair at a ratio, belt length and center distance fixed.
 * @param ratio i = d2/d1, > 0
 * @issue conflict — no pair of that ratio keeps the belt taut without touching
 * @source derived, length equation with d2 = i·d1
 */
export function coupledDiameters(belt: VariableBelt, ratio: number): Outcome<CoupledSheaves> {
  const issues: Issue[] = [
    ...positiveLengthIssues('length', belt.length),
    ...positiveLengthIssues('center', belt.center),
  ];
  if (!(Number.isFinite(ratio) && ratio > 0)) {
    issues.push({ code: 'out-of-range', path: 'ratio', given: ratio, above: 0, unit: '' });
  }
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const pairAt = (d: number): SheavePair => ({
    driverDiameter: d as Length,
    drivenDiameter: (ratio * d) as Length,
  });
  const largest = (2 * belt.center) / (1 + ratio);
  const driver = findRoot((d) => openBelt(pairAt(d), belt.center).length - belt.length, 0, largest, {
    tolerance: TOLERANCE,
  });
  if (!driver.ok) {
    return bad({
      code: 'conflict',
      path: 'ratio',
      reason: `no sheave pair of ratio ${ratio} keeps this belt taut`,
    });
  }
  const pair = pairAt(driver.value);
  return good({ ...pair, ratio, wraps: wrapsOf(openBelt(pair, belt.center).alpha) });
}

/**
 * How far the belt climbs for each length that one face closes: dr/dx = 1/(2·tan(β/2)).
 * @param grooveAngle β, whole angle between the faces [rad], 0 < β < π
 * @returns [m/m]
 * @source derived, right triangle of half the groove
 */
export function pitchRadiusPerTravel(grooveAngle: Angle): number {
  return 1 / (2 * Math.tan(grooveAngle / 2));
}

/**
 * The open-belt equation on plain numbers, for loops that have checked their input.
 * @returns `length` [m]; `alpha` = asin((d2 − d1)/2C) [rad]; `span` of one straight run [m]
 * @source derived
 */
export function openBelt(
  pair: SheavePair,
  center: number,
): { readonly length: number; readonly alpha: number; readonly span: number } {
  const { driverDiameter: d1, drivenDiameter: d2 } = pair;
  const rise = (d2 - d1) / 2;
  const alpha = Math.asin(rise / center);
  const span = Math.sqrt(center * center - rise * rise);
  return { length: 2 * span + (d2 * (Math.PI + 2 * alpha) + d1 * (Math.PI - 2 * alpha)) / 2, alpha, span };
}

const wrapsOf = (alpha: number): BeltWraps => ({
  driver: (Math.PI - 2 * alpha) as Angle,
  driven: (Math.PI + 2 * alpha) as Angle,
});

function sheaveIssues(pair: SheavePair): readonly Issue[] {
  return [
    ...positiveLengthIssues('diameters[0]', pair.driverDiameter),
    ...positiveLengthIssues('diameters[1]', pair.drivenDiameter),
  ];
}

function centerIssues(pair: SheavePair, center: number): readonly Issue[] {
  const path = 'centerDistance';
  if (!Number.isFinite(center))
    return [{ code: 'wrong-type', path, given: String(center), wanted: 'a length' }];
  const min = (pair.driverDiameter + pair.drivenDiameter) / 2;
  return center >= min
    ? []
    : [{ code: 'out-of-range', path, given: center * 1000, min: min * 1000, unit: 'mm' }];
}

function noSheave(driver: number): Issue {
  return {
    code: 'conflict',
    path: 'driverDiameter',
    reason: `no driven sheave keeps this belt taut when the driver is at ${(driver * 1000).toFixed(2)} mm`,
  };
}
