import { z } from 'zod';
import { type Figure, good, type Outcome, readWith, type SourceRef, toEdge } from '../quantity/index.ts';
import type { Worksheet } from './worksheet.ts';

export interface WorksheetAnswer {
  /** The worksheet's result in edge units, as plain JSON. */
  readonly result: unknown;
  readonly figures: readonly Figure[];
}

export interface WorksheetDescription {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  /** JSON Schema of what goes in and of what comes out; each field names its unit. */
  readonly input: object;
  readonly output: object;
  readonly formulas: readonly string[];
  readonly sources: readonly SourceRef[];
  readonly example: { readonly title: string; readonly input: unknown; readonly source: SourceRef };
}

/**
 * Runs a worksheet on plain JSON in edge units.
 * Throws when the result breaks the worksheet's own output schema (a NaN, say): that is a fault of the program.
 */
export function runWorksheet(worksheet: Worksheet, json: unknown): Outcome<WorksheetAnswer> {
  const input = readWith(worksheet.input, json);
  if (!input.ok) return input;
  const run = worksheet.run(input.value);
  if (!run.ok) return run;
  const { result, figures } = run.value;
  const checked = worksheet.output.safeParse(result);
  if (!checked.success) throw new Error(`${worksheet.id}: broken result: ${z.prettifyError(checked.error)}`);
  const notFinite = figures.find((figure) => !Number.isFinite(figure.value));
  if (notFinite) throw new Error(`${worksheet.id}: figure ${notFinite.id} is ${notFinite.value}`);
  return good({ result: toEdge(worksheet.output, result), figures });
}

/** All that a form, a page or another program needs to use the worksheet. */
export function describeWorksheet(worksheet: Worksheet): WorksheetDescription {
  const { id, title, summary, formulas, sources, example } = worksheet;
  return {
    id,
    title,
    summary,
    input: z.toJSONSchema(worksheet.input, { io: 'input' }),
    output: z.toJSONSchema(worksheet.output, { io: 'output' }),
    formulas,
    sources,
    example: { title: example.title, input: example.input, source: example.source },
  };
}
