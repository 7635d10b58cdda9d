import type { PlacedTube, PlacedTubeEnd } from '../../bike/index.ts';
import type { BendSchedule, CutRow } from '../../shop/index.ts';
import { type Block, type DraftSheet, flowPages } from '../bookPages.ts';
import { balloon, balloonRadius } from '../callouts.ts';
import { spreadLabels } from '../labelSpread.ts';
import { ordinateDimensions } from '../ordinate.ts';
import { type Paper, paper } from '../paper.ts';
import { line, openPath, type PaperRect, polygon, rectangle, text } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import {
  type DrawingContext,
  degreesText,
  dimensionOf,
  fineInLine,
  inLine,
  lengthCells,
  lengthColumns,
  words,
} from './context.ts';
import { referenceText } from './tubeWords.ts';

/** What the cards need of the shop's lists. */
export interface TubeWork {
  readonly cuts: { readonly rows: readonly CutRow[] };
  readonly bends: readonly BendSchedule[];
}

/** The bar is drawn this thick, whatever the tube, and stretched to the width of the sheet [mm]. */
const BAR = 6;
const TOP_ROOM = 11;
const FOOT_ROOM = 28;
const END_ROOM = 16;
const FIGURE = 2.7;
const BALLOON = 2.6;

/** One card for each tube to cut: the straight bar with its marks from START, bends, and both ends. */
export function tubeCards(context: DrawingContext, work: TubeWork): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'portrait');
  const cards = work.cuts.rows.flatMap((row): readonly (readonly Block[])[] => {
    const tube = context.scene.bike.tubes.find((one) => one.entry === row.tube && one.hand !== 'right');
    const schedule = work.bends.find((one) => one.tube === row.tube);
    return tube ? [card(context, row, tube, schedule)] : [];
  });
  return flowPages({ id: 'tubes', title: 'Tubes', paper: sheet, blocks: wholeCards(sheet, cards) });
}

/** Cards one under the other; one that would be split begins a page. */
function wholeCards(sheet: Paper, cards: readonly (readonly Block[])[]): readonly Block[] {
  const pages = (blocks: readonly Block[]): number =>
    flowPages({ id: '', title: '', paper: sheet, blocks }).length;
  let page: readonly Block[] = [];
  const all: Block[] = [];
  for (const one of cards) {
    const fits = page.length === 0 || pages([...page, ...one]) <= 1;
    if (!fits) all.push({ kind: 'pageBreak' });
    page = fits ? [...page, ...one] : one;
    all.push(...one);
  }
  return all;
}

function card(
  context: DrawingContext,
  row: CutRow,
  tube: PlacedTube,
  schedule: BendSchedule | undefined,
): readonly Block[] {
  const count = row.pair ? `${row.count} off, left and right` : `${row.count} off`;
  const size = `Ø ${inLine(context, row.outside)} × ${fineInLine(context, row.wall)} ${words(row.material)}`;
  const saw = `Saw ${inLine(context, row.sawn)}; finished ${inLine(context, row.length)} from longest point to longest point.`;
  return [
    { kind: 'heading', text: `${words(row.tube)}: ${count}`, level: 2 },
    { kind: 'paragraph', text: `${size}. ${saw}`, size: 2.8, weight: 'bold' },
    ...(row.purpose === undefined ? [] : [{ kind: 'paragraph' as const, text: row.purpose, size: 2.8 }]),
    {
      kind: 'drawing',
      height: TOP_ROOM + BAR + (schedule ? FOOT_ROOM : 18),
      draw: (area) => drawBar(context, row, schedule, area),
    },
    ...bendBlocks(context, schedule),
    endTable(context, tube),
    { kind: 'space', height: 3 },
  ];
}

function drawBar(
  context: DrawingContext,
  row: CutRow,
  schedule: BendSchedule | undefined,
  area: PaperRect,
): readonly SheetItem[] {
  const [left, right] = [area.left + END_ROOM, area.right - END_ROOM];
  const top = area.top - TOP_ROOM;
  const foot = top - BAR;
  const x = (along: number): number => left + ((right - left) * along) / row.sawn;
  const bends = schedule?.rows ?? [];
  const marks = [0, ...bends.flatMap((bend) => [bend.start, bend.end]), row.sawn];
  return [
    rectangle({ left, right, bottom: foot, top }, 'outline', 'paper'),
    ...bends.map((bend) =>
      rectangle({ left: x(bend.start), right: x(bend.end), bottom: foot, top }, 'thin', 'medium'),
    ),
    ...trims(row, x, { foot, top, left, right }),
    line({ x: left - 4, y: (top + foot) / 2 }, { x: right + 4, y: (top + foot) / 2 }, 'center'),
    text({ x: left - 1.5, y: (top + foot) / 2 + 1.2 }, 'START', { size: 2.8, weight: 'bold', anchor: 'end' }),
    ...bendNumbers(
      bends.map((bend) => x((bend.start + bend.end) / 2)),
      top,
      area,
    ),
    ...ordinateDimensions({
      axis: 'x',
      features: marks.map((along) => ({ at: { x: x(along), y: foot }, text: dimensionOf(context, along) })),
      labelsAt: foot - 9,
      size: FIGURE,
      range: { min: area.left, max: area.right },
    }),
  ];
}

interface BarBox {
  readonly foot: number;
  readonly top: number;
  readonly left: number;
  readonly right: number;
}

/** What is left on to trim at fit-up, and the depth of a cope, at both ends. */
function trims(row: CutRow, x: (along: number) => number, bar: BarBox): readonly SheetItem[] {
  return row.ends.flatMap((end, i) => {
    const place = (inward: number): number => x(i === 0 ? inward : row.sawn - inward);
    const long = place(end.leaveLong);
    const short = place(end.leaveLong + end.depth);
    const middle = (bar.foot + bar.top) / 2;
    const cut =
      end.joint === 'cope'
        ? [
            openPath(
              [
                { x: long, y: bar.top },
                { x: short, y: middle },
                { x: long, y: bar.foot },
              ],
              'outline',
            ),
          ]
        : [];
    const edge = i === 0 ? bar.left : bar.right;
    const waste =
      end.leaveLong > 0
        ? [
            polygon(
              [
                { x: edge, y: bar.foot },
                { x: long, y: bar.foot },
                { x: long, y: bar.top },
                { x: edge, y: bar.top },
              ],
              'hidden',
              'accent',
            ),
          ]
        : [];
    return [...waste, ...cut];
  });
}

function bendNumbers(xs: readonly number[], top: number, area: PaperRect): readonly SheetItem[] {
  const radius = balloonRadius(BALLOON);
  const places = spreadLabels(
    xs.map((wanted) => ({ wanted, size: 2 * radius })),
    1,
    { min: area.left, max: area.right },
  );
  const y = top + TOP_ROOM - radius - 1;
  return xs.flatMap((from, i) => [
    line({ x: from, y: top }, { x: places[i]!, y: y - radius }, 'dimension'),
    ...balloon({ x: places[i]!, y }, String(i + 1), BALLOON),
  ]);
}

function bendBlocks(context: DrawingContext, schedule: BendSchedule | undefined): readonly Block[] {
  if (!schedule) return [];
  const turn = (rotation: number, first: boolean): string => {
    if (first) return 'first bend';
    if (Math.abs(rotation) < 1e-4) return 'none';
    return `${degreesText(Math.abs(rotation))} ${rotation > 0 ? 'clockwise' : 'counterclockwise'}`;
  };
  const notes = [
    schedule.springbackKnown
      ? 'Pull to the angle in bold: it has the springback of the sample bend.'
      : 'No springback is known: pull angles are the bend angles. Bend a sample and measure first.',
    'Turns are seen along the tube from START.',
    ...(schedule.pair ? ['These are the left tube’s turns; the right tube turns the other way.'] : []),
  ];
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Bend', align: 'right' },
        ...lengthColumns(context, 'Starts'),
        ...lengthColumns(context, 'Ends'),
        { title: 'Turn the tube' },
        { title: 'Bend angle', align: 'right' },
        { title: 'Pull to', align: 'right' },
        ...lengthColumns(context, 'Radius'),
      ],
      rows: schedule.rows.map((bend, i) => [
        String(i + 1),
        ...lengthCells(context, bend.start).map((cell) => ({ text: cell, weight: 'bold' as const })),
        ...lengthCells(context, bend.end),
        turn(bend.rotation, i === 0),
        degreesText(bend.angle),
        { text: degreesText(bend.pull), weight: 'bold' },
        ...lengthCells(context, bend.radius),
      ]),
    },
    { kind: 'paragraph', text: notes.join(' '), size: 2.6 },
  ];
}

function endTable(context: DrawingContext, tube: PlacedTube): Block {
  return {
    kind: 'table',
    columns: [
      { title: 'End' },
      { title: 'Joint' },
      { title: 'Angle', align: 'right' },
      { title: 'Heel' },
      ...lengthColumns(context, 'Cut depth'),
      ...lengthColumns(context, 'Leave long'),
    ],
    rows: tube.ends.map((end, i) => [
      i === 0 ? 'START' : 'other',
      jointText(context, end),
      end.angle === undefined ? '' : degreesText(end.angle),
      end.clock === undefined ? '' : heelText(tube, end.clock),
      ...lengthCells(context, end.joint === 'cope' ? end.shortPoint - end.longPoint : undefined),
      ...lengthCells(context, end.leaveLong > 0 ? end.leaveLong : undefined),
    ]),
  };
}

function jointText(context: DrawingContext, end: PlacedTubeEnd): string {
  if (end.joint !== 'cope') return end.joint;
  const onto = end.onto === undefined ? '' : ` onto ${words(end.onto)}`;
  const trunk = end.trunkOutside === undefined ? '' : ` (Ø ${inLine(context, end.trunkOutside)})`;
  const offset =
    end.offset !== undefined && Math.abs(end.offset) > 5e-5
      ? `, ${inLine(context, Math.abs(end.offset))} off its axis`
      : '';
  return `cope${onto}${trunk}${offset}`;
}

/** Where the heel of the cope lies round the tube. */
function heelText(tube: PlacedTube, clock: number): string {
  const reference = referenceText(tube);
  const turn = Math.atan2(Math.sin(clock), Math.cos(clock));
  if (Math.abs(turn) < 1e-3) return `on the ${reference}`;
  return `${degreesText(Math.abs(turn))} ${turn > 0 ? 'clockwise' : 'counterclockwise'} from the ${reference}, seen from the far end`;
}
