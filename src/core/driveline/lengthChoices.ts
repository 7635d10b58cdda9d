import type { Length } from '../quantity/index.ts';
import type { SetUp } from './shaftPlaces.ts';
import { closestSlide, slideForCenter } from './slideGeometry.ts';
import type { CenterTargets } from './tensionTargets.ts';
import type { LengthChoice, ShaftSlide, SlideStates, SlotNeed } from './tensionTypes.ts';

/** Positions this near a slot's end count as inside: rounding of the arithmetic, not of the metal [m]. */
const TRAVEL_ROUNDING = 1e-9;

interface Reach {
  readonly states: SlideStates;
  readonly slackens: boolean;
}

/** What one length asks of the slide, and whether the slot gives it. */
export function lengthChoice(setUp: SetUp, target: CenterTargets): LengthChoice {
  const { slide } = setUp;
  const reach = reachOf(setUp, target);
  const inside = (position: number) => pastTravel(slide, position) === 0;
  return {
    ...(target.links === undefined ? {} : { links: target.links }),
    offsetLink: target.offsetLink,
    center: target.fresh as Length,
    ...(reach === undefined ? {} : { slide: reach.states }),
    slackens: reach?.slackens ?? false,
    withinTravel: reach !== undefined && inside(reach.states.fresh),
    coversLife: reach?.slackens === true && Object.values(reach.states).every(inside),
  };
}

/**
 * The length to take: one whose whole life lies in the slot before one that is only new in it, then the one that
 * moves the shaft least.
 */
export function bestChoice(alternatives: readonly LengthChoice[]): LengthChoice | undefined {
  const rank = (choice: LengthChoice) => (choice.coversLife ? 0 : choice.withinTravel ? 1 : 2);
  const movement = (choice: LengthChoice) => Math.abs(choice.slide?.fresh ?? Number.POSITIVE_INFINITY);
  const [best] = alternatives
    .filter((choice) => choice.slide)
    .sort((a, b) => rank(a) - rank(b) || movement(a) - movement(b));
  return best;
}

/**
 * Slot length along the slide: link rounding + wear + fitting + following drives set before it.
 * The slot is sawn before the chain is bought, so wear is that of the longer neighbor.
 * @source derived, slide positions of the length equations
 */
export function slotNeed(
  setUp: SetUp,
  found: {
    readonly alternatives: readonly LengthChoice[];
    readonly targets: readonly CenterTargets[];
    readonly states: SlideStates;
  },
): SlotNeed {
  const reachable = found.alternatives.flatMap((choice) => (choice.slide ? [choice.slide.fresh] : []));
  const linkRounding = Math.max(...reachable) - Math.min(...reachable);
  const longest = found.targets.reduce((a, b) => (b.fresh > a.fresh ? b : a));
  const together = reachOf(setUp, longest)?.states ?? found.states;
  const alone = reachOf({ ...setUp, worn: setUp.fresh }, longest)?.states ?? found.states;
  const wear = Math.abs(alone.worn - alone.fresh);
  const following = Math.abs(together.worn - alone.worn);
  const fitting = Math.abs(found.states.fresh - found.states.fitting);
  return {
    linkRounding: linkRounding as Length,
    wear: wear as Length,
    fitting: fitting as Length,
    following: following as Length,
    total: (linkRounding + wear + fitting + following) as Length,
  };
}

/** How far a position lies past the slot's nearer end [m]; 0 inside. */
export function pastTravel(slide: ShaftSlide, position: number): number {
  const past = Math.max(
    (slide.travelMin ?? position) - position,
    position - (slide.travelMax ?? position),
    0,
  );
  return past <= TRAVEL_ROUNDING ? 0 : past;
}

/** Both branches are looked at: positive travel may draw the shafts apart or together. */
function reachOf(setUp: SetUp, target: CenterTargets): Reach | undefined {
  const reaches = ([1, -1] as const).flatMap((branch): readonly Reach[] => {
    const fresh = slideForCenter(setUp.fresh, target.fresh, branch);
    const worn = slideForCenter(setUp.worn, target.worn, branch);
    if (fresh === undefined || worn === undefined) return [];
    const slack = slideForCenter(setUp.fresh, target.fitting, branch);
    const fitting = slack ?? closestSlide(setUp.fresh);
    const states = { fitting: fitting as Length, fresh: fresh as Length, worn: worn as Length };
    return [{ states, slackens: slack !== undefined }];
  });
  const past = ({ states }: Reach) => pastTravel(setUp.slide, states.fresh);
  const [best] = reaches.sort(
    (a, b) => past(a) - past(b) || Math.abs(a.states.fresh) - Math.abs(b.states.fresh),
  );
  return best;
}
