import type { FlatPattern } from '../../plates/index.ts';
import type { DrillRow } from '../../shop/index.ts';
import type { Block } from '../bookPages.ts';
import type { TableCell } from '../table.ts';
import {
  type DrawingContext,
  degreesText,
  fineCells,
  inLine,
  lengthCells,
  lengthColumns,
  words,
} from './context.ts';
import { letterOf } from './letters.ts';
import { stepsText } from './plateWords.ts';

export function holeTable(context: DrawingContext, drilling: readonly DrillRow[]): readonly Block[] {
  if (drilling.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { title: '' },
        { title: 'Count', align: 'right' },
        { title: 'For' },
        ...lengthColumns(context, 'Finished'),
        { title: 'Slot travel', align: 'right' },
        { title: 'How' },
      ],
      rows: drilling.map((row, i): readonly TableCell[] => [
        { text: letterOf(i), weight: 'bold' },
        String(row.count),
        [row.for, row.fit, row.thread].filter((part) => part !== undefined).join(', '),
        ...(row.kind === 'bore' || row.fit !== undefined
          ? fineCells(context, row.diameter)
          : lengthCells(context, row.diameter, 0.01)
        ).map((cell) => `Ø ${cell}`),
        row.travel === undefined ? '' : inLine(context, row.travel),
        stepsText(row.steps),
      ]),
    },
  ];
}

export function bendTable(context: DrawingContext, pattern: FlatPattern): readonly Block[] {
  if (pattern.bends.length === 0) return [];
  const other = pattern.pair ? ' (the other hand the other way)' : '';
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Bend' },
        { title: 'Angle', align: 'right' },
        { title: 'Toward' },
        ...lengthColumns(context, 'Inside radius'),
        { title: 'How' },
      ],
      rows: pattern.bends.map((bend, i) => [
        String(i + 1),
        degreesText(bend.angle),
        `${bend.direction === 'up' ? 'the eye' : 'the back'}${other}`,
        ...lengthCells(context, bend.insideRadius),
        bend.note,
      ]),
    },
  ];
}

export function checkTable(context: DrawingContext, pattern: FlatPattern): readonly Block[] {
  if (pattern.checks.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [{ title: 'Check on the plate' }, ...lengthColumns(context, 'Length'), { title: 'Measured' }],
      rows: pattern.checks.map((check) => [
        words(check.name),
        ...lengthCells(context, Math.hypot(check.to.x - check.from.x, check.to.y - check.from.y)),
        '',
      ]),
    },
  ];
}
