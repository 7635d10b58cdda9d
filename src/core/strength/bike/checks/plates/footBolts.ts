import { materialStrength } from '../../../../standards/index.ts';
import type { NodeLoad } from '../../../frame/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import { type BoltSetting, boltOf } from '../joints/boltSetting.ts';
import type { JointInput } from '../joints/jointInput.ts';
import { clampNeeded } from '../joints/slip.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type FootBolts, type FootForces, footBolts, footForces } from './footForces.ts';
import { enteringAt, type PlacedPlate, placedPlates, sumAt } from './plateAxes.ts';

/** Bolted feet of bearing plates: slip, lift against the preload, and the bent foot in bending. */
export function footBoltRows(
  input: JointInput,
  cases: readonly ReadonlyMap<string, readonly NodeLoad[]>[],
): readonly UtilizationRow[] {
  return placedPlates(input.patterns).flatMap((plate): UtilizationRow[] => {
    const { pattern } = plate;
    const entry = input.build.plates[pattern.id];
    if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support') return [];
    const bolts = footBolts(pattern, entry);
    const bolt = entry.foot.bolt === undefined ? undefined : boltOf(input, pattern.id, entry.foot.bolt);
    if (!bolts || !bolt) return [];
    const foot = { x: bolts.middle, y: -entry.foot.height };
    const found = input.cases.map((one, c): Found => {
      const loads = (cases[c]!.get(plate.node) ?? []).map((load) =>
        enteringAt(plate, foot, { ...load, at: input.frame.draft.nodes.get(load.node)! }),
      );
      return { one, forces: footForces(bolts, sumAt(foot, loads)) };
    });
    return [
      slipRow(plate, bolt, found),
      pullRow(input, plate, bolt, found),
      ...(bolts.bent
        ? [bentRow(input, plate, { bolts, diameter: bolt.diameter, width: entry.foot.width }, found)]
        : []),
    ];
  });
}

interface Found {
  readonly one: LoadCase;
  readonly forces: FootForces;
}

const worstBy = (found: readonly Found[], share: (forces: FootForces) => number): Found =>
  found.reduce((best, one) => (share(one.forces) > share(best.forces) ? one : best));

/** @source shigley-9, section 8-7 and en-1993-1-8, section 3.9: the clamp that lift leaves, by friction */
function slipRow({ pattern }: PlacedPlate, bolt: BoltSetting, found: readonly Found[]): UtilizationRow {
  const needed = ({ shear, pull }: FootForces): number => clampNeeded(shear, pull, bolt.friction, 1);
  const { one, forces } = worstBy(found, needed);
  return {
    part: pattern.id,
    check: 'boltSlip',
    place: 'foot',
    case: one.id,
    where: 'bolts of its foot',
    quantity: 'tension that the most loaded bolt needs against slip',
    value: needed(forces),
    limit: bolt.preload,
    kind: 'force',
    utilization: needed(forces) / bolt.preload,
    source: { key: 'en-1993-1-8', where: 'section 3.9, without its partial factor' },
  };
}

function pullRow(
  { settings }: JointInput,
  { pattern }: PlacedPlate,
  bolt: BoltSetting,
  found: readonly Found[],
): UtilizationRow {
  const { one, forces } = worstBy(found, ({ pull }) => pull);
  const limit = bolt.preload / settings.yieldFactor;
  return {
    part: pattern.id,
    check: 'boltLift',
    place: 'foot',
    case: one.id,
    where: 'bolts of its foot',
    quantity: 'pull that lifts the foot from the most loaded bolt',
    value: forces.pull,
    limit,
    kind: 'force',
    utilization: forces.pull / limit,
    source: { key: 'shigley-9', where: 'section 8-7, separation; 8-12, tipping' },
  };
}

/** The bent foot between bolt and bend: the lift has the lever of the bolts; metal works as wide as 45° reaches. */
function bentRow(
  { settings }: JointInput,
  { pattern }: PlacedPlate,
  of: { readonly bolts: FootBolts; readonly diameter: number; readonly width: number },
  found: readonly Found[],
): UtilizationRow {
  const off = of.bolts.bent!.off;
  const moment = ({ lift, tilt }: FootForces): number => lift * off + tilt;
  const { one, forces } = worstBy(found, moment);
  const wide = Math.min(of.width / of.bolts.along.length, of.diameter + 2 * off);
  const value = (6 * moment(forces)) / (wide * pattern.thickness ** 2);
  const limit = materialStrength(pattern.material).yield / settings.yieldFactor;
  return {
    part: pattern.id,
    check: 'plateStress',
    place: 'foot',
    case: one.id,
    where: `at the bend of its foot, ${(off * 1000).toFixed(0)} mm from the bolts`,
    quantity: 'stress across the bent foot',
    value,
    limit,
    kind: 'pressure',
    utilization: value / limit,
    source: {
      key: 'derived',
      where: '6·M/(b·t²), M = lift by the lever of the bolts, b within 45° of a bolt',
    },
  };
}
