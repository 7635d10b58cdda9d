import type { Force, Length, Pressure, Torque } from '../../quantity/index.ts';

/** A place in the plane of the weld group: y and z; the x axis stands across it, out of the joint. */
export type WeldPoint = readonly [y: Length, z: Length];

/** A fillet along a straight line or all round a tube. */
export type WeldLine =
  | { readonly from: WeldPoint; readonly to: WeldPoint }
  | { readonly center: WeldPoint; readonly radius: Length };

/** Line properties for a throat of 1: multiply by the throat for areas and moments. */
export interface WeldProperties {
  /** Total length [m]: the area of unit throat. */
  readonly length: Length;
  readonly centroid: WeldPoint;
  /** Iy = ∫z² [m³] about the y axis through the centroid. */
  readonly aboutY: number;
  /** Iz = ∫y² [m³]. */
  readonly aboutZ: number;
  /** Iyz = ∫yz [m³]. */
  readonly product: number;
  /** Ju = Iy + Iz [m³]. */
  readonly polar: number;
}

/** What the joint carries across the weld to the welded-on part. */
export interface WeldLoad {
  /** Along x (out of the joint), y and z [N]. */
  readonly force: readonly [x: Force, y: Force, z: Force];
  /** Where the force acts [m]: x is the distance from the weld's plane. */
  readonly at: readonly [x: Length, y: Length, z: Length];
  /** Further moment about x, y and z, right-hand rule [N·m]. */
  readonly moment: readonly [x: Torque, y: Torque, z: Torque];
}

/**
 * How the parts of the throat stress are put together.
 * `all-shear`: whatever its direction it counts as shear, τ = √(τx² + τy² + τz²) (Shigley, AWS).
 * `max-shear`: the part across the plane is a normal stress, τ = √((σx/2)² + τy² + τz²) (some textbooks); up to half as much.
 */
export type WeldConvention = 'all-shear' | 'max-shear';

/** Stress in the throat at one place of the weld. */
export interface ThroatStress {
  readonly at: WeldPoint;
  /** Across the plane of the group [Pa]. */
  readonly normal: Pressure;
  /** Within the plane, along y and z [Pa]. */
  readonly shear: readonly [Pressure, Pressure];
  /** By the convention [Pa]. */
  readonly resultant: Pressure;
  /** Angle between the force on the throat and the weld's own line [rad], 0 to π/2. */
  readonly loadAngle: number;
}

/** Throat of an equal-leg fillet, leg/√2 [m]. @source derived, 45° throat */
export const throatOf = (leg: Length): Length => (leg * Math.SQRT1_2) as Length;

/** @source shigley-9, tables 9-1 and 9-2, from the integrals themselves */
export function weldProperties(lines: readonly WeldLine[]): WeldProperties {
  const length = lines.reduce((sum, line) => sum + lengthOf(line), 0);
  const centroid = [0, 1].map(
    (k) => lines.reduce((sum, line) => sum + lengthOf(line) * middleOf(line)[k]!, 0) / length,
  ) as unknown as WeldPoint;
  let [aboutY, aboutZ, product] = [0, 0, 0];
  for (const line of lines) {
    const l = lengthOf(line);
    const [y, z] = fromCentroid(middleOf(line), centroid);
    const own = ownMoments(line);
    aboutY += own.zz + l * z * z;
    aboutZ += own.yy + l * y * y;
    product += own.yz + l * y * z;
  }
  return { length: length as Length, centroid, aboutY, aboutZ, product, polar: aboutY + aboutZ };
}

/**
 * Throat stress at a place: force over the length, in-plane moment about the centroid by the polar moment (the elastic
 * method), out-of-plane moments by the full bending formula with the product of inertia; all over the throat.
 * @source shigley-9, sections 9-3 and 9-4; derived, bending of an unsymmetric line group
 */
export function throatStressAt(
  properties: WeldProperties,
  throat: Length,
  load: WeldLoad,
  convention: WeldConvention,
  place: { readonly at: WeldPoint; readonly along: readonly [number, number] },
): ThroatStress {
  const { length, centroid, polar } = properties;
  const [fx, fy, fz] = load.force;
  const [mx, my, mz] = momentsAt(load, centroid);
  const [y, z] = fromCentroid(place.at, centroid);
  const [gradientY, gradientZ] = bendingGradients(properties, my, mz);
  const normal = (fx / length + gradientY * y + gradientZ * z) / throat;
  const swing = polar > 0 ? mx / polar : 0;
  const shearY = (fy / length - swing * z) / throat;
  const shearZ = (fz / length + swing * y) / throat;
  const share = convention === 'all-shear' ? 1 : 0.5;
  const whole = Math.hypot(normal, shearY, shearZ);
  const along = Math.abs(shearY * place.along[0] + shearZ * place.along[1]);
  return {
    at: place.at,
    normal: normal as Pressure,
    shear: [shearY as Pressure, shearZ as Pressure],
    resultant: Math.hypot(share * normal, shearY, shearZ) as Pressure,
    loadAngle: whole > 0 ? Math.acos(Math.min(1, along / whole)) : 0,
  };
}

/**
 * The place of the largest throat stress. Along a straight fillet the squared stress is convex, so it lies at an end;
 * round a tube it is found to 1e-6 of the circle.
 * @source derived, convexity of a sum of squares of linear functions
 */
export function worstThroatStress(
  lines: readonly WeldLine[],
  throat: Length,
  load: WeldLoad,
  convention: WeldConvention,
): ThroatStress {
  const properties = weldProperties(lines);
  const at = (place: Place): ThroatStress => throatStressAt(properties, throat, load, convention, place);
  const candidates = lines.flatMap((line) =>
    'radius' in line ? [worstOnCircle(line, at)] : endsOf(line).map(at),
  );
  return candidates.reduce((worst, one) => (one.resultant > worst.resultant ? one : worst));
}

/** Moment about a single straight line of weld, which has no lever against it [N·m]; 0 for any wider group. */
export function unresistedMoment(properties: WeldProperties, load: WeldLoad): Torque {
  const direction = flatDirection(properties);
  if (!direction) return 0 as Torque;
  const [, my, mz] = momentsAt(load, properties.centroid);
  return Math.abs(my * direction[0] + mz * direction[1]) as Torque;
}

/** Iy·Iz − Iyz² under this share of Ju² is a straight line within rounding. */
const FLAT = 1e-9;

interface Place {
  readonly at: WeldPoint;
  readonly along: readonly [number, number];
}

type Circle = Extract<WeldLine, { readonly radius: Length }>;
type Straight = Extract<WeldLine, { readonly from: WeldPoint }>;

const lengthOf = (line: WeldLine): number =>
  'radius' in line
    ? 2 * Math.PI * line.radius
    : Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1]);

const middleOf = (line: WeldLine): readonly [number, number] =>
  'radius' in line ? line.center : [(line.from[0] + line.to[0]) / 2, (line.from[1] + line.to[1]) / 2];

const fromCentroid = (point: readonly [number, number], centroid: WeldPoint): readonly [number, number] => [
  point[0] - centroid[0],
  point[1] - centroid[1],
];

function ownMoments(line: WeldLine): { readonly yy: number; readonly zz: number; readonly yz: number } {
  const l = lengthOf(line);
  if ('radius' in line) {
    const half = (l * line.radius ** 2) / 2;
    return { yy: half, zz: half, yz: 0 };
  }
  const [dy, dz] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  return { yy: (l * dy * dy) / 12, zz: (l * dz * dz) / 12, yz: (l * dy * dz) / 12 };
}

/** Moments about the centroid of the group. */
function momentsAt({ force, at, moment }: WeldLoad, centroid: WeldPoint): readonly [number, number, number] {
  const [fx, fy, fz] = force;
  const [x, y, z] = [at[0], at[1] - centroid[0], at[2] - centroid[1]];
  return [moment[0] + y * fz - z * fy, moment[1] + z * fx - x * fz, moment[2] + x * fy - y * fx];
}

/** Growth of the normal line force along y and z: ∫n·z = My, −∫n·y = Mz. */
function bendingGradients(properties: WeldProperties, my: number, mz: number): readonly [number, number] {
  const { aboutY, aboutZ, product, polar } = properties;
  const direction = flatDirection(properties);
  if (direction) {
    const along = polar > 0 ? (my * direction[1] - mz * direction[0]) / polar : 0;
    return [along * direction[0], along * direction[1]];
  }
  const determinant = aboutY * aboutZ - product * product;
  return [(-mz * aboutY - my * product) / determinant, (my * aboutZ + mz * product) / determinant];
}

/** Direction of the line that all the weld lies on, if it does. */
function flatDirection(properties: WeldProperties): readonly [number, number] | undefined {
  const { aboutY, aboutZ, product, polar } = properties;
  if (aboutY * aboutZ - product * product > FLAT * polar * polar) return undefined;
  return [Math.sqrt(aboutZ / polar), Math.sqrt(aboutY / polar) * (product < 0 ? -1 : 1)];
}

function endsOf(line: Straight): readonly Place[] {
  const l = lengthOf(line);
  const along = [(line.to[0] - line.from[0]) / l, (line.to[1] - line.from[1]) / l] as const;
  return [
    { at: line.from, along },
    { at: line.to, along },
  ];
}

const SAMPLES = 72;
/** Narrowing rounds of the search around the best sample, each to 0.62 of the last. */
const ROUNDS = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

function worstOnCircle(circle: Circle, stress: (place: Place) => ThroatStress): ThroatStress {
  const at = (angle: number): ThroatStress => stress(placeOnCircle(circle, angle));
  const step = (2 * Math.PI) / SAMPLES;
  let best = 0;
  for (let i = 1; i < SAMPLES; i += 1) {
    if (at(i * step).resultant > at(best * step).resultant) best = i;
  }
  let [low, high] = [(best - 1) * step, (best + 1) * step];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (at(a).resultant >= at(b).resultant) high = b;
    else low = a;
  }
  return at((low + high) / 2);
}

function placeOnCircle({ center, radius }: Circle, angle: number): Place {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return {
    at: [(center[0] + radius * c) as Length, (center[1] + radius * s) as Length],
    along: [-s, c],
  };
}
