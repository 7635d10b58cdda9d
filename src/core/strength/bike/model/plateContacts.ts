import type { Point3 } from '../../../geometry/index.ts';
import type { FlatPattern } from '../../../plates/index.ts';
import { edgePoints, REACH } from './contact.ts';
import type { Making } from './making.ts';

/** A plate that stands on a foot is joined there, not where another tube passes close by [m]. */
const FOOT_HEIGHT = 0.02;

/** Ties a plate to the tubes that it reaches, or to the nearest, which is told. */
export function tieContacts(making: Making, pattern: FlatPattern, index: number, node: string): void {
  const { draft, search, welds, flaws } = making;
  const contact = search.of(
    footOf(making, pattern, edgePoints(pattern, index)),
    among(making, pattern, index),
  );
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: pattern.id, reason: 'there is no tube to hold it' });
    return;
  }
  draft.tie(...contact.nodes, node);
  tieGusseted(making, pattern, index, node);
  if (contact.gap > REACH)
    flaws.push({
      rule: 'gap',
      part: pattern.id,
      gap: contact.gap,
      reason: `it reaches no tube; taken as held by ${contact.lines.map((id) => `"${id}"`).join(' and ')}`,
    });
  for (const held of contact.nodes) {
    const place = draft.places.get(held);
    if (place) welds.push({ node: held, line: place.line, kind: 'plate', with: pattern.id });
  }
}

function footOf({ build }: Making, pattern: FlatPattern, points: readonly Point3[]): readonly Point3[] {
  const recipe = build.plates[pattern.id]?.recipe;
  if (recipe !== 'countershaft-plate' && recipe !== 'outboard-support') return points;
  const lowest = Math.min(...points.map(({ z }) => z));
  return points.filter(({ z }) => z <= lowest + FOOT_HEIGHT);
}

/** Within a gusset the tube and its trunk are one: the tube's own stress begins at the toe. */
function tieGusseted(making: Making, pattern: FlatPattern, index: number, node: string): void {
  const { bike, draft } = making;
  const names = among(making, pattern, index) ?? [];
  for (const tube of bike.tubes.filter(({ id }) => names.includes(id)))
    tube.ends.forEach((end, k) => {
      if (end.onto === undefined || !names.includes(end.onto)) return;
      const line = draft.lines.get(tube.id)!;
      draft.tie(node, draft.station(line, k === 0 ? 0 : line.length));
    });
}

/** A gusset knows its two tubes; both copies keep to their own side. */
function among({ build }: Making, pattern: FlatPattern, index: number): readonly string[] | undefined {
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'gusset') return undefined;
  const right = pattern.placed[index]!.hand === 'right';
  return entry.between.map((id) => (right && id !== 'neck' ? `${id}.right` : id));
}
