import { cross3, dot3, length3, type Point3, subtract3, unit3 } from '../../../../geometry/index.ts';
import type { Angle, Force, Length, Torque } from '../../../../quantity/index.ts';
import { type FrameSolution, sectionForces } from '../../../frame/index.ts';
import {
  type BraceLoad,
  braceInteraction,
  braceResistance,
  type TubeJointKind,
  underPrestress,
} from '../../../tubeJoints/braceJoint.ts';
import { type ChordWall, chordPrestress } from '../../../tubeJoints/chordWall.ts';
import { type DraftLine, lineDirection } from '../../model/draft.ts';
import type { WeldSpot } from '../../model/frameTypes.ts';
import { nearestOnLine } from '../../model/nearest.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import {
  chordOf,
  endsAt,
  isStiff,
  type MemberEnd,
  outsideText,
  pushAt,
  type WallContext,
} from './chordEnds.ts';

/** A coped end as it stands on its trunk. */
interface Brace {
  readonly weld: WeldSpot;
  readonly end: MemberEnd;
  readonly line: DraftLine;
  readonly trunk: DraftLine;
  readonly chord: ChordWall;
  /** Along the trunk [m], and the node there. */
  readonly at: number;
  readonly trunkNode: string;
  /** Away from the joint, and along the trunk. */
  readonly out: Point3;
  readonly along: Point3;
}

export interface BraceWalls {
  readonly rows: readonly UtilizationRow[];
  /** Ends that could not be looked at, and why. */
  readonly left: readonly string[];
}

/** Steeper than this to each other two braces stand across the trunk: cosine. */
const ACROSS = -0.9;
/** Flatter than this an end lies along its trunk, and no rule is for that: sine. */
const FLATTEST = 0.17;

/** The trunk's wall under every coped tube, in the case that uses most of it. */
export function braceWalls(context: WallContext): BraceWalls {
  const { welds } = context.input.frame;
  const only = context.other?.line;
  const found = welds
    .filter((weld) => weld.kind === 'cope' && (only === undefined || weld.with === only))
    .map((weld) => braceOf(context, weld));
  const braces = found.flatMap((one) => (typeof one === 'string' ? [] : [one]));
  return {
    rows: braces.flatMap((brace) => rowOf(context, brace, kindOf(brace, braces)) ?? []),
    left: found.filter((one) => typeof one === 'string'),
  };
}

function braceOf(context: WallContext, weld: WeldSpot): Brace | string {
  const { frame } = context.input;
  const { draft } = frame;
  const trunk = draft.lines.get(weld.with);
  const line = draft.lines.get(weld.line);
  const [end] = endsAt(context, weld.line, weld.node);
  const name = `the wall of "${weld.with}" under "${weld.line}"`;
  if (!trunk || !line || !end) return `${name}, which is not in the model`;
  const chord = chordOf(context, trunk.id);
  if (!chord) return `${name}, which is no tube`;
  if (line.stock.outside > trunk.stock.outside * (1 + 1e-9)) return `${name}, for it is the narrower tube`;
  if (isStiff(frame, end.member)) return `${name}, where a gusset holds both`;
  const near = nearestOnLine(trunk, draft.nodes.get(weld.node)!);
  const { from, to } = frame.model.members[end.member]!;
  const far = draft.nodes.get(end.atStart ? to : from)!;
  const out = unit3(subtract3(far, draft.nodes.get(weld.node)!));
  const along = lineDirection(trunk, near.at);
  if (length3(cross3(out, along)) < FLATTEST) return `${name}, which lies along it`;
  return { weld, end, line, trunk, chord, at: near.at, trunkNode: draft.station(trunk, near.at), out, along };
}

/** One brace counts by itself, unless another stands across the trunk from it. */
function kindOf(brace: Brace, all: readonly Brace[]): TubeJointKind {
  const across = all.some(
    (other) =>
      other.trunk === brace.trunk &&
      Math.abs(other.at - brace.at) < brace.chord.outside &&
      dot3(other.out, brace.out) < ACROSS,
  );
  if (across) return 'X';
  return Math.abs(dot3(brace.out, brace.along)) < 0.01 ? 'T' : 'Y';
}

function rowOf(context: WallContext, brace: Brace, kind: TubeJointKind): UtilizationRow | undefined {
  const { cases, results, settings } = context.input;
  const { chord, line, trunk, weld } = brace;
  const sin = length3(cross3(brace.out, brace.along));
  const angle = Math.asin(Math.min(1, sin)) as Angle;
  const partialFactor = settings.yieldFactor;
  const size = { outside: line.stock.outside as Length, wall: line.stock.wall as Length, angle };
  const resistance = braceResistance({ kind, chord, brace: size, partialFactor });
  const push = pushAt(context, trunk.id, [brace.trunkNode]);
  const loadOf = loadReader(context, brace, sin);
  let worst = { use: -1, c: 0 };
  cases.forEach((_, c) => {
    const solution = results.solutions[c]!;
    const prestress = chordPrestress({ ...chord, push: push(solution) }, partialFactor);
    const use = braceInteraction(underPrestress(resistance, prestress), loadOf(solution));
    if (use > worst.use) worst = { use, c };
  });
  const one = cases[worst.c];
  if (!one) return undefined;
  return {
    part: trunk.id,
    check: 'wallUnderTube',
    place: `${weld.line}.${brace.end.atStart ? 'start' : 'end'}`,
    case: one.id,
    where: `wall under "${weld.line}", ${kind} joint at ${Math.round((angle * 180) / Math.PI)}°${outsideText(resistance.outside)}`,
    quantity: 'use of the wall under a welded tube',
    value: worst.use,
    limit: 1,
    kind: 'ratio',
    utilization: worst.use,
    source: {
      key: 'en-1993-1-8',
      where: `tables 7.2 and 7.5, from memory, with the factor ${partialFactor} on the wall`,
    },
  };
}

/** Normal force and moments of the brace where it meets the trunk's surface. */
function loadReader(
  { input: { results } }: WallContext,
  { end: { member, atStart }, trunk, out, along }: Brace,
  sin: number,
): (solution: FrameSolution) => BraceLoad {
  const { axes, length } = results.assembled.elements[member]!;
  const inset = Math.min(trunk.stock.outside / 2 / sin, length / 2);
  const x = atStart ? inset : length - inset;
  const square = unit3(cross3(out, along));
  const flat = cross3(square, out);
  const y = { x: axes[3]!, y: axes[4]!, z: axes[5]! };
  const z = { x: axes[6]!, y: axes[7]!, z: axes[8]! };
  const [ySquare, zSquare, yFlat, zFlat] = [dot3(y, square), dot3(z, square), dot3(y, flat), dot3(z, flat)];
  return ({ memberForces, memberLoads }) => {
    const { normal, momentY, momentZ } = sectionForces(memberForces, memberLoads, x, member);
    return {
      normal: normal as Force,
      inPlane: (momentY * ySquare + momentZ * zSquare) as Torque,
      outOfPlane: (momentY * yFlat + momentZ * zFlat) as Torque,
    };
  };
}
