import { bad, good, type Issue, nearestName, type Outcome } from '../quantity/index.ts';
import type { Build, Placement } from './schema/index.ts';

/** A named point that is given by a placement. */
export interface PlacementStep {
  readonly name: string;
  /** Path of the placement in the file. */
  readonly path: string;
  readonly placement: Placement;
}

/** Datums that follow from wheels and steering alone. */
const FIXED_DATUMS = ['origin', 'rearAxle', 'frontAxle', 'neckBottom', 'neckTop'] as const;
/** Both names of the engine's shaft; it follows from the engine base and the engine's own sizes. */
const ENGINE_SHAFT: readonly string[] = ['engineShaft', 'engine'];
/** Shafts that no placement gives. */
const GIVEN_SHAFTS: readonly string[] = ['engine', 'rearAxle', 'frontAxle'];
/** Ending of a mirror image's name. */
const MIRRORED = '.right';

/**
 * Order in which the named points of a build can be found: engine base, shafts and nodes, each after the points
 * that it is given from.
 * @issue unknown-name — a point starts from or moves toward a name that nothing has
 * @issue conflict — points given from each other in a circle
 * @source derived, topological order
 */
export function placementOrder(build: Build): Outcome<readonly PlacementStep[]> {
  const byName = stepsByName(build);
  const known = [...FIXED_DATUMS, ...ENGINE_SHAFT, ...byName.keys()];
  const { order, circles } = sorted(byName);
  const [first, ...more] = [...[...byName.values()].flatMap((step) => unknownNames(step, known)), ...circles];
  return first ? bad(first, ...more) : good(order);
}

/** One issue for each circle of points that are given from each other, at the point where it closes. */
export const placementCircles = (build: Build): readonly Issue[] => sorted(stepsByName(build)).circles;

/** Name of the point that a reference is, or is the mirror image of. */
export const originalName = (reference: string): string =>
  reference.endsWith(MIRRORED) ? reference.slice(0, -MIRRORED.length) : reference;

function stepsByName(build: Build): ReadonlyMap<string, PlacementStep> {
  const shafts = Object.entries(build.driveline.shafts).flatMap(([name, { at }]): PlacementStep[] =>
    at && !GIVEN_SHAFTS.includes(name) ? [{ name, path: `driveline.shafts.${name}.at`, placement: at }] : [],
  );
  const nodes = Object.entries(build.frame.nodes).map(
    ([name, placement]): PlacementStep => ({ name, path: `frame.nodes.${name}`, placement }),
  );
  const base = { name: 'engineBase', path: 'engine.place', placement: build.engine.place };
  return new Map([base, ...shafts, ...nodes].map((step) => [step.name, step]));
}

function unknownNames({ path, placement }: PlacementStep, known: readonly string[]): Issue[] {
  const references: readonly (readonly [string, string])[] = [
    ['from', placement.from],
    ...(placement.along ? [['along.toward', placement.along.toward] as const] : []),
  ];
  return references.flatMap(([field, given]): Issue[] => {
    if (known.includes(originalName(given))) return [];
    const nearest = nearestName(given, known);
    const wanted = 'datum or node';
    return [
      { code: 'unknown-name', path: `${path}.${field}`, given, wanted, ...(nearest ? { nearest } : {}) },
    ];
  });
}

/** Depth first: a point that is met again while it is still being found lies on a circle. */
function sorted(byName: ReadonlyMap<string, PlacementStep>): {
  readonly order: readonly PlacementStep[];
  readonly circles: readonly Issue[];
} {
  const order: PlacementStep[] = [];
  const circles: Issue[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (reference: string, trail: readonly string[]): void => {
    const original = originalName(reference);
    const name = ENGINE_SHAFT.includes(original) ? 'engineBase' : original;
    const step = byName.get(name);
    if (!step || state.get(name) === 'done') return;
    if (state.get(name) === 'open') {
      const circle = [...trail.slice(trail.indexOf(name)), name].join(' → ');
      const reason = `points given from each other in a circle: ${circle}`;
      circles.push({ code: 'conflict', path: step.path, reason });
      return;
    }
    state.set(name, 'open');
    const { from, along } = step.placement;
    for (const next of along ? [from, along.toward] : [from]) visit(next, [...trail, name]);
    state.set(name, 'done');
    order.push(step);
  };
  for (const name of byName.keys()) visit(name, []);
  return { order, circles };
}
