import { pathText } from '../../core/quantity/index.ts';
import { isObject, type Json, type JsonObject, type Path } from './json.ts';

/** What is needed of the build file's JSON Schema to make a form of it. */
export interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly kind?: string;
  readonly unit?: string;
  readonly const?: Json;
  readonly enum?: readonly Json[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema;
  readonly prefixItems?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly examples?: readonly Json[];
}

/** A value of the file that is typed, chosen or switched. */
export interface Leaf {
  readonly type: 'leaf';
  readonly path: Path;
  readonly label: string;
  readonly description?: string;
  readonly entry: 'quantity' | 'text' | 'choice' | 'switch' | 'fixed';
  /** Unit of a number written without one. */
  readonly unit?: string;
  readonly example?: string;
  readonly choices?: readonly string[];
  readonly value: Json;
  readonly canRemove: boolean;
}

/** A section, named table or list, with what is in it. */
export interface Group {
  readonly type: 'group';
  readonly path: Path;
  readonly label: string;
  readonly description?: string;
  readonly children: readonly Field[];
  /** Fields that the schema knows and the file leaves out. */
  readonly missing: readonly MissingField[];
  readonly canRemove: boolean;
}

export interface MissingField {
  readonly key: string;
  readonly label: string;
  readonly description?: string;
  /** What the field starts with when it is added: empty where only the builder knows. */
  readonly start: Json;
}

export type Field = Leaf | Group;

/** Written by the program that reads the file, not by the builder. */
const HIDDEN = new Set(['$schema', 'version']);

/** The file as a tree of fields, in the file's own order. */
export function fieldsOf(schema: Schema, file: JsonObject): Group {
  return groupOf(schema, file, { path: [], label: 'build', canRemove: false, root: schema });
}

/** All leaves in order. */
export const leavesOf = (field: Field): readonly Leaf[] =>
  field.type === 'leaf' ? [field] : field.children.flatMap(leavesOf);

/** A field's path as text, unique in the file. */
export const keyOf = (field: Field): string => pathText(field.path);

/** `headAngle` as words: `head angle`; a name that the builder gave stays as it is. */
export const wordsOf = (key: string): string =>
  key.replace(/([a-z0-9])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

interface Place {
  /** Schema of the whole file. */
  readonly root: Schema;
  readonly path: Path;
  readonly label: string;
  readonly canRemove: boolean;
}

/** A variant's changes are a piece of the file, so their fields are the file's own. */
const isPatch = (path: Path): boolean => path.length === 3 && path[0] === 'variants' && path[2] === 'changes';

function fieldOf(given: Schema | undefined, value: Json, place: Place): Field {
  const schema = isPatch(place.path) ? place.root : given;
  const fitting = optionFor(schema, value);
  if (isObject(value) || Array.isArray(value)) return groupOf(fitting, value, place);
  return leafOf(schema, fitting, value, place);
}

function groupOf(schema: Schema | undefined, value: JsonObject | readonly Json[], place: Place): Group {
  const { root: _, ...shown } = place;
  const description = schema?.description;
  return {
    type: 'group',
    ...shown,
    ...(description === undefined ? {} : { description }),
    children: Array.isArray(value)
      ? value.map((item: Json, i) => itemOf(schema, item, i, place))
      : membersOf(schema, value as JsonObject, place),
    missing: Array.isArray(value) ? [] : missingOf(schema, value as JsonObject),
  };
}

function membersOf(schema: Schema | undefined, value: JsonObject, { path, root }: Place): readonly Field[] {
  return Object.entries(value)
    .filter(([key]) => !HIDDEN.has(key))
    .map(([key, child]) => {
      const known = schema?.properties?.[key];
      const extra =
        typeof schema?.additionalProperties === 'object' ? schema.additionalProperties : undefined;
      return fieldOf(known ?? extra, child, {
        root,
        path: [...path, key],
        label: known ? wordsOf(key) : key,
        canRemove: schema?.required?.includes(key) !== true,
      });
    });
}

function itemOf(schema: Schema | undefined, item: Json, index: number, { path, root }: Place): Field {
  return fieldOf(schema?.prefixItems?.[index] ?? schema?.items, item, {
    root,
    path: [...path, index],
    label: itemName(item) ?? `${index + 1}`,
    canRemove: schema?.prefixItems === undefined,
  });
}

/** Items of the file's lists name themselves by one of these. */
function itemName(item: Json): string | undefined {
  if (!isObject(item)) return undefined;
  const name = item.id ?? item.name ?? item.what ?? item.path ?? item.node;
  return typeof name === 'string' ? name : undefined;
}

function missingOf(schema: Schema | undefined, value: JsonObject): readonly MissingField[] {
  return Object.entries(schema?.properties ?? {})
    .filter(([key]) => !HIDDEN.has(key) && !Object.hasOwn(value, key))
    .flatMap(([key, child]) => {
      const start = startOf(child);
      const description = child.description;
      return start === undefined
        ? []
        : [{ key, label: wordsOf(key), ...(description === undefined ? {} : { description }), start }];
    });
}

/** Undefined for sections, which need more than one value to start with. */
function startOf(schema: Schema): Json | undefined {
  if (schema.kind !== undefined || schema.type === 'string' || schema.type === 'number')
    return schema.enum?.[0] ?? '';
  if (schema.type === 'boolean') return true;
  const options = schema.anyOf ?? schema.oneOf;
  return options?.every((option) => startOf(option) !== undefined) ? '' : undefined;
}

function leafOf(schema: Schema | undefined, fitting: Schema | undefined, value: Json, place: Place): Leaf {
  const { root: _, ...shown } = place;
  const quantity = [schema, ...(schema?.anyOf ?? [])].find((one) => one?.kind !== undefined);
  const about = quantity ?? fitting ?? schema;
  const description = schema?.description ?? about?.description;
  const example = quantity?.anyOf?.flatMap((one) => one.examples ?? [])[0];
  const choices = fitting?.enum?.filter((one) => typeof one === 'string');
  return {
    type: 'leaf',
    ...shown,
    ...(description === undefined ? {} : { description }),
    entry: entryOf({ quantity, fitting, value }),
    ...(quantity?.unit ? { unit: quantity.unit } : {}),
    ...(example === undefined ? {} : { example: String(example) }),
    ...(choices && choices.length > 0 ? { choices } : {}),
    value,
  };
}

function entryOf({
  quantity,
  fitting,
  value,
}: {
  readonly quantity: Schema | undefined;
  readonly fitting: Schema | undefined;
  readonly value: Json;
}): Leaf['entry'] {
  if (quantity) return 'quantity';
  if (typeof value === 'boolean') return 'switch';
  if (fitting?.const !== undefined || fitting?.type === 'integer') return 'fixed';
  return fitting?.enum ? 'choice' : 'text';
}

/** The branch of the schema that a value belongs to: by its fixed words, else by its JSON type. */
function optionFor(schema: Schema | undefined, value: Json): Schema | undefined {
  const options = schema?.oneOf ?? schema?.anyOf;
  if (schema === undefined || options === undefined || schema.kind !== undefined) return schema;
  const found = options.map((one) => optionFor(one, value)).find((one) => one && fits(one, value));
  if (found === undefined) return schema;
  const description = found.description ?? schema.description;
  return description === undefined ? found : { ...found, description };
}

function fits(schema: Schema, value: Json): boolean {
  if (schema.const !== undefined) return schema.const === value;
  if (schema.kind !== undefined) return typeof value === 'number' || typeof value === 'string';
  if (Array.isArray(value)) return schema.type === 'array';
  if (!isObject(value)) return schema.type === undefined || schema.type === typeof value;
  if (schema.type !== 'object') return false;
  return Object.entries(schema.properties ?? {}).every(
    ([key, one]) => one.const === undefined || one.const === value[key],
  );
}
