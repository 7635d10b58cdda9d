import type { BrakeEntry, Build } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import type { PlacedBrake, PlacedStack } from './bike.ts';

/** Axle that each wheel turns on. */
const AXLES = { front: 'frontAxle', rear: 'rearAxle' } as const;

/**
 * Brake discs and drums in place: in the disc plane of the wheel's stack; without one, in the caliper's own plane;
 * without that, beside the hub.
 * @param shafts centers of axles after the slides [m]
 * @source derived, the stack of the axle
 */
export function placeBrakes(
  build: Build,
  shafts: Readonly<Record<string, Point3>>,
  stacks: Readonly<Record<string, PlacedStack>>,
): PlacedBrake[] {
  return (['front', 'rear'] as const).flatMap((wheel): PlacedBrake[] => {
    const brake = build.brakes[wheel];
    if (!brake) return [];
    const y = planeOf(wheel, stacks) ?? caliperY(brake) ?? besideHub(build, wheel, brake, stacks);
    const disc = brake.kind === 'disc';
    return [
      {
        wheel,
        kind: brake.kind,
        y,
        radius: (disc ? brake.disc.diameter : brake.diameter) / 2,
        center: { ...shafts[AXLES[wheel]]!, y },
        thickness: disc ? brake.disc.thickness : brake.width,
      },
    ];
  });
}

function planeOf(wheel: 'front' | 'rear', stacks: Readonly<Record<string, PlacedStack>>): number | undefined {
  const planes = Object.values(stacks)
    .filter((stack) => stack.shaft === AXLES[wheel])
    .flatMap((stack) => stack.items.flatMap((item) => item.planes));
  return planes.find((plane) => plane.runs === 'disc' && (plane.brake ?? wheel) === wheel)?.y;
}

const caliperY = (brake: BrakeEntry): number | undefined =>
  brake.kind === 'disc' ? brake.caliper.centerY : undefined;

/** The middle of a drum or disc that bears on the hub's face on its side. */
function besideHub(
  build: Build,
  wheel: 'front' | 'rear',
  brake: BrakeEntry,
  stacks: Readonly<Record<string, PlacedStack>>,
): number {
  const side = brake.side === 'left' ? 1 : -1;
  const half = (brake.kind === 'disc' ? brake.disc.thickness : brake.width) / 2;
  const hub = Object.values(stacks)
    .filter((stack) => stack.shaft === AXLES[wheel])
    .flatMap((stack) => stack.items)
    .find((item) => item.kind === 'hub');
  if (hub) return (side > 0 ? hub.left : hub.right) + side * half;
  const { width, rimOffset = 0 } = build.wheels[wheel].hub;
  return -rimOffset + side * (width / 2 + half);
}
