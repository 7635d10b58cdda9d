import type { LadderStep } from '../../bike/index.ts';
import { arrowhead, arrowLength } from '../arrow.ts';
import { line, maskedText, type PaperRect, rectangle } from '../shapes.ts';
import type { SheetItem } from '../sheet.ts';
import { textWidth } from '../textMetrics.ts';
import { fineScales } from '../view.ts';
import { type DrawingContext, inLine, words } from './context.ts';

/** One run of steps from the center plane, rim or face to a plane. */
export interface LadderRow {
  readonly title: string;
  readonly steps: readonly LadderStep[];
  readonly fails: boolean;
}

/** Where the center plane lies on paper and how long a meter across is. */
export interface LadderLayout {
  /** From the left edge of the content area to the center plane [mm]. */
  readonly center: number;
  /** [mm/m] */
  readonly perMeter: number;
  readonly label: string;
}

export interface RowsInput {
  readonly layout: LadderLayout;
  readonly area: PaperRect;
  readonly rows: readonly LadderRow[];
  /** Y of the planes that must meet [m]. */
  readonly planes: readonly number[];
  readonly heading: string;
  readonly verdict: string;
  readonly fails: boolean;
  readonly headingHeight: number;
}

const STEP = 4.9;
const TEXT = 2.7;
const TITLE = 2.7;
/** Room that labels need on the side away from the steps [mm]. */
const LABELS = 84;
/** From the steps to their labels [mm]. */
const LABEL_GAP = 4;

/** Scale and place of the center plane: all steps of all lines fit, with their labels on the other side. */
export function ladderLayout(context: DrawingContext, width: number): LadderLayout {
  const { ladder } = context.scene.bike;
  const steps = [
    ...ladder.lines.flatMap((one) => [...one.driverSteps, ...one.drivenSteps]),
    ...ladder.gaps.flatMap((gap) => gap.steps),
  ];
  const ys = steps.flatMap((step) => [step.from, step.to]);
  const left = Math.max(0.05, ...ys);
  const right = Math.max(0.05, ...ys.map((y) => -y));
  const scale =
    fineScales.find((one) => {
      const per = one.ratio * 1000;
      return one.ratio <= 1 && Math.max(left * per, LABELS) + Math.max(right * per, LABELS) + 8 <= width;
    }) ?? fineScales.at(-1)!;
  const perMeter = scale.ratio * 1000;
  const [leftMm, rightMm] = [Math.max(left * perMeter, LABELS), Math.max(right * perMeter, LABELS)];
  return { center: (width - leftMm - rightMm) / 2 + leftMm, perMeter, label: scale.label };
}

export const ladderX = (layout: LadderLayout, area: PaperRect, y: number): number =>
  area.left + layout.center - y * layout.perMeter;

export const rowsHeight = (rows: readonly LadderRow[]): number =>
  rows.reduce((sum, row) => sum + (row.steps.length + 1) * STEP, 0) + 1;

/** Heading, verdict, center plane, the planes that must meet, and every step on a line of its own. */
export function rowsItems(context: DrawingContext, input: RowsInput): readonly SheetItem[] {
  const { layout, area, rows, planes } = input;
  const center = ladderX(layout, area, 0);
  const top = area.top - input.headingHeight;
  let y = top;
  const drawn = rows.flatMap((row) => {
    const from = y;
    y -= (row.steps.length + 1) * STEP;
    return rowItems(context, input, row, from);
  });
  const meet = [...new Set(planes)].map((plane) => {
    const x = ladderX(layout, area, plane);
    return line({ x, y: top }, { x, y: area.bottom }, 'center');
  });
  return [
    line({ x: center, y: area.top }, { x: center, y: area.bottom - 2 }, 'center'),
    line({ x: area.left, y: area.top }, { x: area.right, y: area.top }, 'thin'),
    ...meet,
    ...maskedText({ x: area.left, y: area.top - 4.6 }, input.heading, { size: 3, weight: 'bold' }),
    ...maskedText({ x: area.right, y: area.top - 4.6 }, input.verdict, {
      size: 3,
      weight: 'bold',
      anchor: 'end',
      tone: input.fails ? 'accent' : 'ink',
    }),
    ...drawn,
  ];
}

function rowItems(
  context: DrawingContext,
  { layout, area }: RowsInput,
  row: LadderRow,
  top: number,
): readonly SheetItem[] {
  const ys = row.steps.flatMap((step) => [step.from, step.to]);
  const furthest = [...ys].sort((a, b) => Math.abs(b) - Math.abs(a))[0] ?? 0;
  // Steps to the rider's left lie left on paper, so their labels stand right of them all.
  const side = furthest >= 0 ? 1 : -1;
  const edge =
    side > 0
      ? Math.max(...ys.map((y) => ladderX(layout, area, y)), ladderX(layout, area, 0)) + LABEL_GAP
      : Math.min(...ys.map((y) => ladderX(layout, area, y)), ladderX(layout, area, 0)) - LABEL_GAP;
  const anchor = side > 0 ? ('start' as const) : ('end' as const);
  const title = maskedText({ x: edge, y: top - STEP + 1.2 }, row.title, {
    size: TITLE,
    weight: 'bold',
    anchor,
    tone: row.fails ? 'accent' : 'muted',
  });
  const lengths = row.steps.map(
    (step) => `${step.length < 0 ? 'back ' : ''}${inLine(context, Math.abs(step.length))}`,
  );
  const column = Math.max(0, ...lengths.map((one) => textWidth(one, TEXT, 'bold'))) + 3;
  return [
    ...title,
    ...row.steps.flatMap((step, i) => {
      const y = top - (i + 1.5) * STEP;
      const [from, to] = [ladderX(layout, area, step.from), ladderX(layout, area, step.to)];
      const near = side > 0 ? Math.max(from, to) : Math.min(from, to);
      const weight = step.solved ? ('bold' as const) : ('regular' as const);
      const base = y - 1;
      const next = row.steps[i + 1];
      return [
        ...(Math.abs(edge - near) > 6
          ? [line({ x: near + side * 1.5, y }, { x: edge - side * 1.5, y }, 'hidden')]
          : []),
        ...(next ? [line({ x: to, y }, { x: to, y: y - STEP }, 'dimension')] : []),
        ...stepItems(from, to, y, step.solved === true),
        ...maskedText({ x: edge, y: base }, lengths[i]!, { size: TEXT, weight: 'bold', anchor }),
        ...maskedText(
          { x: edge + side * column, y: base },
          `${words(step.label)}${step.solved ? ', MAKE' : ''}`,
          { size: TEXT, weight, anchor },
        ),
      ];
    }),
  ];
}

/** An arrow over the step, or a filled bar for a spacer to make; a short step gets its arrow from outside. */
function stepItems(from: number, to: number, y: number, solved: boolean): readonly SheetItem[] {
  const way = to >= from ? 1 : -1;
  const long = Math.abs(to - from);
  if (solved) {
    const bar = { left: Math.min(from, to), right: Math.max(from, to), bottom: y - 1.6, top: y + 1.6 };
    return [rectangle(bar, 'accent', 'accent')];
  }
  const ends = [from, to].map((x) => line({ x, y: y - 1.3 }, { x, y: y + 1.3 }, 'thin'));
  if (long < 0.3) return ends;
  const head = long > arrowLength + 0.5 ? [arrowhead({ x: to, y }, way > 0 ? 0 : 180)] : [];
  return [...ends, line({ x: from, y }, { x: to, y }, 'outline'), ...head];
}
