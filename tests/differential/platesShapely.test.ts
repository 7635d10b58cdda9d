/**
 * Every plate recipe against a general geometry library. The other side gets the sizes as they are typed, in
 * millimeters, and builds the plate its own way: discs, convex hulls, buffers and cuts; no outline of ours goes in.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { type FlatPattern, platesOf } from '../../src/core/plates/index.ts';
import { runPython } from '../support/debianPython.ts';
import { bikeOf, everyPlate, plateBuild, someNeeds } from '../support/plateBuild.ts';

const SCRIPT = `
import json, math, sys
from shapely.geometry import LineString, MultiPoint, Point, Polygon, box
from shapely.ops import unary_union

Q = 720
sys.stdin.read()
def disc(x, y, r): return Point(x, y).buffer(r, resolution=Q)
def hull(*parts): return unary_union([p if hasattr(p, 'area') else Point(p) for p in parts]).convex_hull
def slot(a, b, w): return LineString([a, b]).buffer(w / 2, resolution=Q)
def opened(shape, r): return shape.buffer(-r, resolution=Q, join_style=2).buffer(r, resolution=Q)
def less(shape, holes):
    for h in holes: shape = shape.difference(h)
    return shape
def polar(r, degrees): return (r * math.cos(math.radians(degrees)), r * math.sin(math.radians(degrees)))
def bend(t, r, angle, k):
    ba = angle * (r + k * t)
    setback = (r + t) * math.tan(angle / 2)
    return ba, setback, 2 * setback - ba

plates = {}

# engine: 162 x 75.5 slotted 26 mm, middle 4 mm behind; rails 220 x 180, 10 mm to the left since the engine stands 10 mm to the right; margin and corner 2 x 8
ends = [(x - 4 + s * 13, y) for x in (-81, 81) for y in (-37.75, 37.75) for s in (-1, 1)]
rails = [(x, y) for x in (-90, 90) for y in (-100, 120)]
core = MultiPoint(ends + rails).envelope
slots = [slot(ends[i], ends[i + 1], 8.5) for i in range(0, 8, 2)]
plates['engine'] = less(core.buffer(16, resolution=Q), slots + [disc(x, y, 4.5) for x, y in rails])

# axle: slot 30 mm, middle 10 mm behind, 15 + 0.5 wide; tube of 25.4 lands 40 mm ahead; flange behind
ba, setback, bd = bend(6, 6, math.pi / 2, 0.44)
face = 25 + 7.75 + 16
start, tip = face - setback, face - bd + 35
body = hull(disc(5, 0, 23.75), disc(40, 0, 25.4), (-25, 23.75), (-25, -23.75), (-start, 20), (-start, -20))
axle = body.union(box(-tip, -20, -start, 20))
plates['axle'] = less(axle, [slot((-25, 0), (5, 0), 15.5), disc(-(face - bd + 18), 0, 4.5)])

plates['counter'] = less(hull(disc(0, 0, 17.5 + 14), (45, -70), (-45, -70)),
    [disc(0, 0, 17.5), disc(27.5, -54, 4.5), disc(-27.5, -54, 4.5)])

# outboard: flange bearing of 90 mm spacing, bent foot 140 mm below the shaft
low = -(140 - setback)
body = hull(disc(0, 0, 32), disc(45, 0, 17.5), disc(-45, 0, 17.5), (75, low), (-75, low))
def right(y): return body.intersection(LineString([(-500, y), (500, y)])).bounds[2]
top, bottom = -32, -140 + 48
inset = 24 * math.hypot(1, (right(bottom) - right(top)) / (top - bottom))
xt, xb = right(top) - inset, right(bottom) - inset
least = min(2 * xt, 2 * xb, top - bottom)
window = opened(Polygon([(-xb, bottom), (xb, bottom), (xt, top), (-xt, top)]), least / 5)
foot = body.union(box(-75, -(140 - bd + 40), 75, low))
plates['outboard'] = less(foot, [window, disc(0, 0, 20), disc(45, 0, 5.5), disc(-45, 0, 5.5)]
    + [disc(x, -(140 - bd + 24), 4.5) for x in (-50, 50)])

out, across = polar(85, 125), polar(30, 215)
holes = [(0, 0, 15.25), (out[0] + across[0], out[1] + across[1], 9), (out[0] - across[0], out[1] - across[1], 9),
    polar(60, 200) + (9,)]
plates['caliper'] = less(hull(*[disc(x, y, d / 2 + 9) for x, y, d in holes]), [disc(x, y, d / 2) for x, y, d in holes])

ba, setback, bd = bend(3, 3, math.radians(60), 0.44)
tip = 45 - bd + 45
flat = opened(box(-45, -55, 45 - setback, 55), 6).union(opened(box(0, -25, tip, 25), 6))
plates['seat-front'] = less(flat, [disc(x, y, 3.3) for x in (-20, 20) for y in (-30, 30)] + [disc(tip - 15, 0, 3.3)])

flat = opened(box(-30, -50, 30, 50), 6).union(opened(box(-70, -20, 0, 20), 6))
plates['seat-rear'] = less(flat, [disc(0, y, 0.281 * 25.4 / 2) for y in (-30, 30)])

# gusset: one tube runs back, the other 160 forward and 240 up
alpha = math.atan2(240, -160)
ends2 = (60 * math.cos(alpha), 60 * math.sin(alpha))
q1, q2 = (70, 12), (ends2[0] + 12 * math.sin(alpha), ends2[1] - 12 * math.cos(alpha))
chord = math.dist(q1, q2)
radius = (chord * chord / 4 + 36) / 12
normal = ((q2[1] - q1[1]) / chord, -(q2[0] - q1[0]) / chord)
center = ((q1[0] + q2[0]) / 2 + normal[0] * (radius - 6), (q1[1] + q2[1]) / 2 + normal[1] * (radius - 6))
plates['gusset'] = less(Polygon([(0, 0), (70, 0), q1, q2, ends2]), [disc(0, 0, 8), disc(center[0], center[1], radius)])

drop = 12.7 - math.sqrt(12.7 ** 2 - 11 ** 2)
plates['peg'] = less(hull(disc(0, 0, 16), (11, -30 - drop), (-11, -30 - drop)), [disc(0, -42.7, 12.7), disc(0, 0, 5.25)])
plates['stand'] = less(hull(disc(0, 0, 18), (30, -34), (-30, -34)), [disc(0, 0, 0.391 * 25.4 / 2), disc(18, -20, 3)])

straight = Polygon([(0, 0), (120, 0), (120, 60), (0, 80)])
def round_corner(shape, at, r, near): return shape.difference(shape.difference(opened(shape, r)).intersection(disc(at[0], at[1], near)))
free = round_corner(round_corner(straight, (0, 0), 10, 15), (0, 80), 25, 40)
free = free.union(disc(74.5, 30, 54.5).intersection(box(120 - 1e-9, 0, 200, 60)))
d = polar(10, 15)
plates['free'] = less(free, [disc(30, 25, 4.5), disc(80, 40, 10), slot((60 - d[0], 18 - d[1]), (60 + d[0], 18 + d[1]), 6.6),
    opened(Polygon([(20, 45), (55, 45), (35, 66)]), 3)])

def moments(ring, cx, cy):
    pts = [(x - cx, y - cy) for x, y in ring.coords]
    xx = yy = xy = a = 0.0
    for (x0, y0), (x1, y1) in zip(pts, pts[1:]):
        k = x0 * y1 - x1 * y0
        a += k
        xx += k * (y0 * y0 + y0 * y1 + y1 * y1) / 12
        yy += k * (x0 * x0 + x0 * x1 + x1 * x1) / 12
        xy += k * (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) / 24
    s = 1 if a > 0 else -1
    return s * xx, s * yy, s * xy

result = {}
for name, shape in plates.items():
    assert shape.geom_type == 'Polygon', name
    c = shape.centroid
    m = moments(shape.exterior, c.x, c.y)
    for h in shape.interiors: m = tuple(p - q for p, q in zip(m, moments(h, c.x, c.y)))
    result[name] = {'area': shape.area, 'x': c.x, 'y': c.y, 'ixx': m[0], 'iyy': m[1], 'ixy': m[2]}
print(json.dumps(result))
`;

interface Measured {
  readonly area: number;
  readonly x: number;
  readonly y: number;
  readonly ixx: number;
  readonly iyy: number;
  readonly ixy: number;
}

/** Arcs of 720 chords a quarter: relative area error under 1e-6 an arc, some plates are half arcs. */
const RELATIVE = 4e-6;
/** [mm] */
const PLACE = 2e-4;
const DENSITY: Readonly<Record<string, number>> = { 'mild-steel': 7850, 'aluminum-6061': 2700 };

let measured: Readonly<Record<string, Measured>> = {};
let patterns: readonly FlatPattern[] = [];
beforeAll(() => {
  measured = runPython(
    SCRIPT,
    {},
    { module: 'shapely', debianPackage: 'python3-shapely' },
  ) as typeof measured;
  const build = plateBuild();
  patterns = platesOf(build, bikeOf(build), someNeeds).patterns;
}, 120_000);

describe('plates against a general geometry library', () => {
  test.each(Object.keys(everyPlate))('%s: area, centroid, second moments, mass', (id) => {
    const pattern = patterns.find((one) => one.id === id)!;
    const m = measured[id]!;
    const polar = m.ixx + m.iyy;
    expect(Math.abs(pattern.area * 1e6 - m.area)).toBeLessThan(RELATIVE * m.area);
    expect(Math.abs(pattern.centroid.x * 1e3 - m.x)).toBeLessThan(PLACE);
    expect(Math.abs(pattern.centroid.y * 1e3 - m.y)).toBeLessThan(PLACE);
    const [ixx, iyy, ixy] = pattern.secondMoments;
    expect(Math.abs(ixx * 1e12 - m.ixx)).toBeLessThan(2 * RELATIVE * polar);
    expect(Math.abs(iyy * 1e12 - m.iyy)).toBeLessThan(2 * RELATIVE * polar);
    expect(Math.abs(ixy * 1e12 - m.ixy)).toBeLessThan(2 * RELATIVE * polar);
    const mass = m.area * 1e-6 * pattern.thickness * DENSITY[pattern.material]!;
    expect(Math.abs(pattern.mass - mass)).toBeLessThan(RELATIVE * mass);
  });

  test('every recipe of the schema is among them', () => {
    expect(new Set(patterns.map((pattern) => pattern.recipe)).size).toBe(11);
  });
});
