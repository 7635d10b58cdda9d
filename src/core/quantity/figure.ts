import type { QuantityKind } from './brand.ts';
import type { SourceRef } from './source.ts';

/** One named input of a figure, in SI. */
export interface FigureInput {
  readonly name: string;
  readonly value: number;
  readonly kind: QuantityKind;
}

/** A number a person may question, with all that is needed to answer. Made at the end, never in a hot loop. */
export interface Figure {
  /** Unique in a report, dotted from whole to part: `drive.final.centerDistance`. */
  readonly id: string;
  /** Symbol of the source, e.g. `C`. */
  readonly symbol: string;
  /** The field's words, e.g. `center distance, drive final`. */
  readonly name: string;
  /** Value in the coherent SI unit of `kind`. */
  readonly value: number;
  readonly kind: QuantityKind;
  /** Formula as text, in the symbols of `inputs`. */
  readonly formula: string;
  readonly inputs: readonly FigureInput[];
  readonly source: SourceRef;
}
