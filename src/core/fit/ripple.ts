import type { Build } from '../build/index.ts';
import { edgeUnit, type Figure, type QuantityKind } from '../quantity/index.ts';

/** What a solve leaves that two solves can be compared by. */
export interface Solved {
  readonly figures: readonly Figure[];
  /** State of the parts, as in the build file. */
  readonly made?: Build['made'];
}

/** A figure that a change of the build moved, and the part it belongs to. */
export interface Change {
  /** Figure id. */
  readonly id: string;
  readonly name: string;
  readonly kind: QuantityKind;
  readonly how: 'changed' | 'new' | 'gone' | 'drifted';
  /** SI of `kind`; missing for a new figure. */
  readonly before?: number;
  /** Missing for one that is gone. */
  readonly after?: number;
  /** after − before, where there are both. */
  readonly change?: number;
  /** |change| over the larger of the two; 1 for new and gone. */
  readonly share: number;
  /** Part as named under `made`, else the figure's id without its last name. */
  readonly part: string;
  /** State of the part, where the file tells it. */
  readonly state?: PartState;
  /** Set when the part exists and no longer is what the figure says. */
  readonly alreadyCut?: {
    /** What it was made to, SI of `kind`: as drawn, or the value before the change. */
    readonly was: number;
    readonly from: 'as drawn' | 'before';
    /** What it is off now; missing where the figure is gone. */
    readonly off?: number;
  };
}

export type PartState = NonNullable<Build['made']>[string]['state'];

/** What a part may differ from its figure before it has to be made again, by kind; others by share. */
const TOLERANCE: Readonly<Partial<Record<QuantityKind, number>>> = {
  // Half a tenth of a millimeter, finer than hand work.
  length: 0.05e-3,
  // A twentieth of a degree, finer than an angle finder reads.
  angle: Math.PI / 3600,
};
/** Share of the value for kinds without a tolerance of their own. */
const TOLERANCE_SHARE = 1e-3;
/** A share of the value below this is rounding. */
const ROUNDING_SHARE = 1e-9;
/** Values below this share of the kind's edge unit are nothing. */
const ROUNDING_UNIT = 1e-9;

const RANK: Readonly<Record<PartState, number>> = { planned: 0, bought: 1, made: 2, welded: 3 };

/**
 * What a change does: every figure that moved, came or went, first those of parts that are already welded, made or
 * bought and do not fit the figure any more. A part is compared with what it was made to (`made.….asDrawn`), so that
 * many small changes add up to a flag; without that, with the figure before the change.
 *
 * A figure belongs to a part when the part lists it under `asDrawn` or when the part's name is in the figure's id
 * (`spacer-left` or `rearAxle.spacer-left` in `stack.rearAxle.spacer-left.length`); the longest name wins.
 * @source derived, difference of two solves
 */
export function rippleOf(before: Solved, after: Solved): readonly Change[] {
  const old = new Map(before.figures.map((figure) => [figure.id, figure]));
  const now = new Map(after.figures.map((figure) => [figure.id, figure]));
  const made = after.made ?? before.made ?? {};
  const ids = [...new Set([...now.keys(), ...old.keys()])];
  return ids
    .flatMap((id) => changeOf(id, { before: old.get(id), after: now.get(id), made }))
    .sort(byImportance);
}

interface Pair {
  readonly before: Figure | undefined;
  readonly after: Figure | undefined;
  readonly made: NonNullable<Build['made']>;
}

function changeOf(id: string, pair: Pair): readonly Change[] {
  const { before, after, made } = pair;
  const figure = after ?? before;
  if (figure === undefined) return [];
  const part = partOf(id, made);
  const state = made[part]?.state;
  const moved =
    before === undefined || after === undefined || !isSame(before.value, after.value, figure.kind);
  const alreadyCut =
    state === undefined || state === 'planned' ? undefined : cutOf(id, pair, made[part]?.asDrawn);
  if (!moved && alreadyCut === undefined) return [];
  return [
    {
      id,
      name: figure.name,
      kind: figure.kind,
      how: before === undefined ? 'new' : after === undefined ? 'gone' : moved ? 'changed' : 'drifted',
      ...(before === undefined ? {} : { before: before.value }),
      ...(after === undefined ? {} : { after: after.value }),
      ...(before === undefined || after === undefined ? {} : { change: after.value - before.value }),
      share: shareOf(before?.value, after?.value),
      part,
      ...(state === undefined ? {} : { state }),
      ...(alreadyCut === undefined ? {} : { alreadyCut }),
    },
  ];
}

/** How an existing part now differs from its figure; undefined when it still fits. */
function cutOf(
  id: string,
  { before, after }: Pair,
  asDrawn: Readonly<Record<string, number>> | undefined,
): Change['alreadyCut'] {
  const kind = (after ?? before)!.kind;
  const drawn = asDrawn?.[id];
  const was = drawn === undefined ? before?.value : siOf(drawn, kind);
  if (was === undefined) return undefined;
  const from = drawn === undefined ? 'before' : 'as drawn';
  if (after === undefined) return { was, from };
  const off = after.value - was;
  return Math.abs(off) > toleranceOf(kind, was) ? { was, from, off } : undefined;
}

/** `asDrawn` is read as lengths, in millimeters; a figure of another kind was printed in that kind's edge unit. */
function siOf(drawn: number, kind: QuantityKind): number {
  return (drawn / edgeUnit('length').factor) * edgeUnit(kind).factor;
}

/** Slightly widened, so that a difference of exactly the tolerance is within it whatever the last digit. */
function toleranceOf(kind: QuantityKind, value: number): number {
  return (TOLERANCE[kind] ?? TOLERANCE_SHARE * Math.abs(value)) * (1 + ROUNDING_SHARE);
}

function isSame(a: number, b: number, kind: QuantityKind): boolean {
  const scale = Math.max(Math.abs(a), Math.abs(b));
  return Math.abs(a - b) <= Math.max(ROUNDING_SHARE * scale, ROUNDING_UNIT * edgeUnit(kind).factor);
}

function shareOf(before: number | undefined, after: number | undefined): number {
  if (before === undefined || after === undefined) return 1;
  const larger = Math.max(Math.abs(before), Math.abs(after));
  return larger === 0 ? 0 : Math.abs(after - before) / larger;
}

function partOf(id: string, made: Pair['made']): string {
  const names = Object.keys(made);
  const listed = names.find(
    (name) => made[name]?.asDrawn !== undefined && Object.hasOwn(made[name].asDrawn, id),
  );
  if (listed !== undefined) return listed;
  const [longest] = names
    .filter((name) => `.${id}.`.includes(`.${name}.`))
    .sort((a, b) => b.length - a.length);
  return longest ?? id.split('.').slice(0, -1).join('.');
}

function byImportance(a: Change, b: Change): number {
  const rank = (change: Change) => (change.alreadyCut === undefined ? 0 : RANK[change.state ?? 'planned']);
  return rank(b) - rank(a) || b.share - a.share || (a.id < b.id ? -1 : 1);
}
