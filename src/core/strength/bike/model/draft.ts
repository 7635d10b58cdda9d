import {
  add3,
  type Centerline,
  centerlineAt,
  distance3,
  type Point3,
  scale3,
  subtract3,
  unit3,
} from '../../../geometry/index.ts';
import type { Direction, FrameMass, FrameMember, FrameModel, FrameSupport } from '../../frame/index.ts';

/** Round section of a line: a tube, or a solid bar where wall is half the diameter. */
export interface RoundSection {
  /** [m] */
  readonly outside: number;
  readonly wall: number;
}

/** What a line of the model is made of. */
export interface LineStock extends RoundSection {
  /** E and G [Pa]. */
  readonly elasticModulus: number;
  readonly shearModulus: number;
  /** Of the whole line [kg]; spread evenly over it. */
  readonly mass: number;
}

/** A tube, axle or leg as a chain of straight members. */
export interface DraftLine {
  readonly id: string;
  readonly stock: LineStock;
  readonly length: number;
  readonly at: (distance: number) => Point3;
  readonly stations: Map<number, string>;
}

/** Half the stretch over which a line's direction is taken [m]. */
const STEP = 1e-3;

/** Unit vector along a line at a distance from its start [m]; at its ends that of its last bit. */
export function lineDirection({ length, at }: Pick<DraftLine, 'length' | 'at'>, distance: number): Point3 {
  return unit3(subtract3(at(Math.min(distance + STEP, length)), at(Math.max(distance - STEP, 0))));
}

/** Where a node of a line lies. */
export interface LineNode {
  readonly line: string;
  readonly at: number;
}

/** Stations nearer than this are one [m]. */
const SNAP = 3e-3;

/**
 * A frame being put together: lines with stations, points of stiff bodies, and what moves with what. Ties may be
 * given in any order and number; each group of tied nodes becomes one stiff body.
 */
export class FrameDraft {
  readonly nodes = new Map<string, Point3>();
  readonly lines = new Map<string, DraftLine>();
  readonly masses: FrameMass[] = [];
  readonly supports: FrameSupport[] = [];
  readonly places = new Map<string, LineNode>();
  readonly extra: FrameMember[] = [];
  private readonly leader = new Map<string, string>();

  addLine(id: string, stock: LineStock, length: number, at: (distance: number) => Point3): DraftLine {
    const line = { id, stock, length, at, stations: new Map<number, string>() };
    this.lines.set(id, line);
    return line;
  }

  /** A tube along its centerline, its bends as at least six chords each. */
  addTube(id: string, stock: LineStock, centerline: Centerline): DraftLine {
    const line = this.addLine(id, stock, centerline.length, (s) => centerlineAt(centerline, s).point);
    this.station(line, 0);
    this.station(line, centerline.length);
    for (const piece of centerline.pieces) {
      if (piece.kind !== 'bend') continue;
      const chords = Math.max(6, Math.ceil(piece.angle / (Math.PI / 18)));
      for (let k = 0; k <= chords; k++) this.station(line, piece.start + (piece.length * k) / chords);
    }
    return line;
  }

  /** A straight line between two points. */
  addStraight(id: string, stock: LineStock, from: Point3, to: Point3): DraftLine {
    const length = distance3(from, to);
    const line = this.addLine(id, stock, length, (s) =>
      add3(scale3(from, 1 - s / length), scale3(to, s / length)),
    );
    this.station(line, 0);
    this.station(line, length);
    return line;
  }

  /** The node of a line at a distance along it; one that is there already serves within a few millimeters. */
  station(line: DraftLine, distance: number): string {
    const s = Math.min(Math.max(distance, 0), line.length);
    for (const [at, node] of line.stations) if (Math.abs(at - s) < SNAP) return node;
    const node = `${line.id}@${(s * 1000).toFixed(1)}`;
    line.stations.set(s, node);
    this.nodes.set(node, line.at(s));
    this.places.set(node, { line: line.id, at: s });
    return node;
  }

  /** A point that is no part of a line: it must be tied to something. */
  point(id: string, at: Point3): string {
    this.nodes.set(id, at);
    return id;
  }

  tie(...nodes: readonly string[]): void {
    const [first, ...rest] = nodes;
    for (const node of rest) {
      const [a, b] = [this.leads(first!), this.leads(node)];
      if (a !== b) this.leader.set(b, a);
    }
  }

  leads(node: string): string {
    let lead = node;
    for (let next = this.leader.get(lead); next !== undefined; next = this.leader.get(lead)) lead = next;
    return lead;
  }

  addMass(node: string, mass: FrameMass['mass'], inertia?: FrameMass['inertia']): void {
    this.masses.push({ node, mass, ...(inertia ? { inertia } : {}) });
  }

  support(node: string, fixed: readonly Direction[]): void {
    this.supports.push({ node, fixed });
  }

  /** Cuts every line's members to at most this length [m]. */
  refine(longest: number): void {
    for (const line of this.lines.values()) {
      const at = [...line.stations.keys()].sort((a, b) => a - b);
      at.slice(1).forEach((end, i) => {
        const start = at[i]!;
        const parts = Math.ceil((end - start) / longest - 1e-9);
        for (let k = 1; k < parts; k++) this.station(line, start + ((end - start) * k) / parts);
      });
    }
  }

  model(): FrameModel {
    const supported = new Set(this.supports.map(({ node }) => node));
    const groups = new Map<string, string[]>();
    for (const node of this.nodes.keys()) {
      const lead = this.leads(node);
      const group = groups.get(lead);
      if (group) group.push(node);
      else groups.set(lead, [node]);
    }
    const links = [...groups.values()].flatMap((group) => {
      const leader = group.find((node) => supported.has(node)) ?? group[0]!;
      return group.filter((node) => node !== leader).map((follower) => ({ leader, follower }));
    });
    return {
      nodes: Object.fromEntries(this.nodes),
      members: [...[...this.lines.values()].flatMap((line) => this.membersOf(line)), ...this.extra],
      supports: this.supports,
      links,
      masses: this.masses,
    };
  }

  private membersOf(line: DraftLine): FrameMember[] {
    const stations = [...line.stations.entries()].sort(([a], [b]) => a - b);
    const pairs = stations.slice(1).map(([, to], i) => [stations[i]![1], to] as const);
    const lengths = pairs.map(([from, to]) => distance3(this.nodes.get(from)!, this.nodes.get(to)!));
    const total = lengths.reduce((sum, length) => sum + length, 0);
    const section = memberSection(line.stock, total);
    return pairs.map(([from, to], i) => ({ ...section, id: `${line.id}#${i}`, from, to }));
  }
}

/** Shear area of a thin round tube by its area. @source cowper-1966, thin tube; from memory */
const THIN_TUBE_SHEAR = 0.53;

function memberSection({ outside, wall, elasticModulus, shearModulus, mass }: LineStock, length: number) {
  const inside = outside - 2 * wall;
  const area = (Math.PI / 4) * (outside ** 2 - inside ** 2);
  const secondMoment = (Math.PI / 64) * (outside ** 4 - inside ** 4);
  const shear = (inside > 0 ? THIN_TUBE_SHEAR : 0.886) * area;
  return {
    youngsModulus: elasticModulus,
    shearModulus,
    area,
    secondMomentY: secondMoment,
    secondMomentZ: secondMoment,
    torsionConstant: 2 * secondMoment,
    shearAreas: [shear, shear] as const,
    density: length > 0 ? mass / (area * length) : 0,
  };
}
