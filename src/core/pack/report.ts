import type { Finding } from '../findings/index.ts';
import { edgeUnit, toEdgeFigure } from '../quantity/index.ts';
import { cautions, notChecked } from './cautions.ts';
import type { PackInput } from './packInput.ts';

/** Version of the report's shape. */
const REPORT_VERSION = 1;

/**
 * Everything that was worked out, for other programs: every figure with formula, inputs and source, the findings,
 * the parts, and the names of the units. Numbers are in edge units.
 */
export function reportJson(input: PackInput): string {
  const report = {
    report: 'jigwright',
    version: REPORT_VERSION,
    date: input.date,
    about: input.build.about,
    figures: input.figures.map(toEdgeFigure),
    findings: input.findings.map(findingEdge),
    notChecked: notChecked(input),
    parts: input.work.parts,
    order: input.work.order,
    cautions,
  };
  return `${JSON.stringify(report, refuseNaN, 2)}\n`;
}

/** JSON writes NaN as null; a report that hides a fault is worse than none. */
function refuseNaN(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`${key} is not a number`);
  return value;
}

function findingEdge(finding: Finding): Readonly<Record<string, unknown>> {
  const { value, limit, margin, kind, ...rest } = finding;
  if (kind === undefined) return rest;
  const { factor, symbol } = edgeUnit(kind);
  const edge = (si: number | undefined) => (si === undefined ? undefined : si / factor);
  return { ...rest, value: edge(value), limit: edge(limit), margin: edge(margin), unit: symbol };
}
