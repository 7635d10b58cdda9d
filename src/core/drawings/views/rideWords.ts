import { printQuantity, type QuantityKind, readQuantity, type UnitSystem } from '../../quantity/index.ts';
import type { AxisScale } from '../chartAxis.ts';
import type { TableColumn } from '../table.ts';
import { type DrawingContext, lengthCells, lengthColumns } from './context.ts';

type Scales = readonly [AxisScale, ...AxisScale[]];

/** A unit from its own name, so that no factor is written twice. */
function scale(symbol: string, kind: QuantityKind): AxisScale {
  const one = readQuantity(`1 ${symbol}`, kind);
  if (!one.ok) throw new Error(`${symbol} is no unit of ${kind}`);
  return { symbol, unit: one.value };
}

const pick = (system: UnitSystem, metric: AxisScale, customary: AxisScale): Scales =>
  system === 'mm' ? [metric] : system === 'in' ? [customary] : [metric, customary];

/** Units of the axes in the reader's system; metric first, where it is both. */
export const axisScales = {
  speed: ({ system }: DrawingContext): Scales => pick(system, scale('km/h', 'speed'), scale('mph', 'speed')),
  force: ({ system }: DrawingContext): Scales => pick(system, scale('N', 'force'), scale('lbf', 'force')),
  distance: ({ system }: DrawingContext): Scales => pick(system, scale('m', 'length'), scale('ft', 'length')),
  time: (): Scales => [{ symbol: 's', unit: 1 }],
  rate: (): Scales => [{ symbol: '1/s', unit: 1 }],
  share: (): Scales => [{ symbol: '', unit: 1 }],
} as const;

/** A value with its unit, in the reader's system. */
export const printed = (
  { system }: DrawingContext,
  value: number,
  kind: QuantityKind,
  resolution?: number,
): string => printQuantity(value, kind, system, resolution === undefined ? {} : { resolution });

/** An area [m²] such as that of drag: `0.55 m² (5.9 ft²)`. */
export function areaText({ system }: DrawingContext, area: number): string {
  const metric = `${area.toFixed(2)} m²`;
  const customary = `${(area / scale('ft', 'length').unit ** 2).toFixed(1)} ft²`;
  return system === 'mm' ? metric : system === 'in' ? customary : `${metric} (${customary})`;
}

const systems = ({ system }: DrawingContext): readonly ('mm' | 'in')[] =>
  system === 'both' ? ['mm', 'in'] : [system];

/** `26.2 km/h` cut between number and unit. */
function halves(text: string): readonly [string, string] {
  const at = text.lastIndexOf(' ');
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
}

/** Columns for one quantity, one of each system that is asked for: `Top km/h`, `Top mph`. */
export const quantityColumns = (
  context: DrawingContext,
  title: string,
  kind: QuantityKind,
): readonly TableColumn[] =>
  kind === 'length'
    ? lengthColumns(context, title)
    : systems(context).map((system) => ({
        title: `${title} ${halves(printQuantity(1, kind, system))[1]}`,
        align: 'right',
      }));

/** Cells for {@link quantityColumns}; a dash for no value. */
export const quantityCells = (
  context: DrawingContext,
  value: number | undefined,
  kind: QuantityKind,
  resolution?: number,
): readonly string[] =>
  kind === 'length' && value !== undefined
    ? lengthCells(context, value, resolution)
    : systems(context).map((system) =>
        value === undefined
          ? '–'
          : halves(printQuantity(value, kind, system, resolution === undefined ? {} : { resolution }))[0],
      );

/** A long way [m], where millimeters and 64ths say nothing: `12.3 m (40 ft)`; it is not broken. */
export function wayText({ system }: DrawingContext, way: number): string {
  const metric = `${way.toFixed(1)}\u00a0m`;
  const customary = `${(way / scale('ft', 'length').unit).toFixed(0)}\u00a0ft`;
  return system === 'mm' ? metric : system === 'in' ? customary : `${metric}\u00a0(${customary})`;
}

/** A deceleration [m/s²] as a share of gravity. */
export const pullShare = (pull: number, gravity: number): string => `${(pull / gravity).toFixed(2)} g`;

/** A deceleration [m/s²]. */
export function pullText({ system }: DrawingContext, pull: number, gravity: number): string {
  const share = pullShare(pull, gravity);
  const metric = `${pull.toFixed(1)} m/s²`;
  const customary = `${(pull / scale('ft', 'length').unit).toFixed(1)} ft/s²`;
  return system === 'mm'
    ? `${share}, ${metric}`
    : system === 'in'
      ? `${share}, ${customary}`
      : `${share}, ${metric} (${customary})`;
}

/** A rise of temperature [K]. */
export function riseText({ system }: DrawingContext, rise: number): string {
  const metric = `${rise.toFixed(0)} K`;
  const customary = `${(rise * 1.8).toFixed(0)} °F`;
  return system === 'mm' ? metric : system === 'in' ? customary : `${metric} (${customary})`;
}

/** Heat [J]. */
export const heatText = (heat: number): string => `${(heat / 1000).toFixed(1)} kJ`;

/** A slope, rise over run. */
export const gradeText = (grade: number): string => `${(100 * grade).toFixed(0)} %`;
