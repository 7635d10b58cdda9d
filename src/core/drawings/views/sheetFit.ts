import type { Bounds } from '../../geometry/index.ts';
import type { PaperRect } from '../shapes.ts';
import { fineScales, fitView, scaleOf, type View } from '../view.ts';

/** Scales for a build larger than any listed: whole hundreds. */
const LARGEST = 100;

/** The view at the largest usual scale that fits; a thing too large for all of them is drawn at whole hundreds. */
export function fitted(bounds: Bounds, area: PaperRect, flipX = false): View {
  const usual = fitView({ bounds, area, scales: fineScales, flipX });
  if (usual) return usual;
  for (let n = 3; ; n++) {
    const view = fitView({ bounds, area, scales: [scaleOf(n * LARGEST)], flipX });
    if (view || n > 1e4) return view ?? fallback(bounds, area, flipX);
  }
}

function fallback(bounds: Bounds, area: PaperRect, flipX: boolean): View {
  const middle = { x: (area.left + area.right) / 2, y: (area.bottom + area.top) / 2 };
  const size = Math.max(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY, 1e-9);
  const scale = scaleOf(
    Math.ceil((size * 1000) / Math.max(1, Math.min(area.right - area.left, area.top - area.bottom))),
  );
  return { scale, origin: middle, flipX };
}
