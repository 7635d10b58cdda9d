import type { z } from 'zod';
import { quantityMeta } from './meta.ts';

type Schema = z.core.$ZodType;
type Def = z.core.$ZodTypes['_zod']['def'];

export const defOf = (schema: Schema): Def => (schema as z.core.$ZodTypes)._zod.def;

/**
 * The schema inside optional, default, readonly, lazy and the like; a pipe is its result, or its input for a
 * transform. A quantity field is whole.
 */
export function unwrapped(schema: Schema): Schema {
  if (quantityMeta(schema)) return schema;
  const def = defOf(schema);
  switch (def.type) {
    case 'optional':
    case 'nullable':
    case 'default':
    case 'prefault':
    case 'nonoptional':
    case 'readonly':
    case 'catch':
      return unwrapped(def.innerType);
    case 'lazy':
      return unwrapped(def.getter());
    case 'pipe':
      return unwrapped(defOf(def.out).type === 'transform' ? def.in : def.out);
    default:
      return schema;
  }
}

/** The schema at `path`, or undefined where the path leaves the schema. */
export function schemaAt(schema: Schema, path: readonly PropertyKey[], data: unknown): Schema | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return schema;
  const next = childOf(unwrapped(schema), step, data);
  return next && schemaAt(next, rest, valueAt(data, step));
}

/** Keys that the object schema (or, for a union, the options fitting `data`) knows. */
export function knownKeys(schema: Schema, data: unknown): string[] {
  const inner = unwrapped(schema);
  const def = defOf(inner);
  if (def.type === 'object') return Object.keys(def.shape);
  if (def.type === 'intersection') return [...knownKeys(def.left, data), ...knownKeys(def.right, data)];
  if (def.type !== 'union') return [];
  const fitting = optionThatFits(def.options, data);
  return fitting ? knownKeys(fitting, data) : def.options.flatMap((option) => knownKeys(option, data));
}

/** The option of a union whose literals and shape agree best with `value`. */
export function optionThatFits(options: readonly Schema[], value: unknown): Schema | undefined {
  let best: Schema | undefined;
  let bestScore = 0;
  for (const option of options) {
    const score = agreement(option, value);
    if (score > bestScore) [best, bestScore] = [option, score];
  }
  return best;
}

export const valueAt = (data: unknown, step: PropertyKey): unknown =>
  typeof data === 'object' && data !== null && Object.hasOwn(data, step)
    ? (data as Record<PropertyKey, unknown>)[step]
    : undefined;

function childOf(schema: Schema, step: PropertyKey, data: unknown): Schema | undefined {
  const def = defOf(schema);
  switch (def.type) {
    case 'object':
      return Object.hasOwn(def.shape, step) ? def.shape[step as string] : def.catchall;
    case 'record':
      return def.valueType;
    case 'array':
      return def.element;
    case 'tuple':
      return def.items[Number(step)] ?? def.rest ?? undefined;
    case 'union': {
      const option = optionThatFits(def.options, data);
      return option && childOf(unwrapped(option), step, data);
    }
    case 'intersection':
      return childOf(unwrapped(def.left), step, data) ?? childOf(unwrapped(def.right), step, data);
    default:
      return undefined;
  }
}

/** 0: cannot be; more: how well. An object scores by its literals first, then by the keys it shares. */
function agreement(schema: Schema, value: unknown): number {
  const inner = unwrapped(schema);
  if (quantityMeta(inner)) return typeof value === 'number' || typeof value === 'string' ? 2 : 0;
  const def = defOf(inner);
  switch (def.type) {
    case 'literal':
      return def.values.includes(value as never) ? 2 : 0;
    case 'enum':
      return Object.values(def.entries).includes(value as never) ? 2 : 0;
    case 'object':
      return objectAgreement(def.shape, value);
    case 'array':
    case 'tuple':
      return Array.isArray(value) ? 2 : 0;
    case 'record':
      return typeof value === 'object' && value !== null && !Array.isArray(value) ? 1 : 0;
    case 'number':
      return typeof value === 'number' ? 2 : 0;
    case 'string':
      return typeof value === 'string' ? 2 : 0;
    case 'boolean':
      return typeof value === 'boolean' ? 2 : 0;
    case 'union':
      return Math.max(0, ...def.options.map((option) => agreement(option, value)));
    case 'null':
      return value === null ? 2 : 0;
    default:
      return value === undefined ? 0 : 1;
  }
}

function objectAgreement(shape: Readonly<Record<string, Schema>>, value: unknown): number {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return 0;
  let score = 1;
  for (const [key, schema] of Object.entries(shape)) {
    const isPresent = Object.hasOwn(value, key);
    const type = defOf(unwrapped(schema)).type;
    if (isPresent) score += 1;
    if (type === 'literal') score += isPresent && agreement(schema, valueAt(value, key)) > 0 ? 1000 : -500;
  }
  return Math.max(score, Number.MIN_VALUE);
}
