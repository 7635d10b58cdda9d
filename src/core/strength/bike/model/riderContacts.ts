import { distance3, type Point3 } from '../../../geometry/index.ts';
import { hangNodes } from './contact.ts';
import { hang } from './hang.ts';
import type { Making } from './making.ts';

/** Seat mounts, pegs, grips and stand: where the rider and the ground meet the frame. */
export function addContacts(making: Making, upperClamp: string) {
  const { bike, draft } = making;
  const { places } = bike.layout;
  const mirror = (point: Point3): Point3 => ({ ...point, y: -point.y });
  const peg = draft.point('peg.left', places.peg);
  const pegRight = draft.point('peg.right', mirror(places.peg));
  holdBy(making, 'peg-tab', peg, 'left');
  holdBy(making, 'peg-tab', pegRight, 'right');
  const grips = [
    draft.point('grip.left', places.grip),
    draft.point('grip.right', mirror(places.grip)),
  ] as const;
  draft.tie(upperClamp, ...grips);
  const stand = places.stand ? draft.point('stand', places.stand) : undefined;
  if (stand) holdBy(making, 'stand-tab', stand, 'left');
  return {
    seats: seatNodes(making),
    pegs: [peg, pegRight] as const,
    grips,
    ...(stand ? { stand } : {}),
  };
}

/** By the tab of that recipe and hand, or the nearest tube. */
function holdBy(making: Making, recipe: string, node: string, hand: 'left' | 'right'): void {
  const { draft, patterns, plates } = making;
  const tab = patterns
    .filter((pattern) => pattern.recipe === recipe)
    .map((pattern) => plates.get(`${pattern.id}.${hand}`))
    .filter((held) => held !== undefined)
    .sort(
      (a, b) =>
        distance3(draft.nodes.get(a)!, draft.nodes.get(node)!) -
        distance3(draft.nodes.get(b)!, draft.nodes.get(node)!),
    )[0];
  if (tab) draft.tie(tab, node);
  else hang(making, node, node, making.flaws);
}

/** The seat rests on its mounts like a plank on two trestles; without mounts on the tubes below it. */
function seatNodes(making: Making): { readonly node: string; readonly weight: number }[] {
  const { bike, draft, frameLines, patterns, plates, flaws } = making;
  const { seat } = bike.layout.places;
  const mount = (recipe: string) =>
    patterns.filter((one) => one.recipe === recipe).map(({ id }) => plates.get(`${id}.center`))[0];
  const [front, rear] = [mount('seat-mount-front'), mount('seat-mount-rear')];
  if (front && rear) {
    const [a, b] = [draft.nodes.get(front)!.x, draft.nodes.get(rear)!.x];
    const share = Math.min(Math.max((seat.x - b) / (a - b), 0.05), 0.95);
    return [
      { node: front, weight: share },
      { node: rear, weight: 1 - share },
    ];
  }
  const contact = hangNodes(draft, frameLines, seat, 0.1);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: 'seat', reason: 'there is no tube to hold it' });
    return [];
  }
  return contact.nodes.map((node) => ({ node, weight: 1 / contact.nodes.length }));
}
