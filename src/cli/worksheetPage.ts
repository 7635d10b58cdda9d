import type { SourceRef } from '../core/quantity/index.ts';
import type { WorksheetDescription } from '../core/worksheets/index.ts';
import { toJson } from './issues.ts';

/** A worksheet as a page of text: what it takes and gives with units, its formulas, sources and worked example. */
export function worksheetPage(description: WorksheetDescription): string {
  const { id, title, summary, input, output, formulas, sources, example } = description;
  return [
    `${id}: ${title}\n\n${summary}\n`,
    `Takes\n${fieldLines(input)}`,
    `Gives\n${fieldLines(output)}`,
    `Formulas\n${formulas.map((formula) => `  ${formula}\n`).join('')}`,
    `Sources\n${sources.map((source) => `  ${sourceText(source)}\n`).join('')}`,
    `Example: ${example.title} (${sourceText(example.source)})\n${toJson(example.input)}`,
  ].join('\n');
}

const sourceText = ({ key, where }: SourceRef): string => `${key}, ${where}`;

interface Schema {
  readonly description?: string;
  readonly unit?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly items?: Schema;
  readonly prefixItems?: readonly Schema[];
}

function fieldLines(schema: Schema, indent = '  '): string {
  const forms = schema.anyOf ?? schema.oneOf;
  if (forms && !schema.properties) return forms.map((form) => fieldLines(form, indent)).join(`${indent}or\n`);
  const names = Object.keys(schema.properties ?? {});
  const width = Math.max(0, ...names.map((name) => name.length));
  return names
    .map((name) => {
      const field = schema.properties?.[name] ?? {};
      const line = `${indent}${name.padEnd(width)}  ${fieldText(field, schema.required?.includes(name) ?? false)}`;
      const inner = field.properties ? field : (field.items ?? {});
      return `${line.trimEnd()}\n${fieldLines(inner, `${indent}    `)}`;
    })
    .join('');
}

function fieldText(field: Schema, isRequired: boolean): string {
  const { description, enum: choices } = field;
  const unit = unitText(field);
  return [
    ...(unit === '' ? [] : [`[${unit}]`]),
    ...(description ? [description] : []),
    ...(choices ? [`One of ${choices.join(', ')}.`] : []),
    ...(isRequired ? [] : ['(may be left out)']),
  ].join(' ');
}

/** The unit of a field, or of each item of a list. */
function unitText({ unit, items, prefixItems }: Schema): string {
  if (unit !== undefined) return unit;
  if (prefixItems) {
    const units = prefixItems.map(unitText);
    return units.every((one) => one === '') ? '' : units.map((one) => one || '-').join(', ');
  }
  return items ? unitText(items) : '';
}
