/** One field of a worksheet's input or result, as a page lists it. */
export interface FieldRow {
  readonly name: string;
  /** Unit of a plain number, or of each number of a list; empty where there is none. */
  readonly unit: string;
  readonly description: string;
  /** Words that it takes, where it takes only these. */
  readonly choices: readonly string[];
  /** Least and most of a plain number, as text; empty where there is no limit. */
  readonly limits: string;
  readonly isRequired: boolean;
  /** Fields inside it, or inside each of its items; more than one list where it has more than one form. */
  readonly forms: FieldForms;
}

/** Lists of fields of which one applies. */
export type FieldForms = readonly (readonly FieldRow[])[];

/** What is read of a JSON Schema. */
interface Schema {
  readonly description?: string;
  readonly unit?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly items?: boolean | Schema;
  readonly prefixItems?: readonly Schema[];
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
}

/** The fields of a worksheet's JSON Schema, as `describeWorksheet` gives it, down to the innermost. */
export function fieldForms(schema: Schema): FieldForms {
  const { properties, required = [] } = schema;
  if (!properties) return innerSchemas(schema).flatMap(fieldForms);
  return [Object.entries(properties).map(([name, field]) => rowOf(name, field, required.includes(name)))];
}

function rowOf(name: string, field: Schema, isRequired: boolean): FieldRow {
  return {
    name,
    unit: unitOf(field),
    description: field.description ?? '',
    choices: choicesOf(field),
    limits: limitsOf(field),
    isRequired,
    forms: fieldForms(field),
  };
}

/** Forms of a schema, or what its items are; `items: false` closes a list of fixed length. */
function innerSchemas({ anyOf, oneOf, items, additionalProperties }: Schema): readonly Schema[] {
  const rest = [items, additionalProperties].filter((one) => typeof one === 'object');
  return [...(anyOf ?? oneOf ?? []), ...rest];
}

function choicesOf(field: Schema): readonly string[] {
  if (field.const !== undefined) return [String(field.const)];
  if (field.enum) return field.enum.map(String);
  return (field.anyOf ?? field.oneOf ?? []).flatMap(choicesOf);
}

function unitOf(schema: Schema): string {
  if (schema.unit !== undefined) return schema.unit;
  if (schema.properties) return '';
  if (schema.prefixItems) {
    const units = schema.prefixItems.map(unitOf);
    return units.every((one) => one === '') ? '' : units.map((one) => one || '-').join(', ');
  }
  return (
    innerSchemas(schema)
      .map(unitOf)
      .find((unit) => unit !== '') ?? ''
  );
}

/** Limits of the form that takes a plain number; a text with a unit has the same ones. */
function limitsOf(schema: Schema): string {
  const { minimum, exclusiveMinimum, maximum } = schema;
  const texts = [
    ...(exclusiveMinimum === undefined ? [] : [`> ${exclusiveMinimum}`]),
    ...(minimum === undefined ? [] : [`≥ ${minimum}`]),
    ...(maximum === undefined || maximum === Number.MAX_SAFE_INTEGER ? [] : [`≤ ${maximum}`]),
  ];
  if (texts.length > 0) return texts.join(', ');
  return (schema.anyOf ?? schema.oneOf ?? []).map(limitsOf).find((text) => text !== '') ?? '';
}
