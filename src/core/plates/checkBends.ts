import { nearestOfSegments } from '../geometry/index.ts';
import { practice } from '../quantity/index.ts';
import { bendingOf } from '../standards/index.ts';
import type { PlateEdges } from './edges.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';

/** Hole edge to where the bend begins: 2.5 thicknesses and the inside radius (common practice). */
const CLEAR_OF_BEND = 2.5;

/**
 * Bends too sharp for the material, and holes so near to a bend that they go oval. The distance is taken from the hole
 * edge to the middle line of the bend in the flat.
 * @source practice, hole to bend 2.5 t + r; least radius by material from the bending table
 */
export function bendFlaws(pattern: FlatPattern, edges: PlateEdges): readonly PlateFlaw[] {
  return pattern.bends.flatMap((_, i) => [...radiusFlaws(pattern, i), ...nearFlaws(pattern, edges, i)]);
}

function radiusFlaws(pattern: FlatPattern, i: number): PlateFlaw[] {
  const bend = pattern.bends[i]!;
  const facts = bendingOf(pattern.material);
  const limit = facts.leastRadiusPerThickness * pattern.thickness;
  if (bend.insideRadius >= limit - 1e-9) return [];
  return [
    {
      plate: pattern.id,
      rule: 'bend-radius',
      features: [`bend-${i + 1}`],
      value: bend.insideRadius,
      limit,
      kind: 'length',
      severity: 'caution',
      remedy: 'Bend round a larger radius, hot, or across the grain after a trial bend in the same plate.',
      source: facts.sources.leastRadius,
    },
  ];
}

function nearFlaws(pattern: FlatPattern, edges: PlateEdges, i: number): PlateFlaw[] {
  const bend = pattern.bends[i]!;
  const limit = CLEAR_OF_BEND * pattern.thickness + bend.insideRadius;
  const line = { kind: 'line', from: bend.from, to: bend.to } as const;
  return edges.openings.flatMap(({ opening, edge }): PlateFlaw[] => {
    const value = Math.min(...edge.pieces.map(({ piece }) => nearestOfSegments(piece, line).distance));
    if (value >= limit - 1e-9) return [];
    return [
      {
        plate: pattern.id,
        rule: 'bend-near-hole',
        features: [opening.id, `bend-${i + 1}`],
        value,
        limit,
        kind: 'length',
        severity: 'caution',
        remedy: 'Move the hole away from the bend, or drill it after bending.',
        source: practice('hole edge to bend at least 2.5 thicknesses and the inside radius'),
      },
    ];
  });
}
