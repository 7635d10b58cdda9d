/**
 * Prints docs/worksheets.md: every worksheet with its fields, formulas, sources and worked example, all from the
 * registry. Written with `npm run docs`; `npm test` compares.
 */
import sources from '../data/sources.json' with { type: 'json' };
import {
  describeWorksheet,
  type FieldForms,
  type FieldRow,
  fieldForms,
  type Worksheet,
  worksheets,
} from '../src/core/worksheets/index.ts';

interface SourceEntry {
  readonly title: string;
  readonly edition?: string;
  readonly note?: string;
}

const byKey: Readonly<Record<string, SourceEntry>> = sources;

process.stdout.write(`${[head(), ...worksheets.map(section)].join('\n')}\n`);

function head(): string {
  const list = worksheets.map(({ id, title }) => `- [\`${id}\`](#${id}): ${title}`);
  return [
    '# Worksheets',
    '',
    'Each calculation by itself, on JSON. This page is printed from the registry in `src/core/worksheets/`; change it',
    'there and run `npm run docs`.',
    '',
    'A plain number is in the unit that its field names; a text with any unit of the kind is taken too (`"8 3/16 in"`).',
    'Limits are those of the plain number. Results are in the units shown. On the command line:',
    '',
    '```sh',
    'npm run -s jigwright -- worksheet run ID FILE --json      # FILE may hold a list of inputs',
    'npm run -s jigwright -- worksheet run ID FILE --working   # every figure with formula, inputs and source',
    '```',
    '',
    ...list,
    '',
  ].join('\n');
}

function section(worksheet: Worksheet): string {
  const { id, title, summary, input, output, formulas, sources: named } = describeWorksheet(worksheet);
  return [
    `## ${id}`,
    '',
    `**${title}.** ${plain(summary)}`,
    '',
    '### Takes',
    '',
    ...tables(fieldForms(input), true),
    '### Gives',
    '',
    ...tables(fieldForms(output), false),
    '### Formulas',
    '',
    ...formulas.map((formula) => `- ${plain(formula)}`),
    '',
    '### Sources',
    '',
    ...named.map((source) => `- ${sourceText(source)}`),
    '',
    ...example(worksheet),
  ].join('\n');
}

function example({ example: { title, input, expected, source } }: Worksheet): readonly string[] {
  return [
    '### Worked example',
    '',
    `${plain(title)}`,
    '',
    '```json',
    JSON.stringify(input, undefined, 2),
    '```',
    '',
    '| result | value | within |',
    '| --- | ---: | ---: |',
    ...expected.map(({ path, value, tolerance }) => `| \`${path}\` | ${value} | ${tolerance} |`),
    '',
    `From: ${sourceText(source)}`,
    '',
  ];
}

function tables(forms: FieldForms, hasLimits: boolean): readonly string[] {
  const header = hasLimits ? ['field', 'unit', 'limits', 'what'] : ['field', 'unit', 'what'];
  return forms.flatMap((rows, i) => [
    ...(i > 0 ? ['or', ''] : []),
    line(header),
    line(header.map(() => '---')),
    ...rows.flatMap((row) => fieldLines(row, '', hasLimits)),
    '',
  ]);
}

/** A field and those inside it, by their path; more than one form of the inside are told apart by an `or`. */
function fieldLines(row: FieldRow, parent: string, hasLimits: boolean): readonly string[] {
  const path = `${parent}${row.name}`;
  const cells = [`\`${path}\``, row.unit, ...(hasLimits ? [row.limits] : []), whatOf(row)];
  const or = line(cells.map((_, i) => (i === 0 ? 'or' : '')));
  return [
    line(cells),
    ...row.forms.flatMap((form, i) => [
      ...(i > 0 ? [or] : []),
      ...form.flatMap((inner) => fieldLines(inner, `${path}.`, hasLimits)),
    ]),
  ];
}

function whatOf({ description, choices, unit, isRequired }: FieldRow): string {
  const words = choices.map((choice) => `\`${choice}\``).join(', ');
  return [
    plain(description),
    ...(choices.length === 0 ? [] : [unit === '' ? `(${words})` : `(or ${words})`]),
    ...(isRequired ? [] : ['(may be left out)']),
  ]
    .join(' ')
    .trim();
}

function sourceText({ key, where }: { readonly key: string; readonly where: string }): string {
  const entry = byKey[key];
  if (!entry) throw new Error(`no source "${key}" in data/sources.json`);
  const note = entry.note === undefined ? '' : `; ${entry.note}`;
  const edition = entry.edition === undefined ? '' : `, ${entry.edition}`;
  return plain(`${entry.title}${edition}: ${where} (\`${key}\`${note})`);
}

function line(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

/** Characters that Markdown would take for its own. */
function plain(text: string): string {
  return text.replace(/[|*_<>]/g, (mark) => `\\${mark}`);
}
