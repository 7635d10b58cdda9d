import { type AssembledFrame, type FrameLoads, solveFrame } from '../frame/index.ts';
import type { BikeFrame } from './model/frameTypes.ts';

/** How much torque turns one end of the frame by a degree against the other [N·m]. */
export interface FrameStiffness {
  /** Neck against rear axle, about the length of the bike. */
  readonly neckTwist: number;
  /** Rear axle against the engine, about the upright: what a one-sided chain pull turns. */
  readonly rearYaw: number;
}

const DEGREE = Math.PI / 180;
const TRIAL = 100;

/**
 * Twist between two places under equal and opposite torques, so that what holds the frame does not matter.
 * @returns undefined where the frame could not be solved
 * @source derived, M/θ
 */
export function frameStiffness(frame: BikeFrame, assembled: AssembledFrame): FrameStiffness | undefined {
  const neck = frame.draft.lines.get('neck');
  if (!neck) return undefined;
  const neckNode = frame.draft.station(neck, 0);
  const [left, right] = frame.wheels.rear.held;
  const span = frame.draft.nodes.get(left)!.y - frame.draft.nodes.get(right)!.y;
  const pair = TRIAL / span;
  const cases: FrameLoads[] = [
    {
      nodes: [
        { node: neckNode, moment: { x: TRIAL, y: 0, z: 0 } },
        { node: left, force: { x: 0, y: 0, z: -pair } },
        { node: right, force: { x: 0, y: 0, z: pair } },
      ],
    },
    {
      nodes: [
        { node: frame.engine, moment: { x: 0, y: 0, z: TRIAL } },
        { node: left, force: { x: pair, y: 0, z: 0 } },
        { node: right, force: { x: -pair, y: 0, z: 0 } },
      ],
    },
  ];
  const solved = solveFrame(assembled, cases);
  if (!solved.ok) return undefined;
  const [twist, yaw] = solved.value as [(typeof solved.value)[0], (typeof solved.value)[0]];
  const at = (node: string, direction: number, of: typeof twist): number =>
    of.displacements[assembled.nodeIndex.get(node)! * 6 + direction]!;
  const axleRoll = (at(left, 2, twist) - at(right, 2, twist)) / span;
  const axleYaw = -(at(left, 0, yaw) - at(right, 0, yaw)) / span;
  const roll = Math.abs(at(neckNode, 3, twist) - axleRoll);
  const turn = Math.abs(at(frame.engine, 5, yaw) - axleYaw);
  return { neckTwist: (TRIAL / roll) * DEGREE, rearYaw: (TRIAL / turn) * DEGREE };
}
