import { normalForces } from '../../frame/index.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame } from '../model/frameTypes.ts';
import type { FrameResults } from './frameStrength.ts';
import type { UtilizationRow } from './utilizationRow.ts';

/** A tube between two joints as a column. */
export interface MemberBuckling {
  readonly part: string;
  /** Between its joints, along the tube [m]. */
  readonly length: number;
  readonly case: string;
  /** Largest push [N] and Euler's load with hinged ends [N]. */
  readonly push: number;
  readonly critical: number;
  readonly row: UtilizationRow;
}

/** Factor that is wanted against Euler's load, for crooked tubes and bent ones. @source practice */
const WANTED = 3;

/**
 * Each stretch of a line between places where something else holds it, as a column hinged at both ends: N = π²·EI/L².
 * The worst stretch of each line is kept.
 * @source shigley-9, section 4-11, Euler column
 */
export function memberBuckling(
  frame: BikeFrame,
  cases: readonly LoadCase[],
  results: FrameResults,
): readonly MemberBuckling[] {
  const forces = results.solutions.map(normalForces);
  const groups = new Map<string, number>();
  for (const node of frame.draft.nodes.keys()) {
    const lead = frame.draft.leads(node);
    groups.set(lead, (groups.get(lead) ?? 0) + 1);
  }
  const isHeld = (node: string): boolean => (groups.get(frame.draft.leads(node)) ?? 0) > 1;
  const worst = new Map<string, MemberBuckling>();
  let run: number[] = [];
  const { members } = frame.model;
  members.forEach((member, m) => {
    const line = member.id.split('#')[0]!;
    if (!frame.draft.lines.has(line)) return;
    run.push(m);
    const next = members[m + 1];
    const isLast = next?.id.split('#')[0] !== line;
    if (!isLast && !isHeld(member.to)) return;
    const found = columnOf(line, run, { frame, cases, results, forces });
    run = [];
    if (found && found.row.utilization > (worst.get(line)?.row.utilization ?? -1)) worst.set(line, found);
  });
  return [...worst.values()];
}

function columnOf(
  part: string,
  run: readonly number[],
  of: {
    readonly frame: BikeFrame;
    readonly cases: readonly LoadCase[];
    readonly results: FrameResults;
    readonly forces: readonly Float64Array[];
  },
): MemberBuckling | undefined {
  const { elements } = of.results.assembled;
  const length = run.reduce((sum, m) => sum + elements[m]!.length, 0);
  const { youngsModulus, secondMomentY } = elements[run[0]!]!.member;
  const critical = (Math.PI ** 2 * youngsModulus * secondMomentY) / length ** 2;
  const pushes = of.forces.map((force) => Math.max(...run.map((m) => -force[m]!)));
  const push = Math.max(...pushes);
  const one = of.cases[pushes.indexOf(push)];
  if (!(push > 0) || !one) return undefined;
  const limit = critical / WANTED;
  return {
    part,
    length,
    case: one.id,
    push,
    critical,
    row: {
      part,
      case: one.id,
      where: `${Math.round(length * 1000)} mm between joints`,
      check: 'buckling',
      quantity: 'push against a third of the buckling load',
      value: push,
      limit,
      kind: 'force',
      utilization: push / limit,
      source: { key: 'shigley-9', where: 'section 4-11, Euler column with hinged ends' },
    },
  };
}
