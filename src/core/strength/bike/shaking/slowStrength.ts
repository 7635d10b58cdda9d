import type { Build } from '../../../build/index.ts';
import {
  type AssembledFrame,
  assembleFrame,
  buckleFrame,
  normalForces,
  solveFrame,
  vibrateFrame,
} from '../../frame/index.ts';
import type { StrengthCore } from '../strengthCore.ts';
import { type DividedModel, divideMembers } from './divide.ts';
import { type DrivenAt, drivenAt, type EngineRange, engineRange } from './engineRange.ts';
import { type MovedMost, movedMost } from './movedMost.ts';

/** A natural frequency of the frame. */
export interface FrameFrequency {
  /** [rad/s] */
  readonly angularFrequency: number;
  readonly moved: MovedMost;
  /** Engine speeds that drive it; empty where none in the engine's range does. */
  readonly driven: DrivenAt;
}

/** Factor by which all loads of a case may grow until the frame buckles as a whole, by the linear theory. */
export interface FrameBuckling {
  readonly factor: number;
  readonly case: string;
  /** The place on a line that gives way most. */
  readonly moved: MovedMost;
}

/** What takes longer than a keystroke: buckling of the whole frame and its vibrations. */
export interface SlowStrength {
  /** Lowest over the cases with the largest push in a member; absent where nothing can buckle. */
  readonly buckling?: FrameBuckling;
  /** Lowest first. */
  readonly frequencies: readonly FrameFrequency[];
  /** Absent where the file does not tell how fast the engine turns. */
  readonly engine?: EngineRange;
  /** What could not be worked out, in words. */
  readonly flaws: readonly string[];
}

/** Members are cut to this: frequencies then stay within 0.1 %, measured against a fifth of it [m]. */
const LONGEST = 0.15;
const COUNT = 10;
/** Cases that are tried for buckling: those with the largest push. */
const MOST_PUSHED = 3;

/**
 * Buckling factor of the frame and its first ten natural frequencies with everything on it but the rider, whose body
 * damps and gives. Held at the axles as the static model is: tires count as stiff.
 * @param longest cuts members to this [m]
 * @source bathe-1996, chapter 11 and section 6.8.2
 */
export function slowStrength(
  core: Pick<StrengthCore, 'frame' | 'cases' | 'results'>,
  build: Build,
  longest = LONGEST,
): SlowStrength {
  const range = engineRange(build);
  const engine = range ? { engine: range } : {};
  const none: SlowStrength = { frequencies: [], flaws: ['the frame is a mechanism'], ...engine };
  if (!core.results) return none;
  const divided = divideMembers(core.frame.model, longest);
  const assembled = assembleFrame(divided.model);
  if (!assembled.ok) return none;
  const modes = vibrateFrame(assembled.value, COUNT);
  const { buckling, flaw } = lowestFactor(core, divided, assembled.value);
  return {
    ...engine,
    ...(buckling ? { buckling } : {}),
    flaws: [...(modes.ok ? [] : ['the search for frequencies did not settle']), ...(flaw ? [flaw] : [])],
    frequencies: modes.ok
      ? modes.value.flatMap(({ angularFrequency, shape }): FrameFrequency[] => {
          const moved = movedMost(assembled.value, shape, divided.within);
          const driven = range ? drivenAt(angularFrequency, range) : {};
          return moved ? [{ angularFrequency, moved, driven }] : [];
        })
      : [],
  };
}

/** Only the cases with the largest push are worth their time. */
function lowestFactor(
  { frame, cases, results }: Pick<StrengthCore, 'frame' | 'cases' | 'results'>,
  { within, loadsOf }: DividedModel,
  assembled: AssembledFrame,
): { readonly buckling?: FrameBuckling; readonly flaw?: string } {
  const pushOf = (c: number): number => -Math.min(0, ...normalForces(results!.solutions[c]!));
  const tried = cases
    .map((one, c) => ({ one, push: pushOf(c) }))
    .sort((a, b) => b.push - a.push)
    .slice(0, MOST_PUSHED);
  const solved = solveFrame(
    assembled,
    tried.map(({ one }) => loadsOf(one.balanced.loads)),
  );
  if (!solved.ok) return { flaw: 'the cases could not be solved again for buckling' };
  const isOnLine = (node: string): boolean => within.has(node) || frame.draft.places.has(node);
  let lowest: FrameBuckling | undefined;
  let flaw: string | undefined;
  tried.forEach(({ one }, c) => {
    const found = buckleFrame(assembled, solved.value[c]!, 1);
    if (!found.ok) flaw = `the search for buckling did not settle in case ${one.id}`;
    const mode = found.ok ? found.value[0] : undefined;
    if (!mode || (lowest && mode.factor >= lowest.factor)) return;
    const moved = movedMost(assembled, mode.shape, within, isOnLine);
    if (moved) lowest = { factor: mode.factor, case: one.id, moved };
  });
  return { ...(lowest ? { buckling: lowest } : {}), ...(flaw ? { flaw } : {}) };
}
