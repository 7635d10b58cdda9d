import type { Finding } from '../core/findings/index.ts';
import { edgeUnit, type Figure, printApart, printQuantity, type UnitSystem } from '../core/quantity/index.ts';

type Severity = Finding['severity'];
const WORST_FIRST: readonly Severity[] = ['stop', 'caution', 'note'];

export function countBySeverity(findings: readonly Finding[]): Readonly<Record<Severity, number>> {
  const count = (severity: Severity): number => findings.filter((one) => one.severity === severity).length;
  return { stop: count('stop'), caution: count('caution'), note: count('note') };
}

export function worstFirst(findings: readonly Finding[]): Finding[] {
  return WORST_FIRST.flatMap((severity) => findings.filter((one) => one.severity === severity));
}

/** `2 stop, 3 caution, 1 note`; never says that a bike is good. */
export function countLine(findings: readonly Finding[]): string {
  const counts = countBySeverity(findings);
  return WORST_FIRST.map((severity) => `${counts[severity]} ${severity}`).join(', ');
}

export function findingText(finding: Finding, units: UnitSystem): string {
  const { severity, part, what, kind, value, limit, why, remedy, source } = finding;
  const lines = [`${severity.toUpperCase().padEnd(8)}${part}: ${what}`];
  if (kind !== undefined && value !== undefined) {
    const [shown, bound] = printApart(value, limit ?? value, kind, units);
    lines.push(limit === undefined ? `is ${shown}` : `is ${shown}, limit ${bound}`);
  }
  lines.push(`why: ${why}`);
  if (remedy !== undefined) lines.push(`do: ${remedy}`);
  lines.push(`source: ${source.key}, ${source.where}   [${finding.id}]`);
  return `${lines.join('\n        ')}\n`;
}

/** Value, limit and margin in the edge unit that `unit` names. */
export function findingJson(finding: Finding): object {
  const { value, limit, margin, kind, ...rest } = finding;
  if (kind === undefined) return rest;
  const { symbol, factor } = edgeUnit(kind);
  const inUnit = Object.entries({ value, limit, margin }).flatMap(([name, one]) =>
    one === undefined ? [] : [[name, one / factor] as const],
  );
  return { ...rest, ...Object.fromEntries(inUnit), unit: symbol };
}

/** Digits that a figure keeps: small slack and play would else be printed as 0.1 mm (0 in). */
const FIGURE_DIGITS = 4;
/** Below this a fraction of an inch alone says too little [m]. */
const SHORT_LENGTH = 0.0127;

/** A figure's value with enough digits to reckon on; findings keep the steps of the trade. */
export function figureValue(value: number, kind: Figure['kind'], units: UnitSystem): string {
  const edge = Math.abs(value / edgeUnit(kind).factor);
  const step = edge > 0 ? 10 ** (Math.floor(Math.log10(edge)) + 1 - FIGURE_DIGITS) : 1;
  const isShort = kind === 'length' && Math.abs(value) < SHORT_LENGTH;
  // A coarser step than the usual one would round what a tape can show.
  return printQuantity(value, kind, units, {
    ...(step < 0.1 ? { resolution: step } : {}),
    remainder: isShort,
  });
}

/** A figure with its working: what it is, how it is found, from what, after whom. */
export function figureText(figure: Figure, units: UnitSystem): string {
  const inputs = figure.inputs.map(({ name, value, kind }) => `${name} = ${figureValue(value, kind, units)}`);
  const lines = [
    `${figure.name}: ${figure.symbol} = ${figureValue(figure.value, figure.kind, units)}`,
    figure.formula,
    ...(inputs.length > 0 ? [`with ${inputs.join(', ')}`] : []),
    `source: ${figure.source.key}, ${figure.source.where}   [${figure.id}]`,
  ];
  return `${lines.join('\n    ')}\n`;
}
