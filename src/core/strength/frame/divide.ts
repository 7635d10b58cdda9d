import { between3, type Point3 } from '../../geometry/index.ts';
import { memberAxes } from './axes.ts';
import type { FrameLoads, FrameMember, FrameModel } from './model.ts';

export interface DividedFrame {
  readonly model: FrameModel;
  readonly loads: FrameLoads;
}

/**
 * The same frame with each member cut into pieces of one length, with its releases at its own ends and its load on each
 * piece. The nodes there were keep their names and their places in front.
 * @param pieces in each member [-], a whole number ≥ 1
 * @throws RangeError no whole number ≥ 1, or a member that does not run between two nodes of the model
 * @source derived, FRAME-16
 */
export function divideFrame(model: FrameModel, loads: FrameLoads, pieces: number): DividedFrame {
  if (!Number.isInteger(pieces) || pieces < 1) throw new RangeError('a member has one piece or more');
  const nodes = new Map<string, Point3>(Object.entries(model.nodes));
  const names = new Set(model.members.map(({ id }) => id));
  const piecesOf = new Map<string, readonly FrameMember[]>();
  for (const member of model.members) piecesOf.set(member.id, cut(member, pieces, nodes, names));
  return {
    model: { ...model, nodes: Object.fromEntries(nodes), members: [...piecesOf.values()].flat() },
    loads: {
      ...loads,
      members: (loads.members ?? []).flatMap((load) =>
        (piecesOf.get(load.member) ?? []).map(({ id }) => ({ ...load, member: id })),
      ),
    },
  };
}

/** Adds the inner nodes of one member, and the names of its pieces. */
function cut(
  member: FrameMember,
  pieces: number,
  nodes: Map<string, Point3>,
  names: Set<string>,
): readonly FrameMember[] {
  const from = nodes.get(member.from);
  const to = nodes.get(member.to);
  const axes = from && to && memberAxes(from, to, member.up);
  if (!axes) throw new RangeError(`member ${member.id} does not run between two nodes`);
  const { releases, ...whole } = member;
  // The y axis itself: rounding must not turn the pieces of a member that is all but upright.
  const up = { x: axes[3]!, y: axes[4]!, z: axes[5]! };
  const ends = Array.from({ length: pieces + 1 }, (_, i) => {
    if (i === 0) return member.from;
    if (i === pieces) return member.to;
    const id = freeName(`${member.id}·${i}`, nodes);
    nodes.set(id, between3(from, to, i / pieces));
    return id;
  });
  return Array.from({ length: pieces }, (_, i) => {
    const id = i === 0 ? member.id : freeName(`${member.id}·${i}`, names);
    names.add(id);
    const start = i === 0 ? releases?.from : undefined;
    const end = i === pieces - 1 ? releases?.to : undefined;
    const held = { ...(start ? { from: start } : {}), ...(end ? { to: end } : {}) };
    return {
      ...whole,
      id,
      from: ends[i]!,
      to: ends[i + 1]!,
      up,
      ...(start || end ? { releases: held } : {}),
    };
  });
}

function freeName(name: string, taken: { has(name: string): boolean }): string {
  let free = name;
  while (taken.has(free)) free += '·';
  return free;
}
