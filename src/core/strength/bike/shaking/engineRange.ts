import type { Build } from '../../../build/index.ts';

/** How fast the engine turns in use. */
export interface EngineRange {
  /** [rad/s]; 0 for a motor. */
  readonly idle: number;
  readonly governed: number;
  /** Whether the idle speed is the build file's. */
  readonly isIdleGiven: boolean;
  /** A four-stroke single fires once in two turns; a motor does not. */
  readonly fires: boolean;
}

/** Idle of a small governed engine over its governed speed [-]. @source practice: about 1400 of 3600 rpm */
const IDLE_SHARE = 0.4;

/** From idle to the governed speed, or to the end of the torque curve; undefined where neither is known. */
export function engineRange({ engine }: Build): EngineRange | undefined {
  const { torque = [], motor, idle } = engine;
  const governed = engine.governed ?? Math.max(0, ...torque.map(({ at }) => at));
  if (!(governed > 0)) return undefined;
  if (motor) return { idle: 0, governed, isIdleGiven: true, fires: false };
  return { idle: idle ?? IDLE_SHARE * governed, governed, isIdleGiven: idle !== undefined, fires: true };
}

/** Range of what shakes the frame: once in two turns at idle to once a turn at the governed speed [rad/s]. */
export const shakenRange = ({ idle, governed, fires }: EngineRange): readonly [number, number] => [
  fires ? idle / 2 : idle,
  governed,
];

/** Engine speeds at which a frequency is driven [rad/s]. */
export interface DrivenAt {
  /** Firing, once in two turns. */
  readonly firing?: number;
  /** What does not balance, once a turn. */
  readonly turning?: number;
}

/** Those of the two that lie within the range of the engine. */
export function drivenAt(angularFrequency: number, range: EngineRange): DrivenAt {
  const isRun = (speed: number): boolean => speed >= range.idle && speed <= range.governed;
  const firing = 2 * angularFrequency;
  return {
    ...(range.fires && isRun(firing) ? { firing } : {}),
    ...(isRun(angularFrequency) ? { turning: angularFrequency } : {}),
  };
}
