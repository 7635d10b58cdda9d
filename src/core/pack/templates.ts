import {
  type Block,
  checkBar,
  correctionOf,
  finishBook,
  flowPages,
  groupTemplates,
  judgePrinter,
  type PaperName,
  type PrinterReading,
  type PrinterVerdict,
  paper,
  plateTemplateJobs,
  type Sheet,
  templateSheets,
  tubeWrapJobs,
} from '../drawings/index.ts';
import { describeIssue } from '../quantity/index.ts';
import type { PackInput } from './packInput.ts';

/** A bar that the printer was judged by, drawn 100 mm long. */
const MILLIMETER = 1e-3;

/** What the shop measured on its printer, and what follows from it. */
export function printerVerdict(input: Pick<PackInput, 'build'>): PrinterVerdict | undefined {
  const reading = readingOf(input);
  const verdict = reading ? judgePrinter(reading) : undefined;
  return verdict?.ok ? verdict.value : undefined;
}

/**
 * Full-size templates of every plate and every coped tube end, one paper. A printer that was measured a little off is
 * compensated; one whose page was fitted is refused on the first sheet, and nothing is compensated.
 */
export function templateBook(input: PackInput, name: PaperName): readonly Sheet[] {
  const sheet = paper(name, 'portrait');
  const verdict = printerVerdict(input);
  const reading = verdict?.verdict === 'compensate' ? readingOf(input) : undefined;
  const jobs = [...plateTemplateJobs(input.patterns), ...tubeWrapJobs(input.bike.tubes)];
  const options = {
    paper: sheet,
    bike: input.build.about.name,
    date: input.date,
    ...(reading ? { printer: reading } : {}),
  };
  const made = groupTemplates(jobs, sheet).map((job) => ({ job, sheets: templateSheets(job, options) }));
  const failed = made.flatMap(({ job, sheets }) =>
    sheets.ok ? [] : [`${job.title}: ${sheets.issues.map(describeIssue).join('; ')}`],
  );
  return [
    ...coverSheets(input, name, verdict, failed),
    ...made.flatMap(({ sheets }) => (sheets.ok ? sheets.value : [])),
  ];
}

function readingOf({ build }: Pick<PackInput, 'build'>): PrinterReading | undefined {
  const printer = build.shop?.printer;
  return printer ? { across: printer.across / MILLIMETER, down: printer.down / MILLIMETER } : undefined;
}

function coverSheets(
  input: PackInput,
  name: PaperName,
  verdict: PrinterVerdict | undefined,
  failed: readonly string[],
): readonly Sheet[] {
  const blocks: Block[] = [
    { kind: 'heading', text: 'Full-size templates', level: 1 },
    ...verdictBlocks(verdict),
    { kind: 'heading', text: 'Before you cut', level: 2 },
    {
      kind: 'list',
      marker: 'box',
      size: 3.2,
      items: [
        `Print at actual size (100 %), never "fit to page". Paper: ${name.toUpperCase()}.`,
        'Measure the 100 mm and the 4 in bar on every page, both across and down. Off by more than 0.25 mm: do not cut.',
        'Enter what a 100 mm bar measures under shop.printer, and the next print is corrected in both axes.',
        'Join tiles on the register crosses; then measure the check lengths, the diagonal and the one across a seam.',
        'Mind the hand: a sheet marked MIRROR is glued on once as it is and once turned over.',
        'Punch through the paper at every center mark, then drill by the drilling schedule.',
        'Tube wraps: printed side out, the line marked START or END at the joint, the mark on the reference line of the tube.',
      ],
    },
    { kind: 'heading', text: 'Measure the printer here', level: 2 },
    barsBlock(verdict),
    ...(failed.length > 0
      ? [
          { kind: 'heading' as const, text: 'Not drawn', level: 2 as const },
          { kind: 'list' as const, marker: 'bullet' as const, items: failed },
        ]
      : []),
  ];
  const drafts = flowPages({
    id: 'template-cover',
    title: 'Templates',
    paper: paper(name, 'portrait'),
    blocks,
  });
  return finishBook(drafts, { bike: input.build.about.name, date: input.date, units: 'mm over in' });
}

/** The bars of every sheet, once more on the first: what they measure is what the shop enters. */
function barsBlock(verdict: PrinterVerdict | undefined): Block {
  const factor = verdict?.verdict === 'compensate' ? correctionOf(verdict) : { across: 1, down: 1 };
  return {
    kind: 'drawing',
    height: 112,
    draw: ({ left, bottom }) =>
      (['100 mm', '4 in'] as const).flatMap((kind, i) => [
        ...checkBar({
          at: { x: left + 40, y: bottom + 4 + 9 * i },
          axis: 'across',
          kind,
          factor: factor.across,
        }),
        ...checkBar({
          at: { x: left + 10 + 12 * i, y: bottom + 4 },
          axis: 'down',
          kind,
          factor: factor.down,
        }),
      ]),
  };
}

function verdictBlocks(verdict: PrinterVerdict | undefined): Block[] {
  if (!verdict) {
    return [
      {
        kind: 'paragraph',
        text: 'The printer was not measured yet: trust no sheet before its bars are measured.',
        weight: 'bold',
      },
    ];
  }
  const said = {
    pass: 'Printer measured: true to scale.',
    compensate: 'Printer measured: these sheets are corrected for it.',
    reject: 'DO NOT USE THESE SHEETS.',
  }[verdict.verdict];
  return [
    {
      kind: 'paragraph',
      text: said,
      weight: 'bold',
      size: 5,
      tone: verdict.verdict === 'reject' ? 'accent' : 'ink',
    },
    { kind: 'paragraph', text: verdict.text, size: 3.4 },
    { kind: 'space', height: 3 },
  ];
}
