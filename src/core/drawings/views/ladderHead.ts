import { spreadLabels } from '../labelSpread.ts';
import { line, openPath, type PaperRect, polygon, rectangle, text } from '../shapes.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import { textWidth } from '../textMetrics.ts';
import { type DrawingContext, inLine, words } from './context.ts';
import { type LadderLayout, ladderX } from './ladderRows.ts';

const TEXT = 2.6;
/** Room for two lines of label over the strip [mm]. */
const LABELS = 11;
/** Room for the names of the two sides [mm]. */
const SIDE_ROOM = 14;

interface Mark {
  readonly y: number;
  readonly says: string;
}

/** Rear tire, axle plates, chains, belts and engine face as they stand across the bike, seen from behind. */
export function ladderHead(
  context: DrawingContext,
  layout: LadderLayout,
  area: PaperRect,
): readonly SheetItem[] {
  const at = (y: number): number => ladderX(layout, area, y);
  const strip = { bottom: area.bottom + 1, top: area.top - LABELS };
  const marks = marksOf(context);
  return [
    ...tire(context, at, strip),
    ...bodies(context, at, strip),
    ...marks.map(({ y }) => line({ x: at(y), y: area.bottom - 2 }, { x: at(y), y: strip.top + 1 }, 'center')),
    ...labels(context, marks, at, area, strip.top + 1),
    ...sides(area),
  ];
}

interface Strip {
  readonly bottom: number;
  readonly top: number;
}

function tire({ scene }: DrawingContext, at: (y: number) => number, strip: Strip): readonly SheetItem[] {
  const { width } = scene.bike.layout.rearTire;
  const growth = scene.build.wheels.rear.growth ?? 0;
  const [left, right] = [at(width / 2), at(-width / 2)];
  const crown = Math.min(6, (right - left) / 4);
  const outline: readonly PaperPoint[] = [
    { x: left, y: strip.bottom + 3 },
    { x: left, y: strip.top - crown - 2 },
    { x: left + crown, y: strip.top - 2 },
    { x: right - crown, y: strip.top - 2 },
    { x: right, y: strip.top - crown - 2 },
    { x: right, y: strip.bottom + 3 },
  ];
  const grown = [width / 2 + growth, -width / 2 - growth].map((y) =>
    line({ x: at(y), y: strip.bottom }, { x: at(y), y: strip.top - crown - 2 }, 'hidden'),
  );
  return [
    polygon(outline, 'outline', 'medium'),
    ...(growth > 0 ? grown : []),
    text({ x: (left + right) / 2 + 2, y: strip.bottom + 5 }, 'rear tire', { size: TEXT }),
  ];
}

/** Plates on the rear axle, and chains and belts at their planes with their own width. */
function bodies({ scene }: DrawingContext, at: (y: number) => number, strip: Strip): readonly SheetItem[] {
  const plates = Object.values(scene.bike.stacks)
    .filter((stack) => stack.shaft === 'rearAxle')
    .flatMap((stack) => stack.items.filter((item) => item.kind === 'plate'))
    .map((item) =>
      rectangle(
        { left: at(item.left), right: at(item.right), bottom: strip.bottom, top: strip.top - 4 },
        'outline',
        'light',
      ),
    );
  const runs = scene.bike.ladder.lines.flatMap((one) => {
    const chain = scene.driveline.chains[one.drive];
    const belt = scene.driveline.belts[one.drive];
    const half = chain ? chain.chain.halfWidth : (belt?.stage.beltTopWidth ?? 0) / 2;
    if (!(half > 0)) return [];
    const box = {
      left: at(one.drivenY + half),
      right: at(one.drivenY - half),
      bottom: strip.bottom + 4,
      top: strip.top - 3,
    };
    return [rectangle(box, 'thin', belt ? 'dark' : 'paper')];
  });
  const { faceY } = scene.bike.engine;
  return [
    ...plates,
    ...runs,
    line({ x: at(faceY), y: strip.bottom }, { x: at(faceY), y: strip.top - 6 }, 'outline'),
  ];
}

function marksOf({ scene }: DrawingContext): readonly Mark[] {
  const lines = scene.bike.ladder.lines.flatMap((one): readonly Mark[] => {
    const kind = one.kind === 'chain' ? 'chain' : 'belt';
    const said = `${kind} ${words(one.drive)}`;
    return one.within || one.driverY === one.drivenY
      ? [{ y: one.drivenY, says: said }]
      : [
          { y: one.drivenY, says: `${said}, driven` },
          { y: one.driverY, says: `${said}, driving` },
        ];
  });
  return [{ y: 0, says: 'center plane' }, { y: scene.bike.engine.faceY, says: 'engine face' }, ...lines].sort(
    (a, b) => b.y - a.y,
  );
}

function labels(
  context: DrawingContext,
  marks: readonly Mark[],
  at: (y: number) => number,
  area: PaperRect,
  foot: number,
): readonly SheetItem[] {
  const texts = marks.map(({ y, says }) =>
    y === 0 ? [says] : [says, `${inLine(context, Math.abs(y))} ${y > 0 ? 'left' : 'right'}`],
  );
  const middles = spreadLabels(
    texts.map((lines, i) => ({
      wanted: at(marks[i]!.y),
      size: Math.max(...lines.map((one) => textWidth(one, TEXT))),
    })),
    3,
    { min: area.left + SIDE_ROOM, max: area.right - SIDE_ROOM },
  );
  return texts.flatMap((lines, i) => [
    openPath(
      [
        { x: at(marks[i]!.y), y: foot },
        { x: middles[i]!, y: foot + 2.5 },
      ],
      'dimension',
    ),
    ...lines.map((one, k) =>
      text({ x: middles[i]!, y: foot + 3.4 + (lines.length - 1 - k) * 3.2 }, one, {
        size: TEXT,
        anchor: 'middle',
      }),
    ),
  ]);
}

const sides = (area: PaperRect): readonly SheetItem[] => [
  text({ x: area.left, y: area.top - 3 }, 'LEFT', { size: 3, weight: 'bold' }),
  text({ x: area.right, y: area.top - 3 }, 'RIGHT', { size: 3, weight: 'bold', anchor: 'end' }),
];
