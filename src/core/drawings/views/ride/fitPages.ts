import {
  comfortAngles,
  type Joint,
  type LegClearance,
  type RiderFit,
  type Riding,
} from '../../../ride/index.ts';
import { type Block, blockStrips, contentArea, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import { heightOf, widthOf } from '../../shapes.ts';
import type { TableCell } from '../../table.ts';
import { type View, viewLength } from '../../view.ts';
import { asDrawing, type DrawingContext, degreesText, inLine, words } from '../context.ts';
import { fitted } from '../sheetFit.ts';
import { fitBounds, fitItems } from './fitFigures.ts';

const JOINTS: readonly (readonly [Joint, string])[] = [
  ['knee', 'Knee'],
  ['hip', 'Hip'],
  ['elbow', 'Elbow'],
  ['trunkLean', 'Trunk, from upright'],
];
/** Nearer than this they touch: the figure is no more exact [m]. */
const TOUCH = 0.5e-3;
const OFF = { below: 'small', inside: '', above: 'large' } as const;
/** Least height of the picture where tables take the page, and the room over it for names [mm]. */
const LEAST_PICTURE = 90;
const NAME_ROOM = 2;

/** Own rider and riders of the survey on one picture; angles, reach and room of each. */
export function fitPages(context: DrawingContext, riding: Riding): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'portrait');
  const content = contentArea(sheet);
  const wide = widthOf(content);
  const tables = fitTables(context, riding);
  const used = blockStrips([heading, ...tables], wide).reduce((sum, strip) => sum + strip.height, 0);
  const room = Math.max(LEAST_PICTURE, heightOf(content) - used - NAME_ROOM);
  const bounds = fitBounds(context, riding);
  const view = fitted(bounds, { left: 0, right: wide, bottom: 0, top: room - NAME_ROOM }, true);
  const picture: Block = {
    kind: 'drawing',
    height: viewLength(view, bounds.maxY - bounds.minY) + NAME_ROOM,
    draw: (area) => {
      const up = area.bottom + 0.5 - viewLength(view, bounds.minY);
      const own: View = { ...view, origin: { x: view.origin.x + area.left, y: up } };
      return fitItems(context, riding, own, area);
    },
  };
  const pages = flowPages({
    id: 'ride-fit',
    title: 'How riders fit',
    paper: sheet,
    blocks: [heading, picture, ...tables],
  });
  return asDrawing(pages, { scale: view.scale.label, projection: 'none' });
}

const heading: Block = { kind: 'heading', text: 'How riders fit', level: 1 };

function fitTables(context: DrawingContext, { fit }: Riding): readonly Block[] {
  const riders = [fit.own, ...fit.survey];
  const side = (length: number): string => inLine(context, length, 1);
  const { seatToPeg, pegToGrip, seatToGrip } = fit.triangle;
  return [
    angleTable(riders),
    reachTable(context, riders),
    roomTable(context, fit.own),
    {
      kind: 'paragraph',
      text: `Each link of one percentile of a survey of soldiers: nobody is built so. Seat ${side(fit.seatHeight)} over the ground with the load on; seat to peg ${side(seatToPeg)}, peg to grip ${side(pegToGrip)}, seat to grip ${side(seatToGrip)}, from the side. Comfort is what is usual, no rule; legs clothed, engine and bodies as boxes.`,
      size: 2.6,
    },
  ];
}

/** An angle outside its range is bold and says which way. */
function angleTable(riders: readonly RiderFit[]): Block {
  const range = (joint: Joint): string =>
    `${degreesText(comfortAngles[joint].least, 0)} to ${degreesText(comfortAngles[joint].most, 0)}`;
  const cell = ({ angles, comfort }: RiderFit, joint: Joint): TableCell => {
    const off = OFF[comfort[joint]];
    const said = degreesText(angles[joint], 0);
    return off === '' ? said : { text: `${said} ${off}`, weight: 'bold' };
  };
  return {
    kind: 'table',
    columns: [
      { title: 'Angles at rest' },
      ...JOINTS.map(([, title]) => ({ title, align: 'right' as const })),
    ],
    rows: [
      ['usual comfort', ...JOINTS.map(([joint]) => range(joint))],
      ...riders.map((fit) => [fit.rider.label, ...JOINTS.map(([joint]) => cell(fit, joint))]),
    ],
    size: 2.5,
  };
}

function reachTable(context: DrawingContext, riders: readonly RiderFit[]): Block {
  const margin = (value: number | undefined): TableCell => {
    if (value === undefined) return '–';
    const said = inLine(context, Math.abs(value), 1);
    return value < 0 ? { text: `${said} short`, weight: 'bold' } : `${said} to spare`;
  };
  const reach = (reaches: boolean): TableCell => (reaches ? 'yes' : { text: 'no', weight: 'bold' });
  return {
    kind: 'table',
    columns: [
      { title: 'Reach' },
      { title: 'Pegs' },
      { title: 'Grips' },
      { title: 'Both feet flat on the ground' },
      { title: 'Far grip at full lock, trunk still' },
      { title: 'Nearest to a leg' },
    ],
    rows: riders.map((fit) => [
      fit.rider.label,
      reach(fit.reaches.peg),
      reach(fit.reaches.grip),
      margin(fit.groundMargin),
      margin(fit.lockMargin),
      nearest(context, fit),
    ]),
    size: 2.5,
  };
}

function nearest(context: DrawingContext, { clearances }: RiderFit): TableCell {
  const [closest] = clearances;
  if (!closest) return '–';
  const said = `${closest.side} ${closest.limb} to ${partName(closest)}, ${gapText(context, closest.gap)}`;
  return closest.gap < 0 ? { text: said, weight: 'bold' } : said;
}

const partName = ({ against, isHot }: LegClearance): string =>
  `${words(against.replace(/^bodies\./, ''))}${isHot ? ' (hot)' : ''}`;

const gapText = (context: DrawingContext, gap: number): string =>
  gap < -TOUCH
    ? `meets it by ${inLine(context, -gap, 1)}`
    : gap < TOUCH
      ? 'touches'
      : inLine(context, gap, 1);

/** The nearest thing to each part of the legs, and the nearest hot one. */
function roomTable(context: DrawingContext, { clearances, splay }: RiderFit): Block {
  const nearestOf = (isIt: (one: LegClearance) => boolean): readonly LegClearance[] => {
    const found = clearances.find(isIt);
    return found ? [found] : [];
  };
  const rows = new Set([
    ...(['thigh', 'knee', 'calf'] as const).flatMap((limb) => nearestOf((one) => one.limb === limb)),
    ...nearestOf((one) => one.isHot),
  ]);
  return {
    kind: 'table',
    columns: [
      {
        title: `Legs of the own rider, knees held out ${degreesText(splay.left, 0)} left, ${degreesText(splay.right, 0)} right`,
      },
      { title: 'To' },
      { title: 'Gap' },
    ],
    rows: [...rows].map((one) => [`${one.side} ${one.limb}`, partName(one), gapText(context, one.gap)]),
    size: 2.5,
  };
}
