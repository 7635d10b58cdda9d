import type { Issue } from '../quantity/index.ts';
import { detailCategories, findBoltClassName, findFiller } from '../standards/index.ts';
import { issuesAt, unknownName } from './nameIssues.ts';
import type { Names } from './names.ts';
import type { Build } from './schema/index.ts';

/** Plates, fillers, bolt classes and weld details of `loads` that the file or the tables do not know. */
export function loadReferenceIssues({ loads }: Build, names: Names): Issue[] {
  const details = [...new Set(detailCategories.map(({ detail }) => detail))];
  const bolts = Object.entries(loads?.bolts ?? {});
  return [
    ...bolts.flatMap(([plate, { grade }]) => [
      ...unknownName(`loads.bolts.${plate}`, plate, names.plates, 'plate'),
      ...(grade === undefined ? [] : issuesAt(findBoltClassName(grade), `loads.bolts.${plate}.grade`)),
    ]),
    ...(loads?.filler === undefined ? [] : issuesAt(findFiller(loads.filler), 'loads.filler')),
    ...(loads?.weldDetail === undefined
      ? []
      : unknownName('loads.weldDetail', loads.weldDetail, details, 'weld detail')),
  ];
}
