import type { Build } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import type { Bike, Layout } from './bike.ts';
import { placeBrakes } from './brakes.ts';
import { placeEngine } from './engine.ts';
import { ladderOf } from './ladder.ts';
import { placeRider } from './rider.ts';
import { placeStacks, solveStacks } from './stacks.ts';
import { placeTubes } from './tubes.ts';

/**
 * Every part in its place at the design stance.
 * @param shafts centers of shafts that the driveline has slid [m]; those that it left alone may be left out
 * @source derived, coordinates along datums
 */
export function placeBike(build: Build, layout: Layout, shafts: Readonly<Record<string, Point3>>): Bike {
  const centers = { ...layout.shafts, ...shafts };
  const solved = solveStacks(build, layout);
  const stacks = placeStacks(build, layout, solved);
  const { tubes, flaws } = placeTubes(build, layout);
  return {
    layout,
    engine: placeEngine(build, layout, centers.engine!),
    shafts: centers,
    tubes,
    tubeFlaws: flaws,
    stacks,
    ladder: ladderOf({ build, layout, stacks, shafts: centers, solved }),
    brakes: placeBrakes(build, centers, stacks),
    rider: placeRider(build, layout),
  };
}
