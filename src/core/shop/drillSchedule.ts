import type { FlatPattern, HoleStep, Opening } from '../plates/index.ts';

/** One kind of opening in a plate, as it is worked. */
export interface DrillRow {
  readonly plate: string;
  readonly holes: readonly string[];
  readonly count: number;
  readonly for: string;
  readonly kind: Opening['kind'];
  /** Finished diameter or slot width [m]. */
  readonly diameter: number;
  readonly travel?: number;
  readonly fit?: string;
  readonly thread?: string;
  readonly cutAs: Opening['cutAs'];
  readonly steps: readonly HoleStep[];
}

/** Openings of every plate, alike ones together, counted over all copies of the plate. */
export function drillSchedule(patterns: readonly FlatPattern[]): readonly DrillRow[] {
  return patterns.flatMap((pattern) => {
    const groups = new Map<string, Opening[]>();
    for (const opening of pattern.openings) {
      const key = JSON.stringify([
        opening.kind,
        opening.diameter.toFixed(6),
        opening.travel?.toFixed(6),
        opening.for,
        opening.steps,
      ]);
      groups.set(key, [...(groups.get(key) ?? []), opening]);
    }
    return [...groups.values()].map((openings) => rowOf(pattern, openings));
  });
}

function rowOf(pattern: FlatPattern, openings: readonly Opening[]): DrillRow {
  const first = openings[0] as Opening;
  return {
    plate: pattern.id,
    holes: openings.map((opening) => opening.id),
    count: openings.length * pattern.count,
    for: first.for,
    kind: first.kind,
    diameter: first.diameter,
    ...(first.travel === undefined ? {} : { travel: first.travel }),
    ...(first.fit === undefined ? {} : { fit: first.fit }),
    ...(first.thread === undefined ? {} : { thread: first.thread }),
    cutAs: first.cutAs,
    steps: first.steps,
  };
}
