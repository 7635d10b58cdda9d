import type { MassPart } from '../../../bike/index.ts';
import { hangNodes } from './contact.ts';
import type { Carrier } from './frameTypes.ts';
import type { Making, Places } from './making.ts';

/** Half the distance of the straps of a body between two tubes [m]. @source practice */
const HANG_SPREAD = 0.05;

/** What holds a part: its shaft, plate, fork or engine, else the tubes nearest to it. */
export function carrierOf(making: Making, places: Places, part: MassPart): Carrier {
  const { build, draft, frameLines, flaws, plates } = making;
  const to = (holder: string): Carrier => {
    const node = draft.point(`mass:${part.id}`, part.center);
    draft.tie(holder, node);
    return { by: 'node', node };
  };
  if (part.id === 'engine' || part.id.startsWith('stacks.engine') || part.id.startsWith('driveline.'))
    return to(places.engine);
  if (part.id.startsWith('plates.')) {
    const [name, hand] = part.id.slice('plates.'.length).split('.') as [string, string | undefined];
    const keys = hand ? [`${name}.${hand}`] : ['left', 'center', 'right'].map((one) => `${name}.${one}`);
    const held = keys.map((key) => plates.get(key)).find((node) => node !== undefined);
    return to(held ?? places.engine);
  }
  const stack = build.stacks[part.id.split('.')[1] ?? ''];
  const shaft = part.id.startsWith('shafts.') ? part.id.slice('shafts.'.length) : stack?.shaft;
  if (shaft === 'rearAxle') return to(places.rear.held[part.center.y > 0 ? 0 : 1]);
  if (shaft === 'frontAxle') return to(places.front.held[part.center.y > 0 ? 0 : 1]);
  if (shaft !== undefined) {
    const near = [...places.bearings]
      .filter(({ node }) => node.startsWith(`bearing:${shaft}.`))
      .sort((a, b) => Math.abs(a.y - part.center.y) - Math.abs(b.y - part.center.y))[0];
    if (near) return to(near.node);
  }
  if (part.id === 'brakes.front.caliper') return to(places.legs[part.center.y > 0 ? 0 : 1]);
  if (part.id === 'brakes.rear.caliper') return to(places.rear.held[part.center.y > 0 ? 0 : 1]);
  if (part.body === 'front') return to(places.upperClamp);
  if (part.id === 'seating.seat' && places.seats[0]) return to(places.seats.at(-1)!.node);
  const contact = hangNodes(draft, frameLines, part.center, HANG_SPREAD);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: part.id, reason: 'there is no tube to hold it' });
    return to(places.engine);
  }
  return contact.nodes.length >= 4 ? { by: 'spread', nodes: contact.nodes } : to(contact.nodes[0]!);
}
