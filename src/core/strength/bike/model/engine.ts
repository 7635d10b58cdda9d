import { platePoint, REACH } from './contact.ts';
import type { Making } from './making.ts';

/** The engine on its plate as one stiff body, held where the rail bolts are. */
export function addEngine(making: Making): string {
  const { bike, masses, draft, patterns, search, flaws, welds } = making;
  const center = masses.parts.find((part) => part.id === 'engine')?.center ?? bike.engine.base;
  const engine = draft.point('engine', center);
  const plate = patterns.find((pattern) => pattern.recipe === 'engine-plate' && pattern.placed.length > 0);
  const rails = plate?.openings.filter(({ id }) => id.startsWith('rail-')) ?? [];
  const points = plate
    ? rails.map(({ center: at }) => platePoint(plate, 0, at))
    : bike.engine.holes.map((hole) => hole);
  for (const point of points) {
    const contact = search.of([point]);
    if (!contact) continue;
    draft.tie(engine, ...contact.nodes);
    for (const held of contact.nodes) {
      const place = draft.places.get(held);
      if (place) welds.push({ node: held, line: place.line, kind: 'plate', with: plate?.id ?? 'engine' });
    }
    if (contact.gap > REACH)
      flaws.push({
        rule: 'gap',
        part: plate?.id ?? 'engine',
        gap: contact.gap,
        reason: `a bolt of it meets no tube; taken as held by ${contact.lines.map((id) => `"${id}"`).join(' and ')}`,
      });
  }
  return engine;
}
