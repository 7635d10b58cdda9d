/**
 * Rooms between parts against brute force: both parts as clouds of points, the least distance over all pairs. The
 * cloud of a part is made from its shape alone: a chain run as a bar with round edges, a sprocket as a disc, a tire as
 * a disc rolled in a ball, the engine as the faces of its box. Straight tubes at random places, some of them touching.
 */
import { expect, test } from 'vitest';
import { layOut, placeBike } from '../../src/core/bike/index.ts';
import { solveDriveline } from '../../src/core/driveline/index.ts';
import { type Clearance, clearances } from '../../src/core/fit/index.ts';
import { type Point3, toWorld } from '../../src/core/geometry/index.ts';
import { seeded } from '../support/mutate.ts';
import { smallBuild } from '../support/smallBuild.ts';

/** Tubes are looked at every 4 mm: at most √(12.7² + 2²) − 12.7 = 0.16 mm too much; clouds add under 0.1 mm [m]. */
const TOLERANCE = 0.3e-3;
/** Nearer than this to a surface the cloud is too coarse, and inside it there is no distance to compare [m]. */
const CLEAR_OF_SURFACE = 3e-3;
const TUBE_RADIUS = 12.7e-3;
const POINTS_ON_TUBE = 240;

const steps = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

/** Least distance of two clouds [m]. */
function cloudDistance(a: readonly Point3[], b: readonly Point3[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const p of a)
    for (const q of b) {
      const squared = (p.x - q.x) ** 2 + (p.y - q.y) ** 2 + (p.z - q.z) ** 2;
      if (squared < least) least = squared;
    }
  return Math.sqrt(least);
}

function disc(center: Point3, radius: number, ys: readonly number[], rings: number): readonly Point3[] {
  return steps(0, radius, rings).flatMap((r) =>
    steps(0, 2 * Math.PI, Math.max(1, Math.ceil((2 * Math.PI * r) / 2e-3))).flatMap((angle) =>
      ys.map((y) => ({ x: center.x + r * Math.cos(angle), y, z: center.z + r * Math.sin(angle) })),
    ),
  );
}

interface Scene {
  readonly found: readonly Clearance[];
  readonly clouds: Readonly<
    Record<string, () => { readonly cloud: readonly Point3[]; readonly grown: number }>
  >;
  readonly tube: readonly Point3[];
}

function scene(random: () => number): Scene {
  const at = (low: number, high: number): number => Math.round((low + (high - low) * random()) * 10) / 10;
  const end = () => ({ from: 'origin', forward: at(-150, 500), side: at(-40, 140), height: at(60, 420) });
  const build = smallBuild({
    wheels: { rear: { growth: 3 } },
    frame: { nodes: { a: end(), b: end() }, tubes: { probe: { tubing: 'rail', through: ['a', 'b'] } } },
  });
  const layout = layOut(build);
  const drives = solveDriveline(build, layout);
  const bike = placeBike(build, layout, drives.shafts);
  const [a, b] = [layout.points.a!, layout.points.b!];
  const chain = drives.chains.final!;
  const y = bike.ladder.lines.find((line) => line.drive === 'final')!.drivenY;
  const [from, to] = [bike.shafts.engine!, bike.shafts.rearAxle!];
  const across = steps(y - chain.chain.halfWidth, y + chain.chain.halfWidth, 8);
  const sprocket = (center: Point3, diameter: number) =>
    disc(center, diameter / 2, across, Math.ceil(diameter / 4e-3));
  const { frame, half } = bike.engine.box;
  const rear = bike.shafts.rearAxle!;
  const crown = layout.rearTire.width / 2 + 3e-3;
  return {
    found: clearances(build, bike, drives),
    tube: steps(0, 1, POINTS_ON_TUBE).map((t) => ({
      x: a.x + t * (b.x - a.x),
      y: a.y + t * (b.y - a.y),
      z: a.z + t * (b.z - a.z),
    })),
    clouds: {
      'sprocket-tube': () => ({
        cloud: [
          ...sprocket(from, chain.driver.outsideDiameter),
          ...sprocket(to, chain.driven.outsideDiameter),
        ],
        grown: 0,
      }),
      'chain-tube': () => ({
        cloud: runsOf(from, to, chain.driver.pitchDiameter / 2, chain.driven.pitchDiameter / 2).flatMap(
          ([p, q]) =>
            steps(0, 1, 240).flatMap((t) => {
              const middle = { x: p.x + t * (q.x - p.x), y, z: p.z + t * (q.z - p.z) };
              return disc(
                middle,
                chain.chain.plateHeight / 2,
                across.filter((_, i) => i % 4 === 0),
                3,
              );
            }),
        ),
        grown: 0,
      }),
      // A tire with a half-round crown is a flat disc rolled in a ball of half its width.
      'tire-tube': () => ({ cloud: disc(rear, layout.rearTire.radius - crown, [0], 120), grown: crown }),
      'engine-tube': () => ({
        cloud: [
          [half.x, half.y, half.z],
          [half.y, half.z, half.x],
          [half.z, half.x, half.y],
        ].flatMap(([u, v, w], axis) =>
          steps(-u!, u!, 120).flatMap((i) =>
            steps(-v!, v!, 120).flatMap((j) =>
              [-w!, w!].map((k) => {
                const [x, yy, z] = axis === 0 ? [i, j, k] : axis === 1 ? [k, i, j] : [j, k, i];
                return toWorld(frame, { x: x!, y: yy!, z: z! });
              }),
            ),
          ),
        ),
        grown: 0,
      }),
    },
  };
}

/** Outer tangents, by turning until both normals agree: the point of each circle furthest along a common direction. */
function runsOf(from: Point3, to: Point3, r1: number, r2: number): readonly (readonly [Point3, Point3])[] {
  const supports = (angle: number) =>
    from.x * Math.cos(angle) +
    from.z * Math.sin(angle) +
    r1 -
    (to.x * Math.cos(angle) + to.z * Math.sin(angle) + r2);
  const angles: number[] = [];
  const count = 3600;
  for (let i = 0; i < count; i++) {
    let [low, high] = [(2 * Math.PI * i) / count, (2 * Math.PI * (i + 1)) / count];
    if (supports(low) * supports(high) > 0) continue;
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (supports(low) * supports(middle) <= 0) high = middle;
      else low = middle;
    }
    angles.push(low);
  }
  return angles.map((angle) => {
    const out = (center: Point3, r: number): Point3 => ({
      x: center.x + r * Math.cos(angle),
      y: 0,
      z: center.z + r * Math.sin(angle),
    });
    return [out(from, r1), out(to, r2)] as const;
  });
}

test('gaps of chains, sprockets, tires and engine to tubes are those of their clouds of points', () => {
  const compared = new Map<string, number>();
  for (let seed = 1; seed <= 160 && [...compared.values()].filter((n) => n >= 3).length < 4; seed++) {
    const { found, clouds, tube } = scene(seeded(seed));
    for (const { rule, parts, gap } of found) {
      const isProbe = parts[1] === 'probe' && parts[0] !== 'front tire';
      if (!isProbe || gap + TUBE_RADIUS < CLEAR_OF_SURFACE || (compared.get(rule) ?? 0) >= 3) continue;
      const { cloud, grown } = clouds[rule]!();
      const brute = cloudDistance(tube, cloud) - grown - TUBE_RADIUS;
      expect(Math.abs(gap - brute), `${rule}, seed ${seed}: ${gap} against ${brute}`).toBeLessThan(TOLERANCE);
      compared.set(rule, (compared.get(rule) ?? 0) + 1);
    }
  }
  expect(Object.fromEntries(compared)).toEqual({
    'chain-tube': 3,
    'sprocket-tube': 3,
    'tire-tube': 3,
    'engine-tube': 3,
  });
});

test('a tube in the middle of a part is inside it by at least its own radius', () => {
  const build = smallBuild({
    frame: {
      nodes: {
        a: { from: 'engineBase', left: 150, up: 150 },
        b: { from: 'engineBase', left: -150, up: 150 },
        c: { from: 'rearAxle', left: 100, forward: 90 },
        d: { from: 'rearAxle', left: -100, forward: 90 },
      },
      tubes: {
        'through-engine': { tubing: 'rail', through: ['a', 'b'] },
        'through-tire': { tubing: 'rail', through: ['c', 'd'] },
      },
    },
  });
  const layout = layOut(build);
  const drives = solveDriveline(build, layout);
  const found = clearances(build, placeBike(build, layout, drives.shafts), drives);
  const gap = (rule: string, tube: string) =>
    found.find((one) => one.rule === rule && one.parts[1] === tube)!.gap;
  expect(gap('engine-tube', 'through-engine')).toBeCloseTo(-TUBE_RADIUS, 9);
  // On the center plane at 90 mm from the axle the tread is 45 mm of half width away sideways.
  expect(gap('tire-tube', 'through-tire')).toBeLessThanOrEqual(-TUBE_RADIUS);
});
