import type { Build } from '../../../build/index.ts';

/**
 * Fastest an engine turns [rad/s]: its governed speed; else a motor's without load, V/k, or the end of the torque curve.
 * 0 where the file tells none of them.
 * @source derived, back electromotive force of a motor
 */
export function fastestEngine({ engine: { governed, motor, torque = [] } }: Pick<Build, 'engine'>): number {
  if (governed !== undefined) return governed;
  return motor ? motor.battery.voltage / motor.constant : Math.max(0, ...torque.map(({ at }) => at));
}
