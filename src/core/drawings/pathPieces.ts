import { distance2, type Segment, segmentOf } from '../geometry/index.ts';
import type { PaperPoint, PathItem } from './sheet.ts';

/** An arc that stands out less than this from its chord is drawn as the chord: its center is too far off to reckon with [mm]. */
const FLAT = 1e-6;

/** The lines and arcs of a path in order [mm]; steps of no length are left out. */
export function pathPieces(path: Pick<PathItem, 'vertices' | 'closed'>): readonly Segment[] {
  const { vertices, closed } = path;
  const last = closed ? vertices.length : vertices.length - 1;
  const pieces: Segment[] = [];
  for (let i = 0; i < last; i += 1) {
    const from = vertices[i];
    const to = vertices[(i + 1) % vertices.length];
    if (!from || !to) continue;
    const chord = distance2(from, to);
    const isFlat = Math.abs(from.bulge) * chord < 2 * FLAT;
    if (chord > 0) pieces.push(segmentOf(isFlat ? { ...from, bulge: 0 } : from, to));
  }
  return pieces;
}

/** One cubic: two controls and the end. */
export type Cubic = readonly [PaperPoint, PaperPoint, PaperPoint];

/** Largest distance of a drawn curve from its arc [mm]. */
const CURVE_ERROR = 1e-4;
/** Radial error of the best-known cubic for a quarter circle of radius 1; it falls with the 6th power of the angle. */
const QUARTER_ERROR = 2.73e-4;

/**
 * Cubics that follow an arc within 1e-4 mm: equal parts of sweep θ with controls at k = 4/3·tan(θ/4)·r along
 * the tangents.
 */
export function arcCubics(
  center: PaperPoint,
  radius: number,
  start: number,
  sweep: number,
): readonly Cubic[] {
  const widest =
    (Math.PI / 2) * Math.min(1, (CURVE_ERROR / (QUARTER_ERROR * Math.max(radius, 1e-9))) ** (1 / 6));
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / widest - 1e-9));
  const step = sweep / count;
  const k = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [start + i * step, start + (i + 1) * step];
    const from = { x: center.x + radius * Math.cos(a), y: center.y + radius * Math.sin(a) };
    const to = { x: center.x + radius * Math.cos(b), y: center.y + radius * Math.sin(b) };
    return [
      { x: from.x - k * Math.sin(a), y: from.y + k * Math.cos(a) },
      { x: to.x + k * Math.sin(b), y: to.y - k * Math.cos(b) },
      to,
    ] as const;
  });
}
