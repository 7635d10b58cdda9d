import type { Length, Outcome } from '../quantity/index.ts';
import { bad, good } from '../quantity/index.ts';
import { adjustmentSteps, orderProblems, possibleOrders } from './adjustmentOrder.ts';
import { wrappedLinks } from './chainLength.ts';
import { bestChoice, lengthChoice, pastTravel, slotNeed } from './lengthChoices.ts';
import type { SetUp, Slides } from './shaftPlaces.ts';
import { placedShaft, setUpOf } from './shaftPlaces.ts';
import { slackSetting } from './slack.ts';
import { centerAtSlide, centerPerSlide } from './slideGeometry.ts';
import { tensionIssues } from './tensionIssues.ts';
import { centerTargets, elongationAt, exactLinksAt, pairOf } from './tensionTargets.ts';
import type {
  Adjustment,
  DriveRun,
  DriveShaft,
  DriveTension,
  ShaftTension,
  SlideStates,
  TensionInput,
  TensionProblem,
  TensionSolution,
} from './tensionTypes.ts';

const AT_REST: SlideStates = { fitting: 0 as Length, fresh: 0 as Length, worn: 0 as Length };

/**
 * Solves drives that share movable shafts together: for each drive in order of adjustment, the slide position
 * at which its length is exactly met, drives after it seeing the shafts moved. Of the chain lengths on either
 * side of the layout, one whose whole life (put on, new, worn) lies in the slot is taken before one that is only
 * new in it, and then the one that moves the shaft least. Without a given order the first that fits is taken.
 * A drive train that can't be set comes back with problems, not with issues; what can be set is set. A given
 * order that can't work is reported, and a workable one is solved in its place.
 * @issue unknown-name, duplicate-name, out-of-range, wrong-type, too-large, conflict — an unreadable drive train
 * @source derived, length equations and plane geometry · practice for wear and fitting room
 */
export function solveTension(input: TensionInput): Outcome<TensionSolution> {
  const [first, ...rest] = tensionIssues(input);
  if (first) return bad(first, ...rest);
  const { shafts, drives, order } = input;
  const problems = order ? orderProblems(shafts, drives, order) : [];
  if (order && problems.length === 0) return good(solveOrder(input, order, []));
  const solutions = [];
  for (const candidate of possibleOrders(shafts, drives)) {
    const solution = solveOrder(input, candidate, problems);
    if (solution.problems.length === problems.length) return good(solution);
    solutions.push(solution);
  }
  const [best] = solutions.sort((a, b) => a.problems.length - b.problems.length);
  return good(best ?? solveOrder(input, largestOrder(input), [...problems, ...unorderedProblems(input)]));
}

function solveOrder(
  input: TensionInput,
  order: readonly Adjustment[],
  known: readonly TensionProblem[],
): TensionSolution {
  const { shafts } = input;
  const slides = new Map<string, SlideStates>();
  const problems = [...known];
  const drives: DriveTension[] = [];
  for (const step of order) {
    const drive = input.drives.find((candidate) => candidate.id === step.drive);
    const slide = shafts.find((candidate) => candidate.id === step.slides)?.slide;
    if (!drive || !slide) continue;
    const setUp = setUpOf(shafts, { drive, slides: step.slides, slide }, slides);
    const set = setDrive(setUp);
    drives.push(set);
    problems.push(...driveProblems(set, setUp));
    if (set.chosen?.slide) slides.set(step.slides, set.chosen.slide);
  }
  const set = new Set(drives.map((drive) => drive.id));
  const left = input.drives.filter((drive) => !set.has(drive.id));
  return {
    fits: problems.length === 0,
    problems,
    steps: adjustmentSteps(shafts, input.drives, order),
    drives: [...drives, ...left.map((drive) => unsetDrive(shafts, drive, slides))],
    shafts: shafts.map((shaft) => shaftTension(shafts, shaft, slides)),
  };
}

function setDrive(setUp: SetUp): DriveTension {
  const { drive, fresh, slide } = setUp;
  const layoutCenter = centerAtSlide(fresh, 0);
  const targets = centerTargets(drive, layoutCenter);
  const alternatives = targets.map((target) => lengthChoice(setUp, target));
  const chosen = bestChoice(alternatives);
  const base: DriveTension = {
    id: drive.id,
    kind: drive.kind,
    slides: setUp.slides,
    layoutCenter: layoutCenter as Length,
    ...exactLinksField(drive, layoutCenter),
    alternatives,
    ...(slide.travelMin === undefined || slide.travelMax === undefined
      ? {}
      : { slotGiven: (slide.travelMax - slide.travelMin) as Length }),
  };
  const states = chosen?.slide;
  if (!states) return base;
  return {
    ...base,
    chosen,
    slotNeeded: slotNeed(setUp, { alternatives, targets, states }),
    ...takeUpFields(setUp, states),
    ...slackFields(setUp, states),
  };
}

function takeUpFields(
  setUp: SetUp,
  states: SlideStates,
): Pick<DriveTension, 'takeUpLeft' | 'elongationAtEnd'> {
  const { drive, fresh, slide } = setUp;
  const tightens = centerPerSlide(fresh, states.fresh) >= 0 ? 1 : -1;
  const end = tightens > 0 ? slide.travelMax : slide.travelMin;
  if (end === undefined) return {};
  const centers = { fresh: centerAtSlide(fresh, states.fresh), end: centerAtSlide(fresh, end) };
  return {
    takeUpLeft: ((end - states.fresh) * tightens) as Length,
    elongationAtEnd: elongationAt(drive, centers),
  };
}

function slackFields(
  setUp: SetUp,
  states: SlideStates,
): Pick<DriveTension, 'slack' | 'slackSlide' | 'slackTurns'> {
  const { drive, fresh, slide } = setUp;
  if (drive.kind !== 'chain') return {};
  const { span, slope } = wrappedLinks(pairOf(drive), centerAtSlide(fresh, states.fresh));
  const slack = slackSetting({
    span: span as Length,
    lengthPerCenter: slope * drive.pitch,
    ...(drive.steep === undefined ? {} : { steep: drive.steep }),
  });
  const perSlide = Math.abs(centerPerSlide(fresh, states.fresh));
  // At the closest approach a slide does not change the center at all, so no movement sets the play.
  if (perSlide === 0) return { slack };
  const slackSlide = (slack.centerChange / perSlide) as Length;
  const turns = slide.pusherPitch === undefined ? {} : { slackTurns: slackSlide / slide.pusherPitch };
  return { slack, slackSlide, ...turns };
}

function driveProblems(set: DriveTension, setUp: SetUp): readonly TensionProblem[] {
  const { chosen } = set;
  const states = chosen?.slide;
  if (!chosen || !states) return [{ code: 'no-length', drive: set.id }];
  const outside = (['fitting', 'fresh', 'worn'] as const).flatMap((at): readonly TensionProblem[] => {
    const short = pastTravel(setUp.slide, states[at]);
    if (short === 0) return [];
    return [{ code: 'outside-travel', drive: set.id, slides: setUp.slides, at, short: short as Length }];
  });
  if (chosen.slackens) return outside;
  return [{ code: 'never-slack', drive: set.id, slides: setUp.slides }, ...outside];
}

function unsetDrive(shafts: readonly DriveShaft[], drive: DriveRun, slides: Slides): DriveTension {
  const at = { slides, state: 'fresh' } as const;
  const a = placedShaft(shafts, drive.from, at);
  const b = placedShaft(shafts, drive.to, at);
  const layoutCenter = Math.hypot(a.x - b.x, a.z - b.z);
  return {
    id: drive.id,
    kind: drive.kind,
    layoutCenter: layoutCenter as Length,
    ...exactLinksField(drive, layoutCenter),
    alternatives: centerTargets(drive, layoutCenter).map((target) => ({
      ...(target.links === undefined ? {} : { links: target.links }),
      offsetLink: target.offsetLink,
      center: target.fresh as Length,
      slackens: false,
      withinTravel: false,
      coversLife: false,
    })),
  };
}

function exactLinksField(drive: DriveRun, center: number): Pick<DriveTension, 'exactLinks'> {
  const exactLinks = drive.kind === 'chain' ? exactLinksAt(drive, center) : undefined;
  return exactLinks === undefined ? {} : { exactLinks };
}

function shaftTension(shafts: readonly DriveShaft[], shaft: DriveShaft, slides: Slides): ShaftTension {
  return {
    id: shaft.id,
    slide: slides.get(shaft.id) ?? AT_REST,
    fresh: placedShaft(shafts, shaft.id, { slides, state: 'fresh' }),
    worn: placedShaft(shafts, shaft.id, { slides, state: 'worn' }),
  };
}

/** The longest order that can be set when not all drives can, so that the rest of the bike is still placed. */
function largestOrder(input: TensionInput): readonly Adjustment[] {
  let best: readonly Adjustment[] = [];
  let kept: readonly DriveRun[] = [];
  for (const drive of input.drives) {
    const [order] = possibleOrders(input.shafts, [...kept, drive]);
    if (!order) continue;
    kept = [...kept, drive];
    best = order;
  }
  return best;
}

function unorderedProblems(input: TensionInput): readonly TensionProblem[] {
  const alone = input.drives.filter((drive) => possibleOrders(input.shafts, [drive]).length === 0);
  if (alone.length > 0) return alone.map((drive) => ({ code: 'nothing-slides', drive: drive.id }));
  return [{ code: 'no-order', drives: input.drives.map((drive) => drive.id) }];
}
