import type { Force, Length } from '../../../../quantity/index.ts';
import { materialStrength } from '../../../../standards/index.ts';
import { plateBearing } from '../../../bolts/boltJoint.ts';
import { boltOf } from '../joints/boltSetting.ts';
import type { JointInput } from '../joints/jointInput.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { type HeldBracket, heldBracket } from './caliperStudy.ts';
import { type PlacedPlate, placedPlates } from './plateAxes.ts';

/** Shear yield by yield. @source shigley-9, section 5-5, distortion energy */
const SHEAR_YIELD = 0.577;

/** Anchors of caliper brackets: pressure on their holes, tearing out, shear of their bolts, as if the faces did not hold. */
export function anchorRows(input: JointInput): readonly UtilizationRow[] {
  return placedPlates(input.patterns)
    .filter(({ pattern }) => pattern.recipe === 'caliper-bracket')
    .flatMap((plate): UtilizationRow[] => {
      const held = heldBracket(input, plate);
      return held && held.anchors.length > 0 ? rowsOf(input, plate, held) : [];
    });
}

function rowsOf(
  input: JointInput,
  { pattern }: PlacedPlate,
  { one, anchors }: HeldBracket,
): UtilizationRow[] {
  const entry = input.build.plates[pattern.id];
  if (entry?.recipe !== 'caliper-bracket') return [];
  const [worst] = anchors
    .map(({ id, load }, i) => ({ id, i, pull: Math.hypot(load.force.x, load.force.y) }))
    .sort((a, b) => b.pull - a.pull);
  const anchor = entry.anchors?.[worst!.i];
  const opening = pattern.openings.find(({ id }) => id === worst!.id);
  const bolt = anchor && boltOf(input, pattern.id, anchor.bolt);
  if (!bolt || !opening) return [];
  const stress = plateBearing({
    load: worst!.pull as Force,
    diameter: bolt.diameter as Length,
    hole: opening.diameter as Length,
    thickness: pattern.thickness as Length,
    edge: (opening.diameter / 2 + (entry.margin ?? opening.diameter)) as Length,
  });
  const plain = materialStrength(pattern.material).yield / input.settings.yieldFactor;
  const shear = worst!.pull / bolt.shearArea;
  const shearLimit = (SHEAR_YIELD * bolt.yield) / input.settings.yieldFactor;
  const base = { part: pattern.id, case: one.id, kind: 'pressure' as const, place: 'anchor' };
  const row = (
    of: Pick<UtilizationRow, 'check' | 'quantity' | 'where' | 'value' | 'limit' | 'source'>,
  ): UtilizationRow => ({ ...base, ...of, utilization: of.value / of.limit });
  return [
    row({
      check: 'threadShear',
      where: `anchor bolt ${worst!.i + 1}, ${anchor.bolt}`,
      quantity: 'shear at the thread of the anchor',
      value: shear,
      limit: shearLimit,
      source: { key: 'shigley-9', where: 'section 8-12, eccentric shear' },
    }),
    row({
      check: 'holeBearing',
      where: `hole of anchor ${worst!.i + 1}`,
      quantity: 'pressure on the hole of the anchor',
      value: stress.bearing,
      limit: plain,
      source: { key: 'shigley-9', where: 'section 8-12, bearing' },
    }),
    row({
      check: 'holeTearOut',
      where: `beyond the hole of anchor ${worst!.i + 1}`,
      quantity: 'shear by tearing out at the anchor',
      value: stress.tearOut,
      limit: SHEAR_YIELD * plain,
      source: { key: 'shigley-9', where: 'section 8-12, tear-out' },
    }),
  ];
}
