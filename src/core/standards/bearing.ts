import table from '../../../data/standards/bearings.json' with { type: 'json' };
import { bad, type Force, good, type Length, type Outcome, type SourceRef } from '../quantity/index.ts';

/** Lowest and highest of what makers print for one size. */
export interface RatingRange<Q extends number> {
  readonly low: Q;
  readonly high: Q;
}

/** A single-row deep groove ball bearing. */
export interface Bearing {
  /** Designation without seals and clearance, e.g. `6203`. */
  readonly designation: string;
  /** d, bore [m]. */
  readonly bore: Length;
  /** D, outside diameter [m]. */
  readonly outside: Length;
  /** B, width [m]. */
  readonly width: Length;
  /** C, basic dynamic load rating [N]. */
  readonly dynamicRating: RatingRange<Force>;
  /** C0, basic static load rating [N]. */
  readonly staticRating: RatingRange<Force>;
  /** f0, factor of the axial load table. */
  readonly f0: RatingRange<number>;
  readonly sources: { readonly dimensions: SourceRef; readonly ratings: SourceRef };
}

type Row = (typeof table.rows)[number];

/** All bearings of the table. */
export const bearings: readonly Bearing[] = table.rows.map(bearingOfRow);

/**
 * A bearing by its designation; suffixes of seals, shields and clearance (`6203-2RS C3`) are left out of the search.
 * @issue not-in-table — with the bearings of the same bore or, failing that, of the same series
 * @source iso-15, boundary dimensions
 */
export function findBearing(designation: string): Outcome<Bearing> {
  const plain = plainDesignation(designation);
  const bearing = bearings.find((one) => one.designation === plain);
  if (bearing) return good(bearing);
  return bad({ code: 'not-in-table', path: '', given: designation, nearest: nearestBearings(plain) });
}

const plainDesignation = (text: string): string => /\d{4}/.exec(text)?.[0] ?? text.trim();

function nearestBearings(plain: string): readonly string[] {
  const names = bearings.map((one) => one.designation);
  const near = names.filter(
    (name) => name.slice(2) === plain.slice(2) || name.slice(0, 2) === plain.slice(0, 2),
  );
  return (near.length > 0 ? near : names).slice(0, 6);
}

function bearingOfRow(row: Row): Bearing {
  const length = (millimeters: number) => (millimeters / 1000) as Length;
  const force = (range: { readonly low: number; readonly high: number }) => ({
    low: (range.low * 1000) as Force,
    high: (range.high * 1000) as Force,
  });
  return {
    designation: row.designation,
    bore: length(row.boreMm),
    outside: length(row.outsideMm),
    width: length(row.widthMm),
    dynamicRating: force(row.dynamicKn),
    staticRating: force(row.staticKn),
    f0: row.f0,
    sources: row.sources,
  };
}
