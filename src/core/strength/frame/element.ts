import { distance3 } from '../../geometry/index.ts';
import type { Issue } from '../../quantity/index.ts';
import { type Axes, memberAxes } from './axes.ts';
import { type BeamStiffness, beamEntries, beamMatrix } from './beam.ts';
import { DIRECTIONS, type FrameMember, type FrameModel } from './model.ts';
import { condense, type Released, releasedRows } from './release.ts';

/** A member ready for sums. */
export interface FrameElement {
  readonly member: FrameMember;
  /** Indices of its nodes. */
  readonly from: number;
  readonly to: number;
  /** L [m]. */
  readonly length: number;
  readonly axes: Axes;
  /** Its stiffness in local axes, releases left aside. */
  readonly beam: BeamStiffness;
  /** What is left of it where ends are released. */
  readonly released?: Released;
}

export type ElementOutcome =
  | { readonly ok: true; readonly value: FrameElement }
  | { readonly ok: false; readonly issue: Issue };

/** Prepares a member of a model that has been checked. */
export function makeElement(
  model: FrameModel,
  indexOf: ReadonlyMap<string, number>,
  index: number,
): ElementOutcome {
  const member = model.members[index]!;
  const start = model.nodes[member.from]!;
  const end = model.nodes[member.to]!;
  const axes = memberAxes(start, end, member.up);
  if (axes === undefined) throw new Error(`member "${member.id}" has no axes`);
  const length = distance3(start, end);
  const element: FrameElement = {
    member,
    from: indexOf.get(member.from)!,
    to: indexOf.get(member.to)!,
    length,
    axes,
    beam: beamEntries(member, length),
  };
  const rows = releasedRows(member);
  if (rows.length === 0) return { ok: true, value: element };
  const released = condense(beamMatrix(element.beam), rows);
  if (released.ok) return { ok: true, value: { ...element, released: released.value } };
  const direction = DIRECTIONS[released.row % 6]!;
  const reason = `the releases let member "${member.id}" move by itself (local ${direction}): hold one of its ends`;
  return { ok: false, issue: { code: 'conflict', path: `members[${index}].releases`, reason } };
}
