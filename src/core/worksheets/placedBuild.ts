import { readBuildValue } from '../build/index.ts';
import { type Assembled, assemble, placeable } from '../fit/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** The build file in a worksheet's field `build`, put together as measured; issues are placed under that field. */
export function placedBuild(json: unknown): Outcome<Assembled> {
  const read = readBuildValue(json);
  if (!read.ok) return underBuild(read.issues);
  const placed = placeable(read.value);
  if (!placed.ok) return underBuild(placed.issues);
  return good(assemble(placed.value.build, placed.value.layout));
}

function underBuild([first, ...rest]: readonly [Issue, ...Issue[]]): Outcome<never> {
  const under = (issue: Issue): Issue => ({ ...issue, path: issue.path ? `build.${issue.path}` : 'build' });
  return bad(under(first), ...rest.map(under));
}
