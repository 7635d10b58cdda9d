import type { Length, Pressure } from '../../../../quantity/index.ts';
import { findFiller } from '../../../../standards/index.ts';
import { allowableBase, allowableThroat } from '../../../welds/weldAllowable.ts';
import { throatOf, type WeldLine, type WeldLoad, worstThroatStress } from '../../../welds/weldGroup.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import type { JointInput } from './jointInput.ts';

/** The leg that the file gives, or that of the thinner part [m]. */
export const legOf = ({ build }: JointInput, thinner: number): Length =>
  (build.loads?.weldLeg ?? thinner) as Length;

/** Throat stress of a weld against the lesser of filler and base metal. */
export function weldRow(of: {
  readonly part: string;
  readonly check: 'tubeWeld' | 'footWeld';
  readonly where: string;
  readonly one: LoadCase;
  readonly lines: readonly WeldLine[];
  readonly leg: Length;
  readonly load: WeldLoad;
  readonly yield: number;
  readonly settings: LoadSettings;
}): UtilizationRow {
  const stress = worstThroatStress(of.lines, throatOf(of.leg), of.load, 'all-shear');
  const filler = findFiller(of.settings.filler);
  if (!filler.ok) throw new Error(`a filler that the reader let through: ${of.settings.filler}`);
  const throat = allowableThroat(filler.value.tensile);
  // Stress on the leg is that in the throat over √2.
  const base = allowableBase(of.yield as Pressure) * Math.SQRT2;
  const limit = Math.min(throat, base);
  return {
    part: of.part,
    check: of.check,
    case: of.one.id,
    where: `${of.where}, leg ${(of.leg * 1000).toFixed(1)} mm`,
    quantity: throat <= base ? 'throat stress, filler governs' : 'throat stress, base metal governs',
    value: stress.resultant,
    limit,
    kind: 'pressure',
    utilization: stress.resultant / limit,
    source: { key: 'shigley-9', where: 'tables 9-4 and 9-6, all stress taken as shear' },
  };
}
