import { cylinderMesh, distance3, type Point3 } from '../../core/geometry/index.ts';
import type { Proof } from '../../core/index.ts';
import {
  frameView,
  largestMovement,
  type MemberView,
  type UtilizationRow,
} from '../../core/strength/index.ts';
import { shade } from '../three/shade.ts';
import type { PartUse, ScreenStrength, StrengthPicture, UsedTube, WorstPlace } from './messages.ts';
import { printed } from './print.ts';

/** The largest movement is drawn about this long [m]: plain to see, with the bike still a bike. */
const DRAWN_MOVEMENT = 0.06;
/** Factors are round: these, times a power of ten. */
const ROUND = [5, 2, 1];
/** Members shorter than this are points [m]. */
const SHORTEST = 1e-6;
const SIDES = 20;
/** Corners nearer to an end than this share of the length lie in it. */
const END_SHARE = 1e-3;

/** The load cases and the worst places, in words and printed figures. */
export const screenStrength = ({ strength }: Proof): ScreenStrength => ({
  cases: strength.cases.map(({ id, name, basis }) => ({ id, name: capitalized(name), basis })),
  worst: strength.worst.map((row) => worstPlace(row, strength)),
  flaws: strength.flaws.map(({ part, reason }) => `${part}: ${reason}`),
});

/** The frame as tubes with their use along them, of one case or of the worst of all; moved only under one case. */
export function strengthPicture(
  { strength }: Proof,
  caseId: string | undefined,
  isMoved: boolean,
): StrengthPicture {
  const largest = caseId === undefined ? 0 : largestMovement(strength, caseId);
  const factor = caseId !== undefined && isMoved ? roundFactor(largest) : 0;
  const members = frameView(strength, caseId, factor);
  const tubes = byPart(members).map(([part, some]) => usedTube(part, some, factor > 0));
  return {
    tubes,
    uses: byPart(members).map(partUse).sort(mostUsedFirst).map(withoutUse),
    ...(largest > 0 ? { largest: printed(largest, 'length') } : {}),
    ...(factor > 0 ? { factor: String(factor) } : {}),
  };
}

/** Memory that can be handed over instead of copied. */
export const strengthBuffers = ({ tubes }: StrengthPicture): ArrayBufferLike[] =>
  tubes.flatMap(({ positions, normals, use, along }) =>
    [positions, normals, use, along].map(({ buffer }) => buffer),
  );

function worstPlace(row: UtilizationRow, strength: Proof['strength']): WorstPlace {
  const { part, where, quantity, value, limit, kind, utilization } = row;
  const isLeast = utilization > 1 === value < limit;
  const name = strength.cases.find(({ id }) => id === row.case)?.name ?? row.case;
  return {
    part,
    where,
    quantity,
    case: capitalized(name),
    caseId: row.case,
    value: printed(value, kind),
    limit: printed(limit, kind),
    limitWord: isLeast ? 'at least' : 'at most',
    ...percentOf(utilization),
  };
}

const capitalized = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Whole percent; what is over its limit never reads as 100 %, nor what is within it as more. */
function percentOf(use: number): { readonly percent: string; readonly isOver: boolean } {
  const whole = Math.round(use * 100);
  const isOver = use > 1;
  return { percent: isOver && whole === 100 ? 'just over 100 %' : `${whole} %`, isOver };
}

/** The largest round factor that does not draw the movement longer than it may be; 0 where nothing moves. */
function roundFactor(largest: number): number {
  if (!(largest > 0)) return 0;
  const most = DRAWN_MOVEMENT / largest;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = ROUND.find((one) => one * power <= most) ?? 1;
  return Number((step * power).toPrecision(1));
}

function byPart(members: readonly MemberView[]): readonly (readonly [string, readonly MemberView[]])[] {
  const parts = new Map<string, MemberView[]>();
  for (const member of members) parts.set(member.part, [...(parts.get(member.part) ?? []), member]);
  return [...parts];
}

type Used = PartUse & { readonly use: number };

function partUse([part, members]: readonly [string, readonly MemberView[]]): Used {
  const use = members.reduce((most, { utilization }) => Math.max(most, ...utilization), 0);
  return { part, use, ...percentOf(use) };
}

const mostUsedFirst = (a: Used, b: Used): number => b.use - a.use;
const withoutUse = ({ part, percent, isOver }: Used): PartUse => ({ part, percent, isOver });

/** All members of a part as one mesh, with use and place along the part at each corner. */
function usedTube(part: string, members: readonly MemberView[], isMoved: boolean): UsedTube {
  const corners = { positions: [], normals: [], use: [], along: [] } as Record<
    'positions' | 'normals' | 'use' | 'along',
    number[]
  >;
  let start = 0;
  members.forEach(({ from, to, moved, outside, utilization }, m) => {
    const [a, b] = isMoved ? moved : [from, to];
    const length = distance3(a, b);
    if (length < SHORTEST) return;
    const { positions, normals } = shade(cylinderMesh(a, b, outside / 2, SIDES));
    const shares = sharesAlong(positions, a, b, length);
    const goesOn = [isJoined(members[m - 1], from), isJoined(members[m + 1], to)] as const;
    for (let k = 0; k < shares.length; k += 3) {
      if (isInnerEnd(shares.slice(k, k + 3), goesOn)) continue;
      corners.positions.push(...positions.subarray(3 * k, 3 * k + 9));
      corners.normals.push(...normals.subarray(3 * k, 3 * k + 9));
      for (const share of shares.slice(k, k + 3)) {
        corners.use.push(utilization[0] + (utilization[1] - utilization[0]) * share);
        corners.along.push(start + length * share);
      }
    }
    start += length;
  });
  return {
    name: part,
    part,
    look: 'used',
    positions: Float32Array.from(corners.positions),
    normals: Float32Array.from(corners.normals),
    edges: new Float32Array(),
    use: Float32Array.from(corners.use),
    along: Float32Array.from(corners.along),
  };
}

/** Does this member of the same part go on at the point? */
const isJoined = (member: MemberView | undefined, at: Point3): boolean =>
  member !== undefined && Math.min(distance3(member.from, at), distance3(member.to, at)) < SHORTEST;

/** A triangle of an end that lies within the tube: it would show as a ring. */
const isInnerEnd = (shares: readonly number[], [before, after]: readonly [boolean, boolean]): boolean =>
  (before && shares.every((share) => share < END_SHARE)) ||
  (after && shares.every((share) => share > 1 - END_SHARE));

/** Of each corner, how far it is from a to b: 0 to 1. */
function sharesAlong(positions: Float32Array, a: Point3, b: Point3, length: number): readonly number[] {
  const [x, y, z] = [b.x - a.x, b.y - a.y, b.z - a.z].map((d) => d / length ** 2) as [number, number, number];
  return Array.from(
    { length: positions.length / 3 },
    (_, i) =>
      (positions[3 * i]! - a.x) * x + (positions[3 * i + 1]! - a.y) * y + (positions[3 * i + 2]! - a.z) * z,
  );
}
