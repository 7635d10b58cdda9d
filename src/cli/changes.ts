import type { Change } from '../core/fit/index.ts';
import { edgeUnit, type UnitSystem } from '../core/quantity/index.ts';
import { figureValue } from './report.ts';

/** What moved, a line a figure; parts that are already cut come first and say so. */
export function changesText(changes: readonly Change[], units: UnitSystem): string {
  const seen = changes.filter((change) => isSeen(change, units));
  return `WHAT MOVED (${seen.length})\n${seen.map((change) => `        ${changeLine(change, units)}`).join('\n')}\n`;
}

/** A change too small to print says nothing at the bench. */
const isSeen = ({ how, kind, before, after, alreadyCut }: Change, units: UnitSystem): boolean =>
  alreadyCut !== undefined ||
  how !== 'changed' ||
  before === undefined ||
  after === undefined ||
  figureValue(before, kind, units) !== figureValue(after, kind, units);

function changeLine({ name, kind, before, after, state, alreadyCut }: Change, units: UnitSystem): string {
  const shown = (value: number | undefined) =>
    value === undefined ? 'none' : figureValue(value, kind, units);
  const made = alreadyCut
    ? `   ALREADY ${(state ?? 'made').toUpperCase()} to ${shown(alreadyCut.was)}`
    : state && state !== 'planned'
      ? `   (${state})`
      : '';
  return `${name}: ${shown(before)} -> ${shown(after)}${made}`;
}

/** Values in the edge unit that `unit` names. */
export function changeJson({ before, after, change, alreadyCut, kind, ...rest }: Change): object {
  const { symbol, factor } = edgeUnit(kind);
  const edge = (value: number | undefined) => (value === undefined ? undefined : value / factor);
  return {
    ...rest,
    before: edge(before),
    after: edge(after),
    change: edge(change),
    ...(alreadyCut
      ? { alreadyCut: { ...alreadyCut, was: alreadyCut.was / factor, off: edge(alreadyCut.off) } }
      : {}),
    unit: symbol,
  };
}
