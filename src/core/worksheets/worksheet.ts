import type { z } from 'zod';
import type { Figure, Outcome, SourceRef } from '../quantity/index.ts';

/** What a worksheet run gives: the result in SI and the figures that show its working. */
export interface WorksheetRun<Result> {
  readonly result: Result;
  readonly figures: readonly Figure[];
}

/**
 * The one definition of a calculation. The CLI form, the app's form, the docs page and the JSON Schema are
 * all made from it; the bike's solver calls the same pure functions that `run` calls.
 */
export interface Worksheet<Input extends z.ZodType = z.ZodType, Output extends z.ZodType = z.ZodType> {
  /** Kebab case: `chain-drive`. */
  readonly id: string;
  readonly title: string;
  /** One or two plain sentences: what it answers and for whom. */
  readonly summary: string;
  /** Reads edge units or texts with a unit, gives SI (see `quantity/field.ts`). */
  readonly input: Input;
  /** Shape of the result in SI; its fields carry the quantity kind, by which results are written in edge units. */
  readonly output: Output;
  /**
   * Pure. Findings of the calculation itself (an impossible drive) come back as issues.
   * Written as a method so that worksheets of different inputs fit one list.
   */
  run(input: z.output<Input>): Outcome<WorksheetRun<z.output<Output>>>;
  /** Formulas as text, in the order of use. */
  readonly formulas: readonly string[];
  readonly sources: readonly SourceRef[];
  /** A worked example, run as a test: `expected` is part of the result in edge units, each with its tolerance. */
  readonly example: {
    readonly title: string;
    readonly input: z.input<Input>;
    readonly expected: readonly {
      /** Dotted path into the JSON result, e.g. `wraps.0`. */
      readonly path: string;
      readonly value: number;
      readonly tolerance: number;
    }[];
    readonly source: SourceRef;
  };
}
