import type { Adjustment, AdjustmentStep, DriveRun, DriveShaft, TensionProblem } from './tensionTypes.ts';

/** Orders beyond this many are not looked at; a train of three drives with four sliding shafts has fewer. */
const MAX_ORDERS = 24;

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
  const dead = new Set<string>();
  const extend = (order: readonly Adjustment[], left: readonly DriveRun[]) => {
    if (left.length === 0) found.push(order);
    const free = sliding.filter((id) => !order.some((step) => step.slides === id));
    const state = [...left.map(({ id }) => id), ...free].join(' ');
    if (left.length === 0 || left.length > free.length || found.length >= MAX_ORDERS || dead.has(state))
      return;
    const before = found.length;
    const set = drives.filter((other) => !left.includes(other));
    for (const drive of left) {
      for (const slides of candidates(drive, free)) {
        const moves = moved.get(slides) ?? new Set();
        if (!changesCenter(moves, drive) || set.some((other) => changesCenter(moves, other))) continue;
        extend(
          [...order, { drive: drive.id, slides }],
          left.filter((other) => other !== drive),
        );
      }
    }
    if (found.length === before) dead.add(state);
  };
  extend([], drives);
  return found.slice(0, MAX_ORDERS);
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

/** Shafts that may slide for a drive: the one it names, or any, its driving end first and its driven end next. */
function candidates(drive: DriveRun, free: readonly string[]): readonly string[] {
  if (drive.adjust !== undefined) return free.filter((id) => id === drive.adjust);
  return [...free].sort((a, b) => rank(drive, a) - rank(drive, b));
}

function rank(drive: DriveRun, shaft: string): number {
  if (shaft === drive.from) return 0;
  return shaft === drive.to ? 1 : 2;
}
