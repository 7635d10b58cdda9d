import {
  addMatrix,
  emptySkyline,
  factorLdlt,
  type LdltFactor,
  type SkylineMatrix,
  skylineEntries,
} from '../../numerics/index.ts';
import { bad, type Issue } from '../../quantity/index.ts';
import { matrixToGlobal } from './axes.ts';
import { beamMatrix } from './beam.ts';
import { modelIssues } from './check.ts';
import { type FrameElement, makeElement } from './element.ts';
import { type Equations, numberEquations } from './equations.ts';
import { findMasters, type Masters, matrixToMaster } from './links.ts';
import { describeMechanism, type Mechanism, mechanismOf } from './mechanism.ts';
import { DIRECTIONS, type FrameModel } from './model.ts';

/** A frame with its stiffness factored: any number of load cases are solved from here. */
export interface AssembledFrame {
  readonly model: FrameModel;
  /** Names of the nodes in the order of all vectors. */
  readonly nodeIds: readonly string[];
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly memberIndex: ReadonlyMap<string, number>;
  readonly leaders: Masters;
  readonly equations: Equations;
  readonly elements: readonly FrameElement[];
  /** Six a node: stiffness of springs to the ground [N/m], [N·m/rad]. */
  readonly springs: Float64Array;
  /** Nodes that have any. */
  readonly sprung: readonly number[];
  /** Diagonal of the box round all nodes [m]. */
  readonly size: number;
  readonly stiffness: SkylineMatrix;
  readonly factor: LdltFactor;
}

export type AssemblyOutcome =
  | { readonly ok: true; readonly value: AssembledFrame }
  | {
      readonly ok: false;
      readonly issues: readonly [Issue, ...Issue[]];
      /** What moves freely; empty when the model could not be put together at all. */
      readonly mechanisms: readonly Mechanism[];
    };

/** 128 MB for the stiffness and its factor. */
const MOST_ENTRIES = 8e6;

/**
 * Puts a frame together and factors its stiffness once.
 * @issue unknown-name, duplicate-name, missing, conflict: the model does not hold together, or is a mechanism
 * @issue too-large: the skyline of the stiffness would not fit
 * @source przemieniecki-1968, chapter 6: direct stiffness method
 */
export function assembleFrame(model: FrameModel): AssemblyOutcome {
  const [first, ...more] = modelIssues(model);
  if (first !== undefined) return refused([first, ...more]);
  const nodeIds = Object.keys(model.nodes);
  const nodeIndex = new Map(nodeIds.map((id, i) => [id, i]));
  const made = model.members.map((_, i) => makeElement(model, nodeIndex, i));
  const [broken, ...others] = made.flatMap((one) => (one.ok ? [] : [one.issue]));
  if (broken !== undefined) return refused([broken, ...others]);
  const elements = made.flatMap((one) => (one.ok ? [one.value] : []));
  const leaders = findMasters(model, nodeIds, nodeIndex);
  const pairs = elements.map(({ from, to }) => [leaders.leader[from]!, leaders.leader[to]!] as const);
  const equations = numberEquations(model, nodeIndex, leaders, pairs);
  const entries = skylineEntries(equations.top);
  if (entries > MOST_ENTRIES)
    return refused([
      {
        code: 'too-large',
        path: 'members',
        given: entries,
        max: MOST_ENTRIES,
        unit: 'entries of the stiffness',
      },
    ]);
  const springs = springsOf(model, nodeIndex);
  const sprung = nodeIds.flatMap((_, node) => (springsAt(springs, node).some((k) => k > 0) ? [node] : []));
  const size = sizeOf(model);
  const basis = { model, nodeIds, nodeIndex, leaders, equations, elements, springs, sprung, size };
  const stiffness = stiffnessOf(basis);
  const factor = factorLdlt(stiffness);
  const mechanisms = factor.nullModes.map((mode) => mechanismOf(mode, nodeIds, equations, leaders, size));
  const [moving, ...rest] = mechanisms.map(mechanismIssue);
  if (moving !== undefined) return { ...refused([moving, ...rest]), mechanisms };
  const memberIndex = new Map(model.members.map(({ id }, i) => [id, i]));
  return { ok: true, value: { ...basis, memberIndex, stiffness, factor } };
}

const refused = ([first, ...rest]: readonly [Issue, ...Issue[]]) => ({
  ...bad(first, ...rest),
  mechanisms: [] as readonly Mechanism[],
});

const mechanismIssue = (mechanism: Mechanism): Issue => ({
  code: 'conflict',
  path: `nodes.${mechanism.node}`,
  reason: describeMechanism(mechanism),
});

function springsOf(model: FrameModel, nodeIndex: ReadonlyMap<string, number>): Float64Array {
  const springs = new Float64Array(nodeIndex.size * 6);
  for (const { node, springs: given, fixed } of model.supports)
    DIRECTIONS.forEach((direction, i) => {
      if (!fixed.includes(direction)) springs[nodeIndex.get(node)! * 6 + i] = given?.[direction] ?? 0;
    });
  return springs;
}

type Unfactored = Omit<AssembledFrame, 'memberIndex' | 'stiffness' | 'factor'>;

function stiffnessOf(frame: Unfactored): SkylineMatrix {
  const matrix = emptySkyline(frame.equations.top);
  const local = new Float64Array(144);
  for (const element of frame.elements)
    addElement(matrix, frame, element, element.released?.stiffness ?? beamMatrix(element.beam, local));
  for (const node of frame.sprung) addNode(matrix, frame, node, diagonal(springsAt(frame.springs, node)));
  return matrix;
}

const springsAt = (springs: Float64Array, node: number): Float64Array =>
  springs.subarray(node * 6, node * 6 + 6);

function diagonal(values: Float64Array): Float64Array {
  const matrix = new Float64Array(36);
  values.forEach((value, i) => {
    matrix[i * 7] = value;
  });
  return matrix;
}

/** Adds a 12 × 12 matrix of a member in local axes to the sum over the unknowns. */
export function addElement(
  matrix: SkylineMatrix,
  { leaders, equations }: Pick<AssembledFrame, 'leaders' | 'equations'>,
  { from, to, axes }: FrameElement,
  local: Float64Array,
): void {
  const k = local.slice();
  matrixToGlobal(axes, k);
  matrixToMaster(leaders, from, k, 0, 12);
  matrixToMaster(leaders, to, k, 6, 12);
  const rows = new Int32Array(12);
  copyRows(equations, leaders.leader[from]!, rows, 0);
  copyRows(equations, leaders.leader[to]!, rows, 6);
  addMatrix(matrix, rows, k);
}

/** Adds a 6 × 6 matrix at a node, global axes. */
export function addNode(
  matrix: SkylineMatrix,
  { leaders, equations }: Pick<AssembledFrame, 'leaders' | 'equations'>,
  node: number,
  given: Float64Array,
): void {
  const k = given.slice();
  matrixToMaster(leaders, node, k, 0, 6);
  const rows = new Int32Array(6);
  copyRows(equations, leaders.leader[node]!, rows, 0);
  addMatrix(matrix, rows, k);
}

function copyRows({ of }: Equations, node: number, rows: Int32Array, at: number): void {
  for (let i = 0; i < 6; i++) rows[at + i] = of[node * 6 + i]!;
}

function sizeOf({ nodes }: FrameModel): number {
  const all = Object.values(nodes);
  const span = (pick: 'x' | 'y' | 'z') => {
    let [most, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const point of all) {
      most = Math.max(most, point[pick]);
      least = Math.min(least, point[pick]);
    }
    return most - least;
  };
  return Math.hypot(span('x'), span('y'), span('z'));
}
