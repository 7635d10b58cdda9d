import { type Block, type DraftSheet, flowPages, type Paper } from '../drawings/index.ts';
import type { Change } from '../fit/index.ts';
import type { PackInput } from './packInput.ts';
import { printer } from './textPages.ts';

/** Figures shown in the book; the others are in the report of `check`. */
const MOST_SHOWN = 60;

/** What real readings moved against what was typed, and which parts are already cut to something else. */
export function movedPages(input: PackInput, paper: Paper): readonly DraftSheet[] {
  const moved = input.moved ?? [];
  if (moved.length === 0) return [];
  const cut = moved.filter((change) => change.alreadyCut !== undefined);
  const rest = moved.filter(
    (change) =>
      change.alreadyCut === undefined &&
      value(input, change, change.before) !== value(input, change, change.after),
  );
  const blocks: Block[] = [
    { kind: 'heading', text: 'What moved', level: 1 },
    { kind: 'paragraph', text: readingsText(input) },
    ...(cut.length > 0
      ? [
          { kind: 'heading' as const, text: 'Already cut, and no longer right', level: 2 as const },
          {
            kind: 'table' as const,
            columns: titles('Part', 'State', 'Figure', 'Made to', 'Now wanted'),
            rows: cut.map((one) => cutRow(input, one)),
            size: 2.7,
          },
          { kind: 'space' as const, height: 3 },
        ]
      : []),
    {
      kind: 'table',
      columns: titles('Figure', 'As typed', 'As measured'),
      rows: rest
        .slice(0, MOST_SHOWN)
        .map((one) => [one.name, value(input, one, one.before), value(input, one, one.after)]),
    },
    ...(rest.length > MOST_SHOWN
      ? [{ kind: 'paragraph' as const, text: `And ${rest.length - MOST_SHOWN} more figures.` }]
      : []),
  ];
  return flowPages({ id: 'book-moved', title: 'What moved', paper, blocks });
}

const titles = (...names: readonly string[]) => names.map((title) => ({ title }));

function readingsText(input: PackInput): string {
  const print = printer(input.units);
  const readings = (input.readings ?? []).map(
    (one) =>
      `${one.path} is ${print(one.measured, one.kind, 0.01)}${one.typed === undefined ? '' : `, typed ${print(one.typed, one.kind, 0.01)}`} (${one.with})`,
  );
  return readings.length > 0 ? `Measured: ${readings.join('; ')}.` : 'Against the file as it was before.';
}

const value = (input: PackInput, change: Change, one: number | undefined): string =>
  one === undefined ? 'none' : printer(input.units)(one, change.kind, 0.01);

function cutRow(input: PackInput, change: Change): readonly string[] {
  return [
    change.part,
    change.state ?? 'made',
    change.name,
    value(input, change, change.alreadyCut?.was),
    value(input, change, change.after),
  ];
}
