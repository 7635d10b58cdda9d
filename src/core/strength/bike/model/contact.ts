import { originalName } from '../../../build/index.ts';
import {
  add3,
  distance3,
  dot2,
  flatten,
  left2,
  type Point,
  type Point3,
  scale3,
  subtract2,
  toWorld,
  unit2,
} from '../../../geometry/index.ts';
import type { FlatPattern } from '../../../plates/index.ts';
import type { DraftLine, FrameDraft } from './draft.ts';
import { nearestOnLine } from './nearest.ts';

/** How far a plate may end from a tube's surface and still be welded or bolted to it [m]. @source practice */
export const REACH = 0.012;
/** Twin tubes whose distances differ by less are equally near [m]. */
const TWINS = 5e-3;
/** Nearer than this it touches; others that only come near are then left out [m]. */
const TOUCH = 4e-3;
const STEP = 0.01;

export interface Contact {
  readonly nodes: readonly string[];
  /** From the nearest surface [m]; 0 where it touches. */
  readonly gap: number;
  readonly lines: readonly string[];
}

/** Points round the edge of a plate in the flat, at most 10 mm apart [m]. */
export function edgeOf(pattern: FlatPattern): readonly Point[] {
  const flat = flatten(pattern.outline, 2e-4);
  return flat.flatMap((a, i) => {
    const b = flat[(i + 1) % flat.length]!;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / STEP));
    return Array.from({ length: count }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / count,
      y: a.y + ((b.y - a.y) * k) / count,
    }));
  });
}

/** The same points of a placed plate in the bike, its bends bent [m]. */
export function edgePoints(pattern: FlatPattern, index: number): readonly Point3[] {
  const placed = pattern.placed[index];
  if (!placed) return [];
  const mirror = pattern.pair && placed.hand === 'right';
  return edgeOf(pattern).map((point) => {
    const { at, up } = bent(pattern, point);
    return toWorld(placed.frame, { ...at, z: pattern.thickness / 2 + (mirror ? -up : up) });
  });
}

/** Where a point of the flat lies in the plate's own axes once its flange is bent: sharp bends, no arcs. */
function bent(pattern: FlatPattern, point: Point): { readonly at: Point; readonly up: number } {
  for (const bend of pattern.bends) {
    const across = left2(unit2(subtract2(bend.to, bend.from)));
    const side = dot2(subtract2(pattern.centroid, bend.from), across) > 0 ? -1 : 1;
    const out = { x: across.x * side, y: across.y * side };
    const beyond = dot2(subtract2(point, bend.from), out);
    if (beyond <= 0) continue;
    const along = beyond * (Math.cos(bend.angle) - 1);
    const lift = beyond * Math.sin(bend.angle) * (bend.direction === 'up' ? 1 : -1);
    return { at: { x: point.x + out.x * along, y: point.y + out.y * along }, up: lift };
  }
  return { at: point, up: 0 };
}

/** Samples of a line, worked out once a draft. */
export class ContactSearch {
  private readonly samples = new Map<string, readonly { readonly s: number; readonly at: Point3 }[]>();

  constructor(
    private readonly draft: FrameDraft,
    private readonly lines: readonly DraftLine[],
  ) {}

  /** Stations of the lines that a plate with these edge points reaches; without any, those that are nearest. */
  of(points: readonly Point3[], among: readonly string[] | undefined = undefined): Contact | undefined {
    const found = this.lines
      .filter((line) => among === undefined || among.includes(line.id))
      .map((line) => ({ line, ...this.reach(line, points) }))
      .sort((a, b) => a.gap - b.gap);
    const first = found[0];
    if (!first) return undefined;
    // A gusset's two tubes are named: each is met, however the gusset's side stands off its middle.
    const near = among ? 2 * REACH : first.gap <= TOUCH ? TOUCH : REACH;
    const touching = found.filter(({ gap }) => gap <= near);
    const isTwin = (id: string): boolean => originalName(id) === originalName(first.line.id);
    const used =
      touching.length > 0
        ? touching
        : found.filter(({ gap, line }) => gap <= first.gap + TWINS && isTwin(line.id));
    const nodes = used.flatMap(({ line, from, to, at }) =>
      (to - from > 2 * line.stock.outside ? [from, to] : [at]).map((s) => this.draft.station(line, s)),
    );
    return { nodes, gap: Math.max(0, first.gap), lines: used.map(({ line }) => line.id) };
  }

  private reach(line: DraftLine, points: readonly Point3[]) {
    const radius = line.stock.outside / 2;
    let best = { gap: Number.POSITIVE_INFINITY, at: 0 };
    let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const { s, at } of this.samplesOf(line)) {
      let gap = Number.POSITIVE_INFINITY;
      for (const point of points) gap = Math.min(gap, distance3(at, point) - radius);
      if (gap < best.gap) best = { gap, at: s };
      if (gap <= REACH) [from, to] = [Math.min(from, s), Math.max(to, s)];
    }
    return { ...best, from, to };
  }

  private samplesOf(line: DraftLine) {
    const known = this.samples.get(line.id);
    if (known) return known;
    const count = Math.max(2, Math.ceil(line.length / STEP));
    const made = Array.from({ length: count + 1 }, (_, k) => {
      const s = (line.length * k) / count;
      return { s, at: line.at(s) };
    });
    this.samples.set(line.id, made);
    return made;
  }
}

/** Stations near a point on the line nearest to it and its twin: where a body without mounts is taken to hang. */
export function hangNodes(
  draft: FrameDraft,
  lines: readonly DraftLine[],
  point: Point3,
  spread: number,
): Contact | undefined {
  const found = lines
    .map((line) => ({ line, ...nearestOnLine(line, point) }))
    .sort((a, b) => a.distance - b.distance);
  const first = found[0];
  if (!first) return undefined;
  const used = found.filter(({ distance }) => distance <= first.distance + TWINS).slice(0, 2);
  const nodes = used.flatMap(({ line, at }) => {
    if (used.length === 1) return [draft.station(line, at)];
    return [draft.station(line, at - spread), draft.station(line, at + spread)];
  });
  return {
    nodes: [...new Set(nodes)],
    gap: Math.max(0, first.distance - first.line.stock.outside / 2),
    lines: used.map(({ line }) => line.id),
  };
}

/** Middle of a placed plate's thickness over a point of the flat [m]. */
export const platePoint = (pattern: FlatPattern, index: number, at: Point): Point3 =>
  toWorld(pattern.placed[index]!.frame, { ...at, z: pattern.thickness / 2 });

export const midpoint = (a: Point3, b: Point3): Point3 => scale3(add3(a, b), 0.5);
