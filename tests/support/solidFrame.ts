import { readFileSync } from 'node:fs';
import { distance3, type Point3 } from '../../src/core/geometry/index.ts';
import { readBuild, solve } from '../../src/core/index.ts';
import {
  bikeFrame,
  DIRECTIONS,
  type FrameLoads,
  type FrameMember,
  type FrameModel,
  loadSettings,
} from '../../src/core/strength/index.ts';

/** The elastic modulus of all bars [Pa]; Poisson 0, as bricks at stiff joints want: see frameBricks.test.ts. */
export const ELASTIC = 2e11;
/** The node that is held still. */
export const HELD = 'neck@0.0';

export interface SolidFrame {
  readonly model: FrameModel;
  /** Nodes that move as one, leader first. */
  readonly bodies: readonly (readonly string[])[];
  readonly loads: NonNullable<FrameLoads['nodes']>;
}

/**
 * The frame of a demo build, every member of it: tubes split at joints, bends as chords, neck, stem on its bearings,
 * legs, axles; plates, clamps and engine as stiff bodies. Tubes are replaced by square bars of the same second moment,
 * since the solver's own pipes are bricks with another rule of integration.
 */
export function solidDemo(name: 'light' | 'heavy'): SolidFrame {
  const build = readBuild(readFileSync(`demo/${name}.build.json`, 'utf8'));
  if (!build.ok) throw new Error('the demo does not read');
  const solution = solve(build.value);
  const frame = bikeFrame(solution, loadSettings(solution.build));
  const members = frame.model.members.map((member) => squareBar(member));
  const [left, right] = frame.wheels.rear.hub;
  const [frontLeft, frontRight] = frame.wheels.front.hub;
  const loads: SolidFrame['loads'] = [
    { node: left, force: { x: 0, y: 100, z: 500 } },
    { node: right, force: { x: 200, y: 0, z: 400 } },
    { node: frame.engine, force: { x: -150, y: 60, z: -300 } },
    { node: frontLeft, force: { x: -100, y: 0, z: 80 } },
    { node: frontRight, force: { x: -60, y: 30, z: 120 } },
  ];
  const used = new Set([...members.flatMap(({ from, to }) => [from, to]), ...loads.map(({ node }) => node)]);
  const leader = new Map((frame.model.links ?? []).map(({ leader, follower }) => [follower, leader]));
  const groups = new Map<string, string[]>();
  for (const id of used) {
    const lead = leader.get(id) ?? id;
    groups.set(lead, [...(groups.get(lead) ?? []), id]);
  }
  const bodies = [...groups.values()].map((group) =>
    group.toSorted((a, b) => Number(b === HELD) - Number(a === HELD)),
  );
  const model: FrameModel = {
    nodes: Object.fromEntries(bodies.flatMap((body) => snapped(body, frame.model.nodes))),
    members,
    links: bodies.flatMap(([leader, ...followers]) =>
      followers.map((follower) => ({ leader: leader!, follower })),
    ),
    supports: [{ node: HELD, fixed: DIRECTIONS }],
  };
  return { model, bodies, loads };
}

/** Nodes of a stiff body this near to another are put at its place: no solver takes bars that short [m]. */
const NEAR = 3e-3;

function snapped(body: readonly string[], nodes: FrameModel['nodes']): (readonly [string, Point3])[] {
  const kept: Point3[] = [];
  return body.map((id) => {
    const at = nodes[id]!;
    const there = kept.find((other) => distance3(at, other) < NEAR);
    if (there === undefined) kept.push(at);
    return [id, there ?? at] as const;
  });
}

function squareBar({ id, from, to, secondMomentZ, releases }: FrameMember): FrameMember {
  const area = Math.sqrt(12 * secondMomentZ);
  return {
    ...{ id, from, to, area, secondMomentZ, secondMomentY: secondMomentZ },
    // One brick across cannot warp in twist: its constant is the polar moment.
    torsionConstant: 2 * secondMomentZ,
    shearAreas: [area, area],
    youngsModulus: ELASTIC,
    shearModulus: ELASTIC / 2,
    ...(releases ? { releases } : {}),
  };
}
