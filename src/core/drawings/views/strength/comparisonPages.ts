import type { Strength } from '../../../strength/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import { type DrawingContext, inLine } from '../context.ts';
import { printed } from '../rideWords.ts';
import { driveBlocks } from './driveBlocks.ts';
import {
  caseText,
  comparedText,
  firstOfPairs,
  lifeText,
  partText,
  percent,
  recast,
  sourceText,
  USED_WIDTH,
  useCell,
  valueWidth,
} from './strengthWords.ts';

/** Rows below are many and say little. */
const LEAST_USE = 0.1;
/** Columns that would take more than this many times their push are not listed. */
const MOST_FACTOR = 300;
/** Welds that are listed, the shortest-lived first. */
const MOST_WELDS = 16;

/** All comparisons, then lives of welds, buckling, stiffness and drives. */
export function comparisonPages(context: DrawingContext, strength: Strength): readonly DraftSheet[] {
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'How much of each limit is used', level: 1 },
    ...rowBlocks(context, strength),
    ...weldBlocks(context, strength),
    ...bucklingBlocks(context, strength),
    ...stiffnessBlocks(context, strength),
    ...driveBlocks(context, strength),
  ];
  return flowPages({
    id: 'strength-uses',
    title: 'Use of limits',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

function rowBlocks(context: DrawingContext, { rows, cases }: Strength): readonly Block[] {
  const shown = rows.filter((row) => row.utilization >= LEAST_USE);
  const left = rows.length - shown.length;
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Part' },
        { title: 'Where' },
        { title: 'Load case' },
        { title: 'What' },
        { title: 'Value', align: 'right', width: valueWidth(context) },
        { title: 'Limit', align: 'right', width: valueWidth(context) },
        { title: 'Used', align: 'right', width: USED_WIDTH },
        { title: 'Limit from' },
      ],
      rows: shown.map((row) => [
        partText(row.part),
        recast(context, row.where),
        caseText(cases, row.case),
        row.quantity,
        comparedText(context, row.value, row),
        comparedText(context, row.limit, row),
        useCell(row),
        sourceText(row.source),
      ]),
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: `${left === 0 ? 'No comparison' : `${left} more`} below ${percent(LEAST_USE)}${left === 0 ? '.' : ' are not listed.'}`,
      size: 2.6,
      tone: 'muted',
    },
  ];
}

function weldBlocks(context: DrawingContext, { welds, settings, cases }: Strength): readonly Block[] {
  if (welds.length === 0) return [];
  const all = firstOfPairs(welds, ({ where }) => where.replaceAll('.right"', '"'));
  const shown = all.slice(0, MOST_WELDS);
  return [
    { kind: 'heading', text: 'Life of welds', level: 2 },
    {
      kind: 'paragraph',
      text: `An estimate by nominal stress under the ride below, never a promise: from one detail class lower with its factor, as the class is, to one class higher. ${lifeText(context, settings.life)} are asked for. Stronger steel does not help a weld.`,
      size: 2.8,
    },
    {
      kind: 'table',
      columns: [
        { title: 'Tube' },
        { title: 'Weld' },
        { title: 'Detail and its class' },
        { title: 'Largest range', align: 'right' },
        { title: 'Low', align: 'right' },
        { title: 'As given', align: 'right' },
        { title: 'High', align: 'right' },
      ],
      rows: shown.map(({ part, where, detail, category, range, life }) => [
        partText(part),
        recast(context, where),
        `${detail}, ${printed(context, category, 'pressure', 1)}`,
        printed(context, range, 'pressure', 1),
        life.low < settings.life
          ? { text: lifeText(context, life.low), weight: 'bold' as const, tone: 'accent' as const }
          : lifeText(context, life.low),
        lifeText(context, life.middle),
        lifeText(context, life.high),
      ]),
      size: 2.5,
    },
    ...(all.length > shown.length
      ? [{ kind: 'paragraph' as const, text: `${all.length - shown.length} more last longer.`, size: 2.6 }]
      : []),
    {
      kind: 'paragraph',
      text: `The ride, each range starting from the bike at rest with its rider: ${settings.spectrum.map((block) => `${percent(block.scale)} of ${caseText(cases, block.case)}, ${rateText(context, block.perKilometer)}`).join('; ')}.`,
      size: 2.6,
    },
  ];
}

const MILE = 1.609344;

function rateText({ system }: DrawingContext, perKilometer: number): string {
  const number = (value: number): string => `${Number(value.toPrecision(2))}`;
  if (perKilometer === 1 && system !== 'in') return 'once a km';
  const metric = `${number(perKilometer)} times a km`;
  const customary = `${number(perKilometer * MILE)} times a mile`;
  return system === 'in' ? customary : metric;
}

function bucklingBlocks(context: DrawingContext, { buckling, cases }: Strength): readonly Block[] {
  if (buckling.length === 0) return [];
  const sorted = buckling.toSorted((a, b) => a.critical / a.push - b.critical / b.push);
  const all = firstOfPairs(sorted, () => '');
  const shown = all.filter(({ critical, push }) => critical / push < MOST_FACTOR);
  const left = all.length - shown.length;
  return [
    { kind: 'heading', text: 'Buckling of tubes', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: 'Tube' },
        { title: 'Between joints', align: 'right' },
        { title: 'Load case' },
        { title: 'Largest push', align: 'right' },
        { title: 'Buckles at', align: 'right' },
        { title: 'Factor', align: 'right' },
      ],
      rows: shown.map(({ part, length, case: id, push, critical }) => [
        partText(part),
        inLine(context, length, 1),
        caseText(cases, id),
        printed(context, push, 'force', 1),
        printed(context, Number(critical.toPrecision(3)), 'force', 10),
        `${Number((critical / push).toPrecision(2))}`,
      ]),
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: `Each stretch as a straight column with hinged ends; of a mirrored pair the worse. A factor of 3 is wanted.${left > 0 ? ` ${left} more have a factor over ${MOST_FACTOR}.` : ''}`,
      size: 2.6,
      tone: 'muted',
    },
  ];
}

function stiffnessBlocks(context: DrawingContext, { stiffness }: Strength): readonly Block[] {
  if (!stiffness) return [];
  return [
    { kind: 'heading', text: 'Stiffness', level: 2 },
    {
      kind: 'table',
      columns: [{ title: 'Torque for one degree' }, { title: 'Value', align: 'right' }],
      rows: [
        ['Twist of the neck against the rear axle', printed(context, stiffness.neckTwist, 'torque', 1)],
        ['Yaw of the rear axle against the engine', printed(context, stiffness.rearYaw, 'torque', 1)],
      ],
    },
  ];
}
