import type { PlacedStack } from '../../../bike/index.ts';
import type { Length } from '../../../quantity/index.ts';
import {
  type AxleStrength,
  type DriveShaftStrength,
  type Shaft,
  type ShaftDiagrams,
  type ShaftSolution,
  type Strength,
  shaftStateAt,
} from '../../../strength/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { type LabelRequest, placeLabels } from '../../labelPlace.ts';
import { paper } from '../../paper.ts';
import { line, type PaperRect } from '../../shapes.ts';
import type { SheetItem } from '../../sheet.ts';
import { type View, viewLength } from '../../view.ts';
import type { DrawingContext } from '../context.ts';
import { printed } from '../rideWords.ts';
import { fitted } from '../sheetFit.ts';
import { axleBody, type Bar, barOf, boundsOf, itemBody, xOf } from '../stackBody.ts';
import { axleTables, shaftTables } from './shaftTables.ts';
import { bearingMark, type DiagramStrip, diagramStrip, loadMark } from './shaftView.ts';
import { caseText, partText, smallText } from './strengthWords.ts';

const PICTURE = 44;
const STRIP = 25;
/** Half height of what sits on a shaft; larger things are broken off [mm]. */
const BODY = 9;
const SAMPLES = 81;

/** Every countershaft and axle: its stack with what acts on it, diagrams over its length, then tables. */
export function shaftPages(context: DrawingContext, strength: Strength): readonly DraftSheet[] {
  const shafts = strength.drive.shafts.flatMap((one) =>
    page(context, one.id, [
      ...shaftHead(context, one, strength),
      shaftDrawing(context, { ...one.model, solution: one.solution, stack: one.model.stack }, one.diagrams),
      ...shaftTables(context, one, strength),
    ]),
  );
  const axles = strength.axles.flatMap((one) =>
    page(context, one.id, [
      ...axleHead(context, one, strength),
      shaftDrawing(context, { ...one, stack: stackOf(context, one.id) }, sampled(one.shaft, one.solution)),
      ...axleTables(context, one, strength),
    ]),
  );
  return [...shafts, ...axles];
}

const page = (context: DrawingContext, id: string, blocks: readonly Block[]): readonly DraftSheet[] =>
  flowPages({
    id: `strength-shaft-${id}`,
    title: `Shaft: ${partText(id)}`,
    paper: paper(context.paper, 'portrait'),
    blocks: [{ kind: 'heading', text: titleOf(id), level: 1 }, ...blocks],
  });

const titleOf = (id: string): string => {
  const said = partText(id);
  return `${said[0]!.toUpperCase()}${said.slice(1)}`;
};

const stackOf = ({ scene }: DrawingContext, shaft: string): PlacedStack | undefined =>
  Object.values(scene.bike.stacks).find((stack) => stack.shaft === shaft);

function shaftHead(
  context: DrawingContext,
  one: DriveShaftStrength,
  { settings, limits }: Strength,
): readonly Block[] {
  const speed = printed(context, one.speed, 'angularSpeed');
  const critical =
    one.critical === undefined
      ? ''
      : ` Its first critical speed, on rigid bearings, is ${printed(context, one.critical, 'angularSpeed')}.`;
  return [
    {
      kind: 'paragraph',
      text: `Under the largest pull of chains and belts, ${printed(context, limits.torque, 'torque')} at the engine in the lowest gear. It turns at ${speed} at most.${critical} Yield ${printed(context, settings.shaftYield, 'pressure', 1)}, tensile strength ${printed(context, settings.shaftTensile, 'pressure', 1)}. The bike's left is on the left.`,
      size: 2.8,
    },
  ];
}

const axleHead = (
  context: DrawingContext,
  one: AxleStrength,
  { cases, settings }: Strength,
): readonly Block[] => [
  {
    kind: 'paragraph',
    text: `In its worst case, ${caseText(cases, one.case)}, with the hub's two bearings pushing on it and free to tilt where the frame or fork holds it. Yield ${printed(context, settings.shaftYield, 'pressure', 1)}. The bike's left is on the left.`,
    size: 2.8,
  },
];

interface Drawn {
  readonly shaft: Shaft;
  readonly solution: ShaftSolution;
  readonly stack: PlacedStack | undefined;
}

function shaftDrawing(context: DrawingContext, drawn: Drawn, diagrams: ShaftDiagrams): Block {
  const strips = stripsOf(context, diagrams);
  return {
    kind: 'drawing',
    height: PICTURE + strips.length * STRIP,
    draw: (area) => {
      const picture = { ...area, bottom: area.top - PICTURE };
      const view = shaftViewOf(context, drawn, picture);
      const at = diagrams.at.map((y) => xOf(view, y));
      return [
        ...guides(drawn, view, { ...area, top: picture.bottom + 8 }),
        ...shaftPicture(context, drawn, view, picture),
        ...strips.flatMap((strip, k) => {
          const top = picture.bottom - k * STRIP;
          return diagramStrip(strip, at, { ...area, top, bottom: top - STRIP + 1 });
        }),
      ];
    },
  };
}

/** Thin lines down from bearings and loads, so that the diagrams can be read against the stack. */
const guides = ({ shaft }: Drawn, view: View, area: PaperRect): readonly SheetItem[] =>
  [...new Set([...shaft.supports, ...shaft.loads].map(({ at }) => at as number))].map((y) =>
    line({ x: xOf(view, y), y: area.top }, { x: xOf(view, y), y: area.bottom }, 'dimension'),
  );

function spanOf({ shaft }: Drawn): { readonly right: number; readonly left: number } {
  return {
    right: Math.min(...shaft.segments.map(({ from }) => from)),
    left: Math.max(...shaft.segments.map(({ to }) => to)),
  };
}

function barFor(context: DrawingContext, drawn: Drawn): Bar {
  const own = drawn.stack && barOf(context, drawn.stack);
  const diameter = Math.max(...drawn.shaft.segments.map((one) => one.diameter));
  return own ?? { diameter, ...spanOf(drawn), threadLeft: 0, threadRight: 0 };
}

function shaftViewOf(context: DrawingContext, drawn: Drawn, picture: PaperRect): View {
  const { left, right } = spanOf(drawn);
  const body = drawn.stack
    ? boundsOf(barFor(context, drawn), drawn.stack)
    : { minX: -left, maxX: -right, minY: -0.02, maxY: 0.02 };
  const half = Math.max(...drawn.shaft.segments.map((one) => one.diameter));
  const bounds = {
    minX: Math.min(body.minX, -left),
    maxX: Math.max(body.maxX, -right),
    minY: -half,
    maxY: half,
  };
  const room = {
    ...picture,
    left: picture.left + 12,
    right: picture.right - 12,
    top: picture.top - 12,
    bottom: picture.bottom + 12,
  };
  return fitted(bounds, room);
}

function shaftPicture(
  context: DrawingContext,
  drawn: Drawn,
  view: View,
  picture: PaperRect,
): readonly SheetItem[] {
  const { shaft, solution, stack } = drawn;
  const bar = barFor(context, drawn);
  const room = { ...picture, top: view.origin.y + BODY, bottom: view.origin.y - BODY };
  const bodies = stack
    ? stack.items.flatMap((item, i) => itemBody({ stack, bar, view, room, rows: [] }, item, i))
    : [];
  const body = stack ? axleBody(view, stack, bar) : [];
  const half = viewLength(view, bar.diameter) / 2;
  const loads = loadsByPlace(shaft);
  const tops = loads.map(({ at, force }) => ({
    at: { x: xOf(view, at), y: view.origin.y + (stack ? Math.max(half, BODY) : half) + 0.5 },
    force,
  }));
  const feet = solution.supports.map(({ at, force }) => ({
    at: { x: xOf(view, at), y: view.origin.y - Math.max(half, 1) },
    force: Math.hypot(...force),
  }));
  const label = (at: { x: number; y: number }, force: number): LabelRequest => ({
    at,
    clear: 0,
    text: printed(context, force, 'force', 1),
    style: { size: 2.6 },
  });
  return [
    ...bodies,
    ...body,
    ...feet.map(({ at }) => bearingMark(at)),
    ...tops.flatMap(({ at }) => loadMark(at)),
    ...placeLabels(
      tops.map(({ at, force }) => label({ x: at.x, y: picture.top - 5 }, force)),
      [],
      { ...picture, bottom: view.origin.y + 9.5 },
    ),
    ...placeLabels(
      feet.map(({ at, force }) => label({ x: at.x, y: picture.bottom + 7 }, force)),
      [],
      { ...picture, top: view.origin.y - 9.5 },
    ),
  ];
}

/** Resultants of all that acts at one place [N]. */
function loadsByPlace(shaft: Shaft): readonly { readonly at: number; readonly force: number }[] {
  const sums = new Map<number, [number, number]>();
  for (const { at, force } of shaft.loads) {
    if (!force) continue;
    const sum = sums.get(at) ?? [0, 0];
    sums.set(at, [sum[0] + force[0], sum[1] + force[1]]);
  }
  return [...sums.entries()]
    .map(([at, sum]) => ({ at, force: Math.hypot(...sum) }))
    .filter(({ force }) => force > 0);
}

/** In the upright plane and in the plane along the bike; a moment about z bends in the upright one. */
function stripsOf(
  context: DrawingContext,
  { shear, moment, torque, deflection }: ShaftDiagrams,
): readonly DiagramStrip[] {
  const planes = (list: readonly (readonly [number, number])[], upright: 0 | 1) => [
    { label: 'up and down', pen: 'thin' as const, values: list.map((one) => one[upright]) },
    { label: 'fore and aft', pen: 'hidden' as const, values: list.map((one) => one[upright === 0 ? 1 : 0]) },
  ];
  const both = (list: readonly (readonly [number, number])[], upright: 0 | 1) => [
    {
      label: 'both together',
      pen: 'outline' as const,
      values: list.map((one) => Math.hypot(...one)),
      fill: true,
      marked: true,
    },
    ...planes(list, upright),
  ];
  const strips: readonly DiagramStrip[] = [
    { name: 'Shear force', curves: both(shear, 0), print: (value) => printed(context, value, 'force', 1) },
    { name: 'Bending moment', curves: both(moment, 1), print: (value) => printed(context, value, 'torque') },
    { name: 'Deflection', curves: both(deflection, 0), print: (value) => smallText(context, value) },
    {
      name: 'Torque',
      curves: [{ pen: 'outline', values: torque, fill: true, marked: true }],
      print: (value) => printed(context, value, 'torque'),
    },
  ];
  const isThere = ({ curves }: DiagramStrip): boolean =>
    curves.some(({ values }) => values.some((value) => Math.abs(value) > 1e-9));
  return strips.filter(isThere);
}

function sampled(shaft: Shaft, solution: ShaftSolution): ShaftDiagrams {
  const from = Math.min(...shaft.segments.map((one) => one.from));
  const to = Math.max(...shaft.segments.map((one) => one.to));
  const even = Array.from({ length: SAMPLES }, (_, k) => from + ((to - from) * k) / (SAMPLES - 1));
  const stations = [...shaft.supports, ...shaft.loads].map(({ at }) => at as number);
  const at = [...new Set([...even, ...stations])].sort((a, b) => a - b).flatMap((x) => [x, x]);
  const states = at.map((x, i) => shaftStateAt(shaft, solution, x as Length, i % 2 === 0 ? 'left' : 'right'));
  return {
    at,
    shear: states.map((state) => state.shear),
    moment: states.map((state) => state.moment),
    torque: states.map((state) => state.torque),
    deflection: states.map((state) => state.deflection),
  };
}
