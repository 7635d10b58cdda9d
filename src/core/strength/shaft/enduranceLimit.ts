import type { Length, Outcome, Pressure } from '../../quantity/index.ts';
import { bad, good, inches, mm, poundsForce } from '../../quantity/index.ts';
import { type Notch, notches, reliabilities, surfaceFinishes } from '../../standards/index.ts';

export interface EnduranceInput {
  /** Sut [Pa]. */
  readonly tensile: Pressure;
  /** d [m]. */
  readonly diameter: Length;
  /** Name in the surface table. */
  readonly surface: string;
  /** Percent in the reliability table; left out: 50 %, the mean. */
  readonly reliability?: number;
  /** The shaft turns under the load; an axle that stands still feels it on 0.37 of its diameter. */
  readonly rotating: boolean;
}

/** Se and every factor that made it. */
export interface EnduranceLimit {
  /** Se' = 0.5·Sut, at most 700 MPa [Pa]. */
  readonly specimen: Pressure;
  /** ka [-]. */
  readonly surface: number;
  /** kb [-]. */
  readonly size: number;
  /** ke [-]. */
  readonly reliability: number;
  /** Se = ka·kb·ke·Se' [Pa]. */
  readonly limit: Pressure;
}

const KSI = poundsForce(1000) / inches(1) ** 2;
/** Above this the endurance limit no longer grows with strength. */
const STRONGEST = 1400e6;

/**
 * Endurance limit of a round steel part in bending: Se = ka·kb·ke·Se'. Load factor 1 (the equivalent stress takes care
 * of torsion), room temperature.
 * @issue not-in-table — a surface or reliability that is not listed
 * @source shigley-9, section 6-9
 */
export function enduranceLimit(input: EnduranceInput): Outcome<EnduranceLimit> {
  const finish = surfaceFinishes.find(({ name }) => name === input.surface);
  if (!finish)
    return bad({
      code: 'not-in-table',
      path: 'surface',
      given: input.surface,
      nearest: surfaceFinishes.map(({ name }) => name),
    });
  const wanted = input.reliability ?? 50;
  const reliability = reliabilities.find(({ percent }) => percent === wanted)?.factor;
  if (reliability === undefined)
    return bad({
      code: 'not-in-table',
      path: 'reliability',
      given: `${wanted}`,
      nearest: reliabilities.map(({ percent }) => `${percent}`),
    });
  const specimen = (0.5 * Math.min(input.tensile, STRONGEST)) as Pressure;
  // A very smooth, weak steel would come out above 1; a surface does not strengthen.
  const surface = Math.min(1, finish.coefficientKsi * (input.tensile / KSI) ** finish.exponent);
  const size = sizeFactor(input.rotating ? input.diameter : 0.37 * input.diameter);
  const limit = (surface * size * reliability * specimen) as Pressure;
  return good({ specimen, surface, size, reliability, limit });
}

/** kb: 1 to 2.79 mm, (d/7.62 mm)^−0.107 to 51 mm, 1.51·(d/mm)^−0.157 above. @source shigley-9, equation 6-20 */
export function sizeFactor(diameter: number): number {
  if (diameter <= mm(2.79)) return 1;
  return diameter <= mm(51) ? (diameter / mm(7.62)) ** -0.107 : 1.51 * (diameter * 1000) ** -0.157;
}

/**
 * Neuber's notch sensitivity of steel, q = 1/(1 + √a/√r), √a a cubic in Sut [ksi].
 * @source memory, Shigley equations 6-34 to 6-36
 */
export function notchSensitivity(tensile: Pressure, radius: Length, load: 'bending' | 'torsion'): number {
  const s = tensile / KSI;
  const root =
    load === 'bending'
      ? 0.246 - 3.08e-3 * s + 1.51e-5 * s ** 2 - 2.67e-8 * s ** 3
      : 0.19 - 2.51e-3 * s + 1.35e-5 * s ** 2 - 2.67e-8 * s ** 3;
  return 1 / (1 + Math.max(root, 0) / Math.sqrt(radius / inches(1)));
}

/** Kf = 1 + q·(Kt − 1). @source shigley-9, equation 6-32 */
export const fatigueFactor = (theoretical: number, sensitivity: number): number =>
  1 + sensitivity * (theoretical - 1);

export interface NotchFactors {
  readonly bending: number;
  readonly torsion: number;
  readonly notch: Notch;
}

/**
 * Kf and Kfs of a listed detail; its radius is that of the table unless given. A detail without a radius takes Kt whole.
 * @issue not-in-table — a detail that is not listed
 * @source shigley-9, table 7-1 with equation 6-32
 */
export function notchFactors(
  name: string,
  tensile: Pressure,
  diameter: Length,
  radius?: Length,
): Outcome<NotchFactors> {
  const notch = notches.find((one) => one.name === name);
  if (!notch)
    return bad({ code: 'not-in-table', path: 'notch', given: name, nearest: notches.map((one) => one.name) });
  const r = radius ?? (notch.radiusRatio === undefined ? undefined : notch.radiusRatio * diameter);
  if (notch.isFatigueFactor || r === undefined)
    return good({ bending: notch.bending, torsion: notch.torsion, notch });
  const q = (load: 'bending' | 'torsion'): number => notchSensitivity(tensile, r as Length, load);
  return good({
    bending: fatigueFactor(notch.bending, q('bending')),
    torsion: fatigueFactor(notch.torsion, q('torsion')),
    notch,
  });
}
