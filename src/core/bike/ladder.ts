import type { BeltStage, Build, ChainStage } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import type { ChainLine, Ladder, Layout, PlacedPlane, PlacedStack } from './bike.ts';
import { neighborsOf, touchesIn } from './ladderNeighbors.ts';
import { spacerOptions } from './ladderOptions.ts';
import { stepsTo } from './ladderSteps.ts';
import { type SolvedStacks, solveStacks } from './stacks.ts';
import { tireGaps } from './tireGap.ts';

/** Sprockets of a chain in line to this, up to 1 m of center distance [m]. Practice, chain makers' fitting notes. */
export const CHAIN_OFFSET = 1e-3;
/** Beyond 1 m the offset may grow with the center distance, in the same proportion. */
const CHAIN_OFFSET_PER_LENGTH = 1e-3;
/** Sheaves of a variable belt in line to this [m]: −0 +0.8 mm, the + side being the maker's. Practice. */
export const BELT_OFFSET = 0.8e-3;
/** Shafts of a drive parallel and level to this, as a slope. Practice, chain makers' fitting notes. */
export const SHAFT_SLOPE = 1 / 300;

/** A plane with the stack and item it is in. */
export interface LinePlane {
  readonly stack: PlacedStack;
  readonly item: number;
  readonly plane: PlacedPlane;
}

/**
 * The lateral ladder of the whole bike: each chain and belt line reached from both of its shafts, and the room
 * beside the tires.
 *
 * A line is within its limit when the two planes are at most 1 mm apart (1/1000 of the center distance beyond 1 m),
 * or 0.8 mm for a variable belt; a belt maker's −0 +0.8 has a direction that only the maker's sheet tells, so the
 * size alone is checked. Drives with a plane on one shaft only have no line (see `stackFlaws`).
 *
 * @param shafts centers after the slides that the driveline asked for, for the center distances
 * @source practice, chain makers' fitting notes: 1 mm to 1 m of center distance, shafts to 1/300
 */
export function layLadder(
  build: Build,
  layout: Layout,
  stacks: Readonly<Record<string, PlacedStack>>,
  shafts: Readonly<Record<string, Point3>> = layout.shafts,
): Ladder {
  return ladderOf({ build, layout, stacks, shafts, solved: solveStacks(build, layout) });
}

/** What a ladder is laid from. */
export interface LadderContext {
  readonly build: Build;
  readonly layout: Layout;
  readonly stacks: Readonly<Record<string, PlacedStack>>;
  readonly shafts: Readonly<Record<string, Point3>>;
  /** What the stacks were placed from. */
  readonly solved: SolvedStacks;
}

/** {@link layLadder} of stacks whose rows are solved. */
export function ladderOf(context: LadderContext): Ladder {
  const { build, solved } = context;
  const base = solved.system.solved;
  const neighbors = neighborsOf(build, solved.model);
  const options = { ...solved, build, base, neighbors, touching: touchesIn(neighbors, base) };
  const lines = build.driveline.stages.flatMap((stage): readonly ChainLine[] => {
    if (stage.kind === 'clutch') return [];
    const line = lineOf(context, stage);
    if (line === undefined) return [];
    return [{ ...line, options: spacerOptions(options, stage, line) }];
  });
  return { lines, gaps: tireGaps({ ...context, lines }) };
}

/** The plane of a drive on one of its two shafts. */
export function planeOn(
  stacks: Readonly<Record<string, PlacedStack>>,
  shaft: string,
  drive: string,
): LinePlane | undefined {
  for (const stack of Object.values(stacks)) {
    if (stack.shaft !== shaft) continue;
    for (const [item, one] of stack.items.entries()) {
      const plane = one.planes.find((each) => each.drive === drive);
      if (plane !== undefined) return { stack, item, plane };
    }
  }
  return undefined;
}

function lineOf(
  context: LadderContext,
  stage: ChainStage | BeltStage,
): Omit<ChainLine, 'options'> | undefined {
  const { stacks, shafts } = context;
  const driver = planeOn(stacks, stage.from, stage.id);
  const driven = planeOn(stacks, stage.to, stage.id);
  if (driver === undefined || driven === undefined) return undefined;
  const offset = driver.plane.y - driven.plane.y;
  const distance = centerDistance(shafts, stage);
  const limit = offsetLimit(stage.kind, distance);
  return {
    drive: stage.id,
    kind: stage.kind,
    driverY: driver.plane.y,
    drivenY: driven.plane.y,
    offset,
    centerDistance: distance,
    angle: Math.atan2(offset, distance),
    limit,
    within: Math.abs(offset) <= limit,
    drivenSteps: stepsOf(context, driven, stage.id),
    driverSteps: stepsOf(context, driver, stage.id),
  };
}

const offsetLimit = (kind: ChainLine['kind'], distance: number): number =>
  kind === 'chain' ? Math.max(CHAIN_OFFSET, CHAIN_OFFSET_PER_LENGTH * distance) : BELT_OFFSET;

/** Distance of the two shafts seen from the side [m]. */
function centerDistance(
  shafts: Readonly<Record<string, Point3>>,
  stage: { readonly from: string; readonly to: string },
): number {
  const [from, to] = [shafts[stage.from], shafts[stage.to]];
  if (from === undefined || to === undefined) return 0;
  return Math.hypot(from.x - to.x, from.z - to.z);
}

const stepsOf = ({ build, layout }: LadderContext, { stack, item, plane }: LinePlane, drive: string) =>
  stepsTo({
    build,
    layout,
    stack,
    item,
    y: plane.y,
    drive,
    plane: plane.runs === 'sheave' ? 'belt line' : 'teeth',
  });
