import { edgeUnit, type QuantityKind, type UnitSystem } from '../core/quantity/index.ts';
import { figureValue } from './report.ts';

/** The part of a JSON Schema that says what a result holds. */
interface Shape {
  readonly kind?: QuantityKind;
  readonly unit?: string;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly additionalProperties?: Shape | boolean;
  readonly items?: Shape | boolean;
  readonly prefixItems?: readonly Shape[];
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly const?: unknown;
}

type Fields = Readonly<Record<string, unknown>>;

/** Significant digits. */
const DIGITS = 6;

/**
 * A worksheet's result in lines for people: a value a line, what is nested under its name, rows of one form as a table.
 * @param result in edge units
 * @param schema JSON Schema of the result
 */
export function resultText(result: unknown, schema: object, units: UnitSystem): string {
  return lines(result, schema as Shape, units)
    .map((line) => `${line}\n`)
    .join('');
}

function lines(value: unknown, general: Shape, units: UnitSystem): string[] {
  if (Array.isArray(value)) return listLines(value, general, units);
  if (!isFields(value)) return [scalar(value, general, units)];
  const shape = variantFor(general, value);
  const rows = Object.entries(value).filter(([, one]) => one !== undefined);
  const isTable = rows.length > 1 && rows.every(([, one]) => isFlat(one));
  if (isTable && shape.properties === undefined)
    return table(
      rows.map(([name, one]) => [name, ...cells(one, childOf(shape, name), units)]),
      headOf(rows[0]?.[1]),
    );
  return rows.flatMap(([name, one]) => named(name, one, childOf(shape, name), units));
}

function listLines(list: readonly unknown[], shape: Shape, units: UnitSystem): string[] {
  if (list.length === 0) return ['none'];
  if (list.every((one) => !isNested(one)))
    return [list.map((one, i) => scalar(one, itemOf(shape, i), units)).join(', ')];
  if (list.every(isFlat) && list.every((one) => sameForm(one, list[0])))
    return table(
      list.map((one, i) => [`${i + 1}`, ...cells(one, itemOf(shape, i), units)]),
      headOf(list[0]),
    );
  return list.flatMap((one, i) => named(`${i + 1}`, one, itemOf(shape, i), units));
}

function named(name: string, value: unknown, shape: Shape, units: UnitSystem): string[] {
  const below = lines(value, shape, units);
  const isLine = below.length === 1 && !(isFields(value) && Object.keys(value).length > 0);
  return isLine ? [`${name}: ${below[0]}`] : [`${name}:`, ...below.map((line) => `  ${line}`)];
}

/** Names of the columns; of tuples there are none. */
const headOf = (row: unknown): string[] => (isFields(row) ? ['', ...Object.keys(row)] : []);

function cells(row: unknown, shape: Shape, units: UnitSystem): string[] {
  if (Array.isArray(row)) return row.map((one, i) => scalar(one, itemOf(shape, i), units));
  if (isFields(row))
    return Object.entries(row).map(([name, one]) => scalar(one, childOf(shape, name), units));
  return [scalar(row, shape, units)];
}

function table(rows: readonly string[][], head: readonly string[]): string[] {
  const all = head.length > 0 ? [[...head], ...rows] : rows;
  const widths = Array.from({ length: Math.max(...all.map((row) => row.length)) }, (_, i) =>
    Math.max(...all.map((row) => row[i]?.length ?? 0)),
  );
  return all.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join('  ')
      .trimEnd(),
  );
}

function scalar(value: unknown, shape: Shape, units: UnitSystem): string {
  if (typeof value !== 'number') return String(value);
  const { kind, unit = '' } = variantOf(shape);
  // Six digits, more than figures keep: limits of fits are told apart by microns.
  const number = `${Number(value.toPrecision(DIGITS))}`;
  const metric = unit === '' ? number : `${number}${unit === '°' ? '' : ' '}${unit}`;
  if (kind === undefined || units === 'mm' || kind === 'count') return metric;
  const inch = figureValue(value * edgeUnit(kind).factor, kind, 'in');
  if (units === 'in') return inch;
  return inch === figureValue(value * edgeUnit(kind).factor, kind, 'mm') ? metric : `${metric} (${inch})`;
}

const NO_SHAPE: Shape = {};
const variantOf = (shape: Shape): Shape => variantsOf(shape).find((one) => one.kind !== undefined) ?? shape;
const variantsOf = ({ anyOf = [], oneOf = [] }: Shape): readonly Shape[] => [...anyOf, ...oneOf];

/** The variant whose fixed values the fields have. */
const variantFor = (shape: Shape, fields: Fields): Shape =>
  variantsOf(shape).find(({ properties }) =>
    Object.entries(properties ?? {}).every(
      ([name, one]) => one.const === undefined || one.const === fields[name],
    ),
  ) ?? shape;

const shapeOr = (shape: Shape | boolean | undefined): Shape => (typeof shape === 'object' ? shape : NO_SHAPE);

const childOf = (shape: Shape, name: string): Shape =>
  shape.properties !== undefined && Object.hasOwn(shape.properties, name)
    ? shapeOr(shape.properties[name])
    : shapeOr(shape.additionalProperties);

const itemOf = (shape: Shape, index: number): Shape => shape.prefixItems?.[index] ?? shapeOr(shape.items);

const isNested = (value: unknown): value is object => typeof value === 'object' && value !== null;
const isFields = (value: unknown): value is Fields => isNested(value) && !Array.isArray(value);

/** Nested once: a row of a table. */
const isFlat = (value: unknown): boolean => isNested(value) && !Object.values(value).some(isNested);

const sameForm = (a: unknown, b: unknown): boolean =>
  isNested(a) && isNested(b) && Object.keys(a).join() === Object.keys(b).join();
