import { arrowhead } from '../../arrow.ts';
import { type LabelRequest, type Obstacle, placeLabels } from '../../labelPlace.ts';
import { line, maskedText, openPath, type PaperRect, polygon } from '../../shapes.ts';
import type { PaperPoint, PenRole, SheetItem } from '../../sheet.ts';
import { textWidth } from '../../textMetrics.ts';

/** A diagram over the length of a shaft: one or two planes on one base line. */
export interface DiagramStrip {
  readonly name: string;
  readonly curves: readonly DiagramCurve[];
  /** The largest value as written. */
  readonly print: (value: number) => string;
}

export interface DiagramCurve {
  readonly label?: string;
  readonly pen: PenRole;
  readonly values: readonly number[];
  readonly fill?: boolean;
  /** Its largest value is written on it. */
  readonly marked?: boolean;
}

const SIZE = 2.6;
const NAME_ROOM = 4.5;

/** One strip: base line, curves to one scale, marked maxima. `at` are places on paper [mm]. */
export function diagramStrip(
  { name, curves, print }: DiagramStrip,
  at: readonly number[],
  area: PaperRect,
): readonly SheetItem[] {
  const most = Math.max(...curves.flatMap(({ values }) => values.map(Math.abs)));
  const middle = (area.top - NAME_ROOM + area.bottom) / 2;
  const half = (area.top - NAME_ROOM - area.bottom) / 2 - 3;
  const y = (value: number): number => middle + (most > 0 ? (value / most) * half : 0);
  const drawn = curves.map((curve) => ({
    curve,
    points: curve.values.map((value, i): PaperPoint => ({ x: at[i]!, y: y(value) })),
  }));
  const [first, last] = [at[0] ?? area.left, at.at(-1) ?? area.right];
  const base = line({ x: first, y: middle }, { x: last, y: middle }, 'thin');
  const requests = drawn.flatMap(({ curve, points }): LabelRequest[] => {
    const k = indexOfMost(curve.values);
    const value = curve.values[k] ?? 0;
    if (!curve.marked || value === 0) return [];
    return [
      {
        at: points[k]!,
        clear: 0.8,
        text: print(Math.abs(value)),
        style: { size: SIZE, weight: 'bold' },
      },
    ];
  });
  const obstacles: readonly Obstacle[] = [
    [
      { x: first, y: middle },
      { x: last, y: middle },
    ],
    ...drawn.flatMap(({ points }) => points.slice(1).map((to, i): Obstacle => [points[i]!, to])),
  ];
  return [
    ...drawn.flatMap(({ curve, points }) =>
      curve.fill && points.length > 1
        ? [
            polygon(
              [{ x: points[0]!.x, y: middle }, ...points, { x: points.at(-1)!.x, y: middle }],
              'none',
              'light',
            ),
          ]
        : [],
    ),
    base,
    ...drawn.flatMap(({ curve, points }) => (points.length > 1 ? [openPath(points, curve.pen)] : [])),
    ...maskedText({ x: area.left, y: area.top - SIZE }, name, { size: SIZE, weight: 'bold' }),
    ...legend(curves, { x: area.left + textWidth(name, SIZE, 'bold') + 5, y: area.top - SIZE }),
    ...placeLabels(requests, obstacles, { ...area, top: area.top - NAME_ROOM }),
  ];
}

function legend(curves: readonly DiagramCurve[], at: PaperPoint): readonly SheetItem[] {
  let x = at.x;
  return curves.flatMap(({ label, pen }): SheetItem[] => {
    if (label === undefined) return [];
    const start = x;
    x += 9 + textWidth(label, SIZE) + 5;
    return [
      line({ x: start, y: at.y + 0.9 }, { x: start + 8, y: at.y + 0.9 }, pen),
      ...maskedText({ x: start + 9, y: at.y }, label, { size: SIZE }),
    ];
  });
}

function indexOfMost(values: readonly number[]): number {
  let best = 0;
  values.forEach((value, i) => {
    if (Math.abs(value) > Math.abs(values[best] ?? 0)) best = i;
  });
  return best;
}

/** A bearing: a triangle whose tip touches the shaft from below. */
export const bearingMark = (tip: PaperPoint): SheetItem =>
  polygon([tip, { x: tip.x - 1.8, y: tip.y - 3 }, { x: tip.x + 1.8, y: tip.y - 3 }], 'thin', 'paper');

/** An arrow down onto the shaft. */
export const loadMark = (tip: PaperPoint): readonly SheetItem[] => [
  line({ x: tip.x, y: tip.y + 6 }, tip, 'accent'),
  arrowhead(tip, -90, 'accent', 2.2),
];
