import type { DimensionText } from './dimensionText.ts';
import { spreadLabels } from './labelSpread.ts';
import { dimensionTextSize } from './linearDimension.ts';
import { openPath, text } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { textDrop, textRise } from './textMetrics.ts';

export interface OrdinateInput {
  /** `x`: distances along x, labels in a row over or under; `y`: along y, labels in a column beside. */
  readonly axis: 'x' | 'y';
  /** Each feature with its label; the base itself is one with the text 0. */
  readonly features: readonly { readonly at: PaperPoint; readonly text: DimensionText }[];
  /** y of the row (axis x) or x of the column (axis y), where the labels begin [mm]. */
  readonly labelsAt: number;
  readonly size?: number;
  /** Room for the labels along the axis [mm]. */
  readonly range?: { readonly min: number; readonly max: number };
}

const OBJECT_GAP = 1;
/** Straight end of each line before its label, and the length over which it steps aside [mm]. */
const LANDING = 1.5;
const JOG = 4;
const LABEL_GAP = 0.6;

/**
 * Ordinate dimensions: one thin line per feature to a row (or column) of labels. Labels that would collide are
 * spread and their lines step aside just before them; the order is kept, so no two lines cross.
 */
export function ordinateDimensions(input: OrdinateInput): readonly SheetItem[] {
  const { axis, features, labelsAt, size = dimensionTextSize, range } = input;
  const lineHeight = (textRise + textDrop) * size;
  const along = (p: PaperPoint): number => (axis === 'x' ? p.x : p.y);
  const across = (p: PaperPoint): number => (axis === 'x' ? p.y : p.x);
  const point = (a: number, c: number): PaperPoint => (axis === 'x' ? { x: a, y: c } : { x: c, y: a });
  const labels = features.map((f) => ({ wanted: along(f.at), size: f.text.length * lineHeight }));
  const middles = spreadLabels(labels, LABEL_GAP, range);
  return features.flatMap((feature, i) => {
    const middle = middles[i] as number;
    const out = Math.sign(labelsAt - across(feature.at)) || 1;
    const start = across(feature.at) + out * OBJECT_GAP;
    const jogEnd = labelsAt - out * LANDING;
    const points = [
      point(along(feature.at), start),
      point(along(feature.at), jogEnd - out * JOG),
      point(middle, jogEnd),
      point(middle, labelsAt),
    ];
    return [
      openPath(points, 'dimension'),
      ...labelText(point(middle, labelsAt + out * LABEL_GAP), feature.text, axis, out, size),
    ];
  });
}

function labelText(
  at: PaperPoint,
  lines: DimensionText,
  axis: 'x' | 'y',
  out: number,
  size: number,
): readonly SheetItem[] {
  const pitch = (textRise + textDrop) * size;
  const turn = axis === 'x' ? 90 : 0;
  const anchor = out > 0 ? 'start' : 'end';
  return lines.map((content, i) => {
    // Offset of each base line from the middle of the stack, toward the foot of the letters.
    const foot = (i - (lines.length - 1) / 2) * pitch + ((textRise - textDrop) / 2) * size;
    const place = axis === 'x' ? { x: at.x + foot, y: at.y } : { x: at.x, y: at.y - foot };
    return text(place, content, { size, turn, anchor });
  });
}
