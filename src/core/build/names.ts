import type { Build } from './schema/index.ts';
import { datumNames } from './schema/index.ts';

/** Every name a reference in the file may use, by what it names. */
export interface Names {
  readonly places: readonly string[];
  readonly tubing: readonly string[];
  readonly tubes: readonly string[];
  readonly shafts: readonly string[];
  readonly drives: readonly string[];
  readonly stages: readonly string[];
  readonly brakes: readonly string[];
  readonly stacks: readonly string[];
  readonly plates: readonly string[];
}

export function namesOf(build: Build): Names {
  const nodes = Object.keys(build.frame.nodes);
  const tubes = Object.entries(build.frame.tubes);
  const own = Object.keys(build.driveline.shafts);
  return {
    // A countershaft is a datum only where the build has one.
    places: [
      ...datumNames.filter((name) => name !== 'countershaft'),
      ...own,
      ...nodes,
      ...nodes.map((name) => `${name}.right`),
    ],
    tubing: Object.keys(build.frame.tubing),
    tubes: ['neck', ...tubes.flatMap(([name, tube]) => (tube.mirror ? [name, `${name}.right`] : [name]))],
    shafts: [...new Set(['engine', 'rearAxle', 'frontAxle', ...own])],
    drives: build.driveline.stages.filter((stage) => stage.kind !== 'clutch').map((stage) => stage.id),
    stages: build.driveline.stages.map((stage) => stage.id),
    brakes: Object.keys(build.brakes),
    stacks: Object.keys(build.stacks),
    plates: Object.keys(build.plates),
  };
}
