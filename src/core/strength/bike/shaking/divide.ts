import { add3, distance3, type Point3, scale3 } from '../../../geometry/index.ts';
import type { FrameLoads, FrameMember, FrameModel, MemberLoad } from '../../frame/index.ts';

/** A model with its long members cut up, and how to follow what was said of the whole ones. */
export interface DividedModel {
  readonly model: FrameModel;
  /** Member and node that a new node lies in; nodes of the first model are not listed. */
  readonly within: ReadonlyMap<string, string>;
  /** Loads on whole members, on all of their parts. */
  readonly loadsOf: (loads: FrameLoads) => FrameLoads;
}

/**
 * Cuts members to at most a length, so that waves shorter than a tube can be seen; masses, links and supports stay.
 * @param longest [m], > 0
 */
export function divideMembers(model: FrameModel, longest: number): DividedModel {
  const nodes: Record<string, Point3> = { ...model.nodes };
  const within = new Map<string, string>();
  const partsOf = new Map<string, readonly string[]>();
  const members = model.members.flatMap((member): readonly FrameMember[] => {
    const [from, to] = [model.nodes[member.from]!, model.nodes[member.to]!];
    const count = Math.ceil(distance3(from, to) / longest - 1e-9);
    if (count < 2) return [member];
    const names = [member.from];
    for (let k = 1; k < count; k++) {
      const name = `${member.id}/${k}`;
      nodes[name] = add3(scale3(from, 1 - k / count), scale3(to, k / count));
      within.set(name, member.id);
      names.push(name);
    }
    names.push(member.to);
    const parts = names.slice(1).map((end, k) => partOf(member, k, count, names[k]!, end));
    partsOf.set(
      member.id,
      parts.map(({ id }) => id),
    );
    return parts;
  });
  const spread = (load: MemberLoad): readonly MemberLoad[] =>
    partsOf.get(load.member)?.map((part) => ({ ...load, member: part })) ?? [load];
  return {
    model: { ...model, nodes, members },
    within,
    loadsOf: (loads) => ({ ...loads, ...(loads.members ? { members: loads.members.flatMap(spread) } : {}) }),
  };
}

/** Only the outer parts keep what their end is released from. */
function partOf(member: FrameMember, k: number, count: number, from: string, to: string): FrameMember {
  const { releases, ...rest } = member;
  const kept = {
    ...(k === 0 && releases?.from ? { from: releases.from } : {}),
    ...(k === count - 1 && releases?.to ? { to: releases.to } : {}),
  };
  return {
    ...rest,
    id: `${member.id}~${k}`,
    from,
    to,
    ...(Object.keys(kept).length > 0 ? { releases: kept } : {}),
  };
}
