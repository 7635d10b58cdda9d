import {
  type DraftSheet,
  type DrawingContext,
  finishBook,
  fitUpSheets,
  generalArrangementSheets,
  ladderSheets,
  type Paper,
  paper,
  plateCards,
  rideSheets,
  type Sheet,
  stackSheets,
  strengthSheets,
  tubeCards,
} from '../drawings/index.ts';
import { findingPages } from './findingPages.ts';
import { movedPages } from './movedPages.ts';
import type { PackInput } from './packInput.ts';
import { cutPages, drillPages, partPages, workPages } from './schedulePages.ts';
import { specificationPages, titlePage } from './textPages.ts';

const UNITS_SAID = { both: 'mm over in', mm: 'mm', in: 'in' } as const;

/** The book in the order it is used at the bench: what it is, what it looks like, what to get, make, do and check, how it rides and holds. */
export function bookSheets(input: PackInput): readonly Sheet[] {
  const upright = paper(input.build.shop?.paper ?? 'a4', 'portrait');
  const lying = paper(input.build.shop?.paper ?? 'a4', 'landscape');
  return finishBook(bookDrafts(input, upright, lying), {
    bike: input.build.about.name,
    date: input.date,
    units: UNITS_SAID[input.units],
  });
}

function bookDrafts(input: PackInput, upright: Paper, lying: Paper): readonly DraftSheet[] {
  const context: DrawingContext = {
    scene: input,
    paper: input.build.shop?.paper ?? 'a4',
    system: input.units,
  };
  return [
    ...titlePage(input, upright),
    ...specificationPages(input, upright),
    ...movedPages(input, upright),
    ...generalArrangementSheets(context),
    ...ladderSheets(context),
    ...stackSheets(context),
    ...fitUpSheets(context, input.work.fitUp),
    ...cutPages(input, lying),
    ...tubeCards(context, input.work),
    ...plateCards(context, input.work.drilling),
    ...drillPages(input, lying),
    ...partPages(input, lying),
    ...workPages(input, upright),
    ...(input.riding ? rideSheets(context, input.riding) : []),
    ...(input.strength ? strengthSheets(context, input.strength, input.shaking) : []),
    ...findingPages(input, upright),
  ];
}
