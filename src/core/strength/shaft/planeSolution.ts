import {
  addToSkyline,
  emptySkyline,
  factorLdlt,
  type LdltFactor,
  type Polynomial,
  polynomialAt,
  solveLdlt,
} from '../../numerics/index.ts';
import { type ShaftMesh, type ShaftPiece, stationAt } from './mesh.ts';
import type { Shaft, ShaftSupport } from './shaft.ts';
import { endLoads, type Span, type SpanLoads, spanLoads, spanMatrix, spanOf, startOfSpan } from './span.ts';
import {
  acrossPiece,
  acrossStation,
  type Cut,
  resultant,
  type StationLoads,
  stationLoads,
} from './statics.ts';

/** A shaft on its supports, in the order of their places: freedom 2·i is v, 2·i + 1 is ψ at support i. */
export interface SupportSystem {
  readonly supports: readonly ShaftSupport[];
  /** Station of each support. */
  readonly stations: readonly number[];
  readonly spans: readonly Span[];
  readonly factor: LdltFactor;
}

/** What one plane of a piece carries and how it bends, as polynomials in s = x − start. */
export interface PlaneCurves {
  /** V [N]. */
  readonly shear: Polynomial;
  /** M = EI·dψ/dx [N·m]. */
  readonly moment: Polynomial;
  /** ψ, slope of the section [rad]. */
  readonly slope: Polynomial;
  /** v [m]. */
  readonly deflection: Polynomial;
}

export interface PlaneSolution {
  /** One a piece. */
  readonly curves: readonly PlaneCurves[];
  /** Force [N] and couple [N·m] of each support in the order of their places. */
  readonly reactions: readonly { readonly force: number; readonly couple: number; readonly slope: number }[];
}

/** Diagonal of a freedom that a support holds; only its own row is left. */
const HELD = 1;

export function supportSystem(shaft: Shaft, mesh: ShaftMesh): SupportSystem {
  const supports = [...shaft.supports].sort((a, b) => a.at - b.at);
  const stations = supports.map(({ at }) => stationAt(mesh, at));
  const spans = stations.slice(1).map((last, i) => spanOf(mesh, stations[i]!, last));
  const top = Int32Array.from({ length: 2 * supports.length }, (_, i) => Math.max(0, 2 * (i >> 1) - 2));
  const matrix = emptySkyline(top);
  const held = heldFreedoms(supports);
  spans.forEach((span, n) => {
    spanMatrix(span).forEach((value, k) => {
      const [i, j] = [2 * n + (k >> 2), 2 * n + (k % 4)];
      if (j <= i && !held[i] && !held[j]) addToSkyline(matrix, i, j, value);
    });
  });
  supports.forEach(({ stiffness }, n) => {
    if (stiffness !== undefined) addToSkyline(matrix, 2 * n, 2 * n, stiffness);
  });
  held.forEach((isHeld, i) => {
    if (isHeld) addToSkyline(matrix, i, i, HELD);
  });
  return { supports, stations, spans, factor: factorLdlt(matrix) };
}

/** Solves one plane (0: x-y, 1: x-z). Overhangs are statics alone and act on the support they hang from. */
export function solvePlane(
  shaft: Shaft,
  mesh: ShaftMesh,
  system: SupportSystem,
  plane: 0 | 1,
): PlaneSolution {
  const loads = stationLoads(shaft, mesh, plane);
  const within = system.spans.map((span) => spanLoads(mesh, span, loads, plane));
  const u = solveLdlt(system.factor, rightSide(mesh, system, { loads, within, plane }));
  const starts = pieceStarts(mesh, system, { loads, within, plane }, u);
  const curves = mesh.pieces.map((piece, n) => curvesOf(piece, piece.q[plane], starts[n]!));
  return { curves, reactions: reactionsOf(mesh, system, curves, { loads, u }) };
}

interface PlaneLoads {
  readonly loads: StationLoads;
  readonly within: readonly SpanLoads[];
  readonly plane: 0 | 1;
}

interface PieceStart extends Cut {
  readonly slope: number;
  readonly deflection: number;
}

function heldFreedoms(supports: readonly ShaftSupport[]): readonly boolean[] {
  return supports.flatMap(({ stiffness, clamped }) => [stiffness === undefined, clamped === true]);
}

function rightSide(
  mesh: ShaftMesh,
  system: SupportSystem,
  { loads, within, plane }: PlaneLoads,
): Float64Array {
  const { supports, stations, spans } = system;
  const right = new Float64Array(2 * supports.length);
  const given = new Float64Array(2 * supports.length);
  const held = heldFreedoms(supports);
  supports.forEach(({ stiffness, offset }, n) => {
    const at = stations[n]!;
    right[2 * n]! += loads.force[at]! + (stiffness ?? 0) * (offset?.[plane] ?? 0);
    right[2 * n + 1]! += loads.couple[at]!;
    if (stiffness === undefined) given[2 * n] = offset?.[plane] ?? 0;
  });
  for (const side of ['left', 'right'] as const) {
    const n = side === 'left' ? 0 : supports.length - 1;
    const hang = overhang(mesh, stations[n]!, side, loads, plane);
    right[2 * n]! += hang.force;
    right[2 * n + 1]! += hang.couple;
  }
  spans.forEach((span, n) => {
    endLoads(span, within[n]!).forEach((load, k) => {
      right[2 * n + k]! += load;
    });
    spanMatrix(span).forEach((value, k) => {
      const [i, j] = [2 * n + (k >> 2), 2 * n + (k % 4)];
      if (held[j]) right[i]! -= value * given[j]!;
    });
  });
  held.forEach((isHeld, i) => {
    if (isHeld) right[i] = given[i]! * HELD;
  });
  return right;
}

/** Force and couple of an overhang on the support it hangs from. */
function overhang(
  mesh: ShaftMesh,
  station: number,
  side: 'left' | 'right',
  loads: StationLoads,
  plane: 0 | 1,
) {
  const last = mesh.stations.length - 1;
  return resultant(mesh, loads, plane, {
    from: mesh.stations[station]!,
    firstStation: side === 'left' ? 0 : station + 1,
    lastStation: side === 'left' ? station - 1 : last,
    firstPiece: side === 'left' ? 0 : station,
    lastPiece: side === 'left' ? station - 1 : last - 1,
  });
}

/** Cut, slope and deflection at the start of each piece: forward from the supports, backward in the left overhang. */
function pieceStarts(
  mesh: ShaftMesh,
  system: SupportSystem,
  plane: PlaneLoads,
  u: Float64Array,
): readonly PieceStart[] {
  const { stations, spans } = system;
  const first = stations[0]!;
  const last = stations.at(-1)!;
  const starts = backward(mesh, first, plane, u);
  spans.forEach((span, n) => {
    const ends = u.subarray(2 * n, 2 * n + 4);
    const cut = startOfSpan(span, plane.within[n]!, ends);
    starts.push(
      ...forward(mesh, span.first, span.last, plane, { ...cut, deflection: ends[0]!, slope: ends[1]! }),
    );
  });
  const hang = overhang(mesh, last, 'right', plane.loads, plane.plane);
  const end = 2 * (stations.length - 1);
  const cut = { shear: -hang.force, moment: hang.couple, deflection: u[end]!, slope: u[end + 1]! };
  starts.push(...forward(mesh, last, mesh.stations.length - 1, plane, cut));
  return starts;
}

function forward(
  mesh: ShaftMesh,
  from: number,
  to: number,
  { loads, plane }: PlaneLoads,
  start: PieceStart,
): PieceStart[] {
  const starts: PieceStart[] = [];
  let state = start;
  for (let n = from; n < to; n += 1) {
    const piece = mesh.pieces[n]!;
    starts.push(state);
    const curves = curvesOf(piece, piece.q[plane], state);
    const cut = acrossStation(acrossPiece(state, piece, piece.q[plane]), loads, n + 1);
    state = {
      ...cut,
      slope: polynomialAt(curves.slope, piece.length),
      deflection: polynomialAt(curves.deflection, piece.length),
    };
  }
  return starts;
}

function backward(
  mesh: ShaftMesh,
  first: number,
  { loads, plane }: PlaneLoads,
  u: Float64Array,
): PieceStart[] {
  const cuts: Cut[] = [];
  let cut: Cut = { shear: 0, moment: 0 };
  for (let n = 0; n < first; n += 1) {
    cut = acrossStation(cut, loads, n);
    cuts.push(cut);
    cut = acrossPiece(cut, mesh.pieces[n]!, mesh.pieces[n]!.q[plane]);
  }
  const starts: PieceStart[] = [];
  let [deflection, slope] = [u[0]!, u[1]!];
  for (let n = first - 1; n >= 0; n -= 1) {
    const piece = mesh.pieces[n]!;
    // From a start at rest the curves give the change over the piece.
    const change = curvesOf(piece, piece.q[plane], { ...cuts[n]!, slope: 0, deflection: 0 });
    slope -= polynomialAt(change.slope, piece.length);
    deflection -= slope * piece.length + polynomialAt(change.deflection, piece.length);
    starts.unshift({ ...cuts[n]!, slope, deflection });
  }
  return starts;
}

/** Exact curves of a piece: M = M0 + V0·s + q·s²/2, ψ' = M/EI, v' = ψ − V/κGA. */
function curvesOf(
  piece: ShaftPiece,
  q: number,
  { shear, moment, slope, deflection }: PieceStart,
): PlaneCurves {
  const { bending } = piece;
  const soft = 1 / piece.shear;
  return {
    shear: [shear, q],
    moment: [moment, shear, q / 2],
    slope: [slope, moment / bending, shear / (2 * bending), q / (6 * bending)],
    deflection: [
      deflection,
      slope - shear * soft,
      moment / (2 * bending) - (q / 2) * soft,
      shear / (6 * bending),
      q / (24 * bending),
    ],
  };
}

/** What a support must exert: the step of shear and moment across it less the loads right there. */
function reactionsOf(
  mesh: ShaftMesh,
  { stations }: SupportSystem,
  curves: readonly PlaneCurves[],
  { loads, u }: { readonly loads: StationLoads; readonly u: Float64Array },
): PlaneSolution['reactions'] {
  return stations.map((station, n) => {
    const [before, after] = [curves[station - 1], curves[station]];
    const length = mesh.pieces[station - 1]?.length ?? 0;
    const end = (of: 'shear' | 'moment'): number => (before ? polynomialAt(before[of], length) : 0);
    const start = (of: 'shear' | 'moment'): number => after?.[of][0] ?? 0;
    return {
      force: start('shear') - end('shear') - loads.force[station]!,
      couple: end('moment') - start('moment') - loads.couple[station]!,
      slope: u[2 * n + 1]!,
    };
  });
}
