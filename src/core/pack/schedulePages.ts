import { type Block, type DraftSheet, flowPages, type Paper } from '../drawings/index.ts';
import type { HoleStep } from '../plates/index.ts';
import type { CutEnd, DrillRow, PartRow } from '../shop/index.ts';
import type { PackInput } from './packInput.ts';
import { printer } from './textPages.ts';

const columns = (...titles: readonly string[]) => titles.map((title) => ({ title }));

/** Cut list with its bars, and the bend schedule. */
export function cutPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const print = printer(input.units);
  const { cuts, bends } = input.work;
  const end = (one: CutEnd): string =>
    one.joint === 'cope'
      ? `cope ${one.onto ?? ''} ${one.angle === undefined ? '' : print(one.angle, 'angle')}, deep ${print(one.depth, 'length')}`
      : one.joint;
  const blocks: Block[] = [
    { kind: 'heading', text: 'Cut list', level: 1 },
    {
      kind: 'paragraph',
      text: 'Lengths are from longest point to longest point, along the bent tube. Saw to "saw"; trim to "finished" at fit-up.',
    },
    {
      kind: 'table',
      columns: columns('Tube', 'Count', 'Size', 'Finished', 'Saw', 'START end', 'Other end', 'Bends'),
      rows: cuts.rows.map((row) => [
        { text: row.tube, weight: 'bold' },
        row.pair ? '2 (left, right)' : `${row.count}`,
        `${print(row.outside, 'length')} × ${print(row.wall, 'length', 0.01)} ${row.material}`,
        print(row.length, 'length'),
        { text: print(row.sawn, 'length'), weight: 'bold' },
        end(row.ends[0]),
        end(row.ends[1]),
        `${row.bends}`,
      ]),
      size: 2.7,
    },
    { kind: 'space', height: 4 },
    { kind: 'heading', text: 'From which bar', level: 2 },
    ...cuts.plans.flatMap((plan): Block[] => [
      {
        kind: 'paragraph',
        text: `${plan.tubing}: ${print(plan.total, 'length', 1)} in all${plan.noStock ? '; nothing is said to be on hand, shown in bars of the usual length' : ''}.${plan.missing.length > 0 ? ` No bar gives: ${plan.missing.map((piece) => piece.id).join(', ')}.` : ''}`,
      },
      {
        kind: 'list',
        marker: 'number',
        items: plan.bars.map(
          (bar) =>
            `${print(bar.bar, 'length', 1)}: ${bar.pieces.map((piece) => `${piece.id} ${print(piece.length, 'length')}`).join(', ')}; left ${print(bar.left, 'length', 1)}`,
        ),
      },
    ]),
    ...(bends.length > 0 ? bendBlocks(input) : []),
  ];
  return flowPages({ id: 'book-cut-list', title: 'Cut list and bends', paper, blocks });
}

function bendBlocks(input: PackInput): Block[] {
  const print = printer(input.units);
  const known = input.work.bends.every((schedule) => schedule.springbackKnown);
  return [
    { kind: 'pageBreak' },
    { kind: 'heading', text: 'Bend schedule', level: 1 },
    {
      kind: 'paragraph',
      text: `Measured from the sawn START end. Rotation: turn the tube clockwise, seen along it from START, after the bend before. ${known ? '"Pull to" has the springback of your sample in it.' : 'No springback was given: bend a sample of 90 degrees, measure, enter it.'} Of a pair the right one turns the other way.`,
    },
    {
      kind: 'table',
      columns: columns('Tube', 'Bend', 'Starts at', 'Ends at', 'Rotation', 'Angle', 'Pull to', 'Die radius'),
      rows: input.work.bends.flatMap((schedule) =>
        schedule.rows.map((row, i) => [
          { text: i === 0 ? schedule.tube : '', weight: 'bold' as const },
          `${i + 1}`,
          { text: print(row.start, 'length'), weight: 'bold' as const },
          print(row.end, 'length'),
          print(row.rotation, 'angle', 0.1),
          print(row.angle, 'angle', 0.1),
          { text: print(row.pull, 'angle', 0.1), weight: 'bold' as const },
          print(row.radius, 'length'),
        ]),
      ),
    },
  ];
}

export function drillPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  if (input.work.drilling.length === 0) return [];
  const blocks: Block[] = [
    { kind: 'heading', text: 'Drilling schedule', level: 1 },
    {
      kind: 'paragraph',
      text: 'In this order for each hole. Eye protection; clamp the plate; a step at a time. A bore that is opened by hand is done when the bearing just seats.',
    },
    {
      kind: 'table',
      columns: columns('Plate', 'For', 'How many', 'Finished', 'On the template', 'Steps'),
      rows: input.work.drilling.map((row, i, all) => [
        { text: all[i - 1]?.plate === row.plate ? '' : row.plate, weight: 'bold' },
        row.for,
        `${row.count}`,
        finished(input, row),
        template(input, row),
        row.steps.map((step) => stepText(input, step)).join(' → '),
      ]),
      size: 2.7,
    },
  ];
  return flowPages({ id: 'book-drilling', title: 'Drilling schedule', paper, blocks });
}

function finished(input: PackInput, row: DrillRow): string {
  const print = printer(input.units);
  const size = row.thread ?? print(row.diameter, 'length', 0.05);
  const slot = row.travel === undefined ? '' : ` slot, ${print(row.travel, 'length')} between ends`;
  return `${size}${slot}${row.fit ? ` ${row.fit}` : ''}`;
}

function template(input: PackInput, row: DrillRow): string {
  switch (row.cutAs.as) {
    case 'full':
      return 'full size';
    case 'punch':
      return 'punch mark only';
    case 'undersize':
      return `cut at ${printer(input.units)(row.cutAs.diameter, 'length', 0.05)}`;
  }
}

function stepText(input: PackInput, step: HoleStep): string {
  const print = printer(input.units);
  switch (step.do) {
    case 'punch':
      return 'punch';
    case 'tap':
      return `tap ${step.thread}`;
    case 'saw-and-file':
      return 'saw and file between';
    case 'cut-undersize':
      return `cut ${print(step.diameter, 'length', 0.05)}`;
    case 'open-by-hand':
      return `open by hand to ${print(step.diameter, 'length', 0.01)}`;
    default:
      return `${step.do} ${print(step.diameter, 'length', 0.05)}`;
  }
}

export function partPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const half = (source: PartRow['source'], title: string, last: string): Block[] => [
    { kind: 'heading', text: title, level: 1 },
    {
      kind: 'table',
      columns: columns('No.', 'Part', 'What', 'Count', 'What matters', last, 'State'),
      rows: input.work.parts
        .filter((part) => part.source === source)
        .map((part) => [
          `${part.item}`,
          { text: part.part, weight: 'bold' },
          part.what,
          `${part.count}`,
          part.matters,
          part.instead,
          part.state,
        ]),
      size: 2.6,
    },
  ];
  const blocks: Block[] = [
    ...half('buy', 'Parts to buy', 'Or look for'),
    { kind: 'pageBreak' },
    ...half('make', 'Parts to make', 'From'),
  ];
  return flowPages({ id: 'book-parts', title: 'Parts', paper, blocks });
}

/** Order of work and what to inspect, as lists to tick with a dirty thumb. */
export function workPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const print = printer(input.units);
  const steps = input.work.order.flatMap((step): Block[] => [
    { kind: 'heading', text: `${step.number}. ${step.title}`, level: 3 },
    { kind: 'list', marker: 'box', items: step.details, size: 2.9 },
    ...(step.hold
      ? [{ kind: 'paragraph' as const, text: `HOLD: ${step.hold}`, weight: 'bold' as const, size: 2.9 }]
      : []),
    { kind: 'space', height: 2 },
  ]);
  const order = flowPages({
    id: 'book-order',
    title: 'Order of work',
    paper,
    blocks: [{ kind: 'heading', text: 'Order of work', level: 1 }, ...steps],
  });
  const inspection = flowPages({
    id: 'book-inspection',
    title: 'Inspection',
    paper,
    blocks: [
      { kind: 'heading', text: 'Inspection list', level: 1 },
      {
        kind: 'table',
        columns: [
          ...columns('What', 'Wanted', 'Plus or minus', 'With'),
          { title: 'Measured', width: 26 },
          { title: 'Date', width: 18 },
        ],
        rows: input.work.inspection.map((row) => [
          row.what,
          print(row.wanted, row.kind),
          print(row.tolerance, row.kind, row.kind === 'length' ? 0.1 : 0.1),
          row.with,
          '',
          '',
        ]),
      },
      { kind: 'space', height: 4 },
      {
        kind: 'list',
        marker: 'box',
        items: [
          '10 minutes: everything looked over and retightened',
          '1 hour: the same',
          '5 hours: the same, and chain and belt set again',
        ],
      },
    ],
  });
  return [...order, ...inspection];
}
