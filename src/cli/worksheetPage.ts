import type { SourceRef } from '../core/quantity/index.ts';
import {
  type FieldForms,
  type FieldRow,
  fieldForms,
  type WorksheetDescription,
} from '../core/worksheets/index.ts';
import { toJson } from './issues.ts';

/** A worksheet as a page of text: what it takes and gives with units, its formulas, sources and worked example. */
export function worksheetPage(description: WorksheetDescription): string {
  const { id, title, summary, input, output, formulas, sources, example } = description;
  return [
    `${id}: ${title}\n\n${summary}\n`,
    `Takes\n${fieldLines(fieldForms(input))}`,
    `Gives\n${fieldLines(fieldForms(output))}`,
    `Formulas\n${formulas.map((formula) => `  ${formula}\n`).join('')}`,
    `Sources\n${sources.map((source) => `  ${sourceText(source)}\n`).join('')}`,
    `Example: ${example.title} (${sourceText(example.source)})\n${toJson(example.input)}`,
  ].join('\n');
}

const sourceText = ({ key, where }: SourceRef): string => `${key}, ${where}`;

const fieldLines = (forms: FieldForms, indent = '  '): string =>
  forms.map((rows) => formLines(rows, indent)).join(`${indent}or\n`);

function formLines(rows: readonly FieldRow[], indent: string): string {
  const width = Math.max(0, ...rows.map(({ name }) => name.length));
  return rows
    .map((row) => {
      const line = `${indent}${row.name.padEnd(width)}  ${fieldText(row)}`;
      return `${line.trimEnd()}\n${fieldLines(row.forms, `${indent}    `)}`;
    })
    .join('');
}

function fieldText({ unit, description, choices, isRequired }: FieldRow): string {
  return [
    ...(unit === '' ? [] : [`[${unit}]`]),
    ...(description === '' ? [] : [description]),
    ...(choices.length === 0 ? [] : [choicesText(choices, unit !== '')]),
    ...(isRequired ? [] : ['(may be left out)']),
  ].join(' ');
}

function choicesText(choices: readonly string[], isAlsoNumber: boolean): string {
  if (isAlsoNumber) return `(or ${choices.map((choice) => `"${choice}"`).join(', ')})`;
  return choices.length === 1 ? `("${choices[0]}")` : `(one of ${choices.join(', ')})`;
}
