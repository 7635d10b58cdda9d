import type { Build } from '../../../build/index.ts';
import { fastestEngine } from '../loads/engineSpeed.ts';

/** How fast the engine turns in use. */
export interface EngineRange {
  /** [rad/s]; 0 for a motor. */
  readonly idle: number;
  /** Fastest, governed or not [rad/s]. */
  readonly governed: number;
  /** Whether the idle speed is the build file's. */
  readonly isIdleGiven: boolean;
  /** A four-stroke single fires once in two turns; a motor does not. */
  readonly fires: boolean;
}

/** Idle of a small governed engine over its governed speed [-]. @source practice: about 1400 of 3600 rpm */
const IDLE_SHARE = 0.4;

/** From idle to the fastest that the engine turns; undefined where the file does not tell that. */
export function engineRange(build: Pick<Build, 'engine'>): EngineRange | undefined {
  const { motor, idle } = build.engine;
  const governed = fastestEngine(build);
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
