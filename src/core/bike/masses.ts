import type { Build } from '../build/index.ts';
import type { Bike, MassPart, MassSummary } from './bike.ts';
import { bikeParts } from './bikeParts.ts';
import { type Lump, sumLumps } from './inertia.ts';
import { riderParts } from './riderMass.ts';

/** A part that another room weighs: a plate, a chain. */
export interface MassLump extends Lump {
  readonly id: string;
  readonly label?: string;
  /** Left out: the frame. */
  readonly body?: MassPart['body'];
}

/** g, standard gravity [m/s²]. @source nist-sp-811, appendix B.8 */
const GRAVITY = 9.80665;

/**
 * Mass, center and inertia of the bike with its rider at rest, and the wheel loads N_f = m·g·x_c / p, N_r = m·g − N_f.
 * Axles in `parts` are of the design stance.
 * @param lumps what the bike room does not weigh itself: plates, chains
 * @source derived, parallel axis theorem and moments about the rear contact
 */
export function weigh(build: Build, bike: Bike, lumps: readonly MassLump[]): MassSummary {
  const others = lumps.map(
    ({ id, label = id, mass, center, inertia, body = 'frame' }): MassPart => ({
      id,
      label,
      mass,
      center,
      inertia,
      body,
    }),
  );
  const machine = [...bikeParts(build, bike), ...others];
  const parts = [...machine, ...riderParts(build, bike.rider)];
  const all = sumLumps(parts);
  const bare = sumLumps(machine);
  const weight = all.mass * GRAVITY;
  const frontLoad = (weight * all.center.x) / bike.layout.stances.design.wheelbase;
  return {
    parts,
    total: all.mass,
    bare: bare.mass,
    center: all.center,
    bareCenter: bare.center,
    inertia: all.inertia,
    frontLoad,
    rearLoad: weight - frontLoad,
  };
}

/** One rigid body of the bike as a lump: for handling, the parts that turn with the bars, each wheel, and the rest. */
export const massOfBody = (summary: MassSummary, bodies: readonly MassPart['body'][]): Lump =>
  sumLumps(summary.parts.filter((part) => bodies.includes(part.body)));
