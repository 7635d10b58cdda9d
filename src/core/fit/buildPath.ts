import type { z } from 'zod';
import { type Build, buildSchema } from '../build/index.ts';
import { type QuantityKind, quantityMeta, schemaAt } from '../quantity/index.ts';

/** Steps from the build down to one value. */
export type Path = readonly (string | number)[];

/**
 * A path of the build file as steps: `wheels.rear.hub.width`, `stacks.rearAxle.items[2].length`, or, as lists of named
 * things have names, `stacks.rearAxle.items[hub].length`. Undefined when it leads out of the file; the last step may
 * be one that the file leaves out.
 */
export function pathOf(build: Build, text: string): Path | undefined {
  const steps = text.split(/[.[\]]+/).filter((step) => step !== '');
  const path: (string | number)[] = [];
  let at: unknown = build;
  for (const [i, step] of steps.entries()) {
    const key = Array.isArray(at) ? indexIn(at, step) : step;
    if (key === undefined || typeof at !== 'object' || at === null) return undefined;
    const isMissing = !Object.hasOwn(at, key);
    path.push(key);
    if (isMissing) return i === steps.length - 1 && isFieldOf(path, build) ? path : undefined;
    at = (at as Record<string, unknown>)[key];
  }
  return path;
}

/** Value at a path; undefined where there is none. */
export function valueAtPath(build: Build, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null
        ? (value as Record<string | number, unknown>)[step]
        : undefined,
    build,
  );
}

/** The build with another number at a path; what is beside the path is shared, nothing is changed. */
export function withValueAt(build: Build, path: Path, value: number): Build {
  return replaced(build, path, value) as Build;
}

/** What a field of the schema measures; a field that also takes a word, by its quantity. */
export function fieldKind(schema: z.core.$ZodType): QuantityKind | undefined {
  const own = quantityMeta(schema)?.kind;
  if (own !== undefined) return own;
  const def = (schema as z.core.$ZodTypes)._zod.def;
  if (def.type === 'optional' || def.type === 'nullable') return fieldKind(def.innerType);
  if (def.type !== 'union') return undefined;
  return def.options.map(fieldKind).find((kind) => kind !== undefined);
}

function replaced(target: unknown, [step, ...rest]: Path, value: number): unknown {
  if (step === undefined) return value;
  if (Array.isArray(target)) return target.map((one, i) => (i === step ? replaced(one, rest, value) : one));
  const table = target as Readonly<Record<string, unknown>>;
  return { ...table, [step]: replaced(table[step], rest, value) };
}

function indexIn(list: readonly unknown[], step: string): number | undefined {
  const index = /^\d+$/.test(step) ? Number(step) : list.findIndex((one) => hasId(one, step));
  return index >= 0 && index < list.length ? index : undefined;
}

const hasId = (one: unknown, id: string): boolean =>
  typeof one === 'object' && one !== null && (one as { readonly id?: unknown }).id === id;

/** A field that the schema knows by name, not one that any name of a table would make. */
function isFieldOf(path: Path, build: Build): boolean {
  const schema = schemaAt(buildSchema, path, build);
  return schema !== undefined && fieldKind(schema) !== undefined;
}
