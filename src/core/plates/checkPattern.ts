import type { Build } from '../build/index.ts';
import { derived } from '../quantity/index.ts';
import { bendFlaws } from './checkBends.ts';
import { boreFlaws } from './checkBores.ts';
import { holeFlaws, sizeFlaws } from './checkHoles.ts';
import { stockFlaws } from './checkStock.ts';
import type { PlateEdges } from './edges.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';
import { operationLimits } from './shopLimits.ts';
import type { SlotNeed } from './slotNeed.ts';

/** Two lengths this near are the same [m]. */
const SAME = 1e-9;

/** Flaws of one plate that is drawn. */
export function patternFlaws(
  pattern: FlatPattern,
  edges: PlateEdges,
  shop: Build['shop'],
  needs: readonly SlotNeed[],
): readonly PlateFlaw[] {
  const drill = operationLimits(shop, pattern.make === 'saw' ? 'saw' : 'drill');
  return [
    ...holeFlaws(pattern, edges),
    ...sizeFlaws(pattern, operationLimits(shop, pattern.make), drill),
    ...slotFlaws(pattern, needs),
    ...bendFlaws(pattern, edges),
    ...boreFlaws(pattern),
    ...stockFlaws(pattern, edges, shop),
  ];
}

/** Slots shorter than the drives need; one flaw a shaft, for all slots that serve it. */
function slotFlaws(pattern: FlatPattern, needs: readonly SlotNeed[]): PlateFlaw[] {
  return needs.flatMap((need): PlateFlaw[] => {
    const short = pattern.openings.filter(
      (opening) => opening.slides === need.shaft && (opening.travel ?? 0) < need.length - SAME,
    );
    if (short.length === 0) return [];
    return [
      {
        plate: pattern.id,
        rule: 'slot-too-short',
        features: short.map((opening) => opening.id),
        value: Math.min(...short.map((opening) => opening.travel ?? 0)),
        limit: need.length,
        kind: 'length',
        severity: 'stop',
        remedy: 'Lengthen the slot, or take a link count that needs less travel.',
        source: derived('travel of the slot against what the drives of that shaft need together'),
      },
    ];
  });
}
