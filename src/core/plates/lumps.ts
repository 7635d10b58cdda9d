import type { Inertia, Lump, MassLump } from '../bike/index.ts';
import { sumLumps } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import {
  add3,
  clipLoop,
  cross3,
  directionToWorld,
  dot2,
  type Frame3,
  type HalfPlane,
  type Loop,
  left2,
  type Point,
  type Point3,
  scale3,
  subtract2,
  toWorld,
  unit2,
} from '../geometry/index.ts';
import { materialNamed } from '../standards/index.ts';
import { measureRegion } from './measure.ts';
import { openingLoop } from './openings.ts';
import type { BendLine, FlatPattern } from './pattern.ts';

/**
 * Mass, center and inertia of every placed plate, in the bike. A bent plate is parted at the middle lines of its bends
 * and each flange turned about its bend; each bend turns what lies beyond it, so bends that follow one another on one
 * flange are not chained. Plates without a place are left out.
 * @source derived, m = ρ·A·t; inertia of a flat plate from its second moments of area
 */
export function plateLumps(build: Build, patterns: readonly FlatPattern[]): readonly MassLump[] {
  return patterns.flatMap((pattern) => {
    const first = pattern.placed[0];
    if (!first) return [];
    const each = pattern.count / pattern.placed.length;
    const one = scaled(lumpAt(pattern, first.frame), each);
    const entry = build.plates[pattern.id];
    const front = entry?.recipe === 'caliper-bracket' && entry.brake === 'front';
    return pattern.placed.map(({ hand }, i) => ({
      id: `plates.${pattern.id}${pattern.pair && hand === 'right' ? '.right' : ''}`,
      label: `plate ${pattern.id}`,
      ...(i === 0 ? one : mirroredLump(one)),
      body: front ? ('front' as const) : ('frame' as const),
    }));
  });
}

const scaled = (lump: Lump, times: number): Lump => ({
  mass: lump.mass * times,
  center: lump.center,
  inertia: lump.inertia.map((entry) => entry * times) as unknown as Inertia,
});

function mirroredLump({ mass, center, inertia: [xx, yy, zz, xy, yz, xz] }: Lump): Lump {
  return { mass, center: { ...center, y: -center.y }, inertia: [xx, yy, zz, -xy, -yz, xz] };
}

interface Region {
  readonly area: number;
  readonly centroid: Point;
  readonly moments: readonly [number, number, number];
  readonly frame: Frame3;
}

function lumpAt(pattern: FlatPattern, frame: Frame3): Lump {
  const perArea = materialNamed(pattern.material).density * pattern.thickness;
  const regions = pattern.bends.length === 0 ? [wholeRegion(pattern, frame)] : partedRegions(pattern, frame);
  return sumLumps(regions.map((region) => regionLump(region, perArea, pattern.thickness)));
}

const wholeRegion = (pattern: FlatPattern, frame: Frame3): Region => ({
  area: pattern.area,
  centroid: pattern.centroid,
  moments: pattern.secondMoments,
  frame,
});

function regionLump({ area, centroid, moments, frame }: Region, perArea: number, thickness: number): Lump {
  const mass = area * perArea;
  const [ixx, iyy, ixy] = moments;
  const through = (mass * thickness ** 2) / 12;
  const own = {
    xx: perArea * ixx + through,
    yy: perArea * iyy + through,
    zz: perArea * (ixx + iyy),
    xy: -perArea * ixy,
  };
  return { mass, center: toWorld(frame, { ...centroid, z: thickness / 2 }), inertia: turned(own, frame) };
}

/** R·I·Rᵀ with the columns of R the plate's axes. */
function turned(own: { xx: number; yy: number; zz: number; xy: number }, { x, y, z }: Frame3): Inertia {
  const entry = (of: (p: Point3) => number, or: (p: Point3) => number): number =>
    own.xx * of(x) * or(x) +
    own.yy * of(y) * or(y) +
    own.zz * of(z) * or(z) +
    own.xy * (of(x) * or(y) + of(y) * or(x));
  const [px, py, pz] = [(p: Point3) => p.x, (p: Point3) => p.y, (p: Point3) => p.z];
  return [entry(px, px), entry(py, py), entry(pz, pz), entry(px, py), entry(py, pz), entry(px, pz)];
}

function partedRegions(pattern: FlatPattern, frame: Frame3): Region[] {
  const cuts = pattern.bends.map((bend) => cutOf(bend, pattern.centroid));
  const openings = [...pattern.openings.map((one) => openingLoop(one)), ...pattern.windows];
  const base = (loop: Loop): Loop => cuts.reduce((kept, cut) => clipLoop(kept, flipped(cut)), loop);
  return [
    ...regionOf(base(pattern.outline), openings.map(base), frame),
    ...cuts.flatMap((cut, i) => {
      const flange = (loop: Loop): Loop => clipLoop(loop, cut);
      const bent = bentFrame(pattern, frame, pattern.bends[i]!, cut);
      return regionOf(flange(pattern.outline), openings.map(flange), bent);
    }),
  ];
}

const flipped = ({ at, out }: HalfPlane): HalfPlane => ({ at, out: { x: -out.x, y: -out.y } });

/** The flange is the part beyond the bend, seen from the middle of the plate. */
function cutOf(bend: BendLine, centroid: Point): HalfPlane {
  const out = left2(unit2(subtract2(bend.to, bend.from)));
  const cut = { at: bend.from, out };
  return dot2(subtract2(centroid, bend.from), out) > 0 ? flipped(cut) : cut;
}

/** None where openings take all of a part away; the flaws of those openings say so. */
function regionOf(outline: Loop, holes: readonly Loop[], frame: Frame3): Region[] {
  const measured = measureRegion(outline, holes);
  if (!measured.ok) return [];
  const { area, centroid, ixx, iyy, ixy } = measured.value;
  return [{ area, centroid, moments: [ixx, iyy, ixy], frame }];
}

/** Where the flat of a flange lies once it is bent: turned by the bend angle, its middle layer carried round the bend. */
function bentFrame(pattern: FlatPattern, frame: Frame3, bend: BendLine, cut: HalfPlane): Frame3 {
  const sign = bend.direction === 'up' ? 1 : -1;
  const [c, s] = [Math.cos(bend.angle), Math.sin(bend.angle)];
  const across = left2(cut.out);
  const u = directionToWorld(frame, { ...cut.out, z: 0 });
  const v = directionToWorld(frame, { ...across, z: 0 });
  const leg = add3(scale3(u, c), scale3(frame.z, sign * s));
  const z = cross3(leg, v);
  const rho = bend.insideRadius + pattern.thickness / 2;
  const start = dot2(cut.at, cut.out) - bend.allowance / 2;
  const middle = toWorld(frame, { x: 0, y: 0, z: pattern.thickness / 2 });
  const round = add3(scale3(u, start + rho * s), scale3(frame.z, sign * rho * (1 - c)));
  const origin = add3(
    add3(middle, round),
    add3(scale3(leg, -(start + bend.allowance)), scale3(z, -pattern.thickness / 2)),
  );
  // Axes of the flat, x and y, from those along and across the flange.
  const axis = (along: number, side: number): Point3 => add3(scale3(leg, along), scale3(v, side));
  return { origin, x: axis(cut.out.x, across.x), y: axis(cut.out.y, across.y), z };
}
