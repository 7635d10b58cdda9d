/** A build file as plain JSON, edited without changing the value before it. */
export type Json = string | number | boolean | null | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

/** Steps from the file down to one value. */
export type Path = readonly (string | number)[];

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Own member or item at a step; undefined where there is none. */
export function childAt(value: Json | undefined, step: string | number): Json | undefined {
  if (Array.isArray(value)) return typeof step === 'number' ? value[step] : undefined;
  return isObject(value) && Object.hasOwn(value, step) ? value[step] : undefined;
}

export const valueAt = (file: Json, path: Path): Json | undefined =>
  path.reduce<Json | undefined>(childAt, file);

/** The file with `value` at `path`; everything beside the path is shared with the old file. */
export function withValue(file: Json, path: Path, value: Json): Json {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(file)) return file.map((item, i) => (i === step ? withValue(item, rest, value) : item));
  const object = isObject(file) ? file : {};
  return { ...object, [step]: withValue(object[step] ?? {}, rest, value) };
}

/** The file without the member or item at `path`. */
export function without(file: Json, path: Path): Json {
  const [step, ...rest] = path;
  if (step === undefined) return file;
  if (rest.length > 0) {
    const child = childAt(file, step);
    return child === undefined ? file : withValue(file, [step], without(child, rest));
  }
  if (Array.isArray(file)) return file.filter((_, i) => i !== step);
  if (!isObject(file)) return file;
  return Object.fromEntries(Object.entries(file).filter(([key]) => key !== step));
}
