import type { Point3 } from '../../geometry/index.ts';
import type { StrengthCore } from './strengthCore.ts';

/** A member for the picture: where it lies, how it is used, how it moves. */
export interface MemberView {
  readonly part: string;
  readonly from: Point3;
  readonly to: Point3;
  /** Outside diameter [m]. */
  readonly outside: number;
  /** At its start and end, of the case or the worst of all [-]. */
  readonly utilization: readonly [number, number];
  /** Moved ends, displacements times the scale [m]. */
  readonly moved: readonly [Point3, Point3];
}

/** The frame under one case, or, without one, the worst use over all cases and no movement. */
export function frameView(core: StrengthCore, caseId?: string, scale = 0): readonly MemberView[] {
  const { frame, results, cases } = core;
  if (!results) return [];
  const c = cases.findIndex(({ id }) => id === caseId);
  const solution = results.solutions[c];
  const used = (k: number): number =>
    c >= 0
      ? results.utilization[c]![k]!
      : results.utilization.reduce((most, one) => Math.max(most, one[k]!), 0);
  const movedTo = (node: string, at: Point3): Point3 => {
    const i = results.assembled.nodeIndex.get(node)! * 6;
    if (!solution) return at;
    const u = solution.displacements;
    return { x: at.x + scale * u[i]!, y: at.y + scale * u[i + 1]!, z: at.z + scale * u[i + 2]! };
  };
  return frame.model.members.flatMap((member, m): MemberView[] => {
    const part = member.id.split('#')[0]!;
    const line = frame.draft.lines.get(part);
    if (!line) return [];
    const [from, to] = [frame.draft.nodes.get(member.from)!, frame.draft.nodes.get(member.to)!];
    return [
      {
        part,
        from,
        to,
        outside: line.stock.outside,
        utilization: [used(m * 2), used(m * 2 + 1)],
        moved: [movedTo(member.from, from), movedTo(member.to, to)],
      },
    ];
  });
}

/** A force of a case, for arrows on the bike [N] at [m]; forces between parts left out. */
export interface LoadArrow {
  readonly what: string;
  readonly at: Point3;
  readonly force: Point3;
}

export const loadArrows = (core: StrengthCore, caseId: string): readonly LoadArrow[] =>
  (core.cases.find(({ id }) => id === caseId)?.applied ?? []).map(({ what, at, force }) => ({
    what,
    at,
    force,
  }));

/** Largest displacement of a case over all nodes [m]. */
export function largestMovement(core: StrengthCore, caseId: string): number {
  const solution = core.results?.solutions[core.cases.findIndex(({ id }) => id === caseId)];
  if (!solution) return 0;
  let most = 0;
  for (let i = 0; i < solution.displacements.length; i += 6) {
    const [x, y, z] = [0, 1, 2].map((k) => solution.displacements[i + k]!) as [number, number, number];
    most = Math.max(most, Math.hypot(x, y, z));
  }
  return most;
}
