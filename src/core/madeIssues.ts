import { stackFigures, tubeFigures } from './bike/index.ts';
import { type Build, namesOf, unknownName } from './build/index.ts';
import { drivelineFigures } from './driveline/index.ts';
import { assemble, type Placeable } from './fit/index.ts';
import { plateFigures } from './plates/index.ts';
import { type Issue, pathText } from './quantity/index.ts';
import { cutList, partsList } from './shop/index.ts';

/** The parts that a build has, and the figures they are made to. */
export interface KnownParts {
  /** Names that `made` may use. */
  readonly names: readonly string[];
  /** Ids of figures of parts. */
  readonly figures: readonly string[];
}

/**
 * Every name a part of this build goes by: its name on the parts list, a tube and its mirror image, and the part that
 * stands in the id of a figure (`rear.spacer-left` and `spacer-left` in `stack.rear.spacer-left.length`).
 * @source derived, names of the build
 */
export function knownParts({ build, layout }: Placeable): KnownParts {
  const { driveline, bike, patterns } = assemble(build, layout);
  const figures = [
    ...drivelineFigures(build, driveline),
    ...stackFigures(bike.stacks),
    ...tubeFigures(bike.tubes),
    ...plateFigures(patterns),
  ].map(({ id }) => id);
  const listed = partsList({ build, bike, driveline, patterns, cuts: cutList(build, bike) });
  const names = [...listed.map(({ part }) => part), ...namesOf(build).tubes, ...figures.flatMap(partsInId)];
  return { names: [...new Set(names)], figures };
}

/**
 * Names under `made` that no part goes by, and figures under `asDrawn` that the part does not have: either would lose
 * in silence that the part exists already.
 * @issue unknown-name — with the nearest name known
 */
export function madeIssues(made: Build['made'], known: KnownParts): readonly Issue[] {
  return Object.entries(made ?? {}).flatMap(([name, { asDrawn }]) => {
    const unknown = unknownName(pathText(['made', name]), name, known.names, 'part of this build');
    if (unknown.length > 0) return unknown;
    const own = known.figures.filter((id) => `.${id}.`.includes(`.${name}.`));
    return Object.keys(asDrawn ?? {}).flatMap((id) =>
      unknownName(
        pathText(['made', name, 'asDrawn', id]),
        id,
        own.length > 0 ? own : known.figures,
        `figure of ${name}`,
      ),
    );
  });
}

/** Runs of steps in an id that name a part: neither the kind in front alone nor the quantity at the end. */
function partsInId(id: string): readonly string[] {
  const steps = id.split('.').slice(0, -1);
  return steps.flatMap((_, from) =>
    steps
      .slice(from)
      .map((_step, length) => steps.slice(from, from + length + 1))
      .filter((run) => from > 0 || run.length > 1)
      .map((run) => run.join('.')),
  );
}
