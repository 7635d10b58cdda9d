import type {
  Angle,
  AngularSpeed,
  Force,
  Length,
  Mass,
  Power,
  Pressure,
  QuantityKind,
  Speed,
  Torque,
} from './brand.ts';

/**
 * One unit of a kind. SI value = number · `times` / `per`: two whole or exactly defined numbers rather than
 * one rounded factor, so that 12 mm is 12 / 1000 and comes back as 12.
 */
export interface Unit {
  /** As printed; also read. */
  readonly symbol: string;
  readonly times: number;
  readonly per: number;
  /** Further spellings that are read; words of a compound joined by `·`, as {@link unitKey} leaves them. */
  readonly also: readonly string[];
}

// Exact by definition (NIST SP 811, appendix B): inch, pound, standard gravity. All others follow from them.
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE = POUND * GRAVITY;
const HORSEPOWER = 550 * FOOT * POUND_FORCE;
/** Metric horsepower: 75 kgf·m/s. */
const METRIC_HORSEPOWER = 75 * GRAVITY;

const unit = (symbol: string, times: number, per: number, ...also: readonly string[]): Unit => ({
  symbol,
  times,
  per,
  also,
});

/** Every unit that is read, by kind. The first of a kind is the one suggested first. */
export const units: Readonly<Record<QuantityKind, readonly Unit[]>> = {
  length: [
    unit('mm', 1, 1000, 'millimeter', 'millimeters', 'millimetre', 'millimetres'),
    unit('in', 254, 10_000, 'inch', 'inches', '"'),
    unit('m', 1, 1, 'meter', 'meters', 'metre', 'metres'),
    unit('cm', 1, 100, 'centimeter', 'centimeters', 'centimetre', 'centimetres'),
    unit('ft', 3048, 10_000, 'foot', 'feet', "'"),
    unit('thou', 254, 10_000_000),
    unit('um', 1, 1e6, 'μm', 'micron', 'microns', 'micrometer', 'micrometers'),
    unit('yd', 9144, 10_000, 'yard', 'yards'),
    unit('km', 1000, 1, 'kilometer', 'kilometers', 'kilometre', 'kilometres'),
    unit('mi', 1_609_344, 1000, 'mile', 'miles'),
  ],
  angle: [
    unit('°', Math.PI, 180, 'deg', 'degs', 'degree', 'degrees'),
    unit('rad', 1, 1, 'radian', 'radians'),
    unit('mrad', 1, 1000),
    unit('arcmin', Math.PI, 180 * 60, "'"),
    unit('rev', 2 * Math.PI, 1, 'turn', 'turns', 'revolution', 'revolutions'),
  ],
  mass: [
    unit('kg', 1, 1, 'kilogram', 'kilograms', 'kgs'),
    unit('g', 1, 1000, 'gram', 'grams'),
    unit('lb', 45_359_237, 100_000_000, 'lbs', 'lbm', 'pound', 'pounds'),
    unit('oz', 45_359_237, 1_600_000_000, 'ounce', 'ounces'),
  ],
  force: [
    unit('N', 1, 1, 'newton', 'newtons'),
    unit('kN', 1000, 1),
    unit('lbf', POUND_FORCE, 1, 'pound·force', 'pounds·force'),
    unit('kgf', GRAVITY, 1, 'kp'),
    unit('ozf', POUND_FORCE, 16),
  ],
  torque: [
    unit('N·m', 1, 1, 'Nm', 'm·N', 'newton·meter', 'newton·meters', 'newton·metre', 'newton·metres'),
    unit(
      'lb-ft',
      FOOT * POUND_FORCE,
      1,
      ...pairs(['lb', 'lbf', 'lbs', 'pound', 'pounds'], ['ft', 'foot', 'feet']),
    ),
    unit('in-lb', INCH * POUND_FORCE, 1, ...pairs(['lb', 'lbf', 'lbs', 'pound', 'pounds'], ['in', 'inch'])),
    unit('N·mm', 1, 1000, 'Nmm'),
    unit('kN·m', 1000, 1, 'kNm'),
    unit('kgf·m', GRAVITY, 1, 'm·kgf', 'kgfm'),
    unit('in-oz', INCH * POUND_FORCE, 16, ...pairs(['oz', 'ozf'], ['in'])),
  ],
  pressure: [
    unit('MPa', 1e6, 1, 'N/mm2', 'megapascal', 'megapascals'),
    unit('bar', 1e5, 1, 'bars'),
    unit('psi', POUND_FORCE / (INCH * INCH), 1, 'lb/in2', 'lbf/in2', 'lb/sq·in'),
    unit('kPa', 1000, 1, 'kilopascal', 'kilopascals'),
    unit('ksi', (1000 * POUND_FORCE) / (INCH * INCH), 1),
    unit('GPa', 1e9, 1),
    unit('Pa', 1, 1, 'N/m2', 'pascal', 'pascals'),
  ],
  power: [
    unit('kW', 1000, 1, 'kilowatt', 'kilowatts'),
    unit('W', 1, 1, 'watt', 'watts'),
    unit('hp', HORSEPOWER, 1, 'bhp', 'horsepower'),
    unit('PS', METRIC_HORSEPOWER, 1, 'metric·hp'),
  ],
  speed: [
    unit('km/h', 1, 3.6, 'kph', 'kmh', 'km/hr'),
    unit('mph', 44_704, 100_000, 'mi/h', 'mile/h', 'miles/h'),
    unit('m/s', 1, 1, 'm/sec'),
    unit('ft/s', 3048, 10_000, 'fps', 'ft/sec'),
    unit('ft/min', 3048, 600_000, 'fpm'),
    unit('m/min', 1, 60),
    unit('mm/s', 1, 1000),
    unit('in/s', 254, 10_000, 'ips'),
  ],
  angularSpeed: [
    unit('rpm', 2 * Math.PI, 60, 'r/min', 'rev/min', '1/min', 'revs/min'),
    unit('rad/s', 1, 1, 'rad/sec'),
    unit('°/s', Math.PI, 180, 'deg/s', 'deg/sec'),
    unit('rev/s', 2 * Math.PI, 1, 'rps', 'r/s'),
  ],
  area: [
    unit('mm²', 1, 1e6, 'mm2', 'sq·mm'),
    unit('in²', INCH * INCH, 1, 'in2', 'sq·in', 'sqin'),
    unit('cm²', 1, 1e4, 'cm2', 'sq·cm'),
    unit('m²', 1, 1, 'm2', 'sq·m'),
    unit('ft²', FOOT * FOOT, 1, 'ft2', 'sq·ft', 'sqft'),
  ],
  density: [
    unit('kg/m³', 1, 1, 'kg/m3'),
    unit('g/cm³', 1000, 1, 'g/cm3', 'g/cc', 'kg/l', 'kg/dm3'),
    unit('lb/in³', POUND / INCH ** 3, 1, 'lb/in3', 'lb/cu·in'),
    unit('lb/ft³', POUND / FOOT ** 3, 1, 'lb/ft3', 'lb/cu·ft'),
  ],
  inertia: [
    unit('kg·m²', 1, 1, 'kg·m2', 'kgm2'),
    unit('kg·mm²', 1, 1e6, 'kg·mm2', 'kgmm2'),
    unit('kg·cm²', 1, 1e4, 'kg·cm2', 'kgcm2'),
    unit('g·mm²', 1, 1e9, 'g·mm2', 'gmm2'),
    unit('lb·ft²', POUND * FOOT * FOOT, 1, 'lb·ft2', 'lbft2'),
    unit('lb·in²', POUND * INCH * INCH, 1, 'lb·in2', 'lbin2'),
  ],
  stiffness: [
    unit('N/mm', 1000, 1, 'kN/m'),
    unit('N/m', 1, 1),
    unit('lbf/in', POUND_FORCE / INCH, 1, 'lb/in', 'lbs/in'),
    unit('kgf/mm', GRAVITY * 1000, 1),
  ],
  lineMass: [
    unit('kg/m', 1, 1),
    unit('g/m', 1, 1000),
    unit('lb/ft', POUND / FOOT, 1, 'lbs/ft'),
    unit('lb/in', POUND / INCH, 1, 'lbs/in'),
  ],
  secondMoment: [
    unit('mm⁴', 1, 1e12, 'mm4'),
    unit('in⁴', INCH ** 4, 1, 'in4'),
    unit('cm⁴', 1, 1e8, 'cm4'),
    unit('m⁴', 1, 1, 'm4'),
  ],
  lineForce: [
    unit('N/mm', 1000, 1, 'kN/m'),
    unit('N/m', 1, 1),
    unit('lbf/in', POUND_FORCE / INCH, 1, 'lb/in'),
    unit('lbf/ft', POUND_FORCE / FOOT, 1, 'lb/ft', 'plf'),
    unit('kgf/m', GRAVITY, 1),
  ],
  frequency: [unit('Hz', 1, 1, 'hertz', '1/s'), unit('kHz', 1000, 1)],
  ratio: [unit('', 1, 1), unit('%', 1, 100, 'percent', 'pct')],
  count: [
    unit('', 1, 1),
    unit('T', 1, 1, 'tooth', 'teeth'),
    unit('links', 1, 1, 'link'),
    unit('pcs', 1, 1, 'pc', 'off'),
  ],
};

/** Number in `of` to SI. */
export const toSi = (value: number, of: Unit): number => (value * of.times) / of.per;

/** SI value to a number in `of`. */
export const fromSi = (value: number, of: Unit): number => (value * of.per) / of.times;

/** The unit of `kind` printed as `symbol`. */
export function unitOf(kind: QuantityKind, symbol: string): Unit {
  const found = units[kind].find((one) => one.symbol === symbol);
  if (!found) throw new RangeError(`no unit "${symbol}" of ${kind}`);
  return found;
}

export const millimetersIn = (length: number): number => length * 1000;
export const inchesIn = (length: number): number => (length * 10_000) / 254;

/** Length from [mm]. @source nist-sp-811, table 5: prefix milli */
export const mm = (value: number): Length => (value / 1000) as Length;

/** Length from [in]; 1 in = 25.4 mm exactly. @source nist-sp-811, appendix B.8 */
export const inches = (value: number): Length => ((value * 254) / 10_000) as Length;

/** Length from [m]. @source nist-sp-811, table 1 */
export const meters = (value: number): Length => value as Length;

/** Angle from [°]; π rad = 180°. @source nist-sp-811, table 6 */
export const degrees = (value: number): Angle => ((value * Math.PI) / 180) as Angle;

/** Mass from [kg]. @source nist-sp-811, table 1 */
export const kilograms = (value: number): Mass => value as Mass;

/** Mass from avoirdupois [lb]; 1 lb = 0.45359237 kg exactly. @source nist-sp-811, appendix B.8 */
export const pounds = (value: number): Mass => ((value * 45_359_237) / 100_000_000) as Mass;

/** Force from [N]. @source nist-sp-811, table 3 */
export const newtons = (value: number): Force => value as Force;

/** Force from [lbf]: pound times standard gravity, both exact. @source nist-sp-811, appendix B.8 */
export const poundsForce = (value: number): Force => (value * POUND_FORCE) as Force;

/** Torque from [N·m]. @source nist-sp-811, table 4 */
export const newtonMeters = (value: number): Torque => value as Torque;

/** Pressure or stress from [MPa]. @source nist-sp-811, table 3 */
export const megapascals = (value: number): Pressure => (value * 1e6) as Pressure;

/** Shaft speed from [rpm]; 1 rpm = 2π/60 rad/s. @source nist-sp-811, appendix B.8 */
export const rpm = (value: number): AngularSpeed => ((value * 2 * Math.PI) / 60) as AngularSpeed;

/** Speed from [m/s]. @source nist-sp-811, table 2 */
export const metersPerSecond = (value: number): Speed => value as Speed;

/** Speed from [km/h]. @source nist-sp-811, appendix B.8 */
export const kilometersPerHour = (value: number): Speed => (value / 3.6) as Speed;

/** Power from [W]. @source nist-sp-811, table 3 */
export const watts = (value: number): Power => value as Power;

/** Both orders of a product, spaced, hyphenated (`a·b` after {@link unitKey}) or run together. */
function pairs(first: readonly string[], second: readonly string[]): string[] {
  return first.flatMap((a) => second.flatMap((b) => [`${a}·${b}`, `${b}·${a}`, `${a}${b}`, `${b}${a}`]));
}
