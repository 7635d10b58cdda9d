import { csvOf } from '../drawings/index.ts';
import type { PackInput } from './packInput.ts';

const MM = 1000;
const DEGREE = 180 / Math.PI;
/** Micrometers and thousandths of a degree: finer than any shop, without the noise of doubles. */
const rounded = (value: number): number => Math.round(value * 1000) / 1000;

/** The parts list for a spreadsheet. */
export function partsCsv(input: PackInput): string {
  return csvOf(
    ['item', 'source', 'part', 'what', 'count', 'matters', 'instead or from', 'state'],
    input.work.parts.map((part) => [
      part.item,
      part.source,
      part.part,
      part.what,
      part.count,
      part.matters,
      part.instead,
      part.state,
    ]),
  );
}

/** The cut list for a spreadsheet, in millimeters and degrees. */
export function cutListCsv(input: PackInput): string {
  return csvOf(
    [
      'tube',
      'count',
      'tubing',
      'outside mm',
      'wall mm',
      'material',
      'finished mm',
      'saw mm',
      'start joint',
      'start onto',
      'start angle deg',
      'end joint',
      'end onto',
      'end angle deg',
      'bends',
      'mass kg',
    ],
    input.work.cuts.rows.map((row) => [
      row.tube,
      row.count,
      row.tubing,
      rounded(row.outside * MM),
      rounded(row.wall * MM),
      row.material,
      rounded(row.length * MM),
      rounded(row.sawn * MM),
      ...row.ends.flatMap((end) => [
        end.joint,
        end.onto ?? '',
        end.angle === undefined ? '' : rounded(end.angle * DEGREE),
      ]),
      row.bends,
      rounded(row.mass),
    ]),
  );
}
