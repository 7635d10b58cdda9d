import type { Sheet } from '../../core/drawings/index.ts';
import { bookSheets, packOf, type Solution } from '../../core/index.ts';
import { templateBook } from '../../core/pack/index.ts';
import type { SlowStrength } from '../../core/strength/index.ts';
import type { SheetName, UnitSystem } from './messages.ts';

/** Sheets of one part of the pack. */
export interface SheetGroup {
  readonly group: string;
  readonly sheets: readonly Sheet[];
}

export const sheetNames = (groups: readonly SheetGroup[]): readonly SheetName[] =>
  groups.flatMap(({ group, sheets }) =>
    sheets.map(({ id, title, scale }) => ({ id, title, group, ...(scale === undefined ? {} : { scale }) })),
  );

/** All sheets of the pack that the core draws. */
export function sheetsOf(
  solution: Solution,
  printed: { readonly units: UnitSystem; readonly date: string; readonly shaking: SlowStrength },
): readonly SheetGroup[] {
  const pack = packOf(solution, printed);
  return [
    { group: 'Book', sheets: bookSheets(pack) },
    { group: 'Full-size templates', sheets: templateBook(pack, solution.build.shop?.paper ?? 'a4') },
  ];
}
