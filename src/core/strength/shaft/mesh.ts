import { SAME_PLACE, type Shaft, type ShaftSection, sectionOf, shearCoefficient } from './shaft.ts';
import { inOrder } from './shaftIssues.ts';

/** A piece of shaft of one section and one load per length. */
export interface ShaftPiece {
  /** x of its start [m]. */
  readonly start: number;
  /** L [m]. */
  readonly length: number;
  readonly section: ShaftSection;
  /** E·I [N·m²]. */
  readonly bending: number;
  /** κ·G·A [N]; Infinity where shear deflection is left out. */
  readonly shear: number;
  /** q in y and z [N/m]. */
  readonly q: readonly [number, number];
}

export interface ShaftMesh {
  /** x of the stations, rising [m]. */
  readonly stations: readonly number[];
  /** One between each pair of neighboring stations. */
  readonly pieces: readonly ShaftPiece[];
}

export interface MeshOptions {
  /** Pieces are cut to at most this [m]. */
  readonly longest?: number;
  /** Places nearer than this are one station [m]; a support keeps its own place. */
  readonly apart?: number;
}

/** Stations at every change of section and at every support and load: between them all is a polynomial. */
export function meshOf(shaft: Shaft, options: MeshOptions = {}): ShaftMesh {
  const { longest = Number.POSITIVE_INFINITY, apart = SAME_PLACE } = options;
  const ends = inOrder(shaft.segments).flatMap(({ from, to }) => [from, to]);
  const firm = [ends[0]!, ends.at(-1)!, ...shaft.supports.map(({ at }) => at)];
  const places = [
    ...ends,
    ...shaft.loads.map(({ at }) => at),
    ...(shaft.distributed ?? []).flatMap(({ from, to }) => [from, to]),
  ];
  const kept = merged(places, merged(firm, [], SAME_PLACE), apart);
  const stations = kept.flatMap((x, i) => subdivided(x, kept[i + 1], longest));
  const pieces = stations.slice(1).map((end, i) => pieceOf(shaft, stations[i]!, end));
  return { stations, pieces };
}

/** The station nearest to a place. */
export function stationAt(mesh: ShaftMesh, x: number): number {
  let best = 0;
  mesh.stations.forEach((station, i) => {
    if (Math.abs(station - x) < Math.abs(mesh.stations[best]! - x)) best = i;
  });
  return best;
}

/** `places` added to `firm` where they are at least `apart` from what is there; rising. */
function merged(places: readonly number[], firm: readonly number[], apart: number): readonly number[] {
  const kept = [...firm];
  for (const x of places) if (kept.every((other) => Math.abs(other - x) > apart)) kept.push(x);
  return kept.sort((a, b) => a - b);
}

function subdivided(x: number, next: number | undefined, longest: number): number[] {
  if (next === undefined) return [x];
  const count = Math.max(1, Math.ceil((next - x) / longest));
  return Array.from({ length: count }, (_, i) => x + ((next - x) * i) / count);
}

function pieceOf(shaft: Shaft, start: number, end: number): ShaftPiece {
  const { elasticModulus, shearModulus } = shaft;
  const middle = (start + end) / 2;
  const section = sectionOf(shaft.segments.find(({ from, to }) => middle >= from && middle <= to)!);
  const poisson = elasticModulus / (2 * shearModulus) - 1;
  const q: [number, number] = [0, 0];
  for (const load of shaft.distributed ?? []) {
    if (middle < load.from || middle > load.to) continue;
    q[0] += load.q[0];
    q[1] += load.q[1];
  }
  return {
    start,
    length: end - start,
    section,
    bending: elasticModulus * section.secondMoment,
    shear: shaft.shearDeflection
      ? shearCoefficient(section, poisson) * shearModulus * section.area
      : Number.POSITIVE_INFINITY,
    q,
  };
}
