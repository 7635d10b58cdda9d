import { platePoint } from './contact.ts';
import { landPlate } from './landing.ts';
import type { Making } from './making.ts';
import { tieContacts } from './plateContacts.ts';

/** Each placed plate becomes a stiff body with the tubes that it reaches. */
export function addPlates(making: Making, legs: readonly [string, string]): void {
  const { build, draft, patterns, plates } = making;
  for (const pattern of patterns) {
    if (pattern.recipe === 'engine-plate') continue;
    pattern.placed.forEach(({ hand }, index) => {
      const key = `${pattern.id}.${hand}`;
      const node = draft.point(`plate:${key}`, platePoint(pattern, index, pattern.centroid));
      plates.set(key, node);
      const entry = build.plates[pattern.id];
      if (entry?.recipe === 'caliper-bracket') tieCaliper(making, entry.brake, node, legs);
      else if (entry?.recipe === 'axle-plate' && landPlate(making, pattern, index, node)) return;
      else tieContacts(making, pattern, index, node);
    });
  }
}

function tieCaliper(
  { build, draft }: Making,
  brake: 'front' | 'rear',
  node: string,
  legs: readonly [string, string],
): void {
  const axle = draft.lines.get('rearAxle')!;
  const right = build.brakes[brake]?.side === 'right';
  const held = brake === 'front' ? legs[right ? 1 : 0] : draft.station(axle, right ? axle.length : 0);
  draft.tie(held, node);
}
