import { findRoot } from '../numerics/index.ts';
import type { Angle, Issue, Length, Outcome } from '../quantity/index.ts';
import { bad, good } from '../quantity/index.ts';
import { pitchDiameter } from './sprocket.ts';
import { positiveLengthIssues, teethIssues } from './teeth.ts';

/** Two sprockets of one chain. */
export interface SprocketPair {
  /** p, chain pitch [m], > 0. */
  readonly pitch: Length;
  /** N1, driver teeth, whole, ≥ 6. */
  readonly driverTeeth: number;
  /** N2, driven teeth, whole, ≥ 6. */
  readonly drivenTeeth: number;
}

export interface Wraps {
  /** Angle over which the chain lies on the driver [rad]. */
  readonly driver: Angle;
  /** Angle over which the chain lies on the driven sprocket [rad]. */
  readonly driven: Angle;
}

/** Center distance is solved to this [m]: far below any length that can be set. */
const CENTER_TOLERANCE = 1e-14;
/** Longer chains than this are a slip of the pen. */
const MAX_LINKS = 10000;
const MAX_CENTER = 100;

/**
 * Chain length at a center distance, in pitches, with the wrapped part counted in pitches round the teeth:
 * L = 2·(C/p)·cos α + N1·(π − 2α)/2π + N2·(π + 2α)/2π, sin α = (R2 − R1)/C, R = p/(2·sin(π/N)).
 * @param center C [m], from touching pitch circles to 100 m
 * @returns L, number of pitches (links), not rounded
 * @issue out-of-range — center shorter than the sum of the pitch radii
 * @source machinerys-handbook-31, chain length · wrap in whole pitches: derived
 */
export function linksForCenter(pair: SprocketPair, center: Length): Outcome<number> {
  const issues = [...pairIssues(pair), ...centerIssues(pair, center)];
  const [first, ...rest] = issues;
  return first ? bad(first, ...rest) : good(wrappedLinks(pair, center).links);
}

/**
 * Center distance that a chain of so many links wants when taut: inverse of {@link linksForCenter}.
 * @param links L, > 0, need not be whole (a worn chain counts as a longer one)
 * @returns C [m]
 * @issue out-of-range — fewer links than reach round touching pitch circles
 * @source derived, root of the length equation to 1e-12
 */
export function centerForLinks(pair: SprocketPair, links: number): Outcome<Length> {
  const issues = pairIssues(pair);
  const [first, ...rest] = issues;
  if (first) return bad(first, ...rest);
  const low = touchingCenter(pair);
  const fewest = wrappedLinks(pair, low).links;
  if (!Number.isFinite(links)) {
    return bad({ code: 'wrong-type', path: 'links', given: String(links), wanted: 'a number of links' });
  }
  if (links < fewest || links > MAX_LINKS) {
    return bad({
      code: 'out-of-range',
      path: 'links',
      given: links,
      min: fewest,
      max: MAX_LINKS,
      unit: 'links',
    });
  }
  const center = findRoot((c) => wrappedLinks(pair, c).links - links, low, low + (links * pair.pitch) / 2, {
    tolerance: CENTER_TOLERANCE,
  });
  if (!center.ok) throw new Error(`chain length must bracket the center distance: ${center.reason}`);
  return good(center.value as Length);
}

/**
 * Wrap of each sprocket: π ∓ 2α with sin α = (R2 − R1)/C.
 * @issue out-of-range — center shorter than the sum of the pitch radii
 * @source derived, tangents of the pitch circles
 */
export function wrapAngles(pair: SprocketPair, center: Length): Outcome<Wraps> {
  const [first, ...rest] = [...pairIssues(pair), ...centerIssues(pair, center)];
  if (first) return bad(first, ...rest);
  const alpha = wrappedLinks(pair, center).alpha;
  return good({ driver: (Math.PI - 2 * alpha) as Angle, driven: (Math.PI + 2 * alpha) as Angle });
}

/** Shortest center distance that is computed: the pitch circles touch [m]. */
export function touchingCenter(pair: SprocketPair): Length {
  return ((pitchDiameter(pair.pitch, pair.driverTeeth) + pitchDiameter(pair.pitch, pair.drivenTeeth)) /
    2) as Length;
}

/**
 * The length equation on plain numbers, for loops that have checked their input.
 * @returns `links` L; `slope` dL/dC [1/m]; `alpha` [rad], positive when the driven sprocket is larger;
 * `span` length of one straight run, C·cos α [m]
 * @source derived
 */
export function wrappedLinks(
  pair: SprocketPair,
  center: number,
): { readonly links: number; readonly slope: number; readonly alpha: number; readonly span: number } {
  const { pitch, driverTeeth, drivenTeeth } = pair;
  const rise = (pitchDiameter(pitch, drivenTeeth) - pitchDiameter(pitch, driverTeeth)) / 2;
  const alpha = Math.asin(rise / center);
  const span = Math.sqrt(center * center - rise * rise);
  const wrapped = (driverTeeth + drivenTeeth) / 2 + ((drivenTeeth - driverTeeth) * alpha) / Math.PI;
  const slope =
    2 / (pitch * Math.cos(alpha)) - ((drivenTeeth - driverTeeth) * Math.tan(alpha)) / (Math.PI * center);
  return { links: (2 * span) / pitch + wrapped, slope, alpha, span };
}

export function pairIssues(pair: SprocketPair): readonly Issue[] {
  return [
    ...positiveLengthIssues('pitch', pair.pitch),
    ...teethIssues('driverTeeth', pair.driverTeeth),
    ...teethIssues('drivenTeeth', pair.drivenTeeth),
  ];
}

function centerIssues(pair: SprocketPair, center: number): readonly Issue[] {
  const path = 'centerDistance';
  if (!Number.isFinite(center))
    return [{ code: 'wrong-type', path, given: String(center), wanted: 'a length' }];
  const min = touchingCenter(pair);
  if (center >= min && center <= MAX_CENTER) return [];
  return [
    { code: 'out-of-range', path, given: center * 1000, min: min * 1000, max: MAX_CENTER * 1000, unit: 'mm' },
  ];
}
