import { type Change, rippleOf } from '../../core/fit/index.ts';
import type { Solution } from '../../core/index.ts';
import type { Difference, ScreenChange, ScreenFinding } from './messages.ts';
import { maybePrinted, printed } from './print.ts';

/** A result that later ones are compared with. */
export interface Held {
  readonly solution: Solution;
  readonly findings: readonly ScreenFinding[];
}

/** Figures that moved between two results, and findings that came and went. */
export function differenceOf(before: Held | undefined, after: Held): Difference {
  if (before === undefined || before.solution === after.solution)
    return { figures: [], found: [], cleared: [] };
  const keys = (held: Held): ReadonlySet<string> => new Set(held.findings.map((one) => one.key));
  const [old, now] = [keys(before), keys(after)];
  return {
    figures: rippleOf(solvedOf(before), solvedOf(after)).map(screenChange).filter(isSeen),
    found: after.findings.filter((one) => !old.has(one.key)),
    cleared: before.findings.filter((one) => !now.has(one.key)),
  };
}

const solvedOf = ({ solution: { figures, build } }: Held) =>
  build.made === undefined ? { figures } : { figures, made: build.made };

/** A change too small to print says nothing at the bench. */
const isSeen = ({ how, before, after, alreadyCut }: ScreenChange): boolean =>
  how !== 'changed' || alreadyCut !== undefined || before?.mm !== after?.mm;

function screenChange(change: Change): ScreenChange {
  const before = maybePrinted(change.before, change.kind);
  const after = maybePrinted(change.after, change.kind);
  const moved = maybePrinted(change.change, change.kind);
  return {
    id: change.id,
    name: change.name,
    how: change.how,
    ...(before ? { before } : {}),
    ...(after ? { after } : {}),
    ...(moved ? { change: moved } : {}),
    part: change.part,
    ...(change.state ? { state: change.state } : {}),
    ...(change.alreadyCut ? { alreadyCut: printed(change.alreadyCut.was, change.kind) } : {}),
  };
}
