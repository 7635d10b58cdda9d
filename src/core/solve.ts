import {
  type Bike,
  ladderFigures,
  layOut,
  layoutFigures,
  type MassSummary,
  massFigures,
  stackFigures,
  stackFlaws,
  tubeFigures,
} from './bike/index.ts';
import type { Build } from './build/index.ts';
import { type DrivelineSolution, drivelineFigures } from './driveline/index.ts';
import { allFindings, type Finding } from './findings/index.ts';
import { assemble, type Clearance, clearanceFigures, clearances } from './fit/index.ts';
import { type FlatPattern, plateFigures } from './plates/index.ts';
import type { Figure } from './quantity/index.ts';

/** A build with everything that follows from it: the placed bike, its parts, the figures and the verdicts. */
export interface Solution {
  readonly build: Build;
  readonly driveline: DrivelineSolution;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
  readonly clearances: readonly Clearance[];
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/**
 * The table of contents of the program. A checked build goes in; a bike that does not fit is still placed, with
 * findings. Pure: the same build gives the same solution in Node, in a worker and in a test.
 */
export function solve(build: Build): Solution {
  const layout = layOut(build);
  const { driveline, bike, patterns, plateFlaws, masses } = assemble(build, layout);
  const room = clearances(build, bike, driveline);
  const findings = allFindings({
    build,
    bike,
    driveline,
    masses,
    clearances: room,
    stackFlaws: stackFlaws(build, bike.stacks),
    plateFlaws,
  });
  const figures = [
    ...layoutFigures(build, layout),
    ...drivelineFigures(build, driveline),
    ...stackFigures(bike.stacks),
    ...ladderFigures(bike.ladder),
    ...tubeFigures(bike.tubes),
    ...plateFigures(patterns),
    ...clearanceFigures(room),
    ...massFigures(build, layout, masses),
  ];
  return { build, driveline, bike, patterns, masses, clearances: room, figures, findings };
}
