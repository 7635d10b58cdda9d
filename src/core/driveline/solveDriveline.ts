import type { Layout } from '../bike/index.ts';
import type { BeltStage, Build, ChainStage, ShaftEntry } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import type { Angle, AngularSpeed, Issue, Length } from '../quantity/index.ts';
import { type Chain, findChain } from '../standards/index.ts';
import { type BeltWraps, beltWraps, coupledDrivenDiameter } from './belt.ts';
import { type ChainDriveInput, type ChainDrivePlan, planChainDrive } from './chainDrive.ts';
import { type SprocketDimensions, sprocketDimensions } from './sprocket.ts';
import { solveTension } from './tension.ts';
import type {
  DriveRun,
  DriveShaft,
  DriveTension,
  LengthChoice,
  TensionInput,
  TensionProblem,
  TensionSolution,
} from './tensionTypes.ts';

/** One chain drive as it is set up. */
export interface SolvedChain {
  readonly stage: ChainStage;
  readonly chain: Chain;
  readonly tension: DriveTension;
  /** What the plan was asked. */
  readonly question: ChainDriveInput;
  /** Absent when no center distance could be met. */
  readonly plan?: ChainDrivePlan;
  readonly driver: SprocketDimensions;
  readonly driven: SprocketDimensions;
  /** C as set, or as laid out where it could not be met [m]. */
  readonly center: number;
}

/** One variable belt drive as it is set up: fixed belt and center couple the two diameters. */
export interface SolvedBelt {
  readonly stage: BeltStage;
  readonly tension: DriveTension;
  /** C as set, or as laid out [m]. */
  readonly center: number;
  /** Driver smallest, driven largest: launch. */
  readonly low: BeltEnd;
  /** Driver as large as belt and sheaves allow: top. */
  readonly high: BeltEnd;
  /** What ends the shift: the driver's own limit or the driven unit's smallest diameter. */
  readonly shiftEndsAt: 'driver' | 'driven';
}

export interface BeltEnd {
  /** Pitch diameters [m]. */
  readonly driverDiameter: number;
  readonly drivenDiameter: number;
  readonly ratio: number;
  readonly wraps?: BeltWraps;
}

/** What a slot must cover, along its shaft's slide, from the drawn place. */
export interface SlotSpan {
  readonly shaft: string;
  /** Side-view direction of the slide to tighten, from straight ahead, upward positive [rad]. */
  readonly direction: number;
  /** Lowest and highest slide position of the shaft center [m]. */
  readonly from: number;
  readonly to: number;
  /** Slide position with everything new and taut [m]. */
  readonly fresh: number;
}

export interface DrivelineSolution {
  /** Absent when there is no drive to set, or the drive train can't be read (see `issues`). */
  readonly tension?: TensionSolution;
  readonly problems: readonly TensionProblem[];
  readonly issues: readonly Issue[];
  readonly chains: Readonly<Record<string, SolvedChain>>;
  readonly belts: Readonly<Record<string, SolvedBelt>>;
  /** Shaft centers with every drive new and taut [m]. */
  readonly shafts: Readonly<Record<string, Point3>>;
  readonly slots: readonly SlotSpan[];
  /** Engine turns per wheel turn, lowest gear and highest gear; equal without a variable belt. */
  readonly ratio: { readonly low: number; readonly high: number };
}

/**
 * Sets every chain and belt of a build together, shafts sliding as the file says, and works out each drive at the
 * center distance it ends up with. What can't be set comes back as problems, with the shafts left as drawn.
 * @source derived, see `solveTension`, `planChainDrive` and `coupledDrivenDiameter`
 */
export function solveDriveline(build: Build, layout: Layout): DrivelineSolution {
  const input = tensionInput(build, layout);
  const outcome = input.drives.length > 0 ? solveTension(input) : undefined;
  const tension = outcome?.ok ? outcome.value : undefined;
  const shafts = settledShafts(layout, tension);
  const chains = solveChains(build, { layout, shafts, ...(tension ? { tension } : {}) });
  const belts = solveBelts(build, { layout, shafts, ...(tension ? { tension } : {}) });
  return {
    ...(tension ? { tension } : {}),
    problems: tension?.problems ?? [],
    issues: outcome && !outcome.ok ? outcome.issues : [],
    chains,
    belts,
    shafts,
    slots: tension ? slotSpans(build, tension) : [],
    ratio: overallRatio(build, belts),
  };
}

function tensionInput(build: Build, layout: Layout): TensionInput {
  return {
    shafts: Object.keys(layout.shafts).map((id) => driveShaft(build, layout, id)),
    drives: build.driveline.stages.flatMap((stage): DriveRun[] => {
      if (stage.kind === 'clutch') return [];
      return stage.kind === 'chain' ? [chainRun(stage)] : [beltRun(stage)];
    }),
  };
}

function driveShaft(build: Build, layout: Layout, id: string): DriveShaft {
  const center = layout.shafts[id] as Point3;
  const slide = build.driveline.shafts[id]?.slide;
  const carries = Object.entries(build.driveline.shafts)
    .filter(([, shaft]) => shaft.rides === id)
    .map(([name]) => name);
  return {
    id,
    position: { x: center.x, z: center.z },
    ...(slide ? { slide: shaftSlide(slide) } : {}),
    ...(carries.length > 0 ? { carries } : {}),
  };
}

function shaftSlide(slide: NonNullable<ShaftEntry['slide']>): NonNullable<DriveShaft['slide']> {
  // A slot that is still to be made is open at both ends: it is made as long as the drive needs.
  const travel = slide.travel === undefined ? {} : slotEnds(slide.travel, slide.slack ?? 0);
  return {
    direction: { x: Math.cos(slide.direction), z: Math.sin(slide.direction) },
    ...travel,
    ...(slide.pusherPitch === undefined ? {} : { pusherPitch: slide.pusherPitch }),
  };
}

function slotEnds(travel: number, slack: number): { travelMin: Length; travelMax: Length } {
  return { travelMin: -slack as Length, travelMax: (travel - slack) as Length };
}

function chainRun(stage: ChainStage): DriveRun {
  return {
    kind: 'chain',
    id: stage.id,
    from: stage.from,
    to: stage.to,
    pitch: chainOf(stage).pitch,
    fromTeeth: stage.driverTeeth,
    toTeeth: stage.drivenTeeth,
    ...(stage.links === undefined ? {} : { links: stage.links }),
    ...(stage.offsetLink === undefined ? {} : { offsetLinks: stage.offsetLink }),
    ...(stage.steep === undefined ? {} : { steep: stage.steep }),
    ...(stage.wearLimit === undefined ? {} : { wearLimit: stage.wearLimit }),
    ...(stage.adjust === undefined ? {} : { adjust: stage.adjust }),
  };
}

/** A variable belt is set at launch, where the driver is smallest and the driven unit closed. */
function beltRun(stage: BeltStage): DriveRun {
  return {
    kind: 'belt',
    id: stage.id,
    from: stage.from,
    to: stage.to,
    fromDiameter: stage.driver.smallest,
    toDiameter: stage.driven.largest,
    length: stage.beltLength,
    ...(stage.adjust === undefined ? {} : { adjust: stage.adjust }),
  };
}

function chainOf(stage: ChainStage): Chain {
  const chain = findChain(stage.chain);
  if (!chain.ok) throw new Error(`a chain that the reader let through: ${stage.chain}`);
  return chain.value;
}

function settledShafts(layout: Layout, tension: TensionSolution | undefined): Record<string, Point3> {
  const moved = new Map(tension?.shafts.map((shaft) => [shaft.id, shaft.fresh]));
  return Object.fromEntries(
    Object.entries(layout.shafts).map(([id, center]) => [id, { ...center, ...moved.get(id) }]),
  );
}

interface Settled {
  readonly layout: Layout;
  readonly shafts: Readonly<Record<string, Point3>>;
  readonly tension?: TensionSolution;
}

function centerBetween(settled: Settled, from: string, to: string): number {
  const [a, b] = [settled.shafts[from] as Point3, settled.shafts[to] as Point3];
  return Math.hypot(a.x - b.x, a.z - b.z);
}

function tensionOf(settled: Settled, stage: ChainStage | BeltStage): DriveTension {
  return (
    settled.tension?.drives.find((drive) => drive.id === stage.id) ?? {
      id: stage.id,
      kind: stage.kind === 'chain' ? 'chain' : 'belt',
      layoutCenter: centerBetween(settled, stage.from, stage.to) as Length,
      alternatives: [],
    }
  );
}

function solveChains(build: Build, settled: Settled): Record<string, SolvedChain> {
  const stages = build.driveline.stages.filter((stage) => stage.kind === 'chain');
  return Object.fromEntries(stages.map((stage) => [stage.id, solveChain(build, settled, stage)]));
}

function solveChain(build: Build, settled: Settled, stage: ChainStage): SolvedChain {
  const chain = chainOf(stage);
  const tension = tensionOf(settled, stage);
  const center = centerBetween(settled, stage.from, stage.to);
  const question = planInput(build, settled, stage, center);
  const plan = planChainDrive(question);
  return {
    stage,
    chain,
    tension,
    question,
    ...(plan.ok ? { plan: plan.value } : {}),
    driver: sprocketDimensions(chain, stage.driverTeeth),
    driven: sprocketDimensions(chain, stage.drivenTeeth),
    center,
  };
}

function planInput(build: Build, settled: Settled, stage: ChainStage, center: number): ChainDriveInput {
  const [from, to] = [settled.shafts[stage.from] as Point3, settled.shafts[stage.to] as Point3];
  const tension = tensionOf(settled, stage);
  const links = tension.chosen?.links ?? stage.links;
  const pusherPitch = tension.slides ? build.driveline.shafts[tension.slides]?.slide?.pusherPitch : undefined;
  const speed = shaftSpeed(build, stage.from);
  return {
    pitch: chainOf(stage).pitch,
    driverTeeth: stage.driverTeeth,
    drivenTeeth: stage.drivenTeeth,
    wantedCenter: center as Length,
    inclination: Math.atan2(Math.abs(from.z - to.z), Math.abs(from.x - to.x)) as Angle,
    ...(links === undefined ? {} : { links }),
    ...(stage.offsetLink === undefined ? {} : { offsetLinks: stage.offsetLink }),
    ...(stage.steep === undefined ? {} : { steep: stage.steep }),
    ...(stage.wearLimit === undefined ? {} : { wearLimit: stage.wearLimit }),
    ...(pusherPitch === undefined ? {} : { pusherPitch }),
    ...(speed === undefined ? {} : { driverSpeed: speed }),
  };
}

/** Speed of a shaft at the governed engine speed, in the highest gear [rad/s]; unknown without a governor. */
function shaftSpeed(build: Build, shaft: string): AngularSpeed | undefined {
  const governed = build.engine.governed;
  if (governed === undefined) return undefined;
  const reach = new Map<string, number>([['engine', governed]]);
  for (const stage of build.driveline.stages) {
    if (stage.kind === 'clutch') continue;
    const speed = reach.get(stage.from);
    const ratio =
      stage.kind === 'chain'
        ? stage.drivenTeeth / stage.driverTeeth
        : stage.driven.smallest / stage.driver.largest;
    if (speed !== undefined) reach.set(stage.to, speed / ratio);
  }
  return reach.get(shaft) as AngularSpeed | undefined;
}

function solveBelts(build: Build, settled: Settled): Record<string, SolvedBelt> {
  const stages = build.driveline.stages.filter((stage) => stage.kind === 'variable-belt');
  return Object.fromEntries(stages.map((stage) => [stage.id, solveBelt(settled, stage)]));
}

function solveBelt(settled: Settled, stage: BeltStage): SolvedBelt {
  const center = centerBetween(settled, stage.from, stage.to);
  const belt = { length: stage.beltLength, center: center as Length };
  const atLargest = coupledDrivenDiameter(belt, stage.driver.largest);
  const reaches = atLargest.ok && atLargest.value >= stage.driven.smallest;
  // With the driven unit fully open first, the same equation read from its side gives the driver.
  const atSmallest = coupledDrivenDiameter(belt, stage.driven.smallest);
  const high = reaches
    ? beltEnd(stage.driver.largest, atLargest.value, center)
    : beltEnd(atSmallest.ok ? atSmallest.value : stage.driver.largest, stage.driven.smallest, center);
  return {
    stage,
    tension: tensionOf(settled, stage),
    center,
    low: beltEnd(stage.driver.smallest, stage.driven.largest, center),
    high,
    shiftEndsAt: reaches ? 'driver' : 'driven',
  };
}

function beltEnd(driverDiameter: number, drivenDiameter: number, center: number): BeltEnd {
  const pair = { driverDiameter: driverDiameter as Length, drivenDiameter: drivenDiameter as Length };
  const wraps = beltWraps(pair, center as Length);
  return {
    driverDiameter,
    drivenDiameter,
    ratio: drivenDiameter / driverDiameter,
    ...(wraps.ok ? { wraps: wraps.value } : {}),
  };
}

function slotSpans(build: Build, tension: TensionSolution): SlotSpan[] {
  return tension.drives.flatMap((drive): SlotSpan[] => {
    const direction = drive.slides ? build.driveline.shafts[drive.slides]?.slide?.direction : undefined;
    const slides = slotChoices(drive).flatMap((choice) => choice.slide ?? []);
    if (!drive.slides || direction === undefined || slides.length === 0) return [];
    const places = slides.flatMap((slide) => [slide.fitting, slide.fresh, slide.worn]);
    return [
      {
        shaft: drive.slides,
        direction,
        from: Math.min(...places),
        to: Math.max(...places),
        fresh: drive.chosen?.slide?.fresh ?? 0,
      },
    ];
  });
}

/** The two lengths on either side of the layout: the slot is cut before the chain is bought. */
function slotChoices(drive: DriveTension): readonly LengthChoice[] {
  const below = drive.alternatives.filter((choice) => choice.center <= drive.layoutCenter).at(-1);
  const above = drive.alternatives.find((choice) => choice.center > drive.layoutCenter);
  return [below, above, drive.chosen].filter((choice) => choice !== undefined);
}

function overallRatio(
  build: Build,
  belts: Readonly<Record<string, SolvedBelt>>,
): { low: number; high: number } {
  let [low, high] = [1, 1];
  for (const stage of build.driveline.stages) {
    if (stage.kind === 'chain') {
      low *= stage.drivenTeeth / stage.driverTeeth;
      high *= stage.drivenTeeth / stage.driverTeeth;
    }
    const belt = stage.kind === 'variable-belt' ? belts[stage.id] : undefined;
    if (belt) {
      low *= belt.low.ratio;
      high *= belt.high.ratio;
    }
  }
  return { low, high };
}
