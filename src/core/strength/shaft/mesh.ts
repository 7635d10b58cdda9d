import { SAME_PLACE, type Shaft, type ShaftSection, sectionOf, shearCoefficient } from './shaft.ts';
import { inOrder } from './shaftIssues.ts';

/** A piece of shaft of one section and one load per length. */
export interface ShaftElement {
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
  /** x of the nodes, rising [m]. */
  readonly stations: readonly number[];
  /** One between each pair of neighboring nodes. */
  readonly elements: readonly ShaftElement[];
}

/**
 * Nodes at every change of section and at every support and load, so that the beam solution between them is exact.
 * `longest` cuts elements further, for vibration.
 */
export function meshOf(shaft: Shaft, longest = Number.POSITIVE_INFINITY): ShaftMesh {
  const segments = inOrder(shaft.segments);
  const places = [
    ...segments.flatMap(({ from, to }) => [from, to]),
    ...shaft.supports.map(({ at }) => at),
    ...shaft.loads.map(({ at }) => at),
    ...(shaft.distributed ?? []).flatMap(({ from, to }) => [from, to]),
  ].sort((a, b) => a - b);
  const apart = places.filter((x, i) => i === 0 || x - places[i - 1]! > SAME_PLACE);
  const stations = apart.flatMap((x, i) => subdivided(x, apart[i + 1], longest));
  const elements = stations.slice(1).map((end, i) => {
    const start = stations[i]!;
    const middle = (start + end) / 2;
    const segment = segments.find((one) => middle > one.from && middle < one.to)!;
    return elementOf(shaft, sectionOf(segment), start, end);
  });
  return { stations, elements };
}

/** The node at a place. */
export const nodeAt = (mesh: ShaftMesh, x: number): number =>
  mesh.stations.findIndex((station) => Math.abs(station - x) <= 2 * SAME_PLACE);

function subdivided(x: number, next: number | undefined, longest: number): number[] {
  if (next === undefined) return [x];
  const pieces = Math.max(1, Math.ceil((next - x) / longest));
  return Array.from({ length: pieces }, (_, i) => x + ((next - x) * i) / pieces);
}

function elementOf(shaft: Shaft, section: ShaftSection, start: number, end: number): ShaftElement {
  const { elasticModulus, shearModulus } = shaft;
  const poisson = elasticModulus / (2 * shearModulus) - 1;
  const middle = (start + end) / 2;
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

/**
 * Stiffness of a beam element for [v1, ψ1, v2, ψ2], rows one after the other; Φ = 12·EI/(κGA·L²).
 * @source bathe-1996, section 5.4.1, two-node beam with shear; Φ = 0 is the slender beam
 */
export function elementStiffness({ length: l, bending, shear }: ShaftElement): readonly number[] {
  const phi = (12 * bending) / (shear * l * l);
  const unit = bending / (l ** 3 * (1 + phi));
  const [a, b, near, far] = [12 * unit, 6 * l * unit, (4 + phi) * l * l * unit, (2 - phi) * l * l * unit];
  return [a, b, -a, b, b, near, -b, far, -a, -b, a, -b, b, far, -b, near];
}

/** Loads at the ends that an even load q does the same work as: [qL/2, qL²/12, qL/2, −qL²/12]. */
export const evenLoad = ({ length: l }: ShaftElement, q: number): readonly number[] => [
  (q * l) / 2,
  (q * l * l) / 12,
  (q * l) / 2,
  (-q * l * l) / 12,
];
