import type { Point } from '../../geometry/index.ts';
import { contentArea, type DraftSheet } from '../bookPages.ts';
import { baselineStep, linearDimension } from '../linearDimension.ts';
import { ordinateDimensions } from '../ordinate.ts';
import { paper } from '../paper.ts';
import type { PaperRect } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import { textWidth } from '../textMetrics.ts';
import { type View, viewPoint } from '../view.ts';
import { type DrawingContext, dimensionOf, inLine, words } from './context.ts';
import { projector, type SceneInput } from './scene.ts';
import { fitted } from './sheetFit.ts';
import { topBounds, topViewItems } from './topView.ts';

const ROW = baselineStep() + 0.6;
const FIRST_COLUMN = 8;
const TEXT = 2.8;

/** A plane in which something runs, with what it is. */
interface Plane {
  readonly at: Point & { readonly z: number };
  readonly says: string;
}

/** From above, forward to the left: widths, rail spacing, and the planes that wheels, chains, belts and discs run in. */
export function topSheet(context: DrawingContext): DraftSheet {
  const sheet = paper(context.paper, 'landscape');
  const area = contentArea(sheet);
  const planes = planesOf(context.scene);
  const labels = planes.map((plane) => labelOf(context, plane));
  const wide = Math.max(...labels.flatMap((lines) => lines.map((one) => textWidth(one, TEXT))));
  const room: PaperRect = {
    left: area.left + FIRST_COLUMN + 2 * ROW,
    right: area.right - FIRST_COLUMN - ROW - 8 - wide,
    bottom: area.bottom + 4,
    top: area.top - 4,
  };
  const view = fitted(topBounds(context.scene), room, true);
  return {
    id: 'general-arrangement-top',
    title: 'General arrangement, from above',
    paper: sheet,
    scale: view.scale.label,
    items: [
      ...topViewItems(context.scene, view, { hide: ['rider'] }),
      ...ordinateDimensions({
        axis: 'y',
        features: planes.map((plane, i) => ({
          at: projector(view, 'top').point(plane.at),
          text: labels[i]!,
        })),
        labelsAt: rearEdge(context.scene, view) + FIRST_COLUMN + ROW + 6,
        size: TEXT,
        range: { min: area.bottom, max: area.top },
      }),
      ...widths(context, view),
    ],
  };
}

const rearEdge = (scene: SceneInput, view: View): number =>
  viewPoint(view, { x: topBounds(scene).minX, y: 0 }).x;

function labelOf(context: DrawingContext, plane: Plane): readonly [string, string] {
  const { y } = plane.at;
  const side = Math.abs(y) < 5e-5 ? '' : y > 0 ? ' left' : ' right';
  return [plane.says, `${inLine(context, Math.abs(y))}${side}`];
}

/** Rim centers, chains, belts and discs, each at the shaft nearest to the rear. */
function planesOf({ bike }: SceneInput): readonly Plane[] {
  const planes = new Map<string, Plane>();
  for (const stack of Object.values(bike.stacks)) {
    const center = bike.shafts[stack.shaft];
    if (!center) continue;
    for (const plane of stack.items.flatMap((item) => item.planes)) {
      const says = saysOf(plane, stack.shaft);
      const at = { x: center.x, y: plane.y, z: center.z };
      const before = planes.get(says);
      if (!before || before.at.x > at.x) planes.set(says, { at, says });
    }
  }
  return [...planes.values()].sort((a, b) => a.at.y - b.at.y);
}

function saysOf(
  plane: SceneInput['bike']['stacks'][string]['items'][number]['planes'][number],
  shaft: string,
): string {
  const wheel = shaft === 'frontAxle' ? 'front' : 'rear';
  switch (plane.runs) {
    case 'rim':
      return `${wheel} rim center`;
    case 'disc':
      return `${plane.brake ?? wheel} disc`;
    case 'sheave':
      return `belt ${words(plane.drive ?? '')}`;
    case 'sprocket':
      return `chain ${words(plane.drive ?? '')}`;
  }
}

/** Grips and pegs ahead of the bike, rails behind it. */
function widths(context: DrawingContext, view: View): readonly SheetItem[] {
  const { bike, build } = context.scene;
  const { grip, peg } = bike.layout.places;
  const bounds = topBounds(context.scene);
  const ahead = viewPoint(view, { x: bounds.maxX, y: 0 }).x;
  const across = (x: number, half: number, at: number): readonly SheetItem[] =>
    linearDimension({
      from: viewPoint(view, { x, y: -half }),
      to: viewPoint(view, { x, y: half }),
      direction: 'vertical',
      at,
      text: dimensionOf(context, 2 * half),
    });
  const rail = railEnd(context.scene);
  return [
    ...across(grip.x, bounds.maxY, ahead - FIRST_COLUMN - ROW),
    ...across(peg.x, peg.y + build.seating.pegs.length / 2, ahead - FIRST_COLUMN),
    ...(rail ? across(rail.x, Math.abs(rail.y), rearEdge(context.scene, view) + FIRST_COLUMN) : []),
  ];
}

/** Rear end of the mirrored tube that reaches farthest back: where the rails' spacing is measured. */
function railEnd({ bike }: SceneInput): Point | undefined {
  const ends = bike.tubes
    .filter((tube) => tube.hand === 'left')
    .flatMap((tube) => {
      const { pieces } = tube.centerline;
      return [pieces[0]!.from, pieces.at(-1)!.to];
    })
    .sort((a, b) => a.x - b.x);
  return ends[0];
}
