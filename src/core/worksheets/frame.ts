import type { z } from 'zod';
import type { Point3 } from '../geometry/index.ts';
import { bad, derived, type Figure, good, type Issue, type Outcome } from '../quantity/index.ts';
import {
  type AssembledFrame,
  assembleFrame,
  buckleFrame,
  divideFrame,
  type FrameLoads,
  type FrameModel,
  type FrameSolution,
  normalForces,
  solveFrame,
  vibrateFrame,
} from '../strength/index.ts';
import { frameInput, frameOutput, MOST } from './frameSchemas.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

type Given = z.output<typeof frameInput>;
type Result = z.output<typeof frameOutput>;
type Twelve = Result['memberForces'][string];
type Six = Result['displacements'][string];

/** A tube of about 25 × 2 mm. */
const steel = { E: 200000, G: 80000, A: 300, Iy: 20000, Iz: 20000, J: 40000 };

export const frameWorksheet: Worksheet<typeof frameInput, typeof frameOutput> = {
  id: 'frame',
  title: 'Space frame',
  summary:
    'Displacements, reactions and member forces of any frame of straight members in space, with releases, springs, settlements and stiff bodies; buckling factors and natural frequencies on request, for which every member is divided.',
  input: frameInput,
  output: frameOutput,
  run,
  formulas: [
    'K·u = F, K = Σ Rᵀ·k·R over the members',
    'k: beam with Φ = 12·E·I/(G·As·L²), 12·E·I/(L³·(1 + Φ)), (4 + Φ)·E·I/(L·(1 + Φ))',
    'f = k·R·u + f₀, with f₀ = w·L/2 and w·L²/12',
    'K·x = −λ·Kg·x for buckling, K·x = ω²·M·x for vibration; members in 8 pieces, fewer over 200 members',
  ],
  sources: [
    { key: 'przemieniecki-1968', where: 'chapters 5, 6, 11 and 15' },
    { key: 'bathe-1996', where: 'section 8.2.3 and chapter 11' },
  ],
  example: {
    title: 'Bent bar from a wall: 400 mm out, 300 mm across, 100 N down at its end',
    input: {
      nodes: { wall: [0, 0, 0], corner: [400, 0, 0], end: [400, 300, 0] },
      members: [
        { id: 'out', from: 'wall', to: 'corner', ...steel },
        { id: 'across', from: 'corner', to: 'end', ...steel },
      ],
      supports: [{ node: 'wall', fixed: ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] }],
      loads: [{ node: 'end', force: [0, 0, -100] }],
    },
    expected: [
      // F·(a³ + b³)/(3·E·I) + F·a·b²/(G·J) with a = 400 out, b = 300 across.
      { path: 'displacements.end.2', value: -1.883333333333333, tolerance: 1e-9 },
      { path: 'reactions.wall.2', value: 100, tolerance: 1e-9 },
      { path: 'reactions.wall.3', value: 30, tolerance: 1e-9 },
      { path: 'reactions.wall.4', value: -40, tolerance: 1e-9 },
      { path: 'memberForces.out.3', value: 30, tolerance: 1e-9 },
    ],
    source: derived('by hand: 100·(400³ + 300³)/(3·4e9) + 100·400·300²/3.2e9 = 0.75833 + 1.125 mm'),
  },
};

function run(given: Given): Outcome<WorksheetRun<Result>> {
  const count = Object.keys(given.nodes).length;
  if (count > MOST.nodes)
    return bad({ code: 'too-large', path: 'nodes', given: count, max: MOST.nodes, unit: 'nodes' });
  const assembled = assembleFrame(modelOf(given));
  if (!assembled.ok) return assembled;
  const frame = assembled.value;
  const solved = solveFrame(frame, [loadsOf(given)]);
  if (!solved.ok) return bad(...inWords(solved.issues));
  const [solution] = solved.value;
  if (solution === undefined) throw new Error('one load case has one solution');
  const modes = modesOf(given);
  if (!modes.ok) return modes;
  const result: Result = {
    displacements: byNode(frame, solution.displacements, () => true),
    reactions: byNode(frame, solution.reactions, (id) => given.supports.some(({ node }) => node === id)),
    memberForces: Object.fromEntries(
      frame.model.members.map(({ id }, m) => [
        id,
        [...solution.memberForces.subarray(m * 12, m * 12 + 12)] as Twelve,
      ]),
    ),
    residual: solution.residual,
    ...modes.value,
  };
  return good({ result, figures: figuresOf(frame, solution) });
}

/** Elements that buckling and frequencies may have in all, so that their time stays within seconds. */
const MOST_PIECES = 1600;

/** Pieces that each member has for buckling and frequencies: one alone is 22 % over Euler between hinges. */
const piecesOf = (members: number): number => Math.max(1, Math.min(8, Math.floor(MOST_PIECES / members)));

type Modes = Pick<Result, 'buckling' | 'frequencies' | 'pieces'>;

/** Buckling and frequencies, of the frame with its members divided. */
function modesOf(given: Given): Outcome<Modes> {
  if (given.buckling === undefined && given.frequencies === undefined) return good({});
  const pieces = piecesOf(Math.max(1, given.members.length));
  const { model, loads } = divideFrame(modelOf(given), loadsOf(given), pieces);
  const assembled = assembleFrame(model);
  if (!assembled.ok) return assembled;
  const frame = assembled.value;
  const buckling = given.buckling === undefined ? good(undefined) : factorsOf(frame, loads, given.buckling);
  if (!buckling.ok) return buckling;
  const vibrating =
    given.frequencies === undefined ? undefined : vibrateFrame(frame, given.frequencies.count);
  if (vibrating !== undefined && !vibrating.ok) return vibrating;
  return good({
    pieces,
    ...(buckling.value === undefined ? {} : { buckling: buckling.value }),
    ...(vibrating === undefined
      ? {}
      : { frequencies: vibrating.value.map(({ angularFrequency }) => angularFrequency / (2 * Math.PI)) }),
  });
}

function factorsOf(frame: AssembledFrame, loads: FrameLoads, count: number): Outcome<number[]> {
  const solved = solveFrame(frame, [loads]);
  if (!solved.ok) return bad(...inWords(solved.issues));
  const [solution] = solved.value;
  if (solution === undefined) throw new Error('one load case has one solution');
  const buckled = buckleFrame(frame, solution, count);
  return buckled.ok ? good(buckled.value.map(({ factor }) => factor)) : buckled;
}

const point = ([x, y, z]: readonly [number, number, number]): Point3 => ({ x, y, z });

function modelOf({ nodes, members, supports, links, frequencies }: Given): FrameModel {
  return {
    nodes: Object.fromEntries(Object.entries(nodes).map(([id, at]) => [id, point(at)])),
    members: members.map(({ id, from, to, E, G, A, Iy, Iz, J, shearAreas, up, releases }) => ({
      id,
      from,
      to,
      youngsModulus: E,
      shearModulus: G,
      area: A,
      secondMomentY: Iy,
      secondMomentZ: Iz,
      torsionConstant: J,
      ...(shearAreas === undefined ? {} : { shearAreas }),
      ...(up === undefined ? {} : { up: point(up) }),
      ...(releases === undefined ? {} : { releases: given(releases) }),
      ...(frequencies === undefined ? {} : { density: frequencies.density }),
    })),
    supports: supports.map(({ node, fixed, springs }) => ({
      node,
      fixed,
      ...(springs === undefined ? {} : { springs: given(springs) }),
    })),
    ...(links === undefined ? {} : { links }),
  };
}

function loadsOf({ loads, memberLoads, supports }: Given): FrameLoads {
  return {
    nodes: (loads ?? []).map(({ node, force, moment }) => ({
      node,
      ...(force === undefined ? {} : { force: point(force) }),
      ...(moment === undefined ? {} : { moment: point(moment) }),
    })),
    members: (memberLoads ?? []).map(({ member, w, axes }) => ({
      member,
      w: point(w),
      ...(axes === undefined ? {} : { axes }),
    })),
    // One for each support, so that places in both lists are the same.
    settlements: supports.map(({ node, settle }) => ({ node, by: given(settle ?? {}) })),
  };
}

/** The same without keys that hold undefined. */
function given<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}

function byNode(
  { nodeIds }: AssembledFrame,
  values: Float64Array,
  isWanted: (id: string) => boolean,
): Record<string, Six> {
  return Object.fromEntries(
    nodeIds.flatMap((id, node) =>
      isWanted(id) ? [[id, [...values.subarray(node * 6, node * 6 + 6)] as Six]] : [],
    ),
  );
}

/** Issues with the names of this worksheet: there a settlement is part of its support. */
function inWords([first, ...rest]: readonly [Issue, ...Issue[]]): [Issue, ...Issue[]] {
  const named = (issue: Issue): Issue => ({
    ...issue,
    path: issue.path.replace(/^settlements(\[\d+\])\.by/, 'supports$1.settle'),
  });
  return [named(first), ...rest.map(named)];
}

function figuresOf(frame: AssembledFrame, solution: FrameSolution): readonly Figure[] {
  const { displacements, residual } = solution;
  const moved = (node: number) => [0, 1, 2].map((i) => displacements[node * 6 + i]!);
  const sizes = frame.nodeIds.map((_, node) => Math.hypot(...moved(node)));
  const most = sizes.indexOf(Math.max(...sizes));
  const displacement: Figure = {
    id: 'frame.displacement',
    symbol: 'u',
    name: `largest displacement, of node ${frame.nodeIds[most]}`,
    value: sizes[most]!,
    kind: 'length',
    formula: 'u = √(ux² + uy² + uz²)',
    inputs: moved(most).map((value, i) => ({ name: `u${'xyz'[i]}`, value, kind: 'length' })),
    source: derived('length of a vector'),
  };
  const balance: Figure = {
    id: 'frame.residual',
    symbol: 'r',
    name: 'largest unbalanced force at a joint against the largest force',
    value: residual,
    kind: 'ratio',
    formula: 'r = max|Σ f − F|/max|f|',
    inputs: [],
    source: derived('equilibrium of the joints'),
  };
  return [displacement, ...normalFigure(frame, solution), balance];
}

function normalFigure(frame: AssembledFrame, solution: FrameSolution): readonly Figure[] {
  const forces = [...normalForces(solution)];
  const sizes = forces.map(Math.abs);
  const most = sizes.indexOf(Math.max(...sizes));
  const value = forces[most];
  if (value === undefined) return [];
  const [start, end] = [0, 6].map((i) => solution.memberForces[most * 12 + i]!) as [number, number];
  return [
    {
      id: 'frame.normalForce',
      symbol: 'N',
      name: `largest normal force, tension positive, at the middle of member ${frame.model.members[most]?.id}`,
      value,
      kind: 'force',
      formula: 'N = (Fx_end − Fx_start)/2',
      inputs: [
        { name: 'Fx_start', value: start, kind: 'force' },
        { name: 'Fx_end', value: end, kind: 'force' },
      ],
      source: derived('equilibrium of half the member'),
    },
  ];
}
