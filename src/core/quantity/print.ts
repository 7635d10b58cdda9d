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
  /**
   * Lengths that must fit: without a `resolution`, three figures below 1 mm; in inches the fraction only where it is one
   * to 0.0005 in, else thousandths, and ten-thousandths below 1/64.
   */
  readonly fine?: boolean;
}

/** Finest division of a tape or rule in the trade. */
const INCH_DIVISIONS = 64;

/** From here on a length is a distance to walk, not to lay a tape on [m]. */
const FAR = 10;
const FEET: PrintFormat = { symbol: 'ft', step: 1 };

/** A length that is a fraction of an inch to this is written as one [in]. */
const FRACTION_WITHIN = 5e-4;
/** From here on a tape is read, not a caliper [m]. */
const ONE_INCH = 0.0254;
/** The finest step of a fit [mm], and the figures that a length below 1 mm keeps. */
const FINEST = 1e-4;
const FIGURES = 3;
/** Values nearer than this, relative, are the same; how often a step is divided to tell two apart. */
const SAME = 1e-9;
const MOST_FINER = 6;

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
  const fine = kind === 'length' && options.fine === true;
  const step = options.resolution ?? (fine ? fineStep(value, metric.step) : metric.step);
  const inMetric = () => (isFar ? `${printNumber(value, 0.1)} m` : printStepped(value, kind, metric, step));
  const inCustomary = () => {
    if (isFar) return printStepped(value, kind, FEET, FEET.step);
    if (fine) return printFineInches(value);
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

/**
 * Value and limit as texts that differ where the two do: the step is divided by ten until they can be told apart.
 * Lengths below an inch are printed `fine`.
 * @throws RangeError for a value that is not finite
 */
export function printApart(
  value: number,
  limit: number,
  kind: QuantityKind,
  system: UnitSystem,
): readonly [value: string, limit: string] {
  const shown = (resolution?: number) => {
    const print = (one: number): string =>
      printQuantity(one, kind, system, {
        ...(resolution === undefined ? {} : { resolution }),
        fine: resolution !== undefined || Math.abs(one) < ONE_INCH,
      });
    return [print(value), print(limit)] as const;
  };
  const isSame = Math.abs(value - limit) <= SAME * Math.max(Math.abs(value), Math.abs(limit));
  let texts = shown();
  for (let finer = 1; texts[0] === texts[1] && !isSame && finer <= MOST_FINER; finer++)
    texts = shown(kindFacts[kind].metric.step / 10 ** finer);
  return texts;
}

/** Length [m] in decimal inches, or as the fraction that it is: `0.134 in`, `3/4 in`, `0.0015 in`. */
export function printFineInches(length: number): string {
  const value = inchesIn(finite(length));
  const size = Math.abs(value);
  const parts = size * INCH_DIVISIONS;
  const isFraction = Math.abs(parts - Math.round(parts)) < FRACTION_WITHIN * INCH_DIVISIONS;
  if (size === 0 || (Math.round(parts) > 0 && isFraction)) return printInches(length);
  return `${printNumber(value, parts >= 1 ? 1e-3 : size >= 1e-3 ? 1e-4 : 1e-5)} in`;
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

/** Step [mm] that keeps three figures of a length [m] below 1 mm. */
function fineStep(length: number, usual: number): number {
  const size = Math.abs(millimetersIn(finite(length)));
  if (size >= 1 || size === 0) return usual;
  return Math.max(FINEST, 10 ** (Math.floor(Math.log10(size)) + 1 - FIGURES));
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
