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
  readonly type?: string;
  readonly description?: string;
  readonly unit?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
}

function fieldLines(schema: Schema): string {
  const forms = schema.anyOf ?? schema.oneOf;
  if (forms && !schema.properties) return forms.map(fieldLines).join('  or\n');
  const names = Object.keys(schema.properties ?? {});
  const width = Math.max(0, ...names.map((name) => name.length));
  return names.map((name) => fieldLine(name.padEnd(width), name, schema)).join('');
}

function fieldLine(shown: string, name: string, { properties, required }: Schema): string {
  const { description, unit, enum: choices } = properties?.[name] ?? {};
  const parts = [
    ...(unit ? [`[${unit}]`] : []),
    ...(description ? [description] : []),
    ...(choices ? [`one of ${choices.join(', ')}`] : []),
    ...(required?.includes(name) ? [] : ['(may be left out)']),
  ];
  return `  ${shown}  ${parts.join(' ')}\n`;
}
