import { z } from 'zod';
import {
  type Bend,
  buildCenterline,
  type Centerline,
  overbentAngle,
  type Point3,
  pointsOfLegs,
} from '../geometry/index.ts';
import {
  angleField,
  bad,
  degrees,
  derived,
  type Figure,
  good,
  type Issue,
  lengthField,
  mm,
  type Outcome,
  resultField,
} from '../quantity/index.ts';
import type { WorksheetRun } from './worksheet.ts';

const REACH = { min: -20000, max: 20000 };
const coordinate = (axis: string) => lengthField(`${axis} of a point`, REACH);

export const tubeInput = z.strictObject({
  of: z.literal('tube'),
  centerlineRadius: lengthField('bend radius at the centerline of the tube', { above: 0, max: 10000 }),
  points: z
    .array(z.tuple([coordinate('x'), coordinate('y'), coordinate('z')]))
    .min(2)
    .max(200)
    .meta({
      description: 'centerline points: both ends and the corner of every bend; or give legs and bends',
    })
    .optional(),
  legs: z
    .array(lengthField('centerline length from corner to corner', { above: 0, max: 20000 }))
    .min(1)
    .max(200)
    .meta({ description: 'legs in order, one more than bends' })
    .optional(),
  bends: z
    .array(
      z.strictObject({
        angle: angleField('bend angle, turned from straight', { above: 0, max: 179 }),
        rotation: angleField(
          'turn of the tube since the bend before, clockwise as seen along the tube from its first end',
          { min: -360, max: 360 },
        ).default(degrees(0)),
      }),
    )
    .max(199)
    .meta({ description: 'bends between the legs, in order' })
    .optional(),
  springback: angleField('how far a bend springs back, read from a sample bend', { min: 0, max: 45 }).default(
    degrees(0),
  ),
  benderOffset: lengthField(
    'from the mark set at the bender to the start of the bend, read from a sample bend',
    {
      min: -1000,
      max: 1000,
    },
  ).default(mm(0)),
});

const scheduleRow = z.strictObject({
  mark: resultField('length', 'where to mark the tube, from its first end: start less the bender offset'),
  start: resultField('length', 'start of the bend, from the first end along the tube'),
  end: resultField('length', 'end of the bend, from the first end along the tube'),
  straightBefore: resultField('length', 'straight length before the bend'),
  rotation: resultField(
    'angle',
    'turn of the tube since the bend before, clockwise as seen along the tube from its first end',
  ),
  angle: resultField('angle', 'bend angle to end up with'),
  bentAngle: resultField('angle', 'angle to bend to, springback added'),
  arcLength: resultField('length', 'length of tube in the bend'),
  tangentLength: resultField('length', 'from the corner to the start of the bend'),
});

export const tubeOutput = z.strictObject({
  of: z.literal('tube'),
  developedLength: resultField('length', 'length of straight tube that it is bent from, without spare'),
  straightAfter: resultField('length', 'straight length after the last bend'),
  schedule: z.array(scheduleRow).meta({ description: 'bends in order from the first end' }),
});

export const TUBE_FORMULAS: readonly string[] = [
  'tube: tangent length = R·tan(θ/2)',
  'tube: developed length = sum of straights + Σ R·θ',
  'tube: mark = start of bend − bender offset',
  'tube: angle to bend to = θ + springback',
];

type Input = z.output<typeof tubeInput>;
type Output = z.output<typeof tubeOutput>;

export function runTube(given: Input): Outcome<WorksheetRun<Output>> {
  const points = pointsOf(given);
  if (!points.ok) return points;
  const built = buildCenterline({ points: points.value, bendRadius: given.centerlineRadius });
  if (!built.ok) {
    const [first, ...rest] = built.issues;
    const named = (issue: Issue): Issue => ({ ...issue, path: fieldOf(issue.path, given) });
    return bad(named(first), ...rest.map(named));
  }
  const line = built.value;
  const schedule = line.bends.map((bend) => rowOf(bend, given));
  const tooFar = schedule.findIndex((row) => row.bentAngle >= Math.PI);
  if (tooFar >= 0) {
    const reason = `bend ${tooFar + 1} and its springback make more than half a turn`;
    return bad({ code: 'conflict', path: 'springback', reason });
  }
  const straightAfter = line.length - (line.bends.at(-1)?.end ?? 0);
  const result: Output = { of: 'tube', developedLength: line.length, straightAfter, schedule };
  return good({
    result,
    figures: [lengthFigure(line, straightAfter, given.centerlineRadius), ...markFigures(schedule, given)],
  });
}

function pointsOf(given: Input): Outcome<readonly Point3[]> {
  const { points, legs, bends } = given;
  const refuse = (path: string, reason: string) => bad({ code: 'conflict', path, reason });
  if (points) {
    if (legs || bends) return refuse('points', 'give either points, or legs and bends, not both');
    return good(points.map(([x, y, z]) => ({ x, y, z })));
  }
  if (!legs) return bad({ code: 'missing', path: 'points', wanted: 'points, or legs and bends' });
  const corners = bends ?? [];
  if (legs.length !== corners.length + 1) {
    return refuse('legs', `${corners.length} bends join ${corners.length + 1} legs; found ${legs.length}`);
  }
  return good(pointsOfLegs(legs, corners));
}

/** A point's number, as the leg that ends there when the tube was given by its legs. */
function fieldOf(path: string, given: Input): string {
  if (path === 'bendRadius') return 'centerlineRadius';
  const point = /^points\[(\d+)\]$/.exec(path);
  return point && !given.points ? `legs[${Number(point[1]) - 1}]` : path;
}

const rowOf = (bend: Bend, given: Input): Output['schedule'][number] => ({
  mark: bend.start - given.benderOffset,
  start: bend.start,
  end: bend.end,
  straightBefore: bend.straightBefore,
  rotation: bend.rotation,
  angle: bend.angle,
  bentAngle: overbentAngle(bend.angle, given.springback),
  arcLength: bend.arcLength,
  tangentLength: bend.tangentLength,
});

function lengthFigure(line: Centerline, straightAfter: number, radius: number): Figure {
  const straights = line.bends.reduce((sum, bend) => sum + bend.straightBefore, straightAfter);
  const turn = line.bends.reduce((sum, bend) => sum + bend.angle, 0);
  return {
    id: 'bend.developedLength',
    symbol: 'L',
    name: 'developed length of the tube',
    value: line.length,
    kind: 'length',
    formula: 'straights + R·Σθ',
    inputs: [
      { name: 'sum of straights', value: straights, kind: 'length' },
      { name: 'R, centerline radius', value: radius, kind: 'length' },
      { name: 'Σθ, sum of bend angles', value: turn, kind: 'angle' },
    ],
    source: derived('tangent arc in a corner'),
  };
}

function markFigures(schedule: Output['schedule'], given: Input): Figure[] {
  return schedule.map((row, i) => ({
    id: `bend.mark.${i + 1}`,
    symbol: `m${i + 1}`,
    name: `mark of bend ${i + 1} from the first end`,
    value: row.mark,
    kind: 'length',
    formula: 'start of bend − bender offset',
    inputs: [
      { name: 'start of bend', value: row.start, kind: 'length' },
      { name: 'bender offset', value: given.benderOffset, kind: 'length' },
    ],
    source: derived('distance along the tube'),
  }));
}
