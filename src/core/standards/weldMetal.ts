import table from '../../../data/standards/welds.json' with { type: 'json' };
import {
  bad,
  good,
  inches,
  type Length,
  type Outcome,
  type Pressure,
  type SourceRef,
} from '../quantity/index.ts';
import { ksi } from './ksi.ts';

/** An electrode class. */
export interface FillerMetal {
  readonly name: string;
  /** FEXX [Pa]. */
  readonly tensile: Pressure;
  readonly source: SourceRef;
}

export const fillerMetals: readonly FillerMetal[] = table.fillers.map(({ name, tensileKsi, source }) => ({
  name,
  tensile: ksi(tensileKsi),
  source,
}));

/** An electrode class by name, `E70` or `E7018`. @issue not-in-table @source aws-d1-1, electrode classes */
export function findFiller(name: string): Outcome<FillerMetal> {
  const plain = /^E?R?(\d{2})/i.exec(name.trim())?.[1];
  const found = fillerMetals.find((one) => one.name === `E${plain}`);
  if (found) return good(found);
  return bad({
    code: 'not-in-table',
    path: '',
    given: name,
    nearest: fillerMetals.map((one) => one.name),
  });
}

/** Shares of the filler's tensile strength (throat) and the base metal's yield (leg) allowed in shear. */
export const allowableWeldShare = table.allowableShare;

/** βw of EN 1993-1-8 and fu of EN 1993-1-1 by steel grade. */
export const weldCorrelations = table.correlation;

/** Least leg of a fillet for the thicker part [m]. @source memory, AISC 360 table J2.4 */
export function leastFillet(thickerPart: number): Length {
  const row = table.leastFillets.find(
    (one) => one.toIn === undefined || thickerPart <= inches(one.toIn) + 1e-9,
  )!;
  return inches(row.legIn);
}
