import {
  add2,
  directionToLocal,
  dot2,
  dot3,
  type Frame3,
  left2,
  type Point,
  type Point3,
  scale2,
  subtract3,
  unit2,
  unit3,
} from '../../../../geometry/index.ts';
import type { Holder } from '../../../plates/index.ts';
import { edgeOf, edgePoints } from '../../model/contact.ts';
import type { DraftLine } from '../../model/draft.ts';
import type { BikeFrame } from '../../model/frameTypes.ts';
import type { PlacedPlate } from './plateAxes.ts';

/** Edge this much further from the tube than where it is nearest still lies on it [m]. @source practice */
const SEAM = 3e-3;
/** Tube looked at on both sides of where the model holds the plate [m], in steps of [m]. */
const BESIDE = 0.06;
const STEP = 5e-3;
/** A tube that runs through the plate's plane more square than this is gripped by a saddle [cosine]. */
const ACROSS = 0.7;

/** Where a plate's edge lies on each of the tubes that hold it, from end to end: taken as welded there. */
export function contactEdges(frame: BikeFrame, plate: PlacedPlate): readonly Holder[] {
  const { draft } = frame;
  const lead = draft.leads(plate.node);
  const held = new Map<string, number[]>();
  for (const weld of frame.welds) {
    if (weld.with !== plate.pattern.id || weld.kind !== 'plate' || draft.leads(weld.node) !== lead) continue;
    const at = draft.places.get(weld.node)!.at;
    held.set(weld.line, [...(held.get(weld.line) ?? []), at]);
  }
  if (held.size === 0) return [];
  const flat = edgeOf(plate.pattern);
  const placed = edgePoints(plate.pattern, plate.index);
  return [...held].flatMap(([id, stations]) =>
    seam(draft.lines.get(id)!, stations, flat, placed, plate.frame),
  );
}

function seam(
  line: DraftLine,
  stations: readonly number[],
  flat: readonly Point[],
  placed: readonly Point3[],
  axes: Frame3,
): readonly Holder[] {
  const from = Math.max(0, Math.min(...stations) - BESIDE);
  const to = Math.min(line.length, Math.max(...stations) + BESIDE);
  const count = Math.max(1, Math.ceil((to - from) / STEP));
  const samples = Array.from({ length: count + 1 }, (_, k) => line.at(from + ((to - from) * k) / count));
  const gaps = placed.map((point) => nearest(samples, point));
  const least = Math.min(...gaps);
  const next = (i: number): number => (i + 1) % flat.length;
  const isOn = gaps.map((gap) => gap <= least + SEAM);
  const touching = flat.flatMap((_, i) => (isOn[i] && isOn[next(i)] ? [i] : []));
  // A corner alone on the tube is held along the two edges that meet there.
  const corner = gaps.indexOf(least);
  const used = touching.length > 0 ? touching : [corner, (corner + flat.length - 1) % flat.length];
  const ends = samples.length - 1;
  const along = unit3(subtract3(samples[ends]!, samples[0]!));
  if (Math.abs(dot3(along, axes.z)) > ACROSS)
    return used.map((i) => ({ by: 'line', from: flat[i]!, to: flat[next(i)]! }));
  const touched = used.flatMap((i) => [flat[i]!, flat[next(i)]!]);
  return [straight(touched, directionToLocal(axes, along))];
}

/** Distance to the nearest of many places [m]. */
function nearest(places: readonly Point3[], { x, y, z }: Point3): number {
  let least = Number.POSITIVE_INFINITY;
  for (const place of places) {
    const [dx, dy, dz] = [place.x - x, place.y - y, place.z - z];
    least = Math.min(least, dx * dx + dy * dy + dz * dz);
  }
  return Math.sqrt(least);
}

/** Along a tube the seam counts straight from end to end, round corners too. */
function straight(points: readonly Point[], along: Point): Holder {
  const direction = unit2(along);
  const at = points.map((p) => dot2(p, direction));
  const off = points.reduce((sum, p) => sum + dot2(p, left2(direction)), 0) / points.length;
  const place = (s: number): Point => add2(scale2(direction, s), scale2(left2(direction), off));
  return { by: 'line', from: place(Math.min(...at)), to: place(Math.max(...at)) };
}
