import { originalName } from '../../../build/index.ts';
import { contactName, type HandlingChange, type Riding, WHIPPLE_LIMITS } from '../../../ride/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import { type DrawingContext, degreesText, inLine, words } from '../context.ts';
import { printed, quantityCells, quantityColumns, wayText } from '../rideWords.ts';
import { eigenvalueChart, type HandlingPart } from './handlingChart.ts';
import { suspensionBlocks } from './suspensionBlocks.ts';

/** Lean contacts that are listed, each side counted. */
const MOST_LEANS = 14;

/** Stability of the linear model, what moves it, and what the model leaves out; then turning circle, lock and lean; then springs. */
export function handlingPages(context: DrawingContext, riding: Riding): readonly DraftSheet[] {
  const { handling } = riding;
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'Handling', level: 1 },
    ...(handling ? stabilityBlocks(context, handling) : [noModel]),
    { kind: 'heading', text: 'Turning and leaning', level: 2 },
    limitTable(context, riding),
    ...leanBlocks(riding),
    ...suspensionBlocks(context, riding.suspension),
  ];
  return flowPages({
    id: 'ride-handling',
    title: 'Handling and springs',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

const noModel: Block = {
  kind: 'paragraph',
  text: 'The model of its stability could not be set up for this bike; see the findings.',
  weight: 'bold',
};

function stabilityBlocks(context: DrawingContext, part: HandlingPart): readonly Block[] {
  const { handling, asymmetry } = part;
  const { weave, capsize, doubleRoot } = handling.speeds;
  const speed = (value: number | undefined): string =>
    value === undefined ? 'there is none' : printed(context, value, 'speed');
  return [
    {
      kind: 'paragraph',
      text: 'Linear model of a bike with a rigid rider and no hands on the bars. It tells how designs differ; it does not tell whether the machine may be ridden.',
      size: 2.8,
    },
    eigenvalueChart(context, part),
    {
      kind: 'table',
      columns: [{ title: 'Speed' }, { title: 'Value' }, { title: 'What happens there' }],
      rows: [
        ['weave', speed(weave), 'swinging from side to side stops growing'],
        [
          'capsize',
          speed(capsize),
          'above it the bike falls slowly into a turn, which a rider corrects without thought',
        ],
        ['double root', speed(doubleRoot?.speed), 'the plain fall turns into a swing'],
        ['self-stable', rangeText(context, handling.changes[0]), 'any small disturbance dies away by itself'],
      ],
    },
    { kind: 'heading', text: 'What moves these speeds', level: 3 },
    {
      kind: 'table',
      columns: [
        { title: 'Changed, one at a time' },
        ...quantityColumns(context, 'Weave', 'speed'),
        ...quantityColumns(context, 'Capsize', 'speed'),
        { title: 'Self-stable' },
      ],
      rows: handling.changes.map((change, i) => {
        const cells = [
          change.change,
          ...quantityCells(context, change.weave, 'speed'),
          ...quantityCells(context, change.capsize, 'speed'),
          rangeText(context, change),
        ];
        return i === 0 ? cells.map((cell) => ({ text: cell, weight: 'bold' as const })) : cells;
      }),
      size: 2.5,
    },
    { kind: 'heading', text: 'What the model leaves out', level: 3 },
    {
      kind: 'list',
      marker: 'bullet',
      items: [
        ...WHIPPLE_LIMITS,
        `both sides of the bike alike: here the center of mass lies ${inLine(context, Math.abs(asymmetry.y))} ${asymmetry.y < 0 ? 'right' : 'left'} of the center plane`,
      ],
      size: 2.8,
    },
  ];
}

function rangeText(context: DrawingContext, change: HandlingChange | undefined): string {
  const range = change?.selfStable;
  if (!range) return 'nowhere';
  const from = printed(context, range.from, 'speed');
  return range.to === undefined ? `from ${from} up` : `${from} to ${printed(context, range.to, 'speed')}`;
}

function limitTable(context: DrawingContext, { turning, locks }: Riding): Block {
  const { lock } = context.scene.build.steering;
  const contacts = (['left', 'right'] as const).map((side) => {
    const contact = locks.find((one) => one.toward === side);
    return [
      `Bars to the ${side}, first contact`,
      contact
        ? `${degreesText(contact.angle)}, ${contact.by} meets ${words(contact.against)}`
        : 'none up to 80°',
    ] as const;
  });
  return {
    kind: 'table',
    columns: [{ title: 'What' }, { title: 'Value' }],
    rows: [
      ['Lock of the steering', lock === undefined ? 'not told' : `${degreesText(lock)} to each side`],
      ...contacts,
      ...(turning
        ? [
            ['Turning circle between walls, walked upright', wayText(context, turning.betweenWalls)] as const,
            [
              'Radius of the front and rear tracks',
              `${wayText(context, turning.frontRadius)} and ${wayText(context, turning.rearRadius)}`,
            ] as const,
          ]
        : []),
    ],
  };
}

/** What touches first, the lowest lean first; of a part that touches alike on both sides one row. */
function leanBlocks({ leans }: Riding): readonly Block[] {
  if (leans.length === 0) return [];
  const rows = new Map<string, { readonly part: string; readonly lean: number; sides: readonly string[] }>();
  for (const { part, lean, side } of leans) {
    const name = originalName(part);
    const key = `${name} ${lean.toFixed(4)}`;
    const before = rows.get(key);
    if (before) before.sides = [...before.sides, side];
    else rows.set(key, { part: name, lean, sides: [side] });
  }
  const all = [...rows.values()];
  const shown = all.slice(0, MOST_LEANS);
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Leaned, in the order of touching' },
        { title: 'Side' },
        { title: 'Lean to contact', align: 'right' },
      ],
      rows: shown.map(({ part, lean, sides }) => [
        contactName(part),
        sides.length > 1 ? 'both' : (sides[0] ?? ''),
        degreesText(lean),
      ]),
    },
    ...(all.length > shown.length
      ? [{ kind: 'paragraph' as const, text: `${all.length - shown.length} more touch later.`, size: 2.8 }]
      : []),
    {
      kind: 'paragraph',
      text: 'Tires are taken as round across and springs at rest under the load; plates are not looked at.',
      size: 2.8,
    },
  ];
}
