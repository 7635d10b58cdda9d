import type { Lump } from '../../src/core/bike/index.ts';
import { boxInertia, rodLump, sumLumps } from '../../src/core/bike/index.ts';
import { bikeFrame, type Frame3, type Point3 } from '../../src/core/geometry/index.ts';
import type { WhippleParameters } from '../../src/core/ride/index.ts';

const pitched = (noseUp: number): Frame3 => ({
  ...bikeFrame,
  x: { x: Math.cos(noseUp), y: 0, z: Math.sin(noseUp) },
  z: { x: -Math.sin(noseUp), y: 0, z: Math.cos(noseUp) },
});
const at = (x: number, z: number): Point3 => ({ x, y: 0, z });
const size = (x: number, y: number, z: number): Point3 => ({ x, y, z });
const box = (mass: number, center: Point3, sizes: Point3, noseUp = 0): Lump => ({
  mass,
  center,
  inertia: boxInertia(mass, sizes, pitched(noseUp)),
});

/** Torus of a tire, rim and hub: a hub of 1.7 kg at the rear, 1.2 kg at the front counts as a point. */
function wheel(hub: number): { mass: number; across: number; spin: number } {
  const [section, ring, rim] = [0.05, 0.15, 0.105];
  return {
    mass: 2.2 + 1.6 + hub,
    spin: 2.2 * (ring ** 2 + 0.75 * section ** 2) + 1.6 * rim ** 2,
    across: 2.2 * (ring ** 2 / 2 + (5 / 8) * section ** 2) + (1.6 * rim ** 2) / 2,
  };
}

/** A small motorcycle as a list of boxes and rods, rider of 80 kg, axes x forward and z up. */
export function smallMotorcycle(): WhippleParameters {
  const rear = sumLumps([
    box(9, at(0.45, 0.42), size(0.9, 0.18, 0.25)),
    box(16, at(0.42, 0.36), size(0.32, 0.36, 0.3)),
    box(4, at(0.4, 0.62), size(0.6, 0.2, 0.1)),
    { mass: 2, center: at(0.1, 0.2), inertia: [0, 0, 0, 0, 0, 0] },
    // Leaning forward is nose down for a box that stands on end.
    box(43, at(0.32, 1.02), size(0.22, 0.36, 0.75), -Math.PI / 18),
    box(20, at(0.5, 0.68), size(0.45, 0.35, 0.14)),
    box(11, at(0.62, 0.42), size(0.12, 0.4, 0.45)),
    box(6, at(0.52, 1), size(0.5, 0.5, 0.1)),
  ]);
  const head = (66 * Math.PI) / 180;
  const leg = (y: number): Lump =>
    rodLump(1.75, { x: 1, y, z: 0.2 }, { x: 1 - 0.45 * Math.cos(head), y, z: 0.2 + 0.45 * Math.sin(head) });
  const front = sumLumps([
    leg(0.08),
    leg(-0.08),
    rodLump(1.5, { x: 0.72, y: -0.36, z: 0.92 }, { x: 0.72, y: 0.36, z: 0.92 }),
    box(1, at(0.8, 0.7), size(0.1, 0.15, 0.15)),
  ]);
  const lam = Math.PI / 2 - head;
  const [rearWheel, frontWheel] = [wheel(1.7), wheel(1.2)];
  return {
    w: 1,
    c: (0.2 * Math.sin(lam) - 0.03) / Math.cos(lam),
    lam,
    g: 9.81,
    rR: 0.2,
    mR: rearWheel.mass,
    IRxx: rearWheel.across,
    IRyy: rearWheel.spin,
    xB: rear.center.x,
    zB: -rear.center.z,
    mB: rear.mass,
    IBxx: rear.inertia[0],
    IBzz: rear.inertia[2],
    IBxz: -rear.inertia[5],
    xH: front.center.x,
    zH: -front.center.z,
    mH: front.mass,
    IHxx: front.inertia[0],
    IHzz: front.inertia[2],
    IHxz: -front.inertia[5],
    rF: 0.2,
    mF: frontWheel.mass,
    IFxx: frontWheel.across,
    IFyy: frontWheel.spin,
  };
}
