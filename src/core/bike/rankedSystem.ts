/** Σ coefficients[i]·unknown[i] = value. */
export interface LinearEquation {
  readonly coefficients: readonly number[];
  readonly value: number;
}

/** An equation that the earlier ones already fix, and how far it is from agreeing with them. */
export interface RedundantEquation {
  /** Index of the equation in the order of adding. */
  readonly equation: number;
  /** Its value less what the earlier equations give; 0 when they agree. */
  readonly residual: number;
  /** The earlier equations that it stands against. */
  readonly against: readonly number[];
}

/** What other values of the equations, with the same left sides, would do. */
export interface Response {
  /** Change of each unknown. */
  readonly unknowns: readonly number[];
  /** Change of the residual of a redundant equation. */
  readonly residual: (equation: number) => number;
}

interface ReducedRow {
  readonly coefficients: number[];
  value: number;
  readonly pivot: number;
  /** How the row is mixed from the equations added, by their index; 0 beyond its end. */
  readonly mix: number[];
}

/** Below this a coefficient is zero: coefficients here are 0, ½ and 1, sums of a few dozen of them. */
const ZERO = 1e-9;

/**
 * Linear equations taken one at a time, kept in reduced form. Unlike a plain solver it can say which equation
 * contradicts which, and which unknowns are still loose: a builder needs the names, not a singular matrix.
 */
export class RankedSystem {
  readonly #rows: ReducedRow[] = [];
  readonly #unknowns: number;
  /** How each redundant equation is mixed from those added, by its index. */
  readonly #redundant = new Map<number, readonly number[]>();
  #added = 0;

  constructor(unknowns: number) {
    this.#unknowns = unknowns;
  }

  /** Equations taken in so far. */
  get size(): number {
    return this.#added;
  }

  /** Takes an equation in; gives it back as redundant when the earlier ones already fix its left side. */
  add(equation: LinearEquation): RedundantEquation | undefined {
    const index = this.#added++;
    const row = this.#reduce(equation, index);
    const pivot = largest(row.coefficients);
    if (Math.abs(row.coefficients[pivot] ?? 0) < ZERO) {
      const against = [...row.mix.keys()].filter((key) => key !== index && row.mix[key] !== 0);
      this.#redundant.set(index, row.mix);
      return { equation: index, residual: row.value, against };
    }
    this.#keep({ ...row, pivot });
    return undefined;
  }

  /** Sets of unknowns that the equations leave loose, each set loose together. */
  looseSets(): readonly (readonly number[])[] {
    const pivots = new Set(this.#rows.map((row) => row.pivot));
    const sets: Set<number>[] = [];
    for (let unknown = 0; unknown < this.#unknowns; unknown++) {
      if (!pivots.has(unknown)) sets.push(new Set([unknown]));
    }
    for (const row of this.#rows) joinSets(sets, row);
    return sets.map((set) => [...set].sort((a, b) => a - b));
  }

  /** Value of each unknown; throws while any is loose. */
  solution(): readonly number[] {
    if (this.#rows.length < this.#unknowns)
      throw new Error('a system with loose unknowns has no one solution');
    const values = new Array<number>(this.#unknowns).fill(0);
    for (const row of this.#rows) values[row.pivot] = row.value;
    return values;
  }

  /** Of values that change by so much, each with the index of its equation. */
  response(changes: readonly (readonly [equation: number, by: number])[]): Response {
    const effectOn = (mix: readonly number[]) =>
      changes.reduce((sum, [equation, by]) => sum + (mix[equation] ?? 0) * by, 0);
    const unknowns = new Array<number>(this.#unknowns).fill(0);
    for (const row of this.#rows) unknowns[row.pivot] = effectOn(row.mix);
    return { unknowns, residual: (equation) => effectOn(this.#redundant.get(equation) ?? []) };
  }

  #reduce(equation: LinearEquation, index: number): Omit<ReducedRow, 'pivot'> {
    const row = {
      coefficients: [...equation.coefficients],
      value: equation.value,
      mix: new Array<number>(index + 1).fill(0),
    };
    row.mix[index] = 1;
    for (const kept of this.#rows) subtract(row, kept, row.coefficients[kept.pivot] ?? 0);
    return row;
  }

  #keep(row: ReducedRow): void {
    const scale = 1 / row.coefficients[row.pivot]!;
    if (scale !== 1) scaleRow(row, scale);
    for (const kept of this.#rows) subtract(kept, row, kept.coefficients[row.pivot]!);
    this.#rows.push(row);
  }
}

function scaleRow(row: ReducedRow, scale: number): void {
  for (let i = 0; i < row.coefficients.length; i++) row.coefficients[i] = row.coefficients[i]! * scale;
  row.value *= scale;
  for (let key = 0; key < row.mix.length; key++) row.mix[key] = row.mix[key]! * scale;
}

/** row − factor·other. Plain loops: this is most of the work. */
function subtract(row: Omit<ReducedRow, 'pivot'>, other: ReducedRow, factor: number): void {
  if (Math.abs(factor) < ZERO) return;
  const { coefficients, mix } = row;
  for (let i = 0; i < coefficients.length; i++) {
    const value = other.coefficients[i]!;
    if (value !== 0) coefficients[i] = coefficients[i]! - factor * value;
  }
  row.value -= factor * other.value;
  for (let key = 0; key < other.mix.length; key++) {
    const mixed = (mix[key] ?? 0) - factor * other.mix[key]!;
    mix[key] = Math.abs(mixed) < ZERO ? 0 : mixed;
  }
}

/** Joins the loose sets that a row ties together and adds the row's own unknown to them. */
function joinSets(sets: Set<number>[], row: ReducedRow): void {
  const tied = sets.filter((set) =>
    [...set].some((i) => Math.abs(row.coefficients[i] ?? 0) >= ZERO && i !== row.pivot),
  );
  const [first, ...others] = tied;
  if (first === undefined) return;
  first.add(row.pivot);
  for (const other of others) {
    for (const unknown of other) first.add(unknown);
    sets.splice(sets.indexOf(other), 1);
  }
}

function largest(values: readonly number[]): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i]!) > Math.abs(values[best]!)) best = i;
  }
  return best;
}
