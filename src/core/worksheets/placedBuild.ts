import { type Bike, type MassSummary, placeBike, resolveLayout, weigh } from '../bike/index.ts';
import { type Build, readBuildValue } from '../build/index.ts';
import { type DrivelineSolution, solveDriveline } from '../driveline/index.ts';
import { plateLumps, platesOf, slotNeeds } from '../plates/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** A build file given to a worksheet, placed and weighed. */
export interface PlacedBuild {
  readonly build: Build;
  readonly driveline: DrivelineSolution;
  readonly bike: Bike;
  readonly masses: MassSummary;
}

/** Reads, places and weighs the build file in a worksheet's field `build`; issues are placed under it. */
export function placedBuild(json: unknown): Outcome<PlacedBuild> {
  const read = readBuildValue(json);
  if (!read.ok) return underBuild(read.issues);
  const build = read.value;
  const layout = resolveLayout(build);
  if (!layout.ok) return underBuild(layout.issues);
  const driveline = solveDriveline(build, layout.value);
  const bike = placeBike(build, layout.value, driveline.shafts);
  const { patterns } = platesOf(build, bike, slotNeeds(driveline.slots));
  return good({ build, driveline, bike, masses: weigh(build, bike, plateLumps(build, patterns)) });
}

function underBuild([first, ...rest]: readonly [Issue, ...Issue[]]): Outcome<never> {
  const under = (issue: Issue): Issue => ({ ...issue, path: issue.path ? `build.${issue.path}` : 'build' });
  return bad(under(first), ...rest.map(under));
}
