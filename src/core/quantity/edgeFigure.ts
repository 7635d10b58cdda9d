import type { Figure } from './figure.ts';
import { edgeUnit } from './kinds.ts';
import type { SourceRef } from './source.ts';

/** A value with its unit as it leaves the program, e.g. 12.7 mm. */
export interface EdgeValue {
  readonly name: string;
  readonly value: number;
  /** Symbol of the edge unit; '' for a ratio or a count. */
  readonly unit: string;
}

/** A {@link Figure} in edge units, as JSON carries it. */
export interface EdgeFigure extends EdgeValue {
  readonly id: string;
  readonly symbol: string;
  readonly formula: string;
  readonly inputs: readonly EdgeValue[];
  readonly source: SourceRef;
}

export function toEdgeFigure(figure: Figure): EdgeFigure {
  const { id, symbol, name, formula, source } = figure;
  const { symbol: unit, factor } = edgeUnit(figure.kind);
  const inputs = figure.inputs.map((input) => {
    const own = edgeUnit(input.kind);
    return { name: input.name, value: input.value / own.factor, unit: own.symbol };
  });
  return { id, symbol, name, value: figure.value / factor, unit, formula, inputs, source };
}
