import type { z } from 'zod';
import { toEdgeValue } from './field.ts';
import { quantityMeta } from './meta.ts';
import { defOf, optionThatFits, unwrapped } from './schemaWalk.ts';

/** A value in SI as plain JSON data in edge units, by the quantity kinds that its schema carries. */
export function toEdge(schema: z.core.$ZodType, value: unknown): unknown {
  if (value === null || value === undefined) return value;
  const meta = quantityMeta(schema);
  if (meta) return typeof value === 'number' ? toEdgeValue(value, meta.kind) : value;
  const inner = unwrapped(schema);
  if (inner !== schema) return toEdge(inner, value);
  const def = defOf(schema);
  switch (def.type) {
    case 'object':
      return mapEntries(value, (key, one) =>
        withSchema(Object.hasOwn(def.shape, key) ? def.shape[key] : def.catchall, one),
      );
    case 'record':
      return mapEntries(value, (_, one) => toEdge(def.valueType, one));
    case 'array':
      return mapItems(value, (one) => toEdge(def.element, one));
    case 'tuple':
      return mapItems(value, (one, index) => withSchema(def.items[index] ?? def.rest ?? undefined, one));
    case 'union':
      return withSchema(optionThatFits(def.options, value), value);
    case 'intersection':
      return toEdge(def.right, toEdge(def.left, value));
    default:
      return value;
  }
}

const withSchema = (schema: z.core.$ZodType | undefined, value: unknown): unknown =>
  schema ? toEdge(schema, value) : value;

function mapEntries(value: unknown, map: (key: string, one: unknown) => unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, map(key, one)]));
}

function mapItems(value: unknown, map: (one: unknown, index: number) => unknown): unknown {
  return Array.isArray(value) ? value.map(map) : value;
}
