import type { Point3 } from '../../../geometry/index.ts';
import type { SourceRef } from '../../../quantity/index.ts';
import type { AppliedLoad } from './balance.ts';
import type { Whole } from './wholeBike.ts';

export const CHASSIS: SourceRef = {
  key: 'memory',
  where: 'chassis practice: 3 g bump, 2 g along, 1 g across',
};

export const onWheel = (wheel: 'front' | 'rear', at: Point3, force: Partial<Point3>): AppliedLoad => ({
  what: `${wheel} wheel on the ground`,
  carrier: { by: 'wheel', wheel },
  at,
  force: { x: 0, y: 0, z: 0, ...force },
});

export const rest = (whole: Whole, front = 1, rear = 1): AppliedLoad[] => [
  onWheel('front', whole.contact.front, { z: whole.front * front }),
  onWheel('rear', whole.contact.rear, { z: whole.rear * rear }),
];

export const newtons = (force: number): string => `${Math.round(force)} N`;
