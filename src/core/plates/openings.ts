import type { Point } from '../geometry/index.ts';
import { circleLoop, type Loop, polar2, slotLoop } from '../geometry/index.ts';
import { good, type Issue, type Length, mm, type Outcome, type SourceRef } from '../quantity/index.ts';
import { clearanceHole, findThread, type HoleFit } from '../standards/index.ts';
import type { OpeningPlan } from './plan.ts';

/** Slots are this much wider than the bolt, so that it slides without rattling (common practice). */
export const SLOT_PLAY: Length = mm(0.5);

interface OpeningShape {
  readonly kind: 'hole' | 'bore' | 'slot';
  readonly center: Point;
  readonly diameter: number;
  readonly travel?: number;
  readonly direction?: number;
}

/** Centers of the end arcs of an opening; both the center for a round one. */
export function openingEnds(opening: OpeningShape): readonly [Point, Point] {
  const half = (opening.travel ?? 0) / 2;
  const direction = opening.direction ?? 0;
  return [polar2(opening.center, -half, direction), polar2(opening.center, half, direction)];
}

/** Outline of the finished opening, or of one cut to another diameter. */
export function openingLoop(opening: OpeningShape, diameter: number = opening.diameter): Loop {
  if ((opening.travel ?? 0) === 0) return circleLoop(opening.center, diameter / 2);
  const [a, b] = openingEnds(opening);
  return slotLoop(a, b, diameter);
}

/** What a bolt hole needs beside its place: clearance diameter, names and source. */
export interface BoltHole {
  readonly diameter: Length;
  readonly boltDiameter: Length;
  readonly system: 'metric' | 'inch';
  readonly for: string;
  readonly thread?: string;
  readonly source: SourceRef;
}

/**
 * Clearance hole of a bolt at `path` of the plate.
 * @issue not-in-table — an unknown bolt
 * @source iso-273; asme-b18-2-8
 */
export function boltHole(bolt: string, path: string, fit: HoleFit = 'normal'): Outcome<BoltHole> {
  const hole = clearanceHole(bolt, fit);
  if (!hole.ok) return atPath(hole, path);
  const { diameter, boltDiameter, system, source } = hole.value;
  return good({ diameter, boltDiameter, system, for: `${bolt} bolt`, source });
}

/**
 * Hole to be tapped, drilled for its tap.
 * @issue not-in-table — an unknown thread
 * @source iso-2306
 */
export function tappedHole(thread: string, path: string): Outcome<BoltHole> {
  const found = findThread(thread);
  if (!found.ok) return atPath(found, path);
  const { name, tapDrill, major, system, source } = found.value;
  return good({
    diameter: tapDrill.diameter,
    boltDiameter: major,
    system,
    for: `${name} bolt`,
    thread: name,
    source,
  });
}

/** A round bolt hole as an opening. */
export const holePlan = (id: string, center: Point, hole: BoltHole): OpeningPlan => ({
  id,
  kind: 'hole',
  center,
  diameter: hole.diameter,
  for: hole.for,
  carries: 'bolt',
  system: hole.system,
  ...(hole.thread === undefined ? {} : { thread: hole.thread }),
});

/** Issues of an outcome put under a path. */
export function atPath<T>(outcome: Outcome<T>, path: string): Outcome<T> {
  if (outcome.ok) return outcome;
  const under = (issue: Issue): Issue => ({
    ...issue,
    path: issue.path === '' ? path : `${path}.${issue.path}`,
  });
  const [first, ...rest] = outcome.issues;
  return { ok: false, issues: [under(first), ...rest.map(under)] };
}
