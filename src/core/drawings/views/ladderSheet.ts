import type { ChainLine, TireGap } from '../../bike/index.ts';
import { type Block, contentArea, type DraftSheet, flowPages } from '../bookPages.ts';
import { paper } from '../paper.ts';
import { widthOf } from '../shapes.ts';
import type { TableCell } from '../table.ts';
import {
  asDrawing,
  type DrawingContext,
  degreesText,
  inLine,
  lengthCells,
  lengthColumns,
  words,
} from './context.ts';
import { ladderHead } from './ladderHead.ts';
import { type LadderRow, ladderLayout, rowsHeight, rowsItems } from './ladderRows.ts';

/** Height of the strip with tire, chains and plates over the rows [mm]. */
const HEAD = 33;
const HEADING = 7;

/**
 * The lateral ladder of the whole bike: across the bike to scale, from the center plane out, every step to each chain and
 * belt line from both of its shafts and from the tire; then the spacers to make and the room beside the tires.
 */
export function ladderSheets(context: DrawingContext): readonly DraftSheet[] {
  const sheet = paper(context.paper, 'landscape');
  const wide = widthOf(contentArea(sheet));
  const { ladder } = context.scene.bike;
  const layout = ladderLayout(context, wide);
  const blocks: readonly Block[] = [
    {
      kind: 'drawing',
      height: HEAD,
      draw: (area) => ladderHead(context, layout, area),
    },
    ...ladder.lines.map((line): Block => {
      const rows = lineRows(line, ladder.gaps);
      return {
        kind: 'drawing',
        height: HEADING + rowsHeight(rows),
        draw: (area) =>
          rowsItems(context, {
            layout,
            area,
            rows,
            planes: [line.driverY, line.drivenY],
            heading: headingOf(context, line),
            verdict: verdictOf(context, line),
            fails: !line.within,
            headingHeight: HEADING,
          }),
      };
    }),
    ...spacerBlocks(context),
    ...gapBlocks(context),
  ];
  const pages = flowPages({
    id: 'lateral-ladder',
    title: 'Lateral ladder, seen from behind',
    paper: sheet,
    blocks,
  });
  return asDrawing(pages, { scale: `${layout.label} across`, projection: 'none' });
}

function headingOf(context: DrawingContext, line: ChainLine): string {
  const stage = context.scene.build.driveline.stages.find((one) => one.id === line.drive);
  const shafts = stage && stage.kind !== 'clutch' ? `, ${words(stage.from)} to ${words(stage.to)}` : '';
  const kind = line.kind === 'chain' ? 'Chain' : 'Belt';
  return `${kind} ${words(line.drive)}${shafts}, shafts ${inLine(context, line.centerDistance)} apart`;
}

function verdictOf(context: DrawingContext, line: ChainLine): string {
  const size = `offset ${inLine(context, Math.abs(line.offset))} of ${inLine(context, line.limit)} allowed, ${degreesText(Math.abs(line.angle), 2)}`;
  return `${size}: ${line.within ? 'WITHIN LIMIT' : 'OUT OF LINE'}`;
}

/** From the tire, then along both shafts; each run of steps ends in the same plane. */
function lineRows(line: ChainLine, gaps: readonly TireGap[]): readonly LadderRow[] {
  const gap = gaps.find((one) => one.against === `${line.kind === 'chain' ? 'chain' : 'belt'} ${line.drive}`);
  return [
    ...(gap
      ? [
          {
            title: `From the rim${gap.within ? '' : ': ROOM TOO SMALL'}`,
            steps: gap.steps,
            fails: !gap.within,
          },
        ]
      : []),
    { title: 'Driven shaft', steps: line.drivenSteps, fails: false },
    { title: 'Driving shaft', steps: line.driverSteps, fails: false },
  ];
}

function spacerBlocks(context: DrawingContext): readonly Block[] {
  const rows = context.scene.bike.ladder.lines.flatMap((line) =>
    line.options.map((option): readonly TableCell[] => {
      const make = option.insteadOf === undefined && option.hindrance === undefined;
      const cell = (said: string): TableCell => (make ? { text: said, weight: 'bold' } : said);
      const does = option.insteadOf
        ? `instead of ${words(option.insteadOf)}`
        : line.within
          ? 'MAKE'
          : 'would bring it in line';
      return [
        cell(words(line.drive)),
        cell(words(option.stack)),
        cell(words(option.item)),
        ...lengthCells(context, option.length).map(cell),
        cell(does),
        option.hindrance === undefined ? 'nothing' : { text: inWords(option.hindrance), tone: 'accent' },
      ];
    }),
  );
  if (rows.length === 0) return [];
  return [
    { kind: 'heading', text: 'Spacers that bring each line in', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: 'Line' },
        { title: 'Stack' },
        { title: 'Spacer' },
        ...lengthColumns(context, 'Length'),
        { title: '' },
        { title: 'What stands in the way' },
      ],
      rows,
    },
  ];
}

const inWords = (said: string): string => said.replace(/([a-z])-([a-z])/g, '$1 $2');

function gapBlocks(context: DrawingContext): readonly Block[] {
  const { gaps } = context.scene.bike.ladder;
  if (gaps.length === 0) return [];
  return [
    { kind: 'heading', text: 'Room beside the tires, growth taken off', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: 'Beside' },
        ...lengthColumns(context, 'Room'),
        ...lengthColumns(context, 'At least'),
        { title: '' },
      ],
      rows: gaps.map((gap) => [
        words(gap.against),
        ...lengthCells(context, gap.gap),
        ...lengthCells(context, gap.limit),
        gap.within ? 'within limit' : { text: 'TOO SMALL', weight: 'bold', tone: 'accent' },
      ]),
    },
  ];
}
