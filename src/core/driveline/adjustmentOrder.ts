import type { Adjustment, AdjustmentStep, DriveRun, DriveShaft, TensionProblem } from './tensionTypes.ts';

/** Orders beyond this many are not looked at; six drives with two slides each stay far below it. */
const MAX_ORDERS = 500;

/** Shafts that move when one slides: itself, what it carries, and what those carry. */
export function movedShafts(shafts: readonly DriveShaft[], slides: string): ReadonlySet<string> {
  const carried = new Map(shafts.map((shaft) => [shaft.id, shaft.carries ?? []]));
  const moved = new Set<string>();
  const waiting = [slides];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (moved.has(id)) continue;
    moved.add(id);
    waiting.push(...(carried.get(id) ?? []));
  }
  return moved;
}

/**
 * What is wrong with a given order: a shaft that can't slide or slides twice, one that moves both ends of its
 * drive or none, or one that disturbs a drive already set.
 * @source derived, a set drive stays set when both of its shafts move together or neither does
 */
export function orderProblems(
  shafts: readonly DriveShaft[],
  drives: readonly DriveRun[],
  order: readonly Adjustment[],
): readonly TensionProblem[] {
  const byId = new Map(drives.map((drive) => [drive.id, drive]));
  const sliding = new Set(shafts.filter((shaft) => shaft.slide).map((shaft) => shaft.id));
  const problems: TensionProblem[] = [];
  const set: DriveRun[] = [];
  const used = new Set<string>();
  for (const { drive: id, slides } of order) {
    const drive = byId.get(id);
    if (!drive) continue;
    const moved = movedShafts(shafts, slides);
    const disturbs = set.filter((other) => changesCenter(moved, other)).map((other) => other.id);
    if (!sliding.has(slides)) problems.push({ code: 'bolted-shaft', drive: id, slides });
    if (used.has(slides)) problems.push({ code: 'shaft-slides-twice', drive: id, slides });
    if (!changesCenter(moved, drive)) problems.push({ code: 'order-moves-both-or-none', drive: id, slides });
    if (disturbs.length > 0) problems.push({ code: 'order-disturbs', drive: id, slides, disturbs });
    used.add(slides);
    set.push(drive);
  }
  for (const drive of drives)
    if (!set.includes(drive)) problems.push({ code: 'drive-not-ordered', drive: drive.id });
  return problems;
}

/**
 * Every order in which all drives can be set without disturbing one set before, best first: drives in the
 * order listed, and for each the shaft at its driving end before the one at its driven end.
 * @source derived, depth-first search over drives and sliding shafts
 */
export function possibleOrders(
  shafts: readonly DriveShaft[],
  drives: readonly DriveRun[],
): readonly (readonly Adjustment[])[] {
  const found: (readonly Adjustment[])[] = [];
  const sliding = shafts.filter((shaft) => shaft.slide).map((shaft) => shaft.id);
  const moved = new Map(sliding.map((id) => [id, movedShafts(shafts, id)]));
  const extend = (order: readonly Adjustment[], left: readonly DriveRun[]) => {
    if (found.length >= MAX_ORDERS) return;
    if (left.length === 0) found.push(order);
    for (const drive of left) {
      for (const slides of [...sliding].sort((a, b) => rank(drive, a) - rank(drive, b))) {
        const set = drives.filter((other) => !left.includes(other));
        const moves = moved.get(slides) as ReadonlySet<string>;
        const usable =
          changesCenter(moves, drive) &&
          !order.some((step) => step.slides === slides) &&
          !set.some((other) => changesCenter(moves, other));
        if (usable)
          extend(
            [...order, { drive: drive.id, slides }],
            left.filter((other) => other !== drive),
          );
      }
    }
  };
  extend([], drives);
  return found;
}

/** The steps of an order with what each leaves alone and what must be set after it. */
export function adjustmentSteps(
  shafts: readonly DriveShaft[],
  drives: readonly DriveRun[],
  order: readonly Adjustment[],
): readonly AdjustmentStep[] {
  const placeOf = (id: string) => order.findIndex((step) => step.drive === id);
  return order.flatMap((step, index) => {
    const drive = drives.find((candidate) => candidate.id === step.drive);
    if (!drive) return [];
    const moved = movedShafts(shafts, step.slides);
    const others = drives.filter((other) => other !== drive);
    return [
      {
        ...step,
        carried: [...moved].filter((id) => id !== step.slides),
        against: moved.has(drive.from) ? drive.to : drive.from,
        undisturbed: others
          .filter((other) => placeOf(other.id) < index && placeOf(other.id) >= 0)
          .map(({ id }) => id),
        resetAfter: others.filter((other) => changesCenter(moved, other)).map(({ id }) => id),
      },
    ];
  });
}

/** One end moves and the other does not. */
function changesCenter(moved: ReadonlySet<string>, drive: DriveRun): boolean {
  return moved.has(drive.from) !== moved.has(drive.to);
}

function rank(drive: DriveRun, shaft: string): number {
  if (shaft === drive.from) return 0;
  return shaft === drive.to ? 1 : 2;
}
