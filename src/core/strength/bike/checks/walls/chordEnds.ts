import type { Length, Pressure } from '../../../../quantity/index.ts';
import type { FrameSolution } from '../../../frame/index.ts';
import type { ChordWall } from '../../../tubeJoints/chordWall.ts';
import type { OutsideRule } from '../../../tubeJoints/validity.ts';
import type { RoundSection } from '../../model/draft.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { type LineStrength, lineStrengths } from '../lineStrength.ts';
import { type StressSection, stressSection } from '../tubeStress.ts';

/** A member that ends at a node. */
export interface MemberEnd {
  readonly member: number;
  readonly atStart: boolean;
}

/** What the checks of walls look up over and over. */
export interface WallContext {
  readonly input: JointInput;
  readonly strengths: ReadonlyMap<string, LineStrength>;
  /** Members of lines by line and node. */
  readonly ends: ReadonlyMap<string, readonly MemberEnd[]>;
  readonly other?: OtherWall;
}

/** A tube looked at alone, with another wall under the forces as they are. */
export interface OtherWall {
  readonly line: string;
  /** [m] */
  readonly wall: number;
}

export function wallContext(input: JointInput, other?: OtherWall): WallContext {
  const ends = new Map<string, MemberEnd[]>();
  const add = (line: string, node: string, end: MemberEnd): void => {
    const key = `${line} ${node}`;
    const known = ends.get(key);
    if (known) known.push(end);
    else ends.set(key, [end]);
  };
  input.frame.model.members.forEach(({ id, from, to }, member) => {
    const line = id.split('#')[0]!;
    add(line, from, { member, atStart: true });
    add(line, to, { member, atStart: false });
  });
  return { input, strengths: lineStrengths(input.bike, input.settings), ends, ...(other ? { other } : {}) };
}

export const endsAt = ({ ends }: WallContext, line: string, node: string): readonly MemberEnd[] =>
  ends.get(`${line} ${node}`) ?? [];

/** A line as the tube that others are welded to; undefined where it is no hollow tube of known strength. */
export function chordOf(context: WallContext, line: string): ChordWall | undefined {
  const { strengths } = context;
  const stock = stockOf(context, line);
  const strength = strengths.get(line);
  if (!stock || !strength || !(stock.wall < stock.outside / 2)) return undefined;
  return {
    outside: stock.outside as Length,
    wall: stock.wall as Length,
    yield: strength.weldedYield as Pressure,
    push: 0 as Pressure,
  };
}

/** Round section of a line, with the other wall where one is tried. */
function stockOf({ input, other }: WallContext, line: string): RoundSection | undefined {
  const stock = input.frame.draft.lines.get(line)?.stock;
  return stock && other?.line === line ? { ...stock, wall: other.wall } : stock;
}

/** Largest push along a tube at some of its nodes, by normal force and bending, on either side of them [Pa]. */
export function pushAt(
  context: WallContext,
  line: string,
  nodes: readonly string[],
): (solution: FrameSolution) => Pressure {
  const stock = stockOf(context, line)!;
  const section = stressSection(stock.outside, stock.wall);
  const ends = nodes.flatMap((node) => endsAt(context, line, node));
  return ({ memberForces }) =>
    Math.max(0, ...ends.map((end) => pushOf(memberForces, end, section))) as Pressure;
}

function pushOf(forces: Float64Array, { member, atStart }: MemberEnd, section: StressSection): number {
  const f = member * 12 + (atStart ? 0 : 6);
  const push = atStart ? forces[f]! : -forces[f]!;
  return (
    push / section.area + (Math.hypot(forces[f + 4]!, forces[f + 5]!) * section.radius) / section.secondMoment
  );
}

/** Both ends move as one: what the member carries says nothing. */
export const isStiff = ({ draft, model }: BikeFrame, member: number): boolean => {
  const { from, to } = model.members[member]!;
  return draft.leads(from) === draft.leads(to);
};

/** What of the rule's limits is not kept, to be put behind the place of a row. */
export const outsideText = (outside: readonly OutsideRule[]): string =>
  outside.length === 0
    ? ''
    : `; outside the limits of the rule: ${outside.map(({ what }) => what).join(', ')}`;
