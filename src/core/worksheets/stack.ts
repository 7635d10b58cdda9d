import { z } from 'zod';
import {
  AGREES_WITHIN,
  type Feature,
  featureY,
  type Row,
  type RowPin,
  rimOffset,
  type SolvedRows,
  solveRows,
} from '../bike/index.ts';
import {
  bad,
  derived,
  type Figure,
  good,
  type Issue,
  lengthField,
  nearestName,
  type Outcome,
  practice,
  resultField,
} from '../quantity/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const place = { min: -2000, max: 2000 };

const itemSchema = z.strictObject({
  id: z.string().min(1).max(48).meta({ description: 'Name, unique in the stack.' }),
  length: z
    .union([z.literal('solve'), lengthField('Along the shaft.', { min: 0, max: 2000 })])
    .meta({ description: 'Length along the shaft, or "solve" for a spacer to be made.' }),
  plane: lengthField(
    "From the item's left face to the plane that matters in it: rim, teeth or disc.",
    place,
  ).optional(),
  pin: z
    .strictObject({
      at: z.enum(['left-face', 'right-face', 'middle', 'plane']).meta({ description: 'What is held.' }),
      y: lengthField('Where it is held, left (+) of the center plane.', place),
    })
    .optional(),
});

const input = z.strictObject({
  faces: z
    .tuple([
      lengthField('Inner face on the left, left (+) of the center plane.', place),
      lengthField('Inner face on the right, left (+) of the center plane.', place),
    ])
    .meta({ description: 'Faces that the stack fills, left one first.' })
    .optional(),
  frameWidth: lengthField('Between two faces that lie alike on both sides; instead of faces.', {
    above: 0,
    max: 2000,
  }).optional(),
  items: z
    .array(itemSchema)
    .min(1)
    .max(60)
    .meta({ description: "From the rider's left to right." })
    .optional(),
  hubWidth: lengthField(
    'A hub between two spacers to be made, its rim in the center plane; instead of items.',
    { above: 0, max: 2000 },
  ).optional(),
  rim: z
    .strictObject({
      item: z
        .string()
        .max(48)
        .meta({ description: 'The hub that carries the rim; left out: hub.' })
        .optional(),
      left: lengthField('Left face (fork leg, frame or hub face) in to the left rim edge.', {
        min: -500,
        max: 1000,
      }),
      right: lengthField('Right face in to the right rim edge.', { min: -500, max: 1000 }),
      leftSpacer: lengthField(
        'Spacer between left face and hub while reading; left out: read from the hub.',
        { min: 0, max: 500 },
      ).optional(),
      rightSpacer: lengthField('The same on the right.', { min: 0, max: 500 }).optional(),
    })
    .meta({ description: 'Two rim-edge readings; the rim is then put in the center plane.' })
    .optional(),
});

const output = z.object({
  spacers: z
    .record(z.string(), resultField('length', 'Length of the spacer.'))
    .meta({ description: 'Spacers to make, by name; negative where there is no room.' }),
  overall: resultField('length', 'All items together.'),
  items: z.array(
    z.object({
      id: z.string(),
      left: resultField('length', 'Left face, left (+) of the center plane.'),
      right: resultField('length', 'Right face.'),
      length: resultField('length', 'Length along the shaft.'),
      plane: resultField('length', 'Plane of rim, teeth or disc, left (+) of the center plane.').optional(),
    }),
  ),
  rimOffset: resultField('length', 'Rim center left (+) of the middle of the hub.').optional(),
  misfits: z.array(
    z.object({
      between: z.array(z.string()),
      excess: resultField('length', 'Too long (+) or loose (−).'),
    }),
  ),
  open: z.array(z.object({ reason: z.string(), items: z.array(z.string()) })).meta({
    description: 'What the pins leave open; placed all the same, by equal split or with no length.',
  }),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;
type Item = z.output<typeof itemSchema>;

export const stackWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'stack',
  title: 'Stack on an axle',
  summary:
    'Spacers left and right of a wheel from frame width, hub width and two rim-edge readings, or any stack with lengths to be solved between held faces and planes.',
  input,
  output,
  run,
  formulas: [
    'y_right = y_left − L',
    'o = (r − l)/2 − (s_r − s_l)/2, rim center left of the hub middle',
    's_left = W/2 − H/2 + o,  s_right = W/2 − H/2 − o',
  ],
  sources: [
    derived('sums of lengths along the shaft'),
    practice('two rim-edge readings, fork leg to rim edge each side'),
  ],
  example: {
    title: 'Fork 110 wide, hub 80, tried with 15 mm spacers: rim edges 21 and 29 from the legs',
    input: { frameWidth: 110, hubWidth: 80, rim: { left: 21, right: 29, leftSpacer: 15, rightSpacer: 15 } },
    expected: [
      { path: 'rimOffset', value: 4, tolerance: 1e-9 },
      { path: 'spacers.left-spacer', value: 19, tolerance: 1e-9 },
      { path: 'spacers.right-spacer', value: 11, tolerance: 1e-9 },
      { path: 'overall', value: 110, tolerance: 1e-9 },
    ],
    source: derived('by hand: o = (29 − 21)/2 = 4; 55 − 40 ± 4'),
  },
};

function run(given: Given): Outcome<WorksheetRun<Result>> {
  const issues = issuesOf(given);
  const [first, ...more] = issues;
  if (first !== undefined) return bad(first, ...more);
  const items = itemsOf(given);
  const offset = given.rim === undefined ? undefined : rimOffset(readings(given.rim));
  const rows: readonly Row[] = [{ id: 'stack', items }];
  const solved = solveRows(rows, pinsOf(given, items, offset ?? 0));
  return good({ result: resultOf(items, solved, offset), figures: figuresOf(items, solved, given, offset) });
}

function issuesOf(given: Given): readonly Issue[] {
  const { faces, frameWidth, items, hubWidth, rim } = given;
  const conflict = (path: string, reason: string): Issue => ({ code: 'conflict', path, reason });
  const names = itemsOf(given).map((item) => item.id);
  const wanted = rim?.item ?? 'hub';
  const nearest = nearestName(wanted, names);
  const unknown: Issue = {
    code: 'unknown-name',
    path: 'rim.item',
    given: wanted,
    wanted: 'item of the stack',
    ...(nearest === undefined ? {} : { nearest }),
  };
  return [
    ...(faces !== undefined && frameWidth !== undefined
      ? [conflict('frameWidth', 'faces and frameWidth are both given; give one')]
      : []),
    ...(faces !== undefined && faces[0] <= faces[1]
      ? [conflict('faces', 'the left face must lie left (+) of the right one')]
      : []),
    ...(items !== undefined && hubWidth !== undefined
      ? [conflict('hubWidth', 'items and hubWidth are both given; give one')]
      : []),
    ...(items === undefined && hubWidth === undefined
      ? [{ code: 'missing', path: 'items', wanted: 'items or hubWidth' } as const]
      : []),
    ...names.flatMap((id, i): Issue[] =>
      names.indexOf(id) < i ? [{ code: 'duplicate-name', path: `items[${i}].id`, given: id }] : [],
    ),
    ...(items ?? []).flatMap((item, i) =>
      item.pin?.at === 'plane' && item.plane === undefined
        ? [
            {
              code: 'missing',
              path: `items[${i}].plane`,
              wanted: 'where the plane is, since it is pinned',
            } as const,
          ]
        : [],
    ),
    ...(rim !== undefined && names.length > 0 && !names.includes(wanted) ? [unknown] : []),
  ];
}

function itemsOf({ items, hubWidth }: Given): readonly Item[] {
  if (items !== undefined) return items;
  if (hubWidth === undefined) return [];
  return [
    { id: 'left-spacer', length: 'solve' },
    { id: 'hub', length: hubWidth },
    { id: 'right-spacer', length: 'solve' },
  ];
}

const readings = ({ left, right, leftSpacer, rightSpacer }: NonNullable<Given['rim']>) => ({
  left,
  right,
  leftSpacer: leftSpacer ?? 0,
  rightSpacer: rightSpacer ?? 0,
});

const SHARE = { 'left-face': 0, middle: 0.5, 'right-face': 1 } as const;

/** The rim first, then what the user pinned, then the faces: earlier ones win where they do not agree. */
function pinsOf(given: Given, items: readonly Item[], offset: number): readonly RowPin[] {
  const { faces, frameWidth, rim, hubWidth } = given;
  const [left, right] = faces ?? (frameWidth === undefined ? [] : [frameWidth / 2, -frameWidth / 2]);
  const last = items.length - 1;
  const at = (item: number, share: number, from = 0): Feature => ({ row: 0, item, share, offset: from });
  const hub = items.findIndex((item) => item.id === (rim?.item ?? 'hub'));
  return [
    ...(rim !== undefined || hubWidth !== undefined ? [{ on: at(hub, 0.5, -offset), at: 0 }] : []),
    ...items.flatMap(({ pin, plane }, i) => {
      if (pin === undefined) return [];
      return [{ on: pin.at === 'plane' ? at(i, 0, plane ?? 0) : at(i, SHARE[pin.at]), at: pin.y }];
    }),
    ...(left === undefined ? [] : [{ on: at(0, 0), at: left }]),
    ...(right === undefined ? [] : [{ on: at(last, 1), at: right }]),
  ];
}

const faceY = (solved: SolvedRows, item: number, share: number): number =>
  featureY(solved, { row: 0, item, share, offset: 0 });

function resultOf(items: readonly Item[], solved: SolvedRows, offset: number | undefined): Result {
  const lengths = solved.lengths[0] ?? [];
  const name = (index: number) => items[index]?.id ?? '';
  return {
    spacers: Object.fromEntries(
      items.flatMap((item, i) => (item.length === 'solve' ? [[item.id, lengths[i] ?? 0]] : [])),
    ),
    overall: lengths.reduce((sum, one) => sum + one, 0),
    items: items.map((item, i) => ({
      id: item.id,
      left: faceY(solved, i, 0),
      right: faceY(solved, i, 1),
      length: lengths[i] ?? 0,
      ...(item.plane === undefined ? {} : { plane: faceY(solved, i, 0) - item.plane }),
    })),
    ...(offset === undefined ? {} : { rimOffset: offset }),
    misfits: solved.misfits.map(({ between, excess }) => ({ between: between.map(name), excess })),
    open: solved.gaps.map(({ reason, items: names }) => ({ reason, items: [...names] })),
  };
}

function figuresOf(
  items: readonly Item[],
  solved: SolvedRows,
  given: Given,
  offset: number | undefined,
): readonly Figure[] {
  const length = (name: string, value: number) => ({ name, value, kind: 'length' }) as const;
  const spacers = items.flatMap((item, i): Figure[] => {
    if (item.length !== 'solve') return [];
    return [
      {
        id: `stack.${item.id}.length`,
        symbol: 'L',
        name: `length of ${item.id}`,
        value: solved.lengths[0]?.[i] ?? 0,
        kind: 'length',
        formula: 'L = y_left − y_right',
        inputs: [length('y_left', faceY(solved, i, 0)), length('y_right', faceY(solved, i, 1))],
        source: derived('sums of lengths along the shaft'),
      },
    ];
  });
  const lengths = solved.lengths[0] ?? [];
  const overall: Figure = {
    id: 'stack.overall',
    symbol: 'ΣL',
    name: `all items together; pins agree within ${AGREES_WITHIN * 1000} mm`,
    value: lengths.reduce((sum, one) => sum + one, 0),
    kind: 'length',
    formula: 'ΣL = L1 + L2 + …',
    inputs: items.map((item, i) => length(item.id, lengths[i] ?? 0)),
    source: derived('sums of lengths along the shaft'),
  };
  if (offset === undefined || given.rim === undefined) return [...spacers, overall];
  const { left, right, leftSpacer, rightSpacer } = readings(given.rim);
  const rim: Figure = {
    id: 'stack.rimOffset',
    symbol: 'o',
    name: 'rim center left of the hub middle',
    value: offset,
    kind: 'length',
    formula: 'o = (r − l)/2 − (s_r − s_l)/2',
    inputs: [length('l', left), length('r', right), length('s_l', leftSpacer), length('s_r', rightSpacer)],
    source: practice('two rim-edge readings, fork leg to rim edge each side'),
  };
  return [rim, ...spacers, overall];
}
