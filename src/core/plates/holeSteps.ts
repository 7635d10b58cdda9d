import type { OperationName } from '../build/index.ts';
import { mm } from '../quantity/index.ts';
import { drillAtLeast, drillAtMost, drillWeb } from '../standards/index.ts';
import type { HoleStep, Opening } from './pattern.ts';
import type { OpeningPlan } from './plan.ts';
import type { OperationLimits } from './shopLimits.ts';

/** How a plate is cut, and what its drilled holes are held to. */
export interface HoleMaking {
  readonly make: OperationName;
  /** [m] */
  readonly thickness: number;
  readonly limits: OperationLimits;
  /** Limits of the drill, for holes that are only marked by the cut. */
  readonly drill: OperationLimits;
}

/** A bit this near to the wanted size makes the hole: less than a bit cuts over size [m]. */
const SAME_SIZE = mm(0.05);
/** The bit before the last leaves at least this on the diameter to be cut [m]. */
const LEAST_LEFT = mm(0.3);
/** Below this the last bit follows the pilot at once [m]. */
const ONE_BIT = mm(5);
/** Sizes that differ by rounding alone are the same [m]. */
const ROUNDING = 1e-9;
/** Above this a hole goes up through a bit of about 0.6 of its size [m]. */
const BIG_BIT = mm(13);
const STEP_DOWN = 0.6;
/** Thinner pilots break in a hand drill [m]. */
const THINNEST_PILOT = mm(2);

/**
 * How an opening is made, and what the cut line of template and cut file is. Torch: under the smallest hole
 * (1.5 thicknesses) a punch mark, drilled; up to the clean size (3 thicknesses) cut under size and drilled; above it
 * cut to size. Bores are cut under size and bored, or opened by hand until the bearing just seats. Drill and saw: holes
 * are punched and drilled, the last bit one size under before the finishing one.
 * @source practice, smallest holes of flame and plasma cutting; pilot = web of the next bit
 */
export function makeOpening(plan: OpeningPlan, making: HoleMaking): Opening {
  const { system, finish, ...shape } = plan;
  const made = plan.kind === 'bore' ? boreSteps(plan, making) : holeOrSlot(plan, making);
  const tap: HoleStep[] = plan.thread === undefined ? [] : [{ do: 'tap', thread: plan.thread }];
  return { ...shape, ...made, steps: [...made.steps, ...tap] };
}

/** Bits for a round hole in order: punch, pilot, up to one size under, finish. */
export function drillSteps(diameter: number, system: 'metric' | 'inch'): readonly HoleStep[] {
  const nearest = [drillAtMost(diameter, system), drillAtLeast(diameter, system)]
    .flatMap((drill) => (drill ? [drill.diameter] : []))
    .sort((a, b) => Math.abs(a - diameter) - Math.abs(b - diameter))[0];
  const fits = nearest !== undefined && Math.abs(nearest - diameter) <= SAME_SIZE;
  const last = fits ? nearest : drillAtMost(diameter, system)?.diameter;
  if (last === undefined) return [{ do: 'punch' }, { do: 'drill', diameter }];
  const bits = bitsUpTo(last, system);
  const pilot = drillAtLeast(Math.max(THINNEST_PILOT, drillWeb.ratio * bits[0]!), system)?.diameter;
  const opened: HoleStep[] = fits ? [] : [{ do: 'open-by-hand', diameter }];
  return [
    { do: 'punch' },
    ...(pilot !== undefined && pilot < 0.8 * bits[0]! ? [{ do: 'pilot', diameter: pilot } as const] : []),
    ...bits.map((bit) => ({ do: 'drill', diameter: bit }) as const),
    ...opened,
  ];
}

function bitsUpTo(last: number, system: 'metric' | 'inch'): readonly number[] {
  if (last <= ONE_BIT) return [last];
  const under = drillAtMost(last - LEAST_LEFT, system)?.diameter;
  const bits = under === undefined ? [last] : [under, last];
  while (bits[0]! > BIG_BIT) {
    const smaller = drillAtMost(STEP_DOWN * bits[0]!, system)?.diameter;
    if (smaller === undefined) break;
    bits.unshift(smaller);
  }
  return bits;
}

type Made = Pick<Opening, 'cutAs' | 'steps'>;

function boreSteps(plan: OpeningPlan, making: HoleMaking): Made {
  const under = undersized(plan.diameter, making);
  const last: HoleStep = { do: plan.finish === 'bored' ? 'bore' : 'open-by-hand', diameter: plan.diameter };
  const start: readonly HoleStep[] =
    making.make === 'torch'
      ? [{ do: 'cut-undersize', diameter: under }]
      : roughSteps(under, plan.system, making);
  return { cutAs: { as: 'undersize', diameter: under }, steps: [...start, last] };
}

function holeOrSlot(plan: OpeningPlan, making: HoleMaking): Made {
  if (plan.kind === 'slot') return slotSteps(plan, making);
  const { diameter, system } = plan;
  if (making.make === 'torch') return torchHole(diameter, system, making);
  if (diameter <= making.drill.largestHole + ROUNDING)
    return { cutAs: { as: 'punch' }, steps: drillSteps(diameter, system) };
  const under = undersized(diameter, making);
  return {
    cutAs: { as: 'undersize', diameter: under },
    steps: [...roughSteps(under, system, making), { do: 'open-by-hand', diameter }],
  };
}

function torchHole(diameter: number, system: 'metric' | 'inch', making: HoleMaking): Made {
  const { thickness, limits } = making;
  const smallest = Math.max(limits.smallestHole, limits.smallestHolePerThickness * thickness);
  if (diameter < smallest - ROUNDING) return { cutAs: { as: 'punch' }, steps: drillSteps(diameter, system) };
  if (diameter >= limits.cleanHolePerThickness * thickness - ROUNDING)
    return { cutAs: { as: 'full' }, steps: [{ do: 'cut', diameter }] };
  const under = Math.max(smallest, undersized(diameter, making));
  const finish = diameter <= making.drill.largestHole + ROUNDING ? 'drill' : 'open-by-hand';
  return {
    cutAs: { as: 'undersize', diameter: under },
    steps: [
      { do: 'cut-undersize', diameter: under },
      { do: finish, diameter },
    ],
  };
}

function slotSteps(plan: OpeningPlan, making: HoleMaking): Made {
  const { diameter, system } = plan;
  const byDrill: Made = {
    cutAs: { as: making.make === 'torch' ? 'punch' : 'full' },
    steps: [...drillSteps(diameter, system), { do: 'saw-and-file' }],
  };
  if (making.make !== 'torch') return byDrill;
  const cut = torchHole(diameter, system, making);
  if (cut.cutAs.as === 'punch') return byDrill;
  if (cut.cutAs.as === 'full') return cut;
  return { cutAs: cut.cutAs, steps: [cut.steps[0]!, { do: 'open-by-hand', diameter }] };
}

/** A large round hole roughed out: drilled where a bit reaches, else by hole saw or a ring of drilled holes. */
function roughSteps(under: number, system: 'metric' | 'inch', making: HoleMaking): readonly HoleStep[] {
  if (under <= making.drill.largestHole + ROUNDING) return drillSteps(under, system);
  return [{ do: 'punch' }, { do: 'pilot', diameter: mm(6) }, { do: 'cut-undersize', diameter: under }];
}

/** Never below half the size, so that a small hole with a large allowance still is a hole. */
const undersized = (diameter: number, making: HoleMaking): number =>
  Math.max(diameter / 2, diameter - making.limits.undersize);
