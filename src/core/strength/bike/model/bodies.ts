import type { MassPart } from '../../../bike/index.ts';
import { sumLumps } from '../../../bike/index.ts';
import { carrierOf } from './carriers.ts';
import type { FrameDraft } from './draft.ts';
import type { CarriedBody } from './frameTypes.ts';
import type { Making, Places } from './making.ts';

/** Parts whose mass is in the lines of the model. */
const isLine = (id: string): boolean =>
  id.startsWith('tubes.') ||
  ['steering.neck', 'steering.fork', 'shafts.rearAxle', 'shafts.frontAxle'].includes(id);

/** Everything with mass that is no line of the model, wheels and rider each as one body. */
export function carriedBodies(making: Making, places: Places): CarriedBody[] {
  const { masses, draft } = making;
  const lumps = masses.parts.filter((part) => !isLine(part.id) && part.mass > 0);
  const wheel = (which: 'front' | 'rear'): CarriedBody[] => {
    const parts = lumps.filter((part) => part.body === `${which}Wheel`);
    if (parts.length === 0) return [];
    return [{ id: `${which}Wheel`, ...sumLumps(parts), carrier: { by: 'wheel', wheel: which } }];
  };
  const riderParts = lumps.filter((part) => part.body === 'rider');
  const rider: CarriedBody[] =
    riderParts.length === 0 ? [] : [{ id: 'rider', ...sumLumps(riderParts), carrier: { by: 'rider' } }];
  const rest = lumps.filter((part) => part.body === 'frame' || part.body === 'front');
  return [
    ...wheel('rear'),
    ...wheel('front'),
    ...rider,
    ...rest.flatMap((part): CarriedBody[] => {
      if (part.id === 'seating.pegs') return pegBodies(part, places, draft);
      const carrier = carrierOf(making, places, part);
      return [{ id: part.id, mass: part.mass, center: part.center, inertia: part.inertia, carrier }];
    }),
  ];
}

function pegBodies(part: MassPart, places: Places, draft: FrameDraft): CarriedBody[] {
  return places.pegs.map((node, i) => ({
    id: `${part.id}.${i === 0 ? 'left' : 'right'}`,
    mass: part.mass / 2,
    center: draft.nodes.get(node)!,
    inertia: [0, 0, 0, 0, 0, 0],
    carrier: { by: 'node', node },
  }));
}

/** Lumps for vibration; the static loads take the bodies themselves. */
export function addLump(draft: FrameDraft, body: CarriedBody, places: Places): void {
  const { carrier, mass } = body;
  if (carrier.by === 'node') draft.addMass(carrier.node, mass, body.inertia);
  else if (carrier.by === 'spread')
    for (const node of carrier.nodes) draft.addMass(node, mass / carrier.nodes.length);
  else if (carrier.by === 'wheel')
    for (const node of places[carrier.wheel].hub) draft.addMass(node, mass / 2);
}
