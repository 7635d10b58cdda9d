import type { Figure, Length } from '../../quantity/index.ts';
import { figuresOf, type PartNames } from '../workings.ts';
import type { KeyInput, KeyStress } from './keyStrength.ts';

/** The working of a key's stresses. */
export function keyFigures(input: KeyInput, stress: KeyStress, names: PartNames): readonly Figure[] {
  const source = { key: 'mott', where: 'equations 11-1 to 11-4' };
  return figuresOf(names, [
    {
      id: 'force',
      symbol: 'F',
      name: 'force on the key',
      value: stress.force,
      kind: 'force',
      formula: 'F = 2·T/D',
      inputs: { T: [input.torque, 'torque'], D: [input.shaft, 'length'] },
      source,
    },
    {
      id: 'shear',
      symbol: 'τ',
      name: 'shear in the key',
      value: stress.shear,
      kind: 'pressure',
      formula: 'τ = F/(W·L)',
      inputs: {
        F: [stress.force, 'force'],
        W: [input.width, 'length'],
        L: [input.length, 'length'],
      },
      source,
    },
    {
      id: 'bearing',
      symbol: 'σ',
      name: 'bearing pressure on key, shaft and hub',
      value: stress.bearing,
      kind: 'pressure',
      formula: 'σ = F/(L·H/2)',
      inputs: {
        F: [stress.force, 'force'],
        H: [input.height, 'length'],
        L: [input.length, 'length'],
      },
      source,
    },
  ]);
}

/** The working of the two depths that are measured when keyseats are cut. */
export function keyseatFigures(
  of: {
    readonly shaft: Length;
    readonly width: Length;
    readonly height: Length;
    readonly shaftDepth: Length;
    readonly hubDepth: Length;
  },
  names: PartNames,
): readonly Figure[] {
  const inputs = {
    D: [of.shaft, 'length'],
    W: [of.width, 'length'],
    H: [of.height, 'length'],
  } as const;
  const source = { key: 'asme-b17-1', where: 'table 1 and depth control values' };
  return figuresOf(names, [
    {
      id: 'shaftDepth',
      symbol: 'S',
      name: 'shaft depth by the inch rule',
      value: of.shaftDepth,
      kind: 'length',
      formula: 'S = D − y − H/2, y = ½·(D − √(D² − W²))',
      inputs,
      source,
    },
    {
      id: 'hubDepth',
      symbol: 'T',
      name: 'hub depth by the inch rule',
      value: of.hubDepth,
      kind: 'length',
      formula: 'T = D − y + H/2 + 0.005 in',
      inputs,
      source,
    },
  ]);
}
