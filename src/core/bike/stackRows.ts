import { type LinearEquation, RankedSystem, type RedundantEquation } from './rankedSystem.ts';

/** A row of things on one line, left to right, some of unknown length. */
export interface Row {
  readonly id: string;
  readonly items: readonly { readonly id: string; readonly length: number | 'solve' }[];
}

/** A plane in an item: `offset` [m] and `share` of the item's own length to the right of its left face. */
export interface Feature {
  /** Index of the row and of the item in it. */
  readonly row: number;
  readonly item: number;
  readonly offset: number;
  readonly share: number;
}

/** A feature that is held: at a place Y [m], or in line with another feature. */
export interface RowPin {
  readonly on: Feature;
  readonly at: number | Feature;
}

/** Two pins that do not agree. */
export interface RowMisfit {
  readonly row: number;
  /** Items at the ends, left one first. */
  readonly between: readonly [number, number];
  /** Given length less available length [m]: + too long. */
  readonly excess: number;
}

/** Items that the pins leave loose. They are placed all the same: equal split, or nothing at a free end. */
export interface RowGap {
  readonly row: number;
  readonly reason: 'two-unknowns' | 'no-pin' | 'circular';
  /** Names; an item of another row as `row.item`. */
  readonly items: readonly string[];
}

export interface SolvedRows {
  /** Y of each row's left face [m]. */
  readonly lefts: readonly number[];
  /** Length of each item of each row [m]; negative where there is no room. */
  readonly lengths: readonly (readonly number[])[];
  readonly misfits: readonly RowMisfit[];
  readonly gaps: readonly RowGap[];
}

/** Solved rows with the system that solved them, so that a changed length can be followed through it. */
export interface RowSystem {
  readonly rows: readonly Row[];
  readonly pins: readonly RowPin[];
  readonly solved: SolvedRows;
  readonly unknowns: Unknowns;
  readonly equations: RankedSystem;
  /** Pins that the stronger ones already fix, those that agree with them included. */
  readonly redundant: readonly RedundantEquation[];
  /** The equation that would put row 0 in the middle; those of the other rows follow it. */
  readonly firstMiddle: number;
}

/** Pins that agree to this [m] agree: half a tenth, finer than a home-turned spacer. */
export const AGREES_WITHIN = 0.05e-3;

export const leftFace = (row: number, item: number): Feature => ({ row, item, offset: 0, share: 0 });
export const rightFace = (row: number, item: number): Feature => ({ row, item, offset: 0, share: 1 });
export const middle = (row: number, item: number): Feature => ({ row, item, offset: 0, share: 0.5 });

/** Unknowns: the left face of each row, then each length to be solved. */
export interface Unknowns {
  readonly count: number;
  readonly rowOf: readonly number[];
  /** Item index, or undefined for a row's left face. */
  readonly itemOf: readonly (number | undefined)[];
  /** Unknown of each item of each row; undefined where its length is given. */
  readonly ofItem: readonly (readonly (number | undefined)[])[];
}

/**
 * Places rows of items from pins, all rows at once: y(feature) = left − Σ lengths before it − offset − share·length
 * is linear in the unknown left faces and lengths, and every pin is one equation. Earlier pins win; a later one
 * that contradicts them becomes a misfit.
 * @source derived, sums of lengths along a shaft
 */
export const solveRows = (rows: readonly Row[], pins: readonly RowPin[]): SolvedRows =>
  rowSystem(rows, pins).solved;

/** {@link solveRows} with what {@link changedLength} needs. */
export function rowSystem(rows: readonly Row[], pins: readonly RowPin[]): RowSystem {
  const unknowns = unknownsOf(rows);
  const equations = new RankedSystem(unknowns.count);
  const redundant: RedundantEquation[] = [];
  for (const pin of pins) {
    const left = equations.add(pinEquation(rows, unknowns, pin));
    if (left !== undefined) redundant.push(left);
  }
  const loose = equations.looseSets();
  const firstMiddle = fillLoose(equations, rows, unknowns, loose);
  const values = equations.solution();
  const solved = {
    lefts: rows.map((_, row) => values[row]!),
    lengths: rows.map((entry, row) =>
      entry.items.map((item, i) =>
        item.length === 'solve' ? values[unknowns.ofItem[row]![i]!]! : item.length,
      ),
    ),
    misfits: misfitsOf(redundant, pins),
    gaps: loose.flatMap((set) => gapsOf(set, { rows, pins, unknowns })),
  };
  return { rows, pins, solved, unknowns, equations, redundant, firstMiddle };
}

/** Y of a feature in solved rows [m]. */
export function featureY(solved: Pick<SolvedRows, 'lefts' | 'lengths'>, feature: Feature): number {
  const lengths = solved.lengths[feature.row] ?? [];
  const before = lengths.slice(0, feature.item).reduce((sum, length) => sum + length, 0);
  return (
    (solved.lefts[feature.row] ?? 0) - before - feature.offset - feature.share * (lengths[feature.item] ?? 0)
  );
}

function unknownsOf(rows: readonly Row[]): Unknowns {
  const rowOf = rows.map((_, row) => row);
  const itemOf: (number | undefined)[] = rows.map(() => undefined);
  const ofItem = rows.map((entry, row) =>
    entry.items.map((item, i) => {
      if (item.length !== 'solve') return undefined;
      itemOf.push(i);
      return rowOf.push(row) - 1;
    }),
  );
  return { count: rowOf.length, rowOf, itemOf, ofItem };
}

function pinEquation(rows: readonly Row[], unknowns: Unknowns, pin: RowPin): LinearEquation {
  const coefficients = new Array<number>(unknowns.count).fill(0);
  const fixed = addFeature(coefficients, rows, unknowns, pin.on, 1);
  if (typeof pin.at === 'number') return { coefficients, value: pin.at - fixed };
  return { coefficients, value: -fixed - addFeature(coefficients, rows, unknowns, pin.at, -1) };
}

/** Adds `sign`·y(feature) to the coefficients; returns its known part. */
function addFeature(
  into: number[],
  rows: readonly Row[],
  unknowns: Unknowns,
  feature: Feature,
  sign: number,
): number {
  let fixed = -sign * feature.offset;
  into[feature.row] = (into[feature.row] ?? 0) + sign;
  rows[feature.row]?.items.forEach((item, i) => {
    const part = partOf(feature, i);
    if (part === 0) return;
    if (item.length === 'solve') into[unknowns.ofItem[feature.row]![i]!]! -= sign * part;
    else fixed -= sign * part * item.length;
  });
  return fixed;
}

/** Share of an item's length that lies between its row's left face and a feature of that row. */
export const partOf = (feature: Feature, item: number): number =>
  item < feature.item ? 1 : item === feature.item ? feature.share : 0;

/** The redundant pins that do not agree. */
export const misfitsOf = (
  redundant: readonly RedundantEquation[],
  pins: readonly RowPin[],
): readonly RowMisfit[] =>
  redundant.flatMap((one) => (Math.abs(one.residual) > AGREES_WITHIN ? misfitOf(one, pins) : []));

/**
 * The contradiction as lengths in one row. In every contradicting set each row's left face cancels, so the failing
 * pin's row is held by another pin of the set as well.
 */
function misfitOf(redundant: RedundantEquation, pins: readonly RowPin[]): readonly RowMisfit[] {
  const failing = pins[redundant.equation];
  if (failing === undefined) return [];
  const { row, item } = failing.on;
  const own = typeof failing.at === 'number' ? [] : [failing.at];
  const others = [...redundant.against.flatMap((index) => featuresOf(pins[index])), ...own];
  const other = nearest(
    others.filter((one) => one.row === row),
    item,
  ) ?? { item };
  const ordered: readonly [number, number] = other.item <= item ? [other.item, item] : [item, other.item];
  // residual = wanted − placed: a pin to the right wanted further left means that the lengths between are too long.
  return [{ row, between: ordered, excess: other.item <= item ? redundant.residual : -redundant.residual }];
}

const featuresOf = (pin: RowPin | undefined): readonly Feature[] =>
  pin === undefined ? [] : typeof pin.at === 'number' ? [pin.on] : [pin.on, pin.at];

function nearest(features: readonly Feature[], item: number): Feature | undefined {
  return [...features].sort((a, b) => Math.abs(a.item - item) - Math.abs(b.item - item))[0];
}

/**
 * Extra equations for what is loose: lengths of one set equal, else nothing; a row without pin in the middle.
 * @returns the number of the first equation of the last kind, one a row
 */
function fillLoose(
  system: RankedSystem,
  rows: readonly Row[],
  unknowns: Unknowns,
  sets: readonly (readonly number[])[],
): number {
  const row = (entries: readonly (readonly [number, number])[]): LinearEquation => {
    const coefficients = new Array<number>(unknowns.count).fill(0);
    for (const [index, value] of entries) coefficients[index] = value;
    return { coefficients, value: 0 };
  };
  for (const set of sets) {
    const lengths = set.filter((unknown) => unknowns.itemOf[unknown] !== undefined);
    const [first, ...rest] = lengths;
    for (const other of rest) {
      if (unknowns.rowOf[other] === unknowns.rowOf[first ?? -1])
        system.add(
          row([
            [first ?? 0, 1],
            [other, -1],
          ]),
        );
    }
    for (const length of lengths) system.add(row([[length, 1]]));
  }
  const firstMiddle = system.size;
  rows.forEach((entry, index) => {
    const coefficients = new Array<number>(unknowns.count).fill(0);
    const whole = { row: index, item: Math.max(0, entry.items.length - 1), offset: 0, share: 1 };
    const right = addFeature(coefficients, rows, unknowns, whole, 1);
    coefficients[index] = (coefficients[index] ?? 0) + 1;
    system.add({ coefficients, value: -right });
  });
  return firstMiddle;
}

interface GapContext {
  readonly rows: readonly Row[];
  readonly pins: readonly RowPin[];
  readonly unknowns: Unknowns;
}

/** Names what a loose set is short of, once for each row in it. */
function gapsOf(set: readonly number[], context: GapContext): readonly RowGap[] {
  const { unknowns, pins } = context;
  const rowsIn = [...new Set(set.map((unknown) => unknowns.rowOf[unknown] ?? 0))];
  const lengths = set.filter((unknown) => unknowns.itemOf[unknown] !== undefined);
  const circular = dependsOnItself(rowsIn, pins);
  const held = lengths.length >= 2 && lengths.every((unknown) => isBetweenPins(unknown, context));
  return rowsIn.flatMap((row): readonly RowGap[] => {
    const own = lengths.filter((unknown) => unknowns.rowOf[unknown] === row);
    const names = [...own, ...lengths.filter((unknown) => !own.includes(unknown))].map((u) =>
      nameOf(u, row, context),
    );
    const pinned = pins
      .filter((pin) => pin.on.row === row)
      .map((pin) => itemName(context.rows, row, pin.on.item));
    if (circular) return [{ row, reason: 'circular', items: [...new Set([...pinned, ...names])] }];
    if (held) return own.length > 0 ? [{ row, reason: 'two-unknowns', items: names }] : [];
    return [
      { row, reason: 'no-pin', items: own.length > 0 ? own.map((u) => nameOf(u, row, context)) : pinned },
    ];
  });
}

/** True when the loose rows are told to follow one another in a ring. */
function dependsOnItself(rowsIn: readonly number[], pins: readonly RowPin[]): boolean {
  const follows = (row: number): readonly number[] =>
    pins.flatMap((pin) => (pin.on.row === row && typeof pin.at !== 'number' ? [pin.at.row] : []));
  const comesBack = (start: number): boolean => {
    const seen = new Set<number>();
    const queue = [...follows(start)];
    for (let row = queue.pop(); row !== undefined; row = queue.pop()) {
      if (row === start) return true;
      if (seen.has(row) || !rowsIn.includes(row)) continue;
      seen.add(row);
      queue.push(...follows(row));
    }
    return false;
  };
  return rowsIn.some(comesBack);
}

/** True when the row is held, or looked to, on both sides of this length. */
function isBetweenPins(unknown: number, { pins, unknowns }: GapContext): boolean {
  const row = unknowns.rowOf[unknown];
  const item = unknowns.itemOf[unknown] ?? -1;
  const held = pins.flatMap(featuresOf).filter((feature) => feature.row === row);
  return held.some((one) => one.item < item) && held.some((one) => one.item > item);
}

function nameOf(unknown: number, row: number, { rows, unknowns }: GapContext): string {
  const own = unknowns.rowOf[unknown] ?? 0;
  const name = itemName(rows, own, unknowns.itemOf[unknown] ?? 0);
  return own === row ? name : `${rows[own]?.id ?? ''}.${name}`;
}

const itemName = (rows: readonly Row[], row: number, item: number): string =>
  rows[row]?.items[item]?.id ?? '';
