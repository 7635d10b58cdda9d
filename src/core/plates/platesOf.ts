import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { patternFlaws } from './checkPattern.ts';
import { drawPlate } from './drawPlate.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';
import type { SlotNeed } from './slotNeed.ts';

/** The plates of a build and everything that is wrong or doubtful with them. */
export interface Plates {
  /** Those that can be drawn, in the order of the build. */
  readonly patterns: readonly FlatPattern[];
  /** Of all plates, those that can't be drawn included. */
  readonly flaws: readonly PlateFlaw[];
}

/**
 * Every plate of the build drawn in the flat and checked.
 * @source derived, outlines by recipe; practice and en-1993-1-8 for the checks, as each rule says
 */
export function platesOf(build: Build, bike: Bike, needs: readonly SlotNeed[]): Plates {
  const drawn = Object.entries(build.plates).map(([id, entry]) =>
    drawPlate({ id, build, bike, needs }, entry),
  );
  return {
    patterns: drawn.flatMap(({ plate }) => (plate ? [plate.pattern] : [])),
    flaws: drawn.flatMap(({ plate, flaws }) => [
      ...flaws,
      ...(plate ? patternFlaws(plate.pattern, plate.edges, build.shop, needs) : []),
    ]),
  };
}
