import { distance3 } from '../../geometry/index.ts';
import { type Issue, nearestName } from '../../quantity/index.ts';
import { memberAxes } from './axes.ts';
import { DIRECTIONS, type FrameLoads, type FrameMember, type FrameModel } from './model.ts';

/** What holds names: a set of them, or a map from them. */
type Names = Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>;

/** The path of a name in the worksheet; made only where there is something to say of it. */
type Path = () => string;

/**
 * All that keeps a model from being put together, with paths as in the worksheet.
 * @source derived, references and geometry
 */
export function modelIssues(model: FrameModel): Issue[] {
  const nodes = new Set(Object.keys(model.nodes));
  const known = (path: Path, name: string) => unknownName(path, name, nodes, 'node of the frame');
  return [
    ...(nodes.size === 0 ? [{ code: 'missing', path: 'nodes', wanted: 'at least one node' } as const] : []),
    ...duplicates(
      model.members.map(({ id }) => id),
      (i) => `members[${i}].id`,
    ),
    ...duplicates(
      model.supports.map(({ node }) => node),
      (i) => `supports[${i}].node`,
    ),
    ...model.members.flatMap((member, i) => [
      ...known(() => `members[${i}].from`, member.from),
      ...known(() => `members[${i}].to`, member.to),
      ...geometryIssues(model, member, i),
    ]),
    ...model.supports.flatMap(({ node, springs }, i) => [
      ...known(() => `supports[${i}].node`, node),
      ...DIRECTIONS.filter((direction) => (springs?.[direction] ?? 0) < 0).map((direction) =>
        conflict(
          `supports[${i}].springs.${direction}`,
          'a spring must not push the node away: give 0 or more',
        ),
      ),
    ]),
    ...(model.masses ?? []).flatMap(({ node }, i) => known(() => `masses[${i}].node`, node)),
    ...linkIssues(model, known),
  ];
}

/** A model with the names that loads may refer to. */
export interface Loaded {
  readonly model: FrameModel;
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly memberIndex: ReadonlyMap<string, number>;
}

/**
 * References of a load case that do not resolve, and settlements of directions that nothing holds.
 * @source derived, references
 */
export function loadIssues({ model, nodeIndex, memberIndex }: Loaded, loads: FrameLoads): Issue[] {
  const held = new Map(model.supports.map(({ node, fixed }) => [node, fixed]));
  return [
    ...(loads.nodes ?? []).flatMap(({ node }, i) =>
      unknownName(() => `loads[${i}].node`, node, nodeIndex, 'node of the frame'),
    ),
    ...(loads.members ?? []).flatMap(({ member }, i) =>
      unknownName(() => `memberLoads[${i}].member`, member, memberIndex, 'member of the frame'),
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

const NONE: readonly Issue[] = [];

function unknownName(path: Path, given: string, names: Names, wanted: string): readonly Issue[] {
  if (names.has(given)) return NONE;
  const nearest = nearestName(given, [...names.keys()]);
  return [
    { code: 'unknown-name', path: path(), given, wanted, ...(nearest === undefined ? {} : { nearest }) },
  ];
}

function duplicates(names: readonly string[], path: (index: number) => string): Issue[] {
  const seen = new Set<string>();
  return names.flatMap((given, i): readonly Issue[] => {
    if (seen.has(given)) return [{ code: 'duplicate-name', path: path(i), given }];
    seen.add(given);
    return NONE;
  });
}

function geometryIssues({ nodes }: FrameModel, member: FrameMember, index: number): readonly Issue[] {
  const from = Object.hasOwn(nodes, member.from) ? nodes[member.from] : undefined;
  const to = Object.hasOwn(nodes, member.to) ? nodes[member.to] : undefined;
  if (from === undefined || to === undefined) return NONE;
  const path = `members[${index}]`;
  if (!(distance3(from, to) > 0))
    return [conflict(path, `member "${member.id}" has no length: its two nodes are at one place`)];
  if (member.up !== undefined && memberAxes(from, to, member.up) === undefined)
    return [conflict(`${path}.up`, `up of member "${member.id}" runs along it and leaves its turn open`)];
  return NONE;
}

function linkIssues(model: FrameModel, known: (path: Path, name: string) => readonly Issue[]): Issue[] {
  const links = model.links ?? [];
  const supported = new Set(model.supports.filter(({ fixed }) => fixed.length > 0).map(({ node }) => node));
  const masterOf = new Map(links.map(({ leader, follower }) => [follower, leader]));
  return [
    ...links.flatMap(({ leader, follower }, i) => [
      ...known(() => `links[${i}].leader`, leader),
      ...known(() => `links[${i}].follower`, follower),
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
    ...duplicates(
      links.map(({ follower }) => follower),
      (i) => `links[${i}].follower`,
    ),
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
