import { type Feature, misfitsOf, partOf, type RowSystem, type SolvedRows, solveRows } from './stackRows.ts';

/** One item of one row, by index. */
export interface RowPlace {
  readonly row: number;
  readonly item: number;
}

/**
 * The rows with another length for one item. A given length stands on the known side of the equations, so its change
 * goes through the solved system; a length that was to be solved and now is given is another system.
 * @source derived, linear response
 */
export function changedLength(system: RowSystem, { row, item }: RowPlace, length: number): SolvedRows {
  const { rows, pins, solved } = system;
  const given = rows[row]!.items[item]!.length;
  const replaced = <T>(lists: readonly (readonly T[])[], by: (old: T) => T): readonly (readonly T[])[] =>
    lists.map((list, r) => (r === row ? list.map((one, i) => (i === item ? by(one) : one)) : list));
  if (given === 'solve') {
    const items = replaced(
      rows.map((one) => one.items),
      ({ id }) => ({ id, length }),
    );
    return solveRows(
      rows.map((one, r) => ({ ...one, items: items[r]! })),
      pins,
    );
  }
  const by = length - given;
  const part = (feature: Feature | number): number =>
    typeof feature === 'number' || feature.row !== row ? 0 : partOf(feature, item);
  const followed = follow(system, [
    ...pins.map((pin, equation) => [equation, by * (part(pin.on) - part(pin.at))] as const),
    [system.firstMiddle + row, by],
  ]);
  return { ...solved, ...followed, lengths: replaced(followed.lengths, () => length) };
}

/** The rows with the pins that fit moved to the left by so much [m]. */
export function movedPins(system: RowSystem, fits: (pin: number) => boolean, by: number): SolvedRows {
  const changes = system.pins.flatMap((_, pin) => (fits(pin) ? [[pin, by] as const] : []));
  return { ...system.solved, ...follow(system, changes) };
}

/** What changed values of the equations move; given lengths stay. */
function follow(
  { solved, unknowns, equations, redundant, pins }: RowSystem,
  changes: readonly (readonly [equation: number, by: number])[],
): Pick<SolvedRows, 'lefts' | 'lengths' | 'misfits'> {
  const response = equations.response(changes.filter(([, by]) => by !== 0));
  const residuals = redundant.map((one) => ({
    ...one,
    residual: one.residual + response.residual(one.equation),
  }));
  return {
    lefts: solved.lefts.map((left, row) => left + response.unknowns[row]!),
    lengths: solved.lengths.map((lengths, row) =>
      lengths.map((length, i) => length + (response.unknowns[unknowns.ofItem[row]![i] ?? -1] ?? 0)),
    ),
    misfits: misfitsOf(residuals, pins),
  };
}
