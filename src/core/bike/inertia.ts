import { between3, cross3, dot3, type Frame3, type Point3, subtract3, unit3 } from '../geometry/index.ts';

/** Tensor entries [kg·m²]: Ixx, Iyy, Izz, Ixy, Iyz, Ixz; the products are entries, −∫ x·y dm and so on. */
export type Inertia = readonly [number, number, number, number, number, number];

/** Something with mass, its center and its inertia about that center, in one set of axes. */
export interface Lump {
  /** [kg] */
  readonly mass: number;
  /** [m] */
  readonly center: Point3;
  /** About the center [kg·m²]. */
  readonly inertia: Inertia;
}

export const NO_INERTIA: Inertia = [0, 0, 0, 0, 0, 0];

/**
 * One lump of many: m = Σ mᵢ, c = Σ mᵢ·cᵢ / m, I = Σ (Iᵢ + mᵢ·(|d|²·E − d·dᵀ)), d = cᵢ − c. Without mass the center is
 * the origin.
 * @source derived, parallel axis theorem
 */
export function sumLumps(lumps: readonly Lump[]): Lump {
  const mass = lumps.reduce((sum, lump) => sum + lump.mass, 0);
  if (!(mass > 0)) return { mass: 0, center: { x: 0, y: 0, z: 0 }, inertia: NO_INERTIA };
  const mean = (of: (p: Point3) => number): number =>
    lumps.reduce((sum, lump) => sum + lump.mass * of(lump.center), 0) / mass;
  const center = { x: mean((p) => p.x), y: mean((p) => p.y), z: mean((p) => p.z) };
  const inertia = lumps
    .map((lump) => addInertia(lump.inertia, pointInertia(lump.mass, subtract3(lump.center, center))))
    .reduce(addInertia, NO_INERTIA);
  return { mass, center, inertia };
}

/** Inertia about the origin of a point of `mass` at `d` [kg·m²]. @source derived */
export const pointInertia = (mass: number, d: Point3): Inertia => [
  mass * (d.y ** 2 + d.z ** 2),
  mass * (d.x ** 2 + d.z ** 2),
  mass * (d.x ** 2 + d.y ** 2),
  -mass * d.x * d.y,
  -mass * d.y * d.z,
  -mass * d.x * d.z,
];

/**
 * Solid box about its center: m/12·(b² + c²) about each of its own axes, turned into the bike's axes.
 * @param axes the box's own axes in the bike's; only directions count
 * @source derived, moments of inertia of a homogeneous box
 */
export function boxInertia(mass: number, size: Point3, axes: Frame3): Inertia {
  const twelfth = mass / 12;
  const [x, y, z] = [size.x ** 2, size.y ** 2, size.z ** 2];
  return principalInertia([twelfth * (y + z), twelfth * (x + z), twelfth * (x + y)], axes);
}

/**
 * Thin-walled round tube about its center: axial m·r², across m·(L²/12 + r²/2); with r = 0 a thin rod.
 * @source derived, moments of inertia of a thin cylinder
 */
export function rodInertia(mass: number, from: Point3, to: Point3, radius = 0): Inertia {
  const way = subtract3(to, from);
  const squared = dot3(way, way);
  const across = mass * (squared / 12 + radius ** 2 / 2);
  return axialInertia(mass * radius ** 2, across, squared > 0 ? unit3(way) : { x: 0, y: 0, z: 1 });
}

/** A rod, or a thin-walled tube of `radius`, as a lump. @source derived */
export const rodLump = (mass: number, from: Point3, to: Point3, radius = 0): Lump => ({
  mass,
  center: between3(from, to, 0.5),
  inertia: rodInertia(mass, from, to, radius),
});

/** Solid disc or cylinder: axial m·R²/2, across m·(R²/4 + t²/12). @source derived */
export const discInertia = (mass: number, radius: number, thickness: number, axis: Point3): Inertia =>
  axialInertia((mass * radius ** 2) / 2, mass * (radius ** 2 / 4 + thickness ** 2 / 12), axis);

/** I = across·E + (axial − across)·u·uᵀ for a body round about the unit vector `axis`. @source derived */
export function axialInertia(axial: number, across: number, axis: Point3): Inertia {
  const more = axial - across;
  const { x, y, z } = axis;
  return [
    across + more * x * x,
    across + more * y * y,
    across + more * z * z,
    more * x * y,
    more * y * z,
    more * x * z,
  ];
}

export const addInertia = (a: Inertia, b: Inertia): Inertia => [
  a[0] + b[0],
  a[1] + b[1],
  a[2] + b[2],
  a[3] + b[3],
  a[4] + b[4],
  a[5] + b[5],
];

/** R·diag(I)·Rᵀ. */
export function principalInertia(principal: readonly [number, number, number], axes: Frame3): Inertia {
  const parts = [axes.x, axes.y, cross3(axes.x, axes.y)].map((axis, k) => {
    const own = principal[k]!;
    return [
      own * axis.x ** 2,
      own * axis.y ** 2,
      own * axis.z ** 2,
      own * axis.x * axis.y,
      own * axis.y * axis.z,
      own * axis.x * axis.z,
    ] as Inertia;
  });
  return parts.reduce(addInertia, NO_INERTIA);
}
