import {
  boundsGap,
  circleLoop,
  distance2,
  distanceToLoop,
  loopInside,
  loopsOverlap,
  nearestOfLoops,
  nearestOfSegments,
  nearestWithin,
  type Outline,
} from '../geometry/index.ts';
import { derived, mm, practice, type SourceRef } from '../quantity/index.ts';
import type { OpeningEdge, PlateEdges } from './edges.ts';
import { openingEnds } from './openings.ts';
import type { FlatPattern, Opening, PlateFlaw } from './pattern.ts';
import type { OperationLimits } from './shopLimits.ts';

/** Center to edge over hole diameter: structural minimum, good practice, and good practice in thin sheet. */
const EDGE_LEAST = 1.2;
const EDGE_GOOD = 1.5;
const EDGE_THIN = 2;
/** Thinner plate is sheet, which tears round a bolt [m]. */
const THIN = mm(3);
/** Slot ends: center of the end arc to the edge over slot width. */
const SLOT_END_LEAST = 1.5;
/** Metal round a bearing bore over its diameter, and round an opening that carries nothing over thickness. */
const BORE_WALL = 0.15;
const FREE_WALL = 1;
/** Metal between cuts of a torch over thickness; between drilled holes one thickness. */
const TORCH_BRIDGE = 1.5;
const DRILL_BRIDGE = 1;
/** Holes nearer to one place than this are one hole [m]. */
const SAME_PLACE = mm(0.25);

const EDGE_CODE: SourceRef = {
  key: 'en-1993-1-8',
  where: 'table 3.3: e1, e2 at least 1.2 d0; slots e3, e4 at least 1.5 d0',
};
const EDGE_PRACTICE = practice('center to edge 1.5 hole diameters, 2 in thin sheet');

/**
 * Flaws of holes, bores and slots: outside the plate, too near its edge, to each other or to holes that are there
 * already. Distances are exact on lines and arcs.
 * @source en-1993-1-8, table 3.3; practice, edge distance and metal between cuts
 */
export function holeFlaws(pattern: FlatPattern, edges: PlateEdges): readonly PlateFlaw[] {
  const drawn = { pattern, edges };
  const inside = edges.openings.filter(({ edge }) => loopInside(edge, edges.outline));
  const outside = edges.openings.filter((one) => !inside.includes(one));
  return [
    ...outside.map(({ opening }) => outsideFlaw(drawn, opening)),
    ...edges.windows.flatMap((window, i) => windowFlaws(drawn, window, i)),
    ...inside.flatMap((one) => edgeFlaws(drawn, one)),
    ...ligamentFlaws(drawn),
    ...oldHoleFlaws(drawn),
  ];
}

/** Holes that the drill or the torch cannot make, whichever makes them. */
export function sizeFlaws(
  pattern: FlatPattern,
  limits: OperationLimits,
  drill: OperationLimits,
): readonly PlateFlaw[] {
  return pattern.openings.flatMap((opening): PlateFlaw[] => {
    const drilled = opening.cutAs.as === 'punch' || pattern.make !== 'torch';
    const by = drilled ? drill : limits;
    const flaw = {
      plate: pattern.id,
      features: [opening.id],
      value: opening.diameter,
      kind: 'length' as const,
      source: by.source,
    };
    if (opening.diameter < by.smallestHole - 1e-9) {
      const remedy = 'Make the hole larger, or have it drilled where smaller bits are at hand.';
      return [{ ...flaw, rule: 'hole-too-small', limit: by.smallestHole, severity: 'caution', remedy }];
    }
    if (opening.diameter > by.largestHole + 1e-9) {
      const remedy = 'Use a hole saw or a ring of drilled holes and open it by hand, or have it bored.';
      return [{ ...flaw, rule: 'hole-too-large', limit: by.largestHole, severity: 'note', remedy }];
    }
    return [];
  });
}

interface Drawn {
  readonly pattern: FlatPattern;
  readonly edges: PlateEdges;
}

const lengthFlaw = (pattern: FlatPattern, flaw: Omit<PlateFlaw, 'plate' | 'kind'>): PlateFlaw => ({
  plate: pattern.id,
  kind: 'length',
  ...flaw,
});

function outsideFlaw({ pattern, edges }: Drawn, opening: Opening): PlateFlaw {
  return lengthFlaw(pattern, {
    rule: 'hole-outside',
    features: [opening.id],
    value: -distanceToLoop(edges.outline, opening.center),
    limit: 0,
    severity: 'stop',
    remedy: 'Move the hole or make the plate larger.',
    source: derived('the hole lies outside the outline or crosses it'),
  });
}

function windowFlaws({ pattern, edges }: Drawn, window: Outline, i: number): PlateFlaw[] {
  const features = [`window-${i + 1}`];
  if (!loopInside(window, edges.outline)) {
    return [
      lengthFlaw(pattern, {
        rule: 'hole-outside',
        features,
        value: -nearestOfLoops(window, edges.outline).distance,
        limit: 0,
        severity: 'stop',
        remedy: 'Move the window or make the plate larger.',
        source: derived('the window lies outside the outline or crosses it'),
      }),
    ];
  }
  const limit = bridge(pattern);
  const near = nearestWithin(window, edges.outline, limit - 1e-9);
  return near ? [bridgeFlaw(pattern, [...features, 'edge'], near.distance, limit)] : [];
}

/** Edges that a hole must keep away from: the outline and the windows. */
const outerEdges = ({ edges }: Drawn): readonly Outline[] => [edges.outline, ...edges.windows];

function edgeFlaws(drawn: Drawn, one: OpeningEdge): PlateFlaw[] {
  const { pattern } = drawn;
  const { opening } = one;
  if (opening.carries === 'bolt') return [...boltEdgeFlaws(drawn, one), ...slotEndFlaws(drawn, opening)];
  const limit = opening.carries === 'bearing' ? BORE_WALL * opening.diameter : FREE_WALL * pattern.thickness;
  const wall = wallWithin(drawn, one, limit - 1e-9);
  if (wall === undefined) return [];
  return [
    lengthFlaw(pattern, {
      rule: 'edge-distance',
      features: [opening.id],
      value: wall,
      limit,
      severity: 'caution',
      remedy: 'Leave more plate round the opening.',
      source: practice('metal round a bearing bore 0.15 of its diameter, round a free opening one thickness'),
    }),
  ];
}

/** Metal between an opening and the nearest edge where it is less than `limit` [m]. */
function wallWithin(drawn: Drawn, { edge }: OpeningEdge, limit: number): number | undefined {
  return outerEdges(drawn).reduce<number | undefined>(
    (least, outer) => nearestWithin(edge, outer, least ?? limit)?.distance ?? least,
    undefined,
  );
}

function boltEdgeFlaws(drawn: Drawn, one: OpeningEdge): PlateFlaw[] {
  const { pattern } = drawn;
  const { opening } = one;
  const d = opening.diameter;
  const good = (pattern.thickness <= THIN ? EDGE_THIN : EDGE_GOOD) * d;
  const wall = wallWithin(drawn, one, good - d / 2 - 1e-9);
  if (wall === undefined) return [];
  const toEdge = wall + d / 2;
  const least = toEdge < EDGE_LEAST * d - 1e-9;
  return [
    lengthFlaw(pattern, {
      rule: 'edge-distance',
      features: [opening.id],
      value: toEdge,
      limit: least ? EDGE_LEAST * d : good,
      severity: least ? 'stop' : 'caution',
      remedy: `Move the hole in or leave ${((good - toEdge) * 1e3).toFixed(1)} mm more plate there.`,
      source: least ? EDGE_CODE : EDGE_PRACTICE,
    }),
  ];
}

function slotEndFlaws(drawn: Drawn, opening: Opening): PlateFlaw[] {
  if (opening.kind !== 'slot') return [];
  const limit = SLOT_END_LEAST * opening.diameter;
  const value = Math.min(
    ...openingEnds(opening).flatMap((end) => outerEdges(drawn).map((edge) => distanceToLoop(edge, end))),
  );
  if (value >= limit - 1e-9) return [];
  return [
    lengthFlaw(drawn.pattern, {
      rule: 'slot-end',
      features: [opening.id],
      value,
      limit,
      severity: value < EDGE_LEAST * opening.diameter ? 'stop' : 'caution',
      remedy: 'Leave more plate beyond the end of the slot.',
      source: EDGE_CODE,
    }),
  ];
}

const bridge = (pattern: FlatPattern): number =>
  (pattern.make === 'torch' ? TORCH_BRIDGE : DRILL_BRIDGE) * pattern.thickness;

function bridgeFlaw(
  pattern: FlatPattern,
  features: readonly string[],
  value: number,
  limit: number,
): PlateFlaw {
  return lengthFlaw(pattern, {
    rule: 'ligament',
    features,
    value,
    limit,
    severity: value <= 0 ? 'stop' : 'caution',
    remedy: 'Move the openings apart, or make one slot of them.',
    source: practice('metal between cuts: 1.5 thicknesses by torch, 1 between drilled holes'),
  });
}

function ligamentFlaws({ pattern, edges }: Drawn): PlateFlaw[] {
  const limit = bridge(pattern);
  const cuts = [
    ...edges.openings.map(({ opening: { id }, edge }) => ({ id, edge })),
    ...edges.windows.map((edge, i) => ({ id: `window-${i + 1}`, edge })),
  ];
  return cuts.flatMap((a, i) =>
    cuts.slice(i + 1).flatMap((b) => {
      if (boundsGap(a.edge.box, b.edge.box) >= limit) return [];
      const value = loopsOverlap(a.edge, b.edge) ? 0 : nearestOfLoops(a.edge, b.edge).distance;
      return value < limit - 1e-9 ? [bridgeFlaw(pattern, [a.id, b.id], value, limit)] : [];
    }),
  );
}

/** New holes against those that are there: the same place is one hole; overlapping ones break into each other. */
function oldHoleFlaws({ pattern, edges }: Drawn): PlateFlaw[] {
  return edges.openings.flatMap(({ opening, edge }) =>
    pattern.oldHoles.flatMap((old, i): PlateFlaw[] => {
      const oldLoop = circleLoop(old.center, old.diameter / 2);
      if (distance2(opening.center, old.center) <= SAME_PLACE && opening.diameter >= old.diameter - 1e-9)
        return [];
      if (loopInside(oldLoop, edge)) return [];
      const features = [opening.id, `old-${i + 1}`];
      if (!loopsOverlap(edge, oldLoop)) {
        const gap = nearestOfLoops(edge, oldLoop).distance;
        const limit = bridge(pattern);
        return gap < limit - 1e-9 ? [bridgeFlaw(pattern, features, gap, limit)] : [];
      }
      return [
        lengthFlaw(pattern, {
          rule: 'breaks-into-old-hole',
          features,
          value: centerDistance(opening, old.center),
          limit: (opening.diameter + old.diameter) / 2,
          severity: 'stop',
          remedy: 'Draw a slot over both, or make a new plate turned 90 degrees.',
          source: derived('centers nearer to each other than the two radii'),
        }),
      ];
    }),
  );
}

/** From an opening's center, or a slot's center line, to a point [m]. */
function centerDistance(opening: Opening, to: FlatPattern['centroid']): number {
  const [from, end] = openingEnds(opening);
  if (distance2(from, end) === 0) return distance2(from, to);
  return nearestOfSegments({ kind: 'line', from, to: end }, { kind: 'line', from: to, to }).distance;
}
