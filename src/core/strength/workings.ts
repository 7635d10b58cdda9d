import type { Figure, FigureInput, QuantityKind, SourceRef } from '../quantity/index.ts';

/** How the figures of one part are named. */
export interface PartNames {
  /** Dotted prefix of the ids, e.g. `shaft.counter`. */
  readonly id: string;
  /** What it is, e.g. `countershaft`. */
  readonly of: string;
}

/** A figure before it is named for its part. */
export interface Working {
  readonly id: string;
  readonly symbol: string;
  readonly name: string;
  readonly value: number;
  readonly kind: QuantityKind;
  readonly formula: string;
  /** Symbol to value and kind. */
  readonly inputs: Readonly<Record<string, readonly [value: number, kind: QuantityKind]>>;
  readonly source: SourceRef;
}

/** Names workings for a part; what is not finite has no figure (an unlimited life, say). */
export function figuresOf(names: PartNames, workings: readonly Working[]): readonly Figure[] {
  return workings
    .filter(({ value }) => Number.isFinite(value))
    .map(({ id, symbol, name, value, kind, formula, inputs, source }) => ({
      id: `${names.id}.${id}`,
      symbol,
      name: `${name}, ${names.of}`,
      value,
      kind,
      formula,
      inputs: Object.entries(inputs)
        .filter(([, [input]]) => Number.isFinite(input))
        .map(([key, [input, inputKind]]): FigureInput => ({ name: key, value: input, kind: inputKind })),
      source,
    }));
}
