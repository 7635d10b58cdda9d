import type { Point3 } from '../../src/core/geometry/index.ts';
import type { Outcome } from '../../src/core/quantity/index.ts';
import {
  type AssembledFrame,
  assembleFrame,
  DIRECTIONS,
  type FrameLoads,
  type FrameMember,
  type FrameModel,
  type FrameSolution,
  solveFrame,
} from '../../src/core/strength/index.ts';

/** A member without its name and ends. */
export type Section = Omit<FrameMember, 'id' | 'from' | 'to'>;

/** A steel tube of about 25 × 2 mm with unlike second moments, so that a swap of axes shows [SI]. */
export const SECTION: Section = {
  youngsModulus: 2e11,
  shearModulus: 8e10,
  area: 1.5e-4,
  secondMomentY: 1e-8,
  secondMomentZ: 2.5e-8,
  torsionConstant: 2e-8,
};

export const ALL = DIRECTIONS;

export function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

/** Points on a curve joined by members: node `name0` to `nameN`, member `name0` from node 0 to 1. */
export function chain(
  name: string,
  count: number,
  at: (t: number) => Point3,
  section: Section,
): Pick<FrameModel, 'nodes' | 'members'> {
  const nodes = Object.fromEntries(
    Array.from({ length: count + 1 }, (_, i) => [`${name}${i}`, at(i / count)]),
  );
  const members = Array.from({ length: count }, (_, i) => ({
    ...section,
    id: `${name}${i}`,
    from: `${name}${i}`,
    to: `${name}${i + 1}`,
  }));
  return { nodes, members };
}

/** A straight line of members along X from the origin; without another up, local axes are the global ones. */
export const line = (count: number, length: number, section: Section) =>
  chain('n', count, (t) => ({ x: t * length, y: 0, z: 0 }), { up: { x: 0, y: 1, z: 0 }, ...section });

export const assembled = (model: FrameModel): AssembledFrame => must(assembleFrame(model));

export interface Answer extends FrameSolution {
  readonly frame: AssembledFrame;
  readonly at: (node: string) => number[];
  readonly reaction: (node: string) => number[];
  readonly member: (id: string) => number[];
}

/** Solves one load case and answers by name. */
export function answer(model: FrameModel, loads: FrameLoads): Answer {
  const frame = assembled(model);
  const [solution] = must(solveFrame(frame, [loads]));
  if (solution === undefined) throw new Error('no solution');
  const six = (values: Float64Array, node: string) => {
    const index = frame.nodeIndex.get(node);
    if (index === undefined) throw new Error(`no node ${node}`);
    return [...values.subarray(index * 6, index * 6 + 6)];
  };
  const member = (id: string) => {
    const index = frame.memberIndex.get(id);
    if (index === undefined) throw new Error(`no member ${id}`);
    return [...solution.memberForces.subarray(index * 12, index * 12 + 12)];
  };
  return {
    ...solution,
    frame,
    at: (node) => six(solution.displacements, node),
    reaction: (node) => six(solution.reactions, node),
    member,
  };
}

/** Fails unless every number agrees within `tolerance` times the largest wanted of its kind (force, moment …). */
export function expectClose(found: readonly number[], wanted: readonly number[], tolerance: number): void {
  if (found.length !== wanted.length) throw new Error(`${found.length} numbers, wanted ${wanted.length}`);
  const kinds = [0, 1].map((kind) =>
    Math.max(...wanted.map((value, i) => (Math.floor(i / 3) % 2 === kind ? Math.abs(value) : 0)), 0),
  );
  wanted.forEach((value, i) => {
    const scale = kinds[Math.floor(i / 3) % 2] || Math.max(...kinds);
    const off = Math.abs(found[i]! - value);
    if (!(off <= tolerance * scale))
      throw new Error(`number ${i} is ${found[i]}, wanted ${value}: off by ${off / scale} of ${scale}`);
  });
}
