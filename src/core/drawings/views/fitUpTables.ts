import type { FitUpSheet, JigStation } from '../../shop/index.ts';
import type { Block } from '../bookPages.ts';
import { type DrawingContext, inLine, lengthCells, lengthColumns, words } from './context.ts';
import { letterOf } from './letters.ts';

/** Stations in the order of their numbers, which is along the bike from the rear. */
export const numbered = (fitUp: FitUpSheet): readonly JigStation[] =>
  [...fitUp.stations].sort((a, b) => a.forward - b.forward || a.center - b.center);

/** What the frame rests on, and what all figures are from. */
export function fitUpNotes(context: DrawingContext, fitUp: FitUpSheet): readonly Block[] {
  const props = fitUp.props.map((prop) => `${prop.what} ${inLine(context, prop.thickness)}`).join(', ');
  const lift =
    fitUp.props.length > 0
      ? `The frame rests on: ${props}; together ${inLine(context, fitUp.propHeight)}. This is in every height below.`
      : 'The frame rests on the bench itself: nothing is under it.';
  return [
    {
      kind: 'list',
      marker: 'bullet',
      items: [
        lift,
        'Heights are from the bench, distances along from the plumb mark under the rear axle, left and right from the center line. Level the bench both ways first; check every length again when tacked and when cold.',
      ],
    },
  ];
}

export function stationTable(context: DrawingContext, fitUp: FitUpSheet): Block {
  const bare = (length: number): string => lengthCells(context, length)[0] ?? '';
  const stacked = (station: JigStation): string => {
    const { made } = station;
    if (!made) return 'held';
    const parts = [...made.blocks, ...made.shims].map((piece) =>
      inLine(context, piece).replace(/ \(.*\)$/, ''),
    );
    const left = made.left > 5e-5 ? `, ${bare(made.left)} short` : '';
    return parts.length > 0 ? `${parts.join(' + ')}${left}` : 'cut to size';
  };
  return {
    kind: 'table',
    columns: [
      { title: 'No.', align: 'right' },
      { title: 'Station' },
      { title: 'What' },
      ...lengthColumns(context, 'Forward'),
      ...lengthColumns(context, 'Aside'),
      ...lengthColumns(context, 'Center height'),
      ...lengthColumns(context, 'Block'),
      { title: `Blocks and shims (${context.system === 'in' ? 'in' : 'mm'})` },
    ],
    rows: numbered(fitUp).map((station, i) => [
      String(i + 1),
      words(station.name),
      words(station.what),
      ...lengthCells(context, station.forward),
      ...lengthCells(context, station.left).map((cell) => (station.pair ? `± ${cell}` : cell)),
      ...lengthCells(context, station.center).map((cell) => ({ text: cell, weight: 'bold' as const })),
      ...lengthCells(context, station.block).map((cell) => ({ text: cell, weight: 'bold' as const })),
      stacked(station),
    ]),
  };
}

export const tramTable = (context: DrawingContext, fitUp: FitUpSheet): Block => ({
  kind: 'table',
  columns: [
    { title: '', align: 'right' },
    { title: 'Length to tram' },
    ...lengthColumns(context, 'Length'),
    { title: 'Left, measured' },
    { title: 'Right, measured' },
  ],
  rows: fitUp.diagonals.map((tram, i) => [
    letterOf(i),
    words(tram.name),
    ...lengthCells(context, tram.length),
    '',
    '',
  ]),
});
