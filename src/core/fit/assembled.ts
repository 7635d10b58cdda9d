import { type Bike, type Layout, type MassSummary, placeBike, resolveLayout, weigh } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { type DrivelineSolution, solveDriveline } from '../driveline/index.ts';
import { type FlatPattern, type PlateFlaw, plateLumps, platesOf, slotNeeds } from '../plates/index.ts';
import { bad, good, type Outcome } from '../quantity/index.ts';
import { measuredBuild } from './measured.ts';

/** A build with every part in its place and weighed, and nothing judged yet. */
export interface Assembled {
  readonly build: Build;
  readonly driveline: DrivelineSolution;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly plateFlaws: readonly PlateFlaw[];
  readonly masses: MassSummary;
}

/** A build with its readings in place of what was typed, and its fixed points. */
export interface Placeable {
  readonly build: Build;
  readonly layout: Layout;
}

/**
 * Puts a build together: drives set, parts placed, plates drawn, everything weighed.
 * @param layout fixed points of the build
 * @source derived, as each room says
 */
export function assemble(build: Build, layout: Layout): Assembled {
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  const { patterns, flaws: plateFlaws } = platesOf(build, bike, slotNeeds(driveline.slots));
  const masses = weigh(build, bike, plateLumps(build, patterns));
  return { build, driveline, bike, patterns, plateFlaws, masses };
}

/**
 * The build as measured, where its fixed points can be found both as typed and as measured.
 * @issue those of `measuredBuild`; those of `resolveLayout`
 * @source derived, coordinates along datums
 */
export function placeable(typed: Build): Outcome<Placeable> {
  const { build, issues } = measuredBuild(typed);
  const [unusable, ...more] = issues;
  if (unusable) return bad(unusable, ...more);
  const before = resolveLayout(typed);
  if (build === typed || !before.ok) return before.ok ? good({ build, layout: before.value }) : before;
  const layout = resolveLayout(build);
  return layout.ok ? good({ build, layout: layout.value }) : layout;
}
