import { distance3 } from '../../geometry/index.ts';
import { type Issue, nearestName } from '../../quantity/index.ts';
import { memberAxes } from './axes.ts';
import { DIRECTIONS, type FrameLoads, type FrameMember, type FrameModel } from './model.ts';

/**
 * All that keeps a model from being put together, with paths as in the worksheet.
 * @source derived, references and geometry
 */
export function modelIssues(model: FrameModel): Issue[] {
  const nodes = new Set(Object.keys(model.nodes));
  const known = (path: string, name: string) => unknownName(path, name, nodes, 'node of the frame');
  return [
    ...(nodes.size === 0 ? [{ code: 'missing', path: 'nodes', wanted: 'at least one node' } as const] : []),
    ...duplicates(model.members.map(({ id }, i) => [`members[${i}].id`, id])),
    ...duplicates(model.supports.map(({ node }, i) => [`supports[${i}].node`, node])),
    ...model.members.flatMap((member, i) => [
      ...known(`members[${i}].from`, member.from),
      ...known(`members[${i}].to`, member.to),
      ...geometryIssues(model, member, `members[${i}]`),
    ]),
    ...model.supports.flatMap(({ node, springs }, i) => [
      ...known(`supports[${i}].node`, node),
      ...DIRECTIONS.filter((direction) => (springs?.[direction] ?? 0) < 0).map((direction) =>
        conflict(
          `supports[${i}].springs.${direction}`,
          'a spring must not push the node away: give 0 or more',
        ),
      ),
    ]),
    ...(model.masses ?? []).flatMap(({ node }, i) => known(`masses[${i}].node`, node)),
    ...linkIssues(model, known),
  ];
}

/**
 * References of a load case that do not resolve, and settlements of directions that nothing holds.
 * @source derived, references
 */
export function loadIssues(model: FrameModel, loads: FrameLoads): Issue[] {
  const nodes = new Set(Object.keys(model.nodes));
  const members = new Set(model.members.map(({ id }) => id));
  const held = new Map(model.supports.map(({ node, fixed }) => [node, fixed]));
  return [
    ...(loads.nodes ?? []).flatMap(({ node }, i) =>
      unknownName(`loads[${i}].node`, node, nodes, 'node of the frame'),
    ),
    ...(loads.members ?? []).flatMap(({ member }, i) =>
      unknownName(`memberLoads[${i}].member`, member, members, 'member of the frame'),
    ),
    ...(loads.settlements ?? []).flatMap(({ node, by }, i) =>
      DIRECTIONS.filter((direction) => by[direction] !== undefined)
        .filter((direction) => !held.get(node)?.includes(direction))
        .map((direction) =>
          conflict(
            `settlements[${i}].by.${direction}`,
            `${direction} of "${node}" is not fixed, so it can't be moved`,
          ),
        ),
    ),
  ];
}

/** Two lists of loads on the same places are one case: they add up. */
const conflict = (path: string, reason: string): Issue => ({ code: 'conflict', path, reason });

function unknownName(path: string, given: string, names: ReadonlySet<string>, wanted: string): Issue[] {
  if (names.has(given)) return [];
  const nearest = nearestName(given, [...names]);
  return [{ code: 'unknown-name', path, given, wanted, ...(nearest === undefined ? {} : { nearest }) }];
}

function duplicates(named: readonly (readonly [string, string])[]): Issue[] {
  const seen = new Set<string>();
  return named.flatMap(([path, given]): Issue[] => {
    if (seen.has(given)) return [{ code: 'duplicate-name', path, given }];
    seen.add(given);
    return [];
  });
}

function geometryIssues({ nodes }: FrameModel, member: FrameMember, path: string): Issue[] {
  const from = Object.hasOwn(nodes, member.from) ? nodes[member.from] : undefined;
  const to = Object.hasOwn(nodes, member.to) ? nodes[member.to] : undefined;
  if (from === undefined || to === undefined) return [];
  if (!(distance3(from, to) > 0))
    return [conflict(path, `member "${member.id}" has no length: its two nodes are at one place`)];
  if (memberAxes(from, to, member.up) === undefined)
    return [conflict(`${path}.up`, `up of member "${member.id}" runs along it and leaves its turn open`)];
  return [];
}

function linkIssues(model: FrameModel, known: (path: string, name: string) => Issue[]): Issue[] {
  const links = model.links ?? [];
  const supported = new Set(model.supports.filter(({ fixed }) => fixed.length > 0).map(({ node }) => node));
  const masterOf = new Map(links.map(({ leader, follower }) => [follower, leader]));
  return [
    ...links.flatMap(({ leader, follower }, i) => [
      ...known(`links[${i}].leader`, leader),
      ...known(`links[${i}].follower`, follower),
      ...(supported.has(follower)
        ? [
            conflict(
              `links[${i}].follower`,
              `"${follower}" is moved by "${leader}" and fixed by a support as well`,
            ),
          ]
        : []),
      ...(runsInCircle(masterOf, follower)
        ? [conflict(`links[${i}]`, `the links from "${follower}" lead back to it`)]
        : []),
    ]),
    ...duplicates(links.map(({ follower }, i) => [`links[${i}].follower`, follower])),
  ];
}

function runsInCircle(masterOf: ReadonlyMap<string, string>, from: string): boolean {
  let node: string | undefined = masterOf.get(from);
  for (let steps = 0; node !== undefined && steps <= masterOf.size; steps++) {
    if (node === from) return true;
    node = masterOf.get(node);
  }
  return false;
}
