import { directionToLocal, distance3, toWorld } from '../../../../geometry/index.ts';
import type { Force, Length, Torque } from '../../../../quantity/index.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import { type ChordWall, chordPrestress } from '../../../tubeJoints/chordWall.ts';
import {
  type PlateJoint,
  type PlateResistance,
  plateInteraction,
  plateResistance,
} from '../../../tubeJoints/plateJoint.ts';
import { type SaddleSeat, saddleLine } from '../../../tubeJoints/saddleSeat.ts';
import { lineDirection } from '../../model/draft.ts';
import { enteringAt, type PlacedPlate, placedPlates } from '../plates/plateAxes.ts';
import { loadsByPlate, plateBodies } from '../plates/plateBodies.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { chordOf, outsideText, pushAt, type WallContext } from './chordEnds.ts';

/** A tab with the tube that it stands on. */
interface StandingTab {
  readonly plate: PlacedPlate;
  readonly height: number;
  readonly line: string;
  readonly nodes: readonly string[];
  readonly chord: ChordWall;
  readonly joint: Omit<PlateJoint, 'chord' | 'partialFactor'>;
  /** Where it is hollowed to its tube. */
  readonly saddle?: SaddleSeat;
}

export interface TabWalls {
  readonly rows: readonly UtilizationRow[];
  readonly left: readonly string[];
}

/** The wall of a tube under each tab for pegs and stand, whose edge along or across the tube is plain. */
export function tabWalls(context: WallContext): TabWalls {
  const { input } = context;
  const { bodies, owners } = plateBodies(input.frame);
  const loads = loadsByPlate(input.cases, owners);
  const found = placedPlates(input.patterns)
    .filter(({ pattern: { recipe } }) => recipe === 'peg-tab' || recipe === 'stand-tab')
    .map((plate) => tabOf(context, plate, bodies.get(plate.node)?.stations ?? []));
  return {
    rows: found.flatMap((tab) =>
      typeof tab === 'string' || (context.other && tab.line !== context.other.line)
        ? []
        : (rowOf(context, tab, loads) ?? []),
    ),
    left: [...new Set(found.filter((one) => typeof one === 'string'))],
  };
}

/** Cosine of the most that an edge may lean from along, or across, its tube. */
const PLAIN = 0.94;

function tabOf(context: WallContext, plate: PlacedPlate, stations: readonly string[]): StandingTab | string {
  const { build, frame } = context.input;
  const { pattern } = plate;
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'peg-tab' && entry?.recipe !== 'stand-tab') return `the wall under "${pattern.id}"`;
  const foot = toWorld(plate.frame, { x: 0, y: -entry.height, z: pattern.thickness / 2 });
  const places = frame.draft.places;
  const [nearest] = stations.toSorted(
    (a, b) => distance3(frame.draft.nodes.get(a)!, foot) - distance3(frame.draft.nodes.get(b)!, foot),
  );
  const place = nearest === undefined ? undefined : places.get(nearest);
  const line = place && frame.draft.lines.get(place.line);
  const chord = line && chordOf(context, line.id);
  if (!place || !line || !chord) return `the wall under "${pattern.id}", which stands on no tube`;
  const along = lineDirection(line, place.at);
  const { x, z } = directionToLocal(plate.frame, along);
  if (Math.max(Math.abs(x), Math.abs(z)) < PLAIN)
    return `the wall of "${line.id}" under "${pattern.id}", which leans on it`;
  const kind = Math.abs(x) >= PLAIN ? 'longitudinal' : 'transverse';
  const width = (entry.base ?? 2 * entry.noseRadius) as Length;
  return {
    plate,
    height: entry.height,
    line: line.id,
    nodes: stations.filter((node) => places.get(node)!.line === line.id),
    chord,
    joint: { kind, length: width, thickness: pattern.thickness as Length },
    // A hollow of another tube's radius fits no rule for hollows; the straight edge is the harder one.
    ...(kind === 'transverse' && entry.seat === 'saddle' && width < chord.outside
      ? { saddle: { outside: chord.outside, width } }
      : {}),
  };
}

/** What a tab brings to its tube in its own plane, about the middle of its edge. */
interface TabLoad {
  readonly normal: number;
  readonly across: number;
  readonly moment: number;
}

function rowOf(
  context: WallContext,
  tab: StandingTab,
  loads: ReturnType<typeof loadsByPlate>,
): UtilizationRow | undefined {
  const { cases, results, settings } = context.input;
  const partialFactor = settings.yieldFactor;
  const joint: PlateJoint = { ...tab.joint, chord: tab.chord, partialFactor };
  const resistance = plateResistance(joint);
  const push = pushAt(context, tab.line, tab.nodes);
  let worst = { use: 0, c: -1 };
  cases.forEach((_, c) => {
    const chord = { ...tab.chord, push: push(results.solutions[c]!) };
    const load = loadOf(context, tab, loads[c]?.get(tab.plate.node) ?? []);
    const use = useOf(tab, joint, resistance, load, chordPrestress(chord, partialFactor));
    if (use > worst.use) worst = { use, c };
  });
  const one = cases[worst.c];
  if (!one) return undefined;
  const { pattern, hand } = tab.plate;
  return {
    part: tab.line,
    check: 'wallUnderPlate',
    place: `${pattern.id}.${hand}`,
    case: one.id,
    where: `wall under "${pattern.id}", ${seatText(tab)} it${outsideText(resistance.outside)}`,
    quantity: 'use of the wall under a welded tab',
    value: worst.use,
    limit: 1,
    kind: 'ratio',
    utilization: worst.use,
    source: {
      key: 'tube-joint-guide',
      where: `EN 1993-1-8, table 7.3, with the factor ${partialFactor} on the wall`,
    },
  };
}

const seatText = ({ saddle, joint }: StandingTab): string =>
  saddle ? 'hollowed to' : joint.kind === 'longitudinal' ? 'edge along' : 'edge across';

function loadOf(
  { input: { frame } }: WallContext,
  { plate, height }: StandingTab,
  loads: readonly NodeLoad[],
): TabLoad {
  const sum = { normal: 0, across: 0, moment: 0 };
  for (const load of loads) {
    const at = frame.draft.nodes.get(load.node)!;
    const { force, moment } = enteringAt(plate, { x: 0, y: -height }, { ...load, at });
    sum.normal += force.y;
    sum.across += force.x;
    sum.moment += moment?.z ?? 0;
  }
  return sum;
}

/** The larger of face and punching; of the two the push along the tube weakens only the face. */
function useOf(
  { saddle, chord }: StandingTab,
  joint: PlateJoint,
  resistance: PlateResistance,
  { normal, across, moment }: TabLoad,
  prestress: number,
): number {
  const { face, punching } = plateInteraction(joint, resistance, {
    normal: (normal / prestress) as Force,
    alongEdge: (moment / prestress) as Torque,
    aboutEdge: 0 as Torque,
  });
  if (!saddle) return Math.max(face, punching * prestress);
  // The middle of the tube lies half its diameter below the edge.
  const twist = (moment - (across * chord.outside) / 2) as Torque;
  const line = saddleLine(saddle, { normal: normal as Force, across: across as Force, twist });
  return Math.max(face, line / resistance.punching);
}
