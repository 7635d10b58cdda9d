import { derived, type Figure, practice } from '../quantity/index.ts';
import { materialNamed } from '../standards/index.ts';
import type { FlatPattern, Opening } from './pattern.ts';

/**
 * Figures of the plates that a person may question: area and mass of each, place and size of each hole, and the length
 * of each slot. A hole that a change of the bike moves in a plate that is made already is found by these.
 */
export function plateFigures(patterns: readonly FlatPattern[]): readonly Figure[] {
  return patterns.flatMap((pattern) => [
    ...massFigures(pattern),
    ...pattern.openings.flatMap((opening) => holeFigures(pattern, opening)),
    ...pattern.openings.filter((opening) => opening.kind === 'slot').map((slot) => slotFigure(pattern, slot)),
  ]);
}

function massFigures(pattern: FlatPattern): readonly Figure[] {
  const { density, source } = materialNamed(pattern.material);
  const { id, area, thickness, mass } = pattern;
  return [
    {
      id: `plate.${id}.area`,
      symbol: 'A',
      name: `area, plate ${id}, holes taken off`,
      value: area,
      kind: 'area',
      formula: 'A = outline − openings − windows',
      inputs: [],
      source: { key: 'derived', where: "Green's theorem on lines and arcs" },
    },
    {
      id: `plate.${id}.mass`,
      symbol: 'm',
      name: `mass, plate ${id}, one`,
      value: mass,
      kind: 'mass',
      formula: 'm = ρ·A·t',
      inputs: [
        { name: 'ρ', value: density, kind: 'density' },
        { name: 'A', value: area, kind: 'area' },
        { name: 't', value: thickness, kind: 'length' },
      ],
      source,
    },
  ];
}

function holeFigures(pattern: FlatPattern, { id, kind, center, diameter, for: through }: Opening): Figure[] {
  const of = `plate ${pattern.id}, ${id}`;
  const figure = (last: string, symbol: string, name: string, value: number): Figure => ({
    id: `plate.${pattern.id}.${id}.${last}`,
    symbol,
    name: `${name}, ${of}`,
    value,
    kind: 'length',
    formula: `by the recipe, for ${through}`,
    inputs: [],
    source: derived('recipe of the plate, in its own axes'),
  });
  return [
    figure('x', 'x', 'center along', center.x),
    figure('y', 'y', 'center across', center.y),
    figure('diameter', 'd', kind === 'slot' ? 'slot width' : 'finished diameter', diameter),
  ];
}

function slotFigure(pattern: FlatPattern, slot: Opening): Figure {
  const travel = slot.travel ?? 0;
  return {
    id: `plate.${pattern.id}.${slot.id}.length`,
    symbol: 'L',
    name: `slot length over all, plate ${pattern.id}, ${slot.id}`,
    value: travel + slot.diameter,
    kind: 'length',
    formula: 'L = s + w',
    inputs: [
      { name: 's', value: travel, kind: 'length' },
      { name: 'w', value: slot.diameter, kind: 'length' },
    ],
    source: practice('slot = travel and the width that clears the bolt'),
  };
}
