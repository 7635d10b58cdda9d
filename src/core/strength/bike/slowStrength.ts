import type { DrivelineSolution } from '../../driveline/index.ts';
import { assembleFrame, buckleFrame, solveFrame, vibrateFrame } from '../frame/index.ts';
import type { LoadSettings } from './loads/assumptions.ts';
import type { LoadCase } from './loads/caseTypes.ts';
import { loadCases } from './loads/loadCases.ts';
import { bikeFrame } from './model/bikeFrame.ts';
import type { BikeFrame, FrameInput } from './model/frameTypes.ts';

/** A natural frequency of the frame. */
export interface FrameFrequency {
  /** [rad/s] */
  readonly angularFrequency: number;
  /** The node that moves most. */
  readonly node: string;
  /** Within the range in which the engine fires. */
  readonly isFired: boolean;
}

/** What takes longer than a keystroke: buckling of the whole frame and its vibrations. */
export interface SlowStrength {
  /** Lowest factor over all cases and the case; absent where nothing can buckle. */
  readonly buckling?: { readonly factor: number; readonly case: string; readonly part: string };
  readonly frequencies: readonly FrameFrequency[];
  /** Range of firing, idle to governed speed [rad/s]; once in two turns, as of a four-stroke single, and once a turn. */
  readonly firing: readonly [number, number];
}

const LONGEST = 0.06;
const COUNT = 10;
/** Modes below this hardly strain the frame [rad/s]. */
const IDLE_SHARE = 0.4;
const SOFTEST_FIRST = 3;

/**
 * Buckling factor of the frame, members divided finely, and its first ten frequencies with everything on it but the
 * rider, whose body damps and gives. Held at the axles as the static model is.
 * @source bathe-1996, chapter 11 and section 6.8.2
 */
export function slowStrength(
  input: FrameInput & { readonly driveline: DrivelineSolution },
  settings: LoadSettings,
): SlowStrength {
  const frame = bikeFrame(input, settings, LONGEST);
  const firing = firingRange(input);
  const assembled = assembleFrame(frame.model);
  if (!assembled.ok) return { frequencies: [], firing };
  const { cases } = loadCases({ ...input, frame, settings });
  const solved = solveFrame(
    assembled.value,
    cases.map(({ balanced }) => balanced.loads),
  );
  const modes = vibrateFrame(assembled.value, COUNT);
  const buckling = solved.ok ? lowestFactor(frame, cases, solved.value, assembled.value) : undefined;
  return {
    ...(buckling ? { buckling } : {}),
    firing,
    frequencies: modes.ok
      ? modes.value.map(({ angularFrequency, shape }) => ({
          angularFrequency,
          node: mostMoved(assembled.value.nodeIds, shape),
          isFired: angularFrequency >= firing[0] && angularFrequency <= firing[1],
        }))
      : [],
  };
}

type Assembled = Extract<ReturnType<typeof assembleFrame>, { ok: true }>['value'];

/** Only the cases with the largest push are worth their time. */
function lowestFactor(
  frame: BikeFrame,
  cases: readonly LoadCase[],
  solutions: Extract<ReturnType<typeof solveFrame>, { ok: true }>['value'],
  assembled: Assembled,
): SlowStrength['buckling'] {
  const order = solutions
    .map((solution, c) => ({ solution, one: cases[c]!, most: largestPush(solution.memberForces) }))
    .sort((a, b) => b.most - a.most)
    .slice(0, SOFTEST_FIRST);
  let lowest: SlowStrength['buckling'];
  for (const { solution, one } of order) {
    const found = buckleFrame(assembled, solution, 1);
    const mode = found.ok ? found.value[0] : undefined;
    if (!mode || (lowest && mode.factor >= lowest.factor)) continue;
    const node = mostMoved(assembled.nodeIds, mode.shape, (id) => frame.draft.places.has(id));
    lowest = { factor: mode.factor, case: one.id, part: frame.draft.places.get(node)?.line ?? node };
  }
  return lowest;
}

function largestPush(memberForces: Float64Array): number {
  let most = 0;
  for (let m = 0; m < memberForces.length; m += 12) most = Math.max(most, memberForces[m]!);
  return most;
}

function mostMoved(
  ids: readonly string[],
  shape: Float64Array,
  counts: (id: string) => boolean = () => true,
): string {
  let best = { node: ids[0] ?? '', size: -1 };
  ids.forEach((node, i) => {
    const size = Math.hypot(shape[i * 6]!, shape[i * 6 + 1]!, shape[i * 6 + 2]!);
    if (size > best.size && counts(node)) best = { node, size };
  });
  return best.node;
}

/** From half the turning speed at idle to the turning speed when governed. */
function firingRange({ build }: FrameInput): readonly [number, number] {
  const { governed, torque } = build.engine;
  const top = governed ?? Math.max(0, ...(torque ?? []).map(({ at }) => at));
  return [(IDLE_SHARE * top) / 2, top];
}
