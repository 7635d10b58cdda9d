import type { SourceRef } from '../quantity/index.ts';

/** How the number on the sticker was found, and what it leaves out. */
export interface RatingPractice {
  readonly id: 'net' | 'gross' | 'small-engine';
  readonly title: string;
  /** One sentence for the person who reads the number. */
  readonly note: string;
  readonly source: SourceRef;
}

/** Reference state of the correction: dry air pressure [Pa] and temperature [K]. */
const REFERENCE_PRESSURE = 99_000;
const REFERENCE_TEMPERATURE = 298;
const ZERO_CELSIUS = 273;
/** Share of the correction that follows the air, and the rest that is friction. */
const AIR_SHARE = 1.18;
const FRICTION_SHARE = 0.18;

/** Sea level of the standard atmosphere and its fall with height. */
const SEA_LEVEL = 101_325;
const LAPSE_PER_METER = 2.25577e-5;
const PRESSURE_EXPONENT = 5.25588;

export const ratingPractices: readonly RatingPractice[] = [
  {
    id: 'net',
    title: 'SAE J1349 net',
    note: 'Measured with air filter and muffler fitted, referred to 990 hPa dry air at 25 °C.',
    source: { key: 'sae-j1349', where: 'scope' },
  },
  {
    id: 'gross',
    title: 'gross',
    note: 'Measured without what the engine needs to run in a machine; as installed it gives less, so do not gear by it.',
    source: { key: 'sae-j1940', where: 'net or gross as labeled' },
  },
  {
    id: 'small-engine',
    title: 'SAE J1940',
    note: 'Engines up to 1.0 L, not of on-road motorcycles; says whether net or gross; the mean of the make is at least 95 % of the printed value, and torque and power are printed at different speeds.',
    source: { key: 'sae-j1940', where: 'scope and acceptance' },
  },
];

/**
 * Correction of a measured output to reference air: CF = 1.18·(990/Pd)·((T + 273)/298)^0.5 − 0.18. An engine gives 1/CF
 * of its rating in that air.
 * @param dryPressure Pd, pressure of the dry air [Pa], > 0
 * @param temperature T [°C]
 * @source sae-j1349, spark-ignition correction
 */
export function correctionFactor(dryPressure: number, temperature: number): number {
  const air =
    (REFERENCE_PRESSURE / dryPressure) * Math.sqrt((temperature + ZERO_CELSIUS) / REFERENCE_TEMPERATURE);
  return AIR_SHARE * air - FRICTION_SHARE;
}

/**
 * Pressure of the standard atmosphere: p = 101 325·(1 − 2.25577e-5·h)^5.25588.
 * @param altitude h above sea level [m], below 11 000
 * @returns [Pa]
 * @source iso-2533, troposphere
 */
export const standardPressure = (altitude: number): number =>
  SEA_LEVEL * (1 - LAPSE_PER_METER * altitude) ** PRESSURE_EXPONENT;

/**
 * Density of dry air: ρ = p/(287.05·(T + 273.15)).
 * @param pressure [Pa]
 * @param temperature [°C]
 * @returns [kg/m³]
 * @source iso-2533, ideal gas
 */
export const airDensity = (pressure: number, temperature: number): number =>
  pressure / (287.05 * (temperature + 273.15));

/**
 * Share of its rating that an engine gives at a height and temperature, in dry air: 1/CF.
 * @source sae-j1349, spark-ignition correction; iso-2533, pressure at height
 */
export const derate = (altitude: number, temperature: number): number =>
  1 / correctionFactor(standardPressure(altitude), temperature);
