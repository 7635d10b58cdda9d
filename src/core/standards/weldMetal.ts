import table from '../../../data/standards/welds.json' with { type: 'json' };
import { inches, type Length, type Pressure, type SourceRef } from '../quantity/index.ts';
import { ksi } from './ksi.ts';

/** FEXX by the name of the electrode class. */
export const fillerMetals: readonly {
  readonly name: string;
  readonly tensile: Pressure;
  readonly source: SourceRef;
}[] = table.fillers.map(({ name, tensileKsi, source }) => ({
  name,
  tensile: ksi(tensileKsi),
  source,
}));

/** Shares of the filler's tensile strength (throat) and the base metal's yield (leg) allowed in shear. */
export const allowableWeldShare = table.allowableShare;

/** βw of EN 1993-1-8 by steel grade. */
export const weldCorrelations = table.correlation;

/** Least leg of a fillet for the thicker part [m]. @source memory, AISC 360 table J2.4 */
export function leastFillet(thickerPart: number): Length {
  const row = table.leastFillets.find(
    (one) => one.toIn === undefined || thickerPart <= inches(one.toIn) + 1e-9,
  )!;
  return inches(row.legIn);
}
