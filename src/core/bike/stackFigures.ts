import { derived, type Figure, type FigureInput, practice } from '../quantity/index.ts';
import type { PlacedItem, PlacedPlane, PlacedStack } from './bike.ts';
import { SHAFT_SLOPE } from './ladder.ts';

const SUMS = derived('sums of lengths along the shaft');

/** Figures of the stacks: spacers to make, planes, axle ends, sleeves; ids like `stack.rearAxle.spacer-left.length`. */
export function stackFigures(stacks: Readonly<Record<string, PlacedStack>>): readonly Figure[] {
  return Object.values(stacks).flatMap((stack) => [
    ...stack.items.filter((item) => item.solved).map((item) => spacerFigure(stack, item)),
    ...stack.items.flatMap((item) => item.planes.map((plane) => planeFigure(stack, item, plane))),
    ...overallFigures(stack),
    ...axleFigures(stack),
    ...sleeveFigures(stack),
  ]);
}

const length = (name: string, value: number): FigureInput => ({ name, value, kind: 'length' });

function spacerFigure(stack: PlacedStack, item: PlacedItem): Figure {
  return {
    id: `stack.${stack.id}.${item.id}.length`,
    symbol: 'L',
    name: `length of ${item.id}, stack ${stack.id}`,
    value: item.length,
    kind: 'length',
    formula: 'L = y_left − y_right',
    inputs: [length('y_left', item.left), length('y_right', item.right)],
    source: SUMS,
  };
}

function planeFigure(stack: PlacedStack, item: PlacedItem, plane: PlacedPlane): Figure {
  const what = plane.drive ?? plane.brake ?? plane.runs;
  return {
    id: `stack.${stack.id}.${item.id}.plane.${what}`,
    symbol: 'y',
    name: `plane of ${item.id} (${what}) left of the center plane`,
    value: plane.y,
    kind: 'length',
    formula: 'y = y_left − a',
    inputs: [length('y_left', item.left), length('a', item.left - plane.y)],
    source: SUMS,
  };
}

function overallFigures(stack: PlacedStack): readonly Figure[] {
  const overall = stack.items.reduce((sum, item) => sum + item.length, 0);
  const drives = stack.items.some((item) => item.planes.some((plane) => plane.drive !== undefined));
  const whole: Figure = {
    id: `stack.${stack.id}.overall`,
    symbol: 'ΣL',
    name: `length of stack ${stack.id}`,
    value: overall,
    kind: 'length',
    formula: 'ΣL = L1 + L2 + …',
    inputs: stack.items.map((item) => length(item.id, item.length)),
    source: SUMS,
  };
  if (!drives) return [whole];
  const parallel: Figure = {
    id: `stack.${stack.id}.parallel`,
    symbol: 'δ',
    name: `how far one end of stack ${stack.id} may stand ahead of the other`,
    value: overall * SHAFT_SLOPE,
    kind: 'length',
    formula: 'δ = ΣL / 300',
    inputs: [length('ΣL', overall)],
    source: practice("shafts of a chain drive parallel and level to 1/300, chain makers' fitting notes"),
  };
  return [whole, parallel];
}

function axleFigures({ id, axle, items }: PlacedStack): readonly Figure[] {
  if (axle === undefined) return [];
  const overall = items.reduce((sum, item) => sum + item.length, 0);
  const base = { kind: 'length', source: SUMS } as const;
  return [
    {
      ...base,
      id: `stack.${id}.axle.outLeft`,
      symbol: 'e_L',
      name: `axle beyond the stack at the left end, ${id}`,
      value: axle.outLeft,
      formula: 'e_L = y_axle − y_stack',
      inputs: [length('y_axle', axle.left), length('y_stack', axle.left - axle.outLeft)],
    },
    {
      ...base,
      id: `stack.${id}.axle.outRight`,
      symbol: 'e_R',
      name: `axle beyond the stack at the right end, ${id}`,
      value: axle.outRight,
      formula: 'e_R = L_axle − e_L − ΣL',
      inputs: [length('L_axle', axle.length), length('e_L', axle.outLeft), length('ΣL', overall)],
    },
  ];
}

function sleeveFigures({ id, sleeves }: PlacedStack): readonly Figure[] {
  return sleeves.flatMap((sleeve) =>
    (['outside', 'inside', 'length'] as const).map(
      (size): Figure => ({
        id: `stack.${id}.sleeve.${sleeve.item}.${size}`,
        symbol: size === 'length' ? 'L' : 'd',
        name: `${size} of the sleeve in ${sleeve.item}, stack ${id}`,
        value: sleeve[size],
        kind: 'length',
        formula: size === 'outside' ? 'd = bore' : size === 'inside' ? 'd = axle' : 'L = length of the bore',
        inputs: [
          length(
            size === 'outside' ? 'bore' : size === 'inside' ? 'axle' : 'length of the bore',
            sleeve[size],
          ),
        ],
        source: practice('sleeves full width, no split, slip fit'),
      }),
    ),
  );
}
