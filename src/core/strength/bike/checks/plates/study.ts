import type { Point } from '../../../../geometry/index.ts';
import type { SourceRef } from '../../../../quantity/index.ts';
import type { CutPlate, LoadedCut, PlateLoads } from '../../../plates/index.ts';
import type { PlacedPlate } from './plateAxes.ts';

/** A plate made ready for its load cases. */
export interface PlateStudy {
  readonly plate: PlacedPlate;
  /** The cuts that are looked at; the same for both copies of a pair. */
  readonly makeCuts: () => CutPlate;
  /** All loads on the plate in a case, in balance; none where the case does not load it or can't be told. */
  readonly loads: (c: number) => PlateLoads | undefined;
  /** Where a cut is, in a builder's words. */
  readonly where: (cut: LoadedCut['section']) => string;
  readonly source: SourceRef;
  /** What the numbers take for granted. */
  readonly note: string;
}

/** A plate that is not looked at, or only in part, and why. */
export interface NotStudied {
  readonly plate: string;
  readonly why: string;
}

export const isStudied = (one: PlateStudy | NotStudied): one is PlateStudy => 'makeCuts' in one;

const millimeters = (length: number): string => `${Math.round(Math.abs(length) * 1000)} mm`;

/** `12 mm ahead of` or `12 mm behind` a place. */
export const fromPlace = (by: number, [more, less]: readonly [string, string], place: string): string =>
  Math.abs(by) < 5e-4 ? `at ${place}` : `${millimeters(by)} ${by > 0 ? more : less} ${place}`;

/** How a cut runs in a plate whose axes have these names; `x` and `y` say how a line along that axis runs. */
export function courseOf(
  { line: { angle } }: LoadedCut['section'],
  along: { readonly x: string; readonly y: string },
): string {
  const degrees = Math.round((angle * 180) / Math.PI);
  if (degrees === 0) return `cut ${along.y}`;
  if (degrees === 90) return `cut ${along.x}`;
  return 'cut askew';
}

/** Openings that a cut goes through, by what they are for. */
export function throughOpenings({ pattern }: PlacedPlate, { line, ends }: LoadedCut['section']): string {
  const [a, b] = ends;
  const names = pattern.openings
    .filter((opening) => {
      const reach = (opening.diameter + (opening.travel ?? 0)) / 2;
      const off = Math.abs(opening.center.x * line.nx + opening.center.y * line.ny - line.offset);
      const along = (p: Point): number => p.y * line.nx - p.x * line.ny;
      const at = along(opening.center);
      const [low, high] = [Math.min(along(a), along(b)), Math.max(along(a), along(b))];
      return off < (opening.travel ? reach : opening.diameter / 2) && at > low && at < high;
    })
    .map((opening) => `${opening.kind} for ${opening.for}`);
  const once = [...new Set(names)];
  return once.length === 0 ? '' : ` through the ${once.join(' and the ')}`;
}

/** Metal in the cut, and its middle in the plate's own axes. */
export const metalOf = ({ width, centroid }: LoadedCut['section']): string =>
  `, ${Math.round(width * 1000)} mm of metal about x ${whole(centroid.x)}, y ${whole(centroid.y)} mm`;

/** Whole millimeters, without a minus before nothing. */
const whole = (length: number): number => Math.round(length * 1000) + 0;
