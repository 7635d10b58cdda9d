import type { Build } from '../../../build/index.ts';
import { platePoint } from './contact.ts';
import { type AxleNodes, addAxle, axleDiameter, heldY } from './frontModel.ts';
import type { Making } from './making.ts';

/** Overhang of plates that no stack places [m]. @source practice */
const SPACER = 0.03;

/** The rear axle between its plates, or where a stack holds it. */
export function addRear(making: Making): AxleNodes {
  const { build, bike, masses, patterns, draft } = making;
  const placed = patterns
    .filter((pattern) => pattern.recipe === 'axle-plate' && axleOf(build, pattern.id) === 'rearAxle')
    .flatMap((pattern) => pattern.placed.map((_, i) => platePoint(pattern, i, { x: 0, y: 0 }).y));
  const [most, least] = [Math.max(...placed), Math.min(...placed)];
  const half = build.wheels.rear.hub.width / 2 + SPACER;
  const ends =
    placed.length >= 2 && most > 0 && least < 0
      ? ([most, least] as const)
      : (heldY(bike, 'rearAxle', 'plate') ?? ([half, -half] as const));
  return addAxle(draft, bike, {
    shaft: 'rearAxle',
    diameter: axleDiameter(build, bike, 'rear'),
    hubWidth: build.wheels.rear.hub.width,
    mass: masses.parts.find((part) => part.id === 'shafts.rearAxle')?.mass ?? 0,
    ends,
  });
}

function axleOf(build: Build, plate: string): string | undefined {
  const entry = build.plates[plate];
  return entry?.recipe === 'axle-plate' ? (entry.shaft ?? 'rearAxle') : undefined;
}
