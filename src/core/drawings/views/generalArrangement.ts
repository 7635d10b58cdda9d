import type { DraftSheet } from '../bookPages.ts';
import type { DrawingContext } from './context.ts';
import { riderSheet } from './riderSheet.ts';
import { sideSheet } from './sideSheet.ts';
import { topSheet } from './topSheet.ts';

/** Side and top with their dimensions, and the rider on the bike. Each on a sheet of its own, on its side. */
export const generalArrangementSheets = (context: DrawingContext): readonly DraftSheet[] => [
  sideSheet(context),
  topSheet(context),
  riderSheet(context),
];
