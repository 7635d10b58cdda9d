import type { Point, Point3 } from '../../geometry/index.ts';
import { printQuantity } from '../../quantity/index.ts';
import { contentArea, type DraftSheet } from '../bookPages.ts';
import { angleDimension } from '../leader.ts';
import { baselineStep, linearDimension } from '../linearDimension.ts';
import { paper } from '../paper.ts';
import { moved, type PaperRect, text, widthOf } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import { layoutTable } from '../table.ts';
import { type View, viewCircle, viewLength, viewLine, viewPoint } from '../view.ts';
import { type DrawingContext, degreesText, dimensionOf, inLine } from './context.ts';
import type { SceneInput } from './scene.ts';
import { fitted } from './sheetFit.ts';
import { sideBounds, sideViewItems } from './sideView.ts';

const ROW = baselineStep() + 0.6;
/** From the ground line to the first dimension under it, and from the tires to the first column [mm]. */
const FIRST_ROW = 9;
const FIRST_COLUMN = 10;
/** Shafts that get a row of their own under the ground line. */
const MOST_SHAFTS = 3;
const COLUMNS = 2;
/** Between two upright dimensions under the bike [mm]. */
const UPRIGHT_ROOM = 13;

/** The left side with heights, lengths along the bike, head angle and trail, and a table of the main figures. */
export function sideSheet(context: DrawingContext): DraftSheet {
  const sheet = paper(context.paper, 'landscape');
  const area = contentArea(sheet);
  const hide = ['rider'] as const;
  const bounds = sideBounds(context.scene, { hide });
  const table = figureTable(context, widthOf(area));
  const room: PaperRect = {
    left: area.left + FIRST_COLUMN + COLUMNS * ROW,
    right: area.right - FIRST_COLUMN - COLUMNS * ROW,
    bottom: area.bottom + FIRST_ROW + (shaftsAhead(context.scene).length + 1.7) * ROW,
    top: area.top - table.height - 4,
  };
  const view = fitted(bounds, room, true);
  return {
    id: 'general-arrangement-side',
    title: 'General arrangement, left side',
    paper: sheet,
    scale: view.scale.label,
    items: [
      ...sideViewItems(context.scene, view, { hide }),
      ...steering(context, view),
      ...alongDimensions(context, view),
      ...heights(context, view),
      ...shaftCenters(context.scene, view),
      ...table.items.map((item) => moved(item, area.left, area.top)),
    ],
  };
}

/** Center marks of axles and shafts. */
function shaftCenters({ bike }: SceneInput, view: View): readonly SheetItem[] {
  return Object.values(bike.shafts).flatMap((center) => {
    const at: Point = { x: center.x, y: center.z };
    const arm = 4 / viewLength(view, 1);
    return [
      viewLine(
        view,
        [
          { x: at.x - arm, y: at.y },
          { x: at.x + arm, y: at.y },
        ],
        'center',
      ),
      viewLine(
        view,
        [
          { x: at.x, y: at.y - arm },
          { x: at.x, y: at.y + arm },
        ],
        'center',
      ),
    ];
  });
}

/** Steering axis down to the ground, its angle, and the trail. */
function steering(context: DrawingContext, view: View): readonly SheetItem[] {
  const { layout } = context.scene.bike;
  const { headAngle, trail } = layout.stances.design;
  const contact: Point = { x: layout.points.frontAxle!.x, y: 0 };
  const foot: Point = { x: contact.x + trail, y: 0 };
  const top = layout.points.neckTop!;
  const above = 0.09;
  const end: Point = {
    x: top.x - above * Math.cos(headAngle),
    y: top.z + above * Math.sin(headAngle),
  };
  const turn = view.flipX ? [0, headAngle] : [Math.PI - headAngle, Math.PI];
  const reach = viewLength(view, layout.frontTire.radius + Math.max(trail, 0)) + 12;
  return [
    viewLine(view, [foot, end], 'center'),
    viewLine(view, [contact, { x: contact.x, y: layout.points.frontAxle!.z }], 'center'),
    viewCircle(view, contact, 0.6 / viewLength(view, 1), 'thin', 'ink'),
    viewCircle(view, foot, 0.6 / viewLength(view, 1), 'thin', 'ink'),
    ...angleDimension({
      vertex: viewPoint(view, foot),
      radius: reach,
      from: (turn[0]! * 180) / Math.PI,
      to: (turn[1]! * 180) / Math.PI,
      text: degreesText(headAngle),
    }),
    ...linearDimension({
      from: viewPoint(view, contact),
      to: viewPoint(view, foot),
      direction: 'horizontal',
      at: rowAt(view, 0),
      text: dimensionOf(context, Math.abs(trail)),
    }),
  ];
}

const rowAt = (view: View, row: number): number => view.origin.y - FIRST_ROW - row * ROW;

/** From the rear axle forward, then wheelbase and overall length. */
function alongDimensions(context: DrawingContext, view: View): readonly SheetItem[] {
  const { bike } = context.scene;
  const { rearAxle, frontAxle } = bike.shafts;
  const { rear, front } = bike.layout.fitted;
  const ground = (x: number): Point => ({ x, y: 0 });
  const shafts = shaftsAhead(context.scene);
  const across = (from: Point, to: Point, row: number, length: number): readonly SheetItem[] =>
    linearDimension({
      from: viewPoint(view, from),
      to: viewPoint(view, to),
      direction: 'horizontal',
      at: rowAt(view, row),
      text: dimensionOf(context, length),
    });
  const wheelbase = frontAxle!.x - rearAxle!.x;
  const [back, ahead] = [rearAxle!.x - rear.radius, frontAxle!.x + front.radius];
  return [
    ...shafts.flatMap((shaft, i) =>
      across({ x: rearAxle!.x, y: rearAxle!.z }, { x: shaft.x, y: shaft.z }, i, shaft.x - rearAxle!.x),
    ),
    ...across(ground(rearAxle!.x), ground(frontAxle!.x), shafts.length, wheelbase),
    ...across({ x: back, y: rearAxle!.z }, { x: ahead, y: frontAxle!.z }, shafts.length + 1, ahead - back),
  ];
}

/** Shafts between the axles, the rearmost first. */
function shaftsAhead({ bike }: SceneInput): readonly Point3[] {
  const { rearAxle, frontAxle, ...others } = bike.shafts;
  return Object.values(others)
    .filter((shaft) => shaft.x > rearAxle!.x && shaft.x < frontAxle!.x)
    .sort((a, b) => a.x - b.x)
    .slice(0, MOST_SHAFTS);
}

/** Axles, seat and grips at the ends of the bike; clearance, pegs and shafts under it. */
function heights(context: DrawingContext, view: View): readonly SheetItem[] {
  const { bike, build } = context.scene;
  const { seat, grip, peg } = bike.layout.places;
  const { rearAxle, frontAxle } = bike.shafts;
  const bounds = sideBounds(context.scene, { hide: ['rider'] });
  const side = view.flipX ? 1 : -1;
  const column = (end: 'rear' | 'front', k: number): number => {
    const edge = viewPoint(view, { x: end === 'rear' ? bounds.minX : bounds.maxX, y: 0 }).x;
    const out = end === 'rear' ? side : -side;
    return edge + out * (FIRST_COLUMN + k * ROW);
  };
  const upright = (from: Point, at: number, height: number): readonly SheetItem[] =>
    linearDimension({
      from: viewPoint(view, { x: from.x, y: 0 }),
      to: viewPoint(view, from),
      direction: 'vertical',
      at,
      text: dimensionOf(context, height),
    });
  const low = lowestTube(context.scene);
  const free = frontAxle!.x - bike.layout.fitted.front.radius;
  const clearX = peg.x + 0.45 * (free - peg.x);
  const clearAt = viewPoint(view, { x: clearX, y: 0 }).x;
  const ahead = viewPoint(view, { x: peg.x, y: 0 }).x - 6 * side;
  const pegAt = Math.abs(ahead - clearAt) < UPRIGHT_ROOM ? clearAt + UPRIGHT_ROOM * side : ahead;
  const seatRear = { x: seat.x - build.seating.seat.length / 2, y: seat.z };
  return [
    ...upright({ x: rearAxle!.x, y: rearAxle!.z }, column('rear', 0), rearAxle!.z),
    ...upright(seatRear, column('rear', 1), seat.z),
    ...upright({ x: frontAxle!.x, y: frontAxle!.z }, column('front', 0), frontAxle!.z),
    ...upright({ x: grip.x, y: grip.z }, column('front', 1), grip.z),
    ...(low === undefined ? [] : upright({ x: clearX, y: low }, clearAt, low)),
    ...upright({ x: peg.x, y: peg.z }, pegAt, peg.z),
  ];
}

/** Underside of the lowest frame tube [m]; none without tubes. */
function lowestTube({ bike }: SceneInput): number | undefined {
  const undersides = bike.tubes.flatMap((tube) =>
    tube.centerline.pieces.map((piece) => Math.min(piece.from.z, piece.to.z) - tube.outside / 2),
  );
  return undersides.length > 0 ? Math.min(...undersides) : undefined;
}

/** Why the axles are not a wheelbase apart. */
function note(context: DrawingContext): string | undefined {
  const { bike } = context.scene;
  const moved = bike.shafts.rearAxle!.x - bike.layout.points.rearAxle!.x;
  if (Math.abs(moved) < 5e-5) return undefined;
  const way = moved > 0 ? 'ahead of' : 'behind';
  return `Drawn with every drive new and taut: the rear axle stands ${inLine(context, Math.abs(moved))} ${way} its place at the design wheelbase.`;
}

function figureTable(context: DrawingContext, width: number) {
  const { bike, masses, build } = context.scene;
  const { design } = bike.layout.stances;
  const kg = (value: number): string => printQuantity(value, 'mass', context.system, { resolution: 0.1 });
  const columns = ['Wheelbase', 'Head angle', 'Trail', 'Seat height', 'Mass', 'With rider', 'On front wheel'];
  const share = masses.frontLoad / (masses.frontLoad + masses.rearLoad);
  const layout = layoutTable(
    {
      columns: columns.map((title) => ({ title })),
      rows: [
        [
          inLine(context, design.wheelbase),
          degreesText(design.headAngle),
          inLine(context, design.trail),
          inLine(context, bike.layout.places.seat.z),
          kg(masses.bare),
          `${kg(masses.total)}, rider ${kg(build.rider.mass)}`,
          `${(100 * share).toFixed(0)} %`,
        ],
      ],
    },
    width,
  );
  const rows = [layout.header, ...layout.rows];
  let y = 0;
  const items = rows.flatMap((row) => {
    const placed = row.items.map((item) => moved(item, 0, y));
    y -= row.height;
    return placed;
  });
  const said = note(context);
  const noteItems = said === undefined ? [] : [text({ x: 0, y: y - 4 }, said, { size: 2.6 })];
  return { height: -y + (said === undefined ? 0 : 5), items: [...items, ...noteItems] };
}
