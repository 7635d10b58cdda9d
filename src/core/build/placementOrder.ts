import { bad, good, type Issue, nearestName, type Outcome } from '../quantity/index.ts';
import type { Build, Placement } from './schema/index.ts';

/** A named point that is given by a placement, in an order in which each is found after all that it is given from. */
export interface PlacementStep {
  readonly name: string;
  /** Path of the placement in the file. */
  readonly path: string;
  readonly placement: Placement;
}

/** Datums that follow from wheels and steering alone. */
const FIXED_DATUMS = ['origin', 'rearAxle', 'frontAxle', 'neckBottom', 'neckTop'] as const;
/** Follows from engineBase and the engine's own sizes. */
const ENGINE_SHAFT = 'engineShaft';
/** Shafts that no placement gives. */
const GIVEN_SHAFTS: readonly string[] = ['engine', 'rearAxle', 'frontAxle'];
/** Ending of a mirror image's name. */
const MIRRORED = '.right';
/** Names that a node or a shaft may not take. */
const TAKEN: readonly string[] = [...FIXED_DATUMS, ENGINE_SHAFT, 'engineBase', 'engine'];

/**
 * Order in which the named points of a build can be found: engine base, shafts and nodes, each after the points
 * that it is given from. Every placement of the file is checked, also those that give no named point.
 * @issue unknown-name — a placement starts from or moves toward a name that nothing has
 * @issue conflict — points given from each other in a circle, `up` beside `height`, `left` beside `side`
 * @issue duplicate-name — a node or shaft called like a datum or like each other
 * @issue missing — a shaft without its place
 * @source derived, topological order
 */
export function placementOrder(build: Build): Outcome<readonly PlacementStep[]> {
  const { entries, issues } = namedEntries(build);
  const byName = new Map(entries.map((entry) => [entry.name, entry] as const));
  const known = [...FIXED_DATUMS, ENGINE_SHAFT, ...byName.keys()];
  const all = [
    ...issues,
    ...[...entries, ...leafPlacements(build)].flatMap((entry) => placementIssues(entry, known)),
  ];
  const { order, circles } = sorted(byName);
  const [first, ...more] = [...all, ...circles];
  return first ? bad(first, ...more) : good(order);
}

/** Name of the point that a reference is, or is the mirror image of. */
export const originalName = (reference: string): string =>
  reference.endsWith(MIRRORED) ? reference.slice(0, -MIRRORED.length) : reference;

function namedEntries(build: Build): {
  readonly entries: readonly PlacementStep[];
  readonly issues: readonly Issue[];
} {
  const entries: PlacementStep[] = [
    { name: 'engineBase', path: 'engine.place', placement: build.engine.place },
  ];
  const issues: Issue[] = [];
  for (const [name, shaft] of Object.entries(build.driveline.shafts)) {
    if (GIVEN_SHAFTS.includes(name)) continue;
    const path = `driveline.shafts.${name}`;
    if (TAKEN.includes(name)) issues.push({ code: 'duplicate-name', path, given: name });
    else if (!shaft.at)
      issues.push({ code: 'missing', path: `${path}.at`, wanted: 'the center of the shaft' });
    else entries.push({ name, path: `${path}.at`, placement: shaft.at });
  }
  for (const [name, placement] of Object.entries(build.frame.nodes)) {
    const path = `frame.nodes.${name}`;
    if (TAKEN.includes(name) || Object.hasOwn(build.driveline.shafts, name)) {
      issues.push({ code: 'duplicate-name', path, given: name });
    } else entries.push({ name, path, placement });
  }
  return { entries, issues };
}

/** Placements of things that no other placement can start from. */
function leafPlacements(build: Build): PlacementStep[] {
  const { seat, pegs, stand } = build.seating;
  const leaf = (path: string, placement: Placement): PlacementStep => ({ name: '', path, placement });
  return [
    leaf('steering.bars.grip', build.steering.bars.grip),
    leaf('seating.seat.place', seat.place),
    leaf('seating.pegs.place', pegs.place),
    ...(stand ? [leaf('seating.stand.pivot', stand.pivot)] : []),
    ...Object.entries(build.bodies ?? {}).map(([name, body]) => leaf(`bodies.${name}.place`, body.place)),
  ];
}

function placementIssues({ path, placement }: PlacementStep, known: readonly string[]): Issue[] {
  const issues: Issue[] = [];
  const check = (field: string, given: string): void => {
    if (known.includes(originalName(given))) return;
    const nearest = nearestName(given, known);
    const wanted = 'datum, shaft or node';
    issues.push({
      code: 'unknown-name',
      path: `${path}.${field}`,
      given,
      wanted,
      ...(nearest ? { nearest } : {}),
    });
  };
  check('from', placement.from);
  if (placement.along) check('along.toward', placement.along.toward);
  if (placement.along?.toward === placement.from) {
    issues.push({
      code: 'conflict',
      path: `${path}.along.toward`,
      reason: 'this is the point that the placement starts from',
    });
  }
  if (placement.up !== undefined && placement.height !== undefined) {
    issues.push({
      code: 'conflict',
      path: `${path}.height`,
      reason: 'give either up (an offset) or height (above the ground), not both',
    });
  }
  if (placement.left !== undefined && placement.side !== undefined) {
    issues.push({
      code: 'conflict',
      path: `${path}.side`,
      reason: 'give either left (an offset) or side (from the center plane), not both',
    });
  }
  return issues;
}

/** Depth first: a point that is met again while it is still being found lies on a circle. */
function sorted(byName: ReadonlyMap<string, PlacementStep>): {
  readonly order: readonly PlacementStep[];
  readonly circles: readonly Issue[];
} {
  const order: PlacementStep[] = [];
  const circles: Issue[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (name: string, trail: readonly string[]): void => {
    const entry = byName.get(name);
    if (!entry) {
      if (name === ENGINE_SHAFT) visit('engineBase', trail);
      return;
    }
    if (state.get(name) === 'done') return;
    if (state.get(name) === 'open') {
      const circle = [...trail.slice(trail.indexOf(name)), name];
      circles.push({
        code: 'conflict',
        path: entry.path,
        reason: `points given from each other in a circle: ${circle.join(', ')}`,
      });
      return;
    }
    state.set(name, 'open');
    const { from, along } = entry.placement;
    for (const next of along ? [from, along.toward] : [from]) visit(originalName(next), [...trail, name]);
    state.set(name, 'done');
    order.push(entry);
  };
  for (const name of byName.keys()) visit(name, []);
  return { order, circles };
}
