import type { QuantityKind } from './brand.ts';
import type { Figure, FigureInput } from './figure.ts';
import type { SourceRef } from './source.ts';

/** How the figures of one thing are named. */
export interface FigureNames {
  /** Dotted prefix of the ids: `drive.final`. */
  readonly id: string;
  /** What it is, in the field's words: `drive final`. Left out where the names say it themselves. */
  readonly of?: string;
}

type Unsourced = readonly [
  id: string,
  symbol: string,
  name: string,
  value: number,
  kind: QuantityKind,
  formula: string,
  inputs: readonly FigureInput[],
];

/** A figure before it is named for the thing it belongs to. */
export type FigureDraft = readonly [...Unsourced, source: SourceRef];
type DraftWithUsualSource = readonly [...Unsourced, source?: SourceRef];

/**
 * A maker of the figures of one thing: `figureMaker({ id: 'drive.final', of: 'drive final' })('wrap', …)` is the
 * figure `drive.final.wrap`, named `…, drive final`.
 * @param usual source of drafts that name none
 */
export function figureMaker(names: FigureNames): (...draft: FigureDraft) => Figure;
export function figureMaker(names: FigureNames, usual: SourceRef): (...draft: DraftWithUsualSource) => Figure;
export function figureMaker(
  names: FigureNames,
  usual?: SourceRef,
): (...draft: DraftWithUsualSource) => Figure {
  return (id, symbol, name, value, kind, formula, inputs, source = usual) => {
    // The first form of the call makes a draft's source a must; this is for callers past the type checker.
    if (!source) throw new TypeError(`figure ${names.id}.${id} has no source`);
    return {
      id: `${names.id}.${id}`,
      symbol,
      name: names.of === undefined ? name : `${name}, ${names.of}`,
      value,
      kind,
      formula,
      inputs,
      source,
    };
  };
}
