import { describeIssue } from '../../../quantity/index.ts';
import { isWear, type Remedy, type Strength } from '../../../strength/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import type { DrawingContext } from '../context.ts';
import { inLine } from '../context.ts';
import {
  caseText,
  comparedText,
  partText,
  percent,
  percentCell,
  plainText,
  recast,
  sourceText,
  USED_WIDTH,
  valueWidth,
} from './strengthWords.ts';

/** What was checked, the worst ten places, remedies that were tried, what was assumed and what was left out. */
export function holdPages(context: DrawingContext, strength: Strength): readonly DraftSheet[] {
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'How it holds', level: 1 },
    { kind: 'paragraph', text: openingText(strength) },
    {
      kind: 'paragraph',
      text: 'A percentage tells how much of the limit is used. 100 % means that just the margin that was asked for is left, not that it breaks; less than 100 % means that this model under these loads finds that margin, and no more: bad welds, cracks, rust, wear and loads that no one thought of are not in it.',
      size: 2.8,
    },
    ...flawBlocks(context, strength),
    ...worstBlocks(context, strength),
    ...wearBlocks(context, strength),
    ...remedyBlocks(context, strength),
    ...assumptionBlocks(context, strength),
    { kind: 'heading', text: 'Not checked', level: 2 },
    {
      kind: 'list',
      marker: 'bullet',
      items: strength.notChecked.map((one) => recast(context, one)),
      size: 2.8,
    },
  ];
  return flowPages({
    id: 'strength-hold',
    title: 'How it holds',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

function openingText({ rows, cases, settings, results }: Strength): string {
  const over = rows.filter((row) => row.utilization > 1 && !isWear(row)).length;
  const wears = overRating(rows).length;
  const frame = results
    ? 'Tubes, neck, fork and axles as beams, plates and engine as stiff bodies'
    : 'The frame could not be worked out; shafts and drives';
  const asked = `Asked for: yield ${settings.yieldFactor} times the stress of the largest load, endurance of shafts ${settings.fatigueFactor} times theirs.`;
  return `${frame}, under ${cases.length} load cases; then plates in bending, walls of tubes, welds, bolts, shafts, bearings, keys, chains and belts: ${rows.length} comparisons, ${over} over their limit${wears > 0 ? `, and besides ${wears} over a rating of wear` : ''}. ${asked}`;
}

function flawBlocks(context: DrawingContext, { flaws, issues }: Strength): readonly Block[] {
  const said = [
    ...flaws.map(
      ({ part, reason, gap }) =>
        `${partText(part)}: ${reason}${gap === undefined ? '' : `, ${inLine(context, gap)} away`}`,
    ),
    ...issues.map((issue) => describeIssue(issue)),
  ];
  if (said.length === 0) return [];
  return [
    { kind: 'heading', text: 'Could not be taken as drawn', level: 2 },
    { kind: 'list', marker: 'bullet', items: [...new Set(said)], size: 2.8 },
  ];
}

function worstBlocks(context: DrawingContext, { worst, cases }: Strength): readonly Block[] {
  if (worst.length === 0) return [];
  return [
    { kind: 'heading', text: worst.length === 10 ? 'The worst ten places' : 'The worst places', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: '', align: 'right' },
        { title: 'Part' },
        { title: 'Where' },
        { title: 'Load case' },
        { title: 'What' },
        { title: 'Value', align: 'right', width: valueWidth(context) },
        { title: 'Limit', align: 'right', width: valueWidth(context) },
        { title: 'Used', align: 'right', width: USED_WIDTH },
      ],
      rows: worst.map((row, i) => [
        `${i + 1}`,
        { text: partText(row.part), weight: 'bold' as const },
        recast(context, row.where),
        caseText(cases, row.case),
        row.quantity,
        comparedText(context, row.value, row),
        comparedText(context, row.limit, row),
        percentCell(row.utilization),
      ]),
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: 'Of a mirrored pair the worse side is listed. Where the limit is a least, such as a fatigue factor or a life, the percentage is limit over value.',
      size: 2.6,
      tone: 'muted',
    },
  ];
}

const overRating = (rows: Strength['rows']): Strength['rows'] =>
  rows.filter((row) => isWear(row) && row.utilization > 1);

/** What only wears sooner, apart from what breaks. */
function wearBlocks(context: DrawingContext, { rows }: Strength): readonly Block[] {
  const over = overRating(rows);
  if (over.length === 0) return [];
  return [
    { kind: 'heading', text: 'Over a rating of wear', level: 2 },
    {
      kind: 'paragraph',
      text: 'Such a rating is a life, as 15 000 hours at full power for the power of a chain. Over it parts wear out sooner; it does not tell what breaks, so these are not among the places above.',
      size: 2.8,
    },
    {
      kind: 'list',
      marker: 'bullet',
      items: over.map(
        (row) =>
          `${partText(row.part)}, ${recast(context, row.where)}: ${row.quantity} ${comparedText(context, row.value, row)} against ${comparedText(context, row.limit, row)}, ${percent(row.utilization)} of the rating used`,
      ),
      size: 2.8,
    },
  ];
}

function remedyBlocks(context: DrawingContext, { remedies, rows }: Strength): readonly Block[] {
  const heading: Block = { kind: 'heading', text: 'Remedies that were tried', level: 2 };
  if (remedies.length === 0)
    return rows.some((row) => row.utilization > 1 && !isWear(row))
      ? [
          heading,
          {
            kind: 'paragraph',
            text: 'For none of the places over their limit was there a change of size to try that lessens it; the findings say what else there is.',
          },
        ]
      : [];
  return [
    heading,
    {
      kind: 'table',
      columns: [
        { title: 'For' },
        { title: 'Change' },
        { title: 'Used now', align: 'right' },
        { title: 'Used then', align: 'right' },
        { title: '' },
      ],
      rows: remedies.map((remedy) => [
        `${partText(remedy.row.part)}, ${remedy.row.quantity}`,
        recast(context, remedy.what),
        percentCell(remedy.row.utilization),
        percentCell(remedy.utilization),
        verdictOf(remedy),
      ]),
      size: 2.5,
    },
    {
      kind: 'paragraph',
      text: 'Each was tried by running the check again with that one change; an added bearing on its shaft alone.',
      size: 2.6,
      tone: 'muted',
    },
  ];
}

const verdictOf = ({ holds, utilization }: Remedy): string =>
  holds ? `${percent(1 - utilization)} of the limit is left` : 'not enough by itself';

function assumptionBlocks(context: DrawingContext, { settings }: Strength): readonly Block[] {
  const { assumptions } = settings;
  if (assumptions.length === 0)
    return [
      { kind: 'heading', text: 'Assumed', level: 2 },
      { kind: 'paragraph', text: 'Every load and strength was given in the build file.' },
    ];
  return [
    { kind: 'heading', text: 'Assumed, for the build file does not tell', level: 2 },
    {
      kind: 'table',
      columns: [
        { title: 'What' },
        { title: 'Taken', align: 'right' },
        { title: 'From' },
        { title: 'Field that would tell' },
      ],
      rows: assumptions.map(({ name, value, kind, source, path }) => [
        name,
        plainText(context, value, kind),
        sourceText(source),
        path,
      ]),
      size: 2.5,
    },
  ];
}
