import { type Outline, outlineOf, type Shape } from '../geometry/index.ts';
import { openingLoop } from './openings.ts';
import type { FlatPattern, Opening } from './pattern.ts';

/** An opening with its finished outline. */
export interface OpeningEdge {
  readonly opening: Opening;
  readonly edge: Outline;
}

/** Every edge of a drawn plate, worked out once for all that is asked of them. */
export interface PlateEdges {
  readonly outline: Outline;
  readonly windows: readonly Outline[];
  readonly openings: readonly OpeningEdge[];
}

export const edgesOf = (
  outline: Shape,
  { windows, openings }: Pick<FlatPattern, 'windows' | 'openings'>,
): PlateEdges => ({
  outline: outlineOf(outline),
  windows: windows.map(outlineOf),
  openings: openings.map((opening) => ({ opening, edge: outlineOf(openingLoop(opening)) })),
});
