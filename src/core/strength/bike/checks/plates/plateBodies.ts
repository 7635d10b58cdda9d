import { distance3 } from '../../../../geometry/index.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';

/** A stiff body of the model that has plates in it. */
export interface PlateBody {
  /** `plate:id.hand` of each plate in it. */
  readonly plates: readonly string[];
  /** Stations of tubes and axles in it. */
  readonly stations: readonly string[];
}

const isPlate = (node: string): boolean => node.startsWith('plate:');

/** Stiff bodies with plates, by the node of each plate, and whose node each is that lies on no tube. */
export function plateBodies(frame: BikeFrame): {
  readonly bodies: ReadonlyMap<string, PlateBody>;
  readonly owners: ReadonlyMap<string, string>;
} {
  const { draft } = frame;
  const groups = new Map<string, string[]>();
  for (const node of draft.nodes.keys()) {
    const lead = draft.leads(node);
    const group = groups.get(lead);
    if (group) group.push(node);
    else groups.set(lead, [node]);
  }
  const bodies = new Map<string, PlateBody>();
  const owners = new Map<string, string>();
  for (const group of groups.values()) {
    const plates = group.filter((node) => isPlate(node) || node === frame.engine);
    if (plates.length === 0) continue;
    const body = { plates, stations: group.filter((node) => draft.places.has(node)) };
    for (const plate of plates) bodies.set(plate, body);
    for (const node of group) if (!draft.places.has(node)) owners.set(node, ownerOf(frame, node, plates));
  }
  return { bodies, owners };
}

/** A part hangs on the plate that is named in it, parts of a shaft on the plate of the nearest bearing, others on the nearest. */
function ownerOf(frame: BikeFrame, node: string, plates: readonly string[]): string {
  if (plates.includes(node)) return node;
  const { draft, bearings } = frame;
  const [, name, hand] = /^mass:plates\.([^.]+)(?:\.(.+))?$/.exec(node) ?? [];
  const named = plates.find(
    (plate) => plate === `plate:${name}.${hand ?? 'left'}` || plate === `plate:${name}.center`,
  );
  if (named) return named;
  const lead = draft.leads(node);
  const bearing = nearest(
    frame,
    node,
    bearings.filter((one) => one.plate !== undefined && draft.leads(one.node) === lead),
    (one) => one.node,
  );
  const holders = plates.filter((plate) => bearing && plate.startsWith(`plate:${bearing.plate}.`));
  return nearest(frame, node, holders.length > 0 ? holders : plates, (plate) => plate)!;
}

function nearest<T>(
  { draft }: BikeFrame,
  node: string,
  among: readonly T[],
  nodeOf: (one: T) => string,
): T | undefined {
  const at = draft.nodes.get(node)!;
  const away = (one: T): number => distance3(draft.nodes.get(nodeOf(one))!, at);
  return among.reduce<T | undefined>(
    (best, one) => (best === undefined || away(one) < away(best) ? one : best),
    undefined,
  );
}

/** Loads on the nodes that belong to each plate, case by case. */
export function loadsByPlate(
  cases: readonly LoadCase[],
  owners: ReadonlyMap<string, string>,
): readonly ReadonlyMap<string, readonly NodeLoad[]>[] {
  return cases.map(({ balanced }) => {
    const by = new Map<string, NodeLoad[]>();
    for (const load of balanced.loads.nodes ?? []) {
      const owner = owners.get(load.node);
      if (owner === undefined) continue;
      const list = by.get(owner);
      if (list) list.push(load);
      else by.set(owner, [load]);
    }
    return by;
  });
}
