import { type Block, type DraftSheet, flowPages, type Paper } from '../drawings/index.ts';
import type { Finding } from '../findings/index.ts';
import { type Figure, printApart } from '../quantity/index.ts';
import { notChecked } from './cautions.ts';
import type { PackInput } from './packInput.ts';
import { printer } from './textPages.ts';

const SEVERITY: Readonly<Record<Finding['severity'], string>> = {
  stop: 'Stops the work',
  caution: 'Caution',
  note: 'Note',
};

/** What was found, against which limit, and what was not looked at; then the working of every figure. */
export function findingPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const findings = flowPages({
    id: 'book-findings',
    title: 'Findings',
    paper,
    blocks: [
      { kind: 'heading', text: 'Findings', level: 1 },
      {
        kind: 'paragraph',
        text: 'Each says what was checked and against which limit. No finding is not a promise: what is not checked is listed at the end.',
      },
      ...input.findings.flatMap((finding) => findingBlocks(input, finding)),
      { kind: 'heading', text: 'Not checked', level: 2 },
      { kind: 'list', marker: 'bullet', items: notChecked(input) },
    ],
  });
  return [...findings, ...workingPages(input, paper)];
}

function findingBlocks(input: PackInput, finding: Finding): Block[] {
  const { value, limit, kind } = finding;
  const shown =
    value !== undefined && limit !== undefined && kind !== undefined
      ? printApart(value, limit, kind, input.units)
      : undefined;
  const numbers = shown ? ` Found ${shown[0]}, limit ${shown[1]}.` : '';
  return [
    {
      kind: 'paragraph',
      text: `${SEVERITY[finding.severity]}: ${finding.what}`,
      weight: 'bold',
      tone: finding.severity === 'stop' ? 'accent' : 'ink',
      size: 3,
    },
    {
      kind: 'paragraph',
      text: `${finding.why}${numbers}${finding.remedy ? ` Remedy: ${finding.remedy}` : ''} (${finding.source.key}, ${finding.source.where})`,
      size: 2.7,
    },
    { kind: 'space', height: 1.5 },
  ];
}

function workingPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  return flowPages({
    id: 'book-working',
    title: 'Working',
    paper,
    blocks: [
      { kind: 'heading', text: 'Working', level: 1 },
      {
        kind: 'paragraph',
        text: 'Places of holes stand on their templates; of comparisons of strength the most used of each kind is worked here. Every figure with its formula, inputs and source is in report.json.',
      },
      {
        kind: 'table',
        columns: ['Figure', 'Value', 'Formula', 'With', 'Source'].map((title) => ({ title })),
        rows: worked(input.figures).map((figure) => workingRow(input, figure)),
        size: 2.3,
      },
    ],
  });
}

/** What has a working to show, and of the comparisons of strength, which come by falling use, the first of each formula. */
function worked(figures: readonly Figure[]): readonly Figure[] {
  const seen = new Set<string>();
  return figures.filter(({ id, formula, inputs }) => {
    if (inputs.length === 0 || (id.startsWith('strength.') && seen.has(formula))) return false;
    if (id.startsWith('strength.')) seen.add(formula);
    return true;
  });
}

function workingRow(input: PackInput, figure: Figure): readonly string[] {
  const print = printer(input.units);
  return [
    figure.name,
    `${figure.symbol} = ${print(figure.value, figure.kind)}`,
    figure.formula,
    workingInputs(input, figure),
    `${figure.source.key}, ${figure.source.where}`,
  ];
}

/** A sum over every part of the bike would fill pages; the report has them all. */
const INPUTS_SHOWN = 10;

function workingInputs(input: PackInput, figure: Figure): string {
  const print = printer(input.units);
  const shown = figure.inputs
    .slice(0, INPUTS_SHOWN)
    .map((one) => `${one.name} = ${print(one.value, one.kind)}`);
  const left = figure.inputs.length - shown.length;
  return [...shown, ...(left > 0 ? [`and ${left} more, all in report.json`] : [])].join('; ');
}
