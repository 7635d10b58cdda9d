import type { QuantityKind } from './brand.ts';
import { type Unit, unitOf } from './units.ts';

/** How a value of a kind is spoken of, written in JSON and printed. */
export interface KindFacts {
  /** With its article: `a length`. */
  readonly name: string;
  /** Unit of a plain number in JSON. */
  readonly edge: string;
  readonly metric: PrintFormat;
  readonly customary: PrintFormat;
  /** A text of this kind that reads. */
  readonly example: string;
}

/** Unit and finest step of a print, in that unit. */
export interface PrintFormat {
  readonly symbol: string;
  readonly step: number;
}

const format = (symbol: string, step: number): PrintFormat => ({ symbol, step });

export const kindFacts: Readonly<Record<QuantityKind, KindFacts>> = {
  length: facts('a length', 'mm', format('mm', 0.1), format('in', 1 / 64), '12 mm or 1 1/2 in'),
  angle: facts('an angle', '°', format('°', 0.1), format('°', 0.1), '24° or 24 deg'),
  mass: facts('a mass', 'kg', format('kg', 0.01), format('lb', 0.01), '2.5 kg or 5.5 lb'),
  force: facts('a force', 'N', format('N', 1), format('lbf', 1), '1200 N or 270 lbf'),
  torque: facts('a torque', 'N·m', format('N·m', 0.1), format('lb-ft', 0.1), '11 N·m or 8.1 lb-ft'),
  pressure: facts('a pressure or stress', 'MPa', format('MPa', 0.01), format('psi', 1), '2.2 bar or 32 psi'),
  power: facts('a power', 'W', format('kW', 0.01), format('hp', 0.01), '4.1 kW or 5.5 hp'),
  speed: facts('a speed', 'm/s', format('km/h', 0.1), format('mph', 0.1), '45 km/h or 28 mph'),
  angularSpeed: facts('a shaft speed', 'rpm', format('rpm', 1), format('rpm', 1), '3600 rpm'),
  area: facts('an area', 'mm²', format('mm²', 1), format('in²', 0.001), '120 mm² or 0.19 in²'),
  density: facts('a density', 'kg/m³', format('kg/m³', 1), format('lb/in³', 0.0001), '7850 kg/m³'),
  inertia: facts(
    'a moment of inertia',
    'kg·m²',
    format('kg·m²', 0.0001),
    format('lb·ft²', 0.001),
    '0.12 kg·m²',
  ),
  stiffness: facts(
    'a spring rate',
    'N/mm',
    format('N/mm', 0.1),
    format('lbf/in', 0.1),
    '12 N/mm or 70 lbf/in',
  ),
  lineMass: facts(
    'a mass per length',
    'kg/m',
    format('kg/m', 0.001),
    format('lb/ft', 0.001),
    '0.9 kg/m or 0.6 lb/ft',
  ),
  secondMoment: facts(
    'a second moment of area',
    'mm⁴',
    format('mm⁴', 1),
    format('in⁴', 0.0001),
    '12000 mm⁴ or 0.029 in⁴',
  ),
  lineForce: facts(
    'a force per length',
    'N/mm',
    format('N/mm', 0.001),
    format('lbf/ft', 0.01),
    '0.5 N/mm or 34 lbf/ft',
  ),
  frequency: facts('a frequency', 'Hz', format('Hz', 0.1), format('Hz', 0.1), '42 Hz'),
  ratio: facts('a ratio', '', format('', 0.001), format('', 0.001), '0.15, 15 % or 6:1'),
  count: facts('a whole number', '', format('', 1), format('', 1), '12'),
};

/** The unit of a plain number in JSON: edge value = SI value / factor. */
export function edgeUnit(kind: QuantityKind): { readonly symbol: string; readonly factor: number } {
  const unit = edgeUnitOf(kind);
  return { symbol: unit.symbol, factor: unit.times / unit.per };
}

export const edgeUnitOf = (kind: QuantityKind): Unit => unitOf(kind, kindFacts[kind].edge);

function facts(
  name: string,
  edge: string,
  metric: PrintFormat,
  customary: PrintFormat,
  example: string,
): KindFacts {
  return { name, edge, metric, customary, example };
}
