import { platePoint } from './contact.ts';
import type { PlacedBearing } from './frameTypes.ts';
import { hang } from './hang.ts';
import type { Making } from './making.ts';

/** A bearing further from every plate of its shaft than this hangs in the air [m]. @source practice */
const BEARING_REACH = 0.04;

/** Bearings of shafts between engine and wheel, each with the plate beside it. */
export function addBearings(making: Making): PlacedBearing[] {
  const { build, bike, draft, patterns, plates, flaws } = making;
  const holders = patterns.flatMap((pattern) => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support') return [];
    return pattern.placed.map(({ hand }, i) => ({
      id: pattern.id,
      shaft: entry.shaft ?? 'countershaft',
      y: platePoint(pattern, i, { x: 0, y: 0 }).y,
      node: plates.get(`${pattern.id}.${hand}`)!,
    }));
  });
  return Object.values(bike.stacks)
    .filter(({ shaft }) => shaft !== 'rearAxle' && shaft !== 'frontAxle' && shaft !== 'engine')
    .flatMap(({ shaft, items }) =>
      items
        .filter((item) => item.kind === 'bearing' && Number.isFinite(item.left + item.right))
        .map((item): PlacedBearing => {
          const y = (item.left + item.right) / 2;
          const holder = holders
            .filter((one) => one.shaft === shaft)
            .sort((a, b) => Math.abs(a.y - y) - Math.abs(b.y - y))[0];
          const near = holder && Math.abs(holder.y - y) <= BEARING_REACH ? holder : undefined;
          const node = draft.point(`bearing:${shaft}.${item.id}`, { ...bike.shafts[shaft]!, y });
          if (near) draft.tie(near.node, node);
          else hang(making, node, `bearing ${item.id}`, flaws);
          return { item: item.id, y, node, ...(near ? { plate: near.id } : {}) };
        }),
    );
}
