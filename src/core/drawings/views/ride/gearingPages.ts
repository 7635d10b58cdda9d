import type { GearingChoice, GearingRow } from '../../../ride/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import type { TableCell, TableColumn } from '../../table.ts';
import { type DrawingContext, words } from '../context.ts';
import { quantityCells, quantityColumns } from '../rideWords.ts';
import { hillLimits, topLimits } from './goingPages.ts';

/** Sprocket pairs of the last chain and what each would do; the present pair stands out. */
export function gearingPages(context: DrawingContext, choice: GearingChoice): readonly DraftSheet[] {
  const chain = context.scene.driveline.chains[choice.drive];
  const present = (row: GearingRow): boolean =>
    row.driverTeeth === chain?.stage.driverTeeth && row.drivenTeeth === chain.stage.drivenTeeth;
  const blocks: readonly Block[] = [
    { kind: 'heading', text: `Other sprockets on ${words(choice.drive)}`, level: 1 },
    {
      kind: 'paragraph',
      text: 'Ratio and pull are at launch, with all stages counted. Ground gap: chain over the driven sprocket, bike upright. Links are those that the slots reach as drawn, with the center distance that they ask; with none, chain and slots must change. The present pair is bold.',
      size: 2.8,
    },
    {
      kind: 'table',
      columns: columnsOf(context),
      rows: choice.rows.map((row) => rowOf(context, row, present(row))),
      size: 2.5,
    },
  ];
  return flowPages({
    id: 'ride-gearing',
    title: 'Gearing',
    paper: paper(context.paper, 'landscape'),
    blocks,
  });
}

const right = (title: string): TableColumn => ({ title, align: 'right' });

const columnsOf = (context: DrawingContext): readonly TableColumn[] => [
  { title: '' },
  { title: 'Teeth' },
  right('Ratio'),
  ...quantityColumns(context, 'Pull', 'force'),
  ...quantityColumns(context, 'Top', 'speed'),
  { title: 'ended by' },
  ...quantityColumns(context, 'Gov.', 'speed'),
  ...quantityColumns(context, 'Lock-up', 'speed'),
  right('Hill %'),
  { title: 'ended by' },
  ...quantityColumns(context, 'Ground gap', 'length'),
  right('Links'),
  ...quantityColumns(context, 'Centers', 'length'),
];

function rowOf(context: DrawingContext, row: GearingRow, isPresent: boolean): readonly TableCell[] {
  const cells = [
    isPresent ? 'now' : '',
    `${row.driverTeeth}/${row.drivenTeeth}`,
    row.ratio.toFixed(2),
    ...quantityCells(context, row.launchForce, 'force'),
    ...quantityCells(context, row.top.speed, 'speed'),
    topLimits[row.top.limitedBy],
    ...quantityCells(context, row.governed, 'speed'),
    ...quantityCells(context, row.lockUp, 'speed'),
    (100 * row.hill.grade).toFixed(0),
    hillLimits[row.hill.limitedBy],
    ...quantityCells(context, row.groundGap, 'length', 1),
    row.fit ? String(row.fit.links) : 'none',
    ...quantityCells(context, row.fit?.center, 'length'),
  ];
  return isPresent
    ? cells.map((cell) => (/[a-z] [a-z]/.test(cell) ? cell : { text: cell, weight: 'bold' as const }))
    : cells;
}
