import table from '../../../data/standards/keys.json' with { type: 'json' };
import { bad, good, inches, type Length, type Outcome, type SourceRef } from '../quantity/index.ts';

/** The parallel key of a shaft. */
export interface Key {
  /** Shaft diameter range the key is for, over to including [m]. */
  readonly over: Length;
  readonly to: Length;
  /** W, width [m]. */
  readonly width: Length;
  /** H, height of the square key [m]. */
  readonly height: Length;
  /** Height of the rectangular key of the same width [m], where there is one. */
  readonly rectangularHeight?: Length;
  readonly source: SourceRef;
}

/** Depth of the keyseats as they are measured. */
export interface KeyseatDepths {
  /** S, from the bottom of the shaft's keyseat to the far side of the shaft [m]. */
  readonly shaft: Length;
  /** T, from the top of the hub's keyseat to the far side of the bore [m]. */
  readonly hub: Length;
}

type Row = (typeof table.rows)[number];

/** All keys by rising shaft diameter. */
export const keys: readonly Key[] = table.rows.map(keyOfRow);

/** A hair of an inch, so that 7/16 in read as 11.1125 mm is still 7/16 in [m]. */
const NEARLY = 1e-7;

/**
 * The key for a shaft diameter [m], over to including.
 * @issue out-of-range — shaft under or over the table
 * @source asme-b17-1, table 1
 */
export function keyForShaft(diameter: number): Outcome<Key> {
  const key = keys.find((one) => diameter > one.over + NEARLY && diameter <= one.to + NEARLY);
  if (key) return good(key);
  const [first, last] = [keys[0]!, keys.at(-1)!];
  const edge = (length: number): number => length * 1000;
  return bad({
    code: 'out-of-range',
    path: '',
    given: edge(diameter),
    min: edge(first.over),
    max: edge(last.to),
    unit: 'mm',
  });
}

/**
 * Keyseat depths: y = (D − √(D² − W²))/2, S = D − y − H/2, T = D − y + H/2 + 0.005 in. `width` must be under `diameter`.
 * @source asme-b17-1, depth control values
 */
export function keyseatDepths(diameter: number, width: number, height: number): KeyseatDepths {
  if (!(width > 0 && width < diameter)) throw new RangeError('a key is narrower than its shaft');
  const chord = (diameter - Math.sqrt(diameter * diameter - width * width)) / 2;
  return {
    shaft: (diameter - chord - height / 2) as Length,
    hub: (diameter - chord + height / 2 + inches(table.hubClearanceIn)) as Length,
  };
}

function keyOfRow(row: Row): Key {
  return {
    over: inches(row.overIn),
    to: inches(row.toIn),
    width: inches(row.widthIn),
    height: inches(row.heightIn),
    ...(row.rectangularHeightIn === undefined ? {} : { rectangularHeight: inches(row.rectangularHeightIn) }),
    source: row.source,
  };
}
