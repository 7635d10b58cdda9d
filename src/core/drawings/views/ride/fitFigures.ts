import type { RiderFigure } from '../../../bike/index.ts';
import { type Bounds, joinBounds, type Point, type Point3, toLocal } from '../../../geometry/index.ts';
import type { RiderFit, Riding } from '../../../ride/index.ts';
import type { Obstacle } from '../../labelPlace.ts';
import { placeLabels } from '../../labelPlace.ts';
import type { PaperRect } from '../../shapes.ts';
import type { PenRole, SheetItem } from '../../sheet.ts';
import { type View, viewCircle, viewLength, viewLine, viewPoint } from '../../view.ts';
import type { DrawingContext } from '../context.ts';
import { sideBounds, sideViewItems } from '../sideView.ts';

/** Riders of the survey that are drawn, each with its line; the table has all six. */
const DRAWN: readonly { readonly group: string; readonly percentile: number; readonly pen: PenRole }[] = [
  { group: 'women', percentile: 5, pen: 'hidden' },
  { group: 'men', percentile: 50, pen: 'center' },
  { group: 'men', percentile: 95, pen: 'bend' },
];
const JOINT = 0.8;

interface DrawnRider {
  readonly fit: RiderFit;
  readonly pen: PenRole;
}

const drawnRiders = ({ fit }: Riding): readonly DrawnRider[] =>
  DRAWN.flatMap(({ group, percentile, pen }) => {
    const found = fit.survey.find(({ rider }) => rider.group === group && rider.percentile === percentile);
    return found ? [{ fit: found, pen }] : [];
  });

/** Box around bike, own rider and survey riders [m]. */
export function fitBounds(context: DrawingContext, riding: Riding): Bounds {
  return joinBounds([
    sideBounds(context.scene),
    ...drawnRiders(riding).map(({ fit }) => {
      const { head, headRadius } = placed(context, fit.figure);
      return {
        minX: head.x - headRadius,
        maxX: head.x + headRadius,
        minY: head.z - headRadius,
        maxY: head.z + headRadius,
      };
    }),
  ]);
}

/** The bike with its rider, and over them the links of the smallest, middle and largest rider. */
export function fitItems(
  context: DrawingContext,
  riding: Riding,
  view: View,
  area: PaperRect,
): readonly SheetItem[] {
  const riders = drawnRiders(riding).map(({ fit, pen }) => ({
    fit,
    pen,
    figure: placed(context, fit.figure),
  }));
  const heads = [
    ...riders.map(({ fit, figure }) => ({ label: fit.rider.label, figure, clear: figure.headRadius })),
    {
      label: 'own rider, shaded',
      figure: context.scene.bike.rider,
      clear: context.scene.bike.rider.headRadius,
    },
  ];
  return [
    ...sideViewItems(context.scene, view),
    ...riders.flatMap(({ figure, pen }) => linkItems(view, figure, pen)),
    ...placeLabels(
      heads.map(({ label, figure }) => ({
        at: viewPoint(view, headSide(figure, view, 0)),
        or: [30, -30, 60, -60, 180, 150, -150].map((turn) => viewPoint(view, headSide(figure, view, turn))),
        clear: 0.8,
        text: label,
        style: { size: 2.6 },
      })),
      heads.flatMap(({ figure, clear }) => circleObstacles(view, figure.head, clear)),
      area,
    ),
  ];
}

/** A point of the head's outline, turned from straight to the right on paper [degrees]. */
function headSide({ head, headRadius }: RiderFigure, view: View, turn: number): Point {
  const angle = (turn * Math.PI) / 180;
  const across = view.flipX ? -1 : 1;
  return { x: head.x + across * headRadius * Math.cos(angle), y: head.z + headRadius * Math.sin(angle) };
}

function circleObstacles(view: View, { x, z }: Point3, radius: number): readonly Obstacle[] {
  const count = 16;
  const at = (k: number) => {
    const turn = (2 * Math.PI * k) / count;
    return viewPoint(view, { x: x + radius * Math.cos(turn), y: z + radius * Math.sin(turn) });
  };
  return Array.from({ length: count }, (_, k): Obstacle => [at(k), at(k + 1)]);
}

/** Legs, trunk, arms and head as lines with their joints. */
function linkItems(view: View, figure: RiderFigure, pen: PenRole): readonly SheetItem[] {
  const flat = ({ x, z }: Point3): Point => ({ x, y: z });
  const { hip, knee, ankle, toe, shoulder, elbow, grip, head, headRadius } = figure;
  const joint = JOINT / viewLength(view, 1);
  return [
    viewLine(view, [toe, ankle, knee, hip, shoulder, elbow, grip].map(flat), pen),
    viewCircle(view, flat(head), headRadius, pen),
    ...[ankle, knee, hip, shoulder, elbow].map((at) => viewCircle(view, flat(at), joint, 'thin', 'paper')),
  ];
}

/** The figure was placed in the loaded stance; the picture is drawn at the design stance. */
function placed({ scene }: DrawingContext, figure: RiderFigure): RiderFigure {
  const { frame } = scene.bike.layout.stances.sag;
  const own = (at: Point3): Point3 => toLocal(frame, at);
  return {
    ...figure,
    hip: own(figure.hip),
    knee: own(figure.knee),
    ankle: own(figure.ankle),
    toe: own(figure.toe),
    shoulder: own(figure.shoulder),
    elbow: own(figure.elbow),
    grip: own(figure.grip),
    head: own(figure.head),
  };
}
