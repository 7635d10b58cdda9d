import type { QuantityKind } from './brand.ts';
import { kindFacts, type PrintFormat } from './kinds.ts';
import { fromSi, inchesIn, millimetersIn, unitOf } from './units.ts';

/** `both` is metric with customary in brackets. */
export type UnitSystem = 'in' | 'mm' | 'both';

export interface PrintOptions {
  /** Finest step shown, in the metric unit printed (mm for a length); customary units follow it by tens. */
  readonly resolution?: number;
  /** Lengths in inches: add what the nearest 1/64 leaves, to 0.001 in, when it is not zero. */
  readonly remainder?: boolean;
}

/** Finest division of a tape or rule in the trade. */
const INCH_DIVISIONS = 64;

/** From here on a length is a distance to walk, not to lay a tape on [m]. */
const FAR = 10;
const FEET: PrintFormat = { symbol: 'ft', step: 1 };

/** A half goes up even where doubles leave it just below: 0.15 / 0.1 is 1.4999999999999998. */
const HALF_UP = 1e-9;

/**
 * SI value as text.
 * @throws RangeError for a value that is not finite: a broken promise of the room that made it.
 */
export function printQuantity(
  value: number,
  kind: QuantityKind,
  system: UnitSystem,
  options: PrintOptions = {},
): string {
  const { metric, customary } = kindFacts[kind];
  const isFar = kind === 'length' && Math.abs(value) >= FAR;
  const inMetric = () =>
    isFar
      ? `${printNumber(value, 0.1)} m`
      : printStepped(value, kind, metric, options.resolution ?? metric.step);
  const inCustomary = () => {
    if (isFar) return printStepped(value, kind, FEET, FEET.step);
    return kind === 'length'
      ? printInches(value, options)
      : printStepped(value, kind, customary, customaryStep());
  };
  const customaryStep = () => {
    if (options.resolution === undefined) return customary.step;
    const sameSize = options.resolution * unitRatio(kind, metric, customary);
    return 10 ** Math.floor(Math.log10(sameSize) + 1e-9);
  };
  if (metric.symbol === customary.symbol || system === 'mm') return inMetric();
  return system === 'in' ? inCustomary() : `${inMetric()} (${inCustomary()})`;
}

/** Length [m] to the nearest 1/64 in, reduced: `8 7/16 in`; with `remainder`, `8 7/16 in + 0.004`. */
export function printInches(length: number, options: { readonly remainder?: boolean } = {}): string {
  const value = inchesIn(finite(length));
  const parts = Math.round(Math.abs(value) * INCH_DIVISIONS + HALF_UP);
  const whole = Math.floor(parts / INCH_DIVISIONS);
  const fraction = reduced(parts % INCH_DIVISIONS, INCH_DIVISIONS);
  const sign = value < 0 && parts > 0 ? '-' : '';
  const body = whole > 0 && fraction !== '' ? `${whole} ${fraction}` : fraction || `${whole}`;
  const nearest = ((value < 0 ? -1 : 1) * parts) / INCH_DIVISIONS;
  const left = options.remainder ? value - nearest : 0;
  const rest = Math.abs(left) >= 0.0005 ? ` ${left < 0 ? '-' : '+'} ${Math.abs(left).toFixed(3)}` : '';
  return `${sign}${body} in${rest}`;
}

/** Length [m] in millimeters to `resolution` [mm]: `214.3 mm`. */
export function printMillimeters(length: number, resolution: number = 0.1): string {
  return `${printNumber(millimetersIn(length), resolution)} mm`;
}

/** A plain number to the nearest `step`, with the decimals that the step has. */
export function printNumber(value: number, step: number): string {
  if (!(step > 0 && Number.isFinite(step)))
    throw new RangeError(`step of a print must be above 0 and finite, not ${step}`);
  const rounded = Math.round(Math.abs(finite(value)) / step + HALF_UP) * step;
  const text = rounded.toFixed(decimalsOf(step));
  return value < 0 && Number(text) !== 0 ? `-${text}` : text;
}

function printStepped(value: number, kind: QuantityKind, format: PrintFormat, step: number): string {
  const text = printNumber(fromSi(value, unitOf(kind, format.symbol)), step);
  if (format.symbol === '') return text;
  return format.symbol === '°' ? `${text}°` : `${text} ${format.symbol}`;
}

/** How many customary units one metric unit is. */
function unitRatio(kind: QuantityKind, metric: PrintFormat, customary: PrintFormat): number {
  const one = unitOf(kind, metric.symbol);
  return fromSi(one.times / one.per, unitOf(kind, customary.symbol));
}

function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 12; decimals++) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-9 * scaled) return decimals;
  }
  return 12;
}

function reduced(top: number, bottom: number): string {
  let [a, b] = [top, bottom];
  if (a === 0) return '';
  while (a % 2 === 0) [a, b] = [a / 2, b / 2];
  return `${a}/${b}`;
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`cannot print ${value}`);
  return value;
}
