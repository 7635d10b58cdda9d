import { beforeAll, describe, expect, test } from 'vitest';
import {
  circleLoop,
  distanceToLoop,
  hullLoop,
  isSimpleLoop,
  type Loop,
  locatePoint,
  nearestOfLoops,
  offsetLoop,
  type Point,
  polygonLoop,
  regionProperties,
  rotateLoop,
  roundedPolygonLoop,
  slotLoop,
  translateLoop,
} from '../../src/core/geometry/index.ts';
import type { Outcome } from '../../src/core/quantity/index.ts';
import { runPython } from '../support/debianPython.ts';

/** Chords an arc in the polygon that the other library measures; a chord polygon's area is off by about (sweep/n)²/12. */
const CHORDS = 2000;

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

// Sizes in meters, as of plates for a small bike; chosen to have convex and hollow arcs, over and under half a turn.
const bracket = must(
  roundedPolygonLoop([
    { x: 0, y: 0, radius: 0.008 },
    { x: 0.12, y: 0, radius: 0.015 },
    { x: 0.12, y: 0.04, radius: 0.01 },
    { x: 0.05, y: 0.04, radius: 0.012 },
    { x: 0.03, y: 0.09, radius: 0.007 },
    { x: 0, y: 0.09 },
  ]),
);
const hull = hullLoop([
  { center: { x: 0, y: 0 }, radius: 0.02 },
  { center: { x: 0.09, y: 0.01 }, radius: 0.035 },
  { center: { x: 0.05, y: 0.1 }, radius: 0.005 },
  { center: { x: 0.05, y: 0.03 }, radius: 0.004 },
]);
const keyhole: Loop = [
  { x: 0.01, y: -0.004, bulge: 0 },
  { x: 0.04, y: -0.004, bulge: 0 },
  { x: 0.04, y: 0.004, bulge: 0 },
  { x: 0.01, y: 0.004, bulge: 3.2 },
];
const hollow: Loop = [
  { x: 0, y: 0, bulge: -0.3 },
  { x: 0.1, y: 0, bulge: 0.2 },
  { x: 0.1, y: 0.06, bulge: 0 },
  { x: 0, y: 0.06, bulge: -0.5 },
];

interface Case {
  readonly name: string;
  readonly outline: Loop;
  readonly holes: readonly Loop[];
  readonly other: Loop;
  readonly points: readonly Point[];
  readonly offset: number;
}

const grid: Point[] = Array.from({ length: 49 }, (_, k) => ({
  x: -0.031 + 0.0297 * (k % 7),
  y: -0.047 + 0.0293 * Math.floor(k / 7),
}));

const cases: readonly Case[] = [
  {
    name: 'bracket with holes',
    outline: bracket,
    holes: [
      circleLoop({ x: 0.02, y: 0.06 }, 0.006),
      slotLoop({ x: 0.03, y: 0.02 }, { x: 0.08, y: 0.018 }, 0.011),
    ],
    other: circleLoop({ x: 0.1, y: 0.09 }, 0.02),
    points: grid,
    offset: 0.004,
  },
  {
    name: 'bracket, inward',
    outline: rotateLoop(bracket, 0.7),
    holes: [],
    other: slotLoop({ x: 0.2, y: 0.1 }, { x: 0.2, y: 0.3 }, 0.03),
    points: grid,
    offset: -0.009,
  },
  {
    name: 'hull of circles',
    outline: hull,
    holes: [circleLoop({ x: 0.09, y: 0.01 }, 0.02)],
    other: translateLoop(hull, { x: 0.2, y: 0.03 }),
    points: grid,
    offset: -0.003,
  },
  {
    name: 'keyhole',
    outline: keyhole,
    holes: [],
    other: translateLoop(bracket, { x: 0.05, y: 0.02 }),
    points: grid,
    offset: 0.003,
  },
  {
    name: 'hollow sides',
    outline: hollow,
    holes: [],
    other: circleLoop({ x: 0.05, y: -0.03 }, 0.01),
    points: grid,
    offset: 0.012,
  },
  {
    name: 'polygon',
    outline: polygonLoop([
      { x: 0, y: 0 },
      { x: 0.07, y: 0.01 },
      { x: 0.09, y: 0.08 },
      { x: 0.03, y: 0.05 },
    ]),
    holes: [],
    other: circleLoop({ x: 0.2, y: 0.2 }, 0.05),
    points: grid,
    offset: -0.006,
  },
];

const SCRIPT = `
import json, math, sys
from shapely.geometry import LinearRing, Point, Polygon

def points(loop, chords):
    out = []
    for i, v in enumerate(loop):
        w = loop[(i + 1) % len(loop)]
        out.append((v['x'], v['y']))
        b = v['bulge']
        if b == 0: continue
        theta = 4 * math.atan(b)
        p, q = complex(v['x'], v['y']), complex(w['x'], w['y'])
        # the center sees the chord under theta: q - c = (p - c) e^(i theta)
        e = complex(math.cos(theta), math.sin(theta))
        c = (q - p * e) / (1 - e)
        for k in range(1, chords):
            a = theta * k / chords
            z = c + (p - c) * complex(math.cos(a), math.sin(a))
            out.append((z.real, z.imag))
    return out

def moments(ring):
    a = xx = yy = xy = 0.0
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1]):
        k = x0 * y1 - x1 * y0
        a += k / 2
        yy += k * (y0 * y0 + y0 * y1 + y1 * y1) / 12
        xx += k * (x0 * x0 + x0 * x1 + x1 * x1) / 12
        xy += k * (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) / 24
    s = 1 if a > 0 else -1
    return s * xx, s * yy, s * xy

out = []
for case in json.load(sys.stdin)['cases']:
    n = case['chords']
    ring = points(case['outline'], n)
    holes = [points(h, n) for h in case['holes']]
    other = points(case['other'], n)
    poly = Polygon(ring, holes)
    solid = Polygon(ring)
    c = poly.centroid
    local = lambda r: [(x - c.x, y - c.y) for x, y in r]
    m = moments(local(ring))
    for h in holes: m = tuple(p - q for p, q in zip(m, moments(local(h))))
    grown = solid.buffer(case['offset'], resolution=1000)
    out.append({
        'area': poly.area, 'perimeter': poly.length, 'centroid': [c.x, c.y],
        'iyy': m[0], 'ixx': m[1], 'ixy': m[2], 'bounds': list(poly.bounds), 'simple': LinearRing(ring).is_simple,
        'distances': [LinearRing(ring).distance(Point(p['x'], p['y'])) for p in case['points']],
        'inside': [solid.contains(Point(p['x'], p['y'])) for p in case['points']],
        'apart': LinearRing(ring).distance(LinearRing(other)),
        'offsetArea': grown.area, 'offsetPerimeter': grown.length, 'offsetType': grown.geom_type,
    })
print(json.dumps(out))
`;

interface Measured {
  readonly area: number;
  readonly perimeter: number;
  readonly centroid: readonly [number, number];
  readonly ixx: number;
  readonly iyy: number;
  readonly ixy: number;
  readonly bounds: readonly [number, number, number, number];
  readonly simple: boolean;
  readonly distances: readonly number[];
  readonly inside: readonly boolean[];
  readonly apart: number;
  readonly offsetArea: number;
  readonly offsetPerimeter: number;
  readonly offsetType: string;
}

/** Chord polygon: sagitta R(1 − cos(sweep/2n)) is under 1e-8 m here, relative area error under 1e-6. */
const RELATIVE = 2e-6;
const LENGTH = 2e-8;

let measured: readonly Measured[] = [];
beforeAll(() => {
  const input = { cases: cases.map((one) => ({ ...one, chords: CHORDS })) };
  measured = runPython(SCRIPT, input, { module: 'shapely', debianPackage: 'python3-shapely' }) as Measured[];
}, 120_000);

const close = (found: number, wanted: number, tolerance: number, what: string): void =>
  expect(Math.abs(found - wanted), `${what}: ${found}, other library ${wanted}`).toBeLessThanOrEqual(
    tolerance,
  );

describe.each(cases.map((one, i) => [one.name, one, i] as const))(
  '%s against a general geometry library',
  (_name, one, i) => {
    test('area, perimeter, centroid, second moments and box', () => {
      const m = measured[i]!;
      const p = regionProperties(one.outline, one.holes);
      const size = m.ixx + m.iyy;
      close(p.area, m.area, RELATIVE * m.area, 'area');
      close(p.perimeter, m.perimeter, RELATIVE * m.perimeter, 'perimeter');
      close(p.centroid.x, m.centroid[0], LENGTH, 'x');
      close(p.centroid.y, m.centroid[1], LENGTH, 'y');
      close(p.ixx, m.ixx, RELATIVE * size, 'Ixx');
      close(p.iyy, m.iyy, RELATIVE * size, 'Iyy');
      close(p.ixy, m.ixy, RELATIVE * size, 'Ixy');
      const { minX, minY, maxX, maxY } = p.bounds;
      [minX, minY, maxX, maxY].forEach((v, k) => {
        close(v, m.bounds[k]!, LENGTH, 'box');
      });
    });

    test('simple; distances and sides of points; distance to another outline', () => {
      const m = measured[i]!;
      expect(isSimpleLoop(one.outline)).toBe(m.simple);
      one.points.forEach((p, k) => {
        close(distanceToLoop(one.outline, p), m.distances[k]!, LENGTH, `distance of point ${k}`);
        expect(locatePoint(one.outline, p) === 'inside', `side of point ${k}`).toBe(m.inside[k]);
      });
      close(nearestOfLoops(one.outline, one.other).distance, m.apart, 2 * LENGTH, 'distance apart');
    });

    test('offset has the area and length of the other library’s buffer', () => {
      const m = measured[i]!;
      expect(m.offsetType).toBe('Polygon');
      const p = regionProperties(must(offsetLoop(one.outline, one.offset)), []);
      close(p.area, m.offsetArea, 5 * RELATIVE * m.offsetArea, 'area');
      close(p.perimeter, m.offsetPerimeter, 5 * RELATIVE * m.offsetPerimeter, 'perimeter');
    });
  },
);
