import type { Figure, Length } from '../../quantity/index.ts';
import { derived } from '../../quantity/index.ts';
import { figuresOf, type PartNames } from '../workings.ts';
import type { ThroatStress, WeldConvention, WeldProperties } from './weldGroup.ts';

/** The working of the worst place of a weld group. */
export function weldFigures(
  of: {
    readonly properties: WeldProperties;
    readonly throat: Length;
    readonly worst: ThroatStress;
    readonly convention: WeldConvention;
  },
  names: PartNames,
): readonly Figure[] {
  const { properties, throat, worst, convention } = of;
  return figuresOf(names, [
    {
      id: 'area',
      symbol: 'A',
      name: 'throat area',
      value: properties.length * throat,
      kind: 'area',
      formula: 'A = a·Σl',
      inputs: { a: [throat, 'length'], Σl: [properties.length, 'length'] },
      source: derived('throat along the length of the weld'),
    },
    {
      id: 'stress',
      symbol: 'τ',
      name: `throat stress at its worst, ${convention}`,
      value: worst.resultant,
      kind: 'pressure',
      formula: convention === 'all-shear' ? 'τ = √(τx² + τy² + τz²)' : 'τ = √((σx/2)² + τy² + τz²)',
      inputs: {
        'across the joint': [worst.normal, 'pressure'],
        'along y': [worst.shear[0], 'pressure'],
        'along z': [worst.shear[1], 'pressure'],
        y: [worst.at[0], 'length'],
        z: [worst.at[1], 'length'],
      },
      source: { key: 'shigley-9', where: 'sections 9-3 and 9-4, weld as a line' },
    },
  ]);
}
