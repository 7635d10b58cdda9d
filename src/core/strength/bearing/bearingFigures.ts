import type { AngularSpeed, Figure, Force } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import {
  type BearingLoad,
  type BearingRating,
  type EquivalentLoad,
  lifeHours,
  ratingLife,
  staticLoad,
} from './bearingLife.ts';

/** Life of a bearing under one load, or under the mean load of its duty. */
export interface BearingFiguresInput {
  /** C0 is left out where it is not known: no axial load, no static factor. */
  readonly rating: Pick<BearingRating, 'dynamicRating'> & Partial<Pick<BearingRating, 'staticRating'>>;
  readonly load: BearingLoad;
  readonly equivalent: EquivalentLoad;
  /** P, or Pm of the duty [N]. */
  readonly lifeLoad: Force;
  readonly speed: AngularSpeed;
  /** V, told where it is not 1. */
  readonly rotationFactor: number;
}

/** The working of a bearing's life and static factor. */
export function bearingFigures(of: BearingFiguresInput, names: PartNames): readonly Figure[] {
  const { rating, load, lifeLoad, speed } = of;
  const millions = ratingLife(rating.dynamicRating, lifeLoad);
  const iso = (where: string) => ({ key: 'iso-281', where });
  return figuresOf(names, [
    equivalentWorking(of),
    {
      id: 'ratingLife',
      symbol: 'L10',
      name: 'basic rating life, million revolutions',
      value: millions,
      kind: 'ratio',
      formula: 'L10 = (C/P)³',
      inputs: { C: [rating.dynamicRating, 'force'], P: [lifeLoad, 'force'] },
      source: iso('basic rating life'),
    },
    {
      id: 'ratingHours',
      symbol: 'L10h',
      name: 'basic rating life, hours',
      value: lifeHours(millions, speed),
      kind: 'ratio',
      formula: 'L10h = 10⁶·L10/(60·n)',
      inputs: { L10: [millions, 'ratio'], n: [speed, 'angularSpeed'] },
      source: iso('basic rating life'),
    },
    ...(rating.staticRating === undefined ? [] : [staticWorking(rating.staticRating, load)]),
  ]);
}

function staticWorking(rating: Force, load: BearingLoad): Working {
  return {
    id: 'staticFactor',
    symbol: 's0',
    name: 'static factor',
    value: rating / staticLoad(load),
    kind: 'ratio',
    formula: 's0 = C0/P0, P0 = max(Fr, 0.6·Fr + 0.5·Fa)',
    inputs: {
      C0: [rating, 'force'],
      Fr: [load.radial, 'force'],
      Fa: [load.axial, 'force'],
      P0: [staticLoad(load), 'force'],
    },
    source: { key: 'iso-76', where: 'static equivalent load' },
  };
}

function equivalentWorking({ rating, load, equivalent, rotationFactor }: BearingFiguresInput): Working {
  return {
    id: 'equivalentLoad',
    symbol: 'P',
    name: 'equivalent dynamic load',
    value: equivalent.load,
    kind: 'force',
    formula: 'P = X·V·Fr + Y·Fa; X = 1, Y = 0 while Fa/(V·Fr) ≤ e',
    inputs: {
      Fr: [load.radial, 'force'],
      Fa: [load.axial, 'force'],
      ...(rating.staticRating === undefined ? {} : { C0: [rating.staticRating, 'force'] as const }),
      'relative axial load': [equivalent.relativeAxial, 'ratio'],
      e: [equivalent.e, 'ratio'],
      X: [equivalent.x, 'ratio'],
      Y: [equivalent.y, 'ratio'],
      V: [rotationFactor, 'ratio'],
    },
    source: { key: 'iso-281', where: 'table 3, from memory' },
  };
}
