import type { Angle, AngularSpeed, Issue, Length, Outcome, Speed } from '../quantity/index.ts';
import { bad, good } from '../quantity/index.ts';
import type { ChainCaution } from './chainCautions.ts';
import { chainCautions } from './chainCautions.ts';
import type { SprocketPair, Wraps } from './chainLength.ts';
import { centerForLinks, linksForCenter, wrappedLinks } from './chainLength.ts';
import { linkCountsAround } from './linkCounts.ts';
import type { SlackSetting } from './slack.ts';
import { slackSetting } from './slack.ts';
import type { WearLimit } from './wear.ts';
import { wearLimit } from './wear.ts';

export interface ChainDriveInput extends SprocketPair {
  /** Center distance the layout wants [m]. */
  readonly wantedCenter: Length;
  /** Length already chosen, > 0; without it the nearest that needs the least movement is chosen. */
  readonly links?: number;
  /** Offer odd counts too, closed with an offset link. */
  readonly offsetLinks?: boolean;
  /** The center distance cannot be set again, or smooth running is wanted. */
  readonly fixedCenters?: boolean;
  /** Own wear limit as a fraction, 0 to 0.1. */
  readonly wearLimit?: number;
  /** How much closer the shafts must come to hook the chain on [m], ≥ 0; half a pitch when not given. */
  readonly fitting?: Length;
  /** Line of centers above the horizontal [rad]. */
  readonly inclination?: Angle;
  /** Steep run, heavy starts or reversing: half the usual play. */
  readonly steep?: boolean;
  /** Thread pitch of the pusher screw [m], > 0. */
  readonly pusherPitch?: Length;
  /** Speed of the driver [rad/s], ≥ 0. */
  readonly driverSpeed?: AngularSpeed;
}

/** One chain length that can be made up, and where it puts the shafts. */
export interface ChainLengthChoice {
  /** L, number of links. */
  readonly links: number;
  /** An odd count needs an offset (half) link. */
  readonly offsetLink: boolean;
  /** C, taut and new [m]. */
  readonly center: Length;
  /** Adjuster position: C less the wanted center [m], positive apart. */
  readonly fromWanted: Length;
  /** C when worn to the limit [m]. */
  readonly wornCenter: Length;
  /** C at which the chain is hooked on [m]. */
  readonly fittingCenter: Length;
}

/** What a slot along the line of centers must cover, piece by piece. */
export interface SlotLength {
  /** Between the two lengths on either side of the wanted center [m]. */
  readonly linkRounding: Length;
  /** From new to worn, the longer of the two lengths [m]. */
  readonly wear: Length;
  /** From hooked on to taut [m]. */
  readonly fitting: Length;
  /** Sum [m]; add the bolt or axle diameter for the length over the slot's ends. */
  readonly total: Length;
}

export interface ChainDrivePlan {
  /** L at the wanted center, not rounded. */
  readonly exactLinks: number;
  readonly chosen: ChainLengthChoice;
  /** Neighboring lengths in rising order; two on each side where they exist. */
  readonly alternatives: readonly ChainLengthChoice[];
  readonly wear: WearLimit;
  /** Center distance the chosen chain still needs to its wear limit [m]. */
  readonly takeUp: Length;
  readonly slot: SlotLength;
  readonly wraps: Wraps;
  readonly slack: SlackSetting;
  /** Driven turns per driver turn inverted: N2/N1. */
  readonly ratio: number;
  /** Mean chain speed N1·p·n [m/s]; absent when no speed was given. */
  readonly chainSpeed?: Speed;
  /** Speed variation of the chain by the smaller polygon, 1 − cos(180°/N), of the largest speed. */
  readonly chordalVariation: number;
  readonly cautions: readonly ChainCaution[];
}

/** Half a pitch of center distance gives a whole link of chain to close over the teeth. */
const FITTING_PITCHES = 0.5;
const MAX_WEAR = 0.1;
/** 100 000 rpm and more is a slip of the pen [rad/s]. */
const MAX_SPEED = 11000;
const EACH_SIDE = 2;

/**
 * Everything to settle about one chain: lengths around the wanted center with the exact center of each,
 * adjuster position, slot, take-up, wrap, slack, speed, cautions.
 * @issue out-of-range — a field outside its range, or no chain of that length reaches round the sprockets
 * @source machinerys-handbook-31, chain length · practice for wear, slack and layout rules
 */
export function planChainDrive(input: ChainDriveInput): Outcome<ChainDrivePlan> {
  const exact = linksForCenter(input, input.wantedCenter);
  const issues = [...(exact.ok ? [] : exact.issues), ...optionIssues(input)];
  const [first, ...rest] = issues;
  if (first || !exact.ok) return bad(first as Issue, ...rest);
  const wear = wearOf(input);
  const alternatives = linkCountsAround({
    exactLinks: exact.value,
    eachSide: EACH_SIDE,
    ...(input.offsetLinks === undefined ? {} : { offsetLinks: input.offsetLinks }),
  }).flatMap((links) => {
    const choice = chainLengthChoice(input, links, wear);
    return choice.ok ? [choice.value] : [];
  });
  const chosen =
    input.links === undefined ? nearest(alternatives) : chainLengthChoice(input, input.links, wear);
  return chosen.ok
    ? good(planOf(input, { exactLinks: exact.value, chosen: chosen.value, alternatives, wear }))
    : chosen;
}

/**
 * Center distances of one chain length: new, worn to the limit, and hooked on.
 * @issue out-of-range — so short a chain does not reach round the sprockets
 * @source derived, length equation
 */
export function chainLengthChoice(
  input: ChainDriveInput,
  links: number,
  wear: WearLimit,
): Outcome<ChainLengthChoice> {
  const center = centerForLinks(input, links);
  if (!center.ok) return center;
  const worn = centerForLinks(input, links * (1 + wear.elongation));
  if (!worn.ok) return worn;
  return good({
    links,
    offsetLink: links % 2 === 1,
    center: center.value,
    fromWanted: (center.value - input.wantedCenter) as Length,
    wornCenter: worn.value,
    fittingCenter: (center.value - fittingOf(input)) as Length,
  });
}

/**
 * Speed variation of a chain over an N-sided sprocket: 1 − cos(180°/N), of the largest speed.
 * @returns fraction, 0 to 1
 * @source derived, the pitch polygon's inner against its outer radius
 */
export function chordalVariation(teeth: number): number {
  return 1 - Math.cos(Math.PI / teeth);
}

/**
 * Mean chain speed: v = N·p·ω/(2π).
 * @returns v [m/s]
 * @source derived, N pitches a turn
 */
export function chainSpeed(pitch: Length, teeth: number, speed: AngularSpeed): Speed {
  return ((teeth * pitch * speed) / (2 * Math.PI)) as Speed;
}

function planOf(
  input: ChainDriveInput,
  found: Pick<ChainDrivePlan, 'exactLinks' | 'chosen' | 'alternatives' | 'wear'>,
): ChainDrivePlan {
  const { chosen } = found;
  const { alpha, slope, span } = wrappedLinks(input, chosen.center);
  const small = Math.min(input.driverTeeth, input.drivenTeeth);
  return {
    ...found,
    takeUp: (chosen.wornCenter - chosen.center) as Length,
    slot: slotOf(input, found),
    wraps: { driver: (Math.PI - 2 * alpha) as Angle, driven: (Math.PI + 2 * alpha) as Angle },
    slack: slackSetting({
      span: span as Length,
      lengthPerCenter: slope * input.pitch,
      ...(input.steep === undefined ? {} : { steep: input.steep }),
      ...(input.pusherPitch === undefined ? {} : { pusherPitch: input.pusherPitch }),
    }),
    ratio: input.drivenTeeth / input.driverTeeth,
    ...(input.driverSpeed === undefined
      ? {}
      : { chainSpeed: chainSpeed(input.pitch, input.driverTeeth, input.driverSpeed) }),
    chordalVariation: chordalVariation(small),
    cautions: chainCautions({
      pitch: input.pitch,
      driverTeeth: input.driverTeeth,
      drivenTeeth: input.drivenTeeth,
      center: chosen.center,
      links: chosen.links,
      smallWrap: Math.PI - 2 * Math.abs(alpha),
      ...(input.inclination === undefined ? {} : { inclination: input.inclination }),
    }),
  };
}

/** The slot is sawn before the chain is bought, so it covers both neighbors of the wanted center. */
function slotOf(input: ChainDriveInput, found: Pick<ChainDrivePlan, 'chosen' | 'alternatives'>): SlotLength {
  const below = found.alternatives.filter((choice) => choice.fromWanted <= 0).at(-1);
  const above = found.alternatives.find((choice) => choice.fromWanted > 0);
  const free = input.links === undefined && below !== undefined && above !== undefined;
  const longer = free ? above : found.chosen;
  const linkRounding = free ? above.center - below.center : 0;
  const wear = longer.wornCenter - longer.center;
  const fitting = fittingOf(input);
  return {
    linkRounding: linkRounding as Length,
    wear: wear as Length,
    fitting,
    total: (linkRounding + wear + fitting) as Length,
  };
}

function nearest(alternatives: readonly ChainLengthChoice[]): Outcome<ChainLengthChoice> {
  const [best] = [...alternatives].sort((a, b) => Math.abs(a.fromWanted) - Math.abs(b.fromWanted));
  return best
    ? good(best)
    : bad({
        code: 'conflict',
        path: 'centerDistance',
        reason: 'no whole chain reaches round these sprockets',
      });
}

function wearOf(input: ChainDriveInput): WearLimit {
  return wearLimit({
    largestTeeth: Math.max(input.driverTeeth, input.drivenTeeth),
    ...(input.fixedCenters === undefined ? {} : { fixedCenters: input.fixedCenters }),
    ...(input.wearLimit === undefined ? {} : { given: input.wearLimit }),
  });
}

function fittingOf(input: ChainDriveInput): Length {
  return input.fitting ?? ((FITTING_PITCHES * input.pitch) as Length);
}

function optionIssues(input: ChainDriveInput): readonly Issue[] {
  const issues: Issue[] = [];
  const range = (
    path: string,
    value: number | undefined,
    limits: { min: number; max: number; unit: string },
  ) => {
    if (value === undefined || (value >= limits.min && value <= limits.max)) return;
    issues.push({ code: 'out-of-range', path, given: value, ...limits });
  };
  range('wearLimit', input.wearLimit, { min: 0, max: MAX_WEAR, unit: '' });
  range('fitting', scaled(input.fitting), { min: 0, max: 1000, unit: 'mm' });
  range('driverSpeed', input.driverSpeed, { min: 0, max: MAX_SPEED, unit: 'rad/s' });
  range('pusherPitch', scaled(input.pusherPitch), { min: 0.1, max: 20, unit: 'mm' });
  return issues;
}

const scaled = (length: number | undefined): number | undefined =>
  length === undefined ? undefined : length * 1000;
