import type { Bike } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { DrivelineSolution } from '../../../driveline/index.ts';
import { add3, type Point3, scale3, subtract3, unit3 } from '../../../geometry/index.ts';
import type { Angle, Length, Torque } from '../../../quantity/index.ts';
import { beltTensions, grooveFriction } from '../../chain/beltTension.ts';

/** A strand that pulls two shafts together. */
export interface Strand {
  readonly drive: string;
  readonly from: string;
  readonly to: string;
  /** On the driving shaft [N], at the point where it runs off its sprocket [m]. */
  readonly force: Point3;
  readonly at: Point3;
  /** Where it runs on the driven one [m]; the force there is the opposite. */
  readonly atDriven: Point3;
}

/** One drive under a torque. */
export interface DrivePull {
  readonly drive: string;
  readonly kind: 'chain' | 'variable-belt';
  readonly from: string;
  readonly to: string;
  /** Torque on the driving and the driven shaft [N·m]. */
  readonly torqueIn: number;
  readonly torqueOut: number;
  /** Tight and slack side [N]; the slack side of a chain is taken as 0. */
  readonly tight: number;
  readonly slack: number;
  readonly strands: readonly Strand[];
  /** Of a belt: how it grips. */
  readonly belt?: BeltGrip;
}

export interface BeltGrip {
  /** On the smaller sheave, and between the faces of a sheave [rad]. */
  readonly wrap: number;
  readonly grooveAngle: number;
  /** Of belt and face, before the groove wedges it [-]. */
  readonly friction: number;
  /** Tight over slack at the point of slipping [-]. */
  readonly ratio: number;
  /** m·v² at first bite, which pulls the belt and not its shafts [N]; 0 where the file tells no mass. */
  readonly centrifugal: number;
}

const ACROSS: Point3 = { x: 0, y: 1, z: 0 };
/** Friction of a dry rubber belt on steel and the usual groove. @source practice */
const BELT_FRICTION = 0.3;
const USUAL_GROOVE = (26 * Math.PI) / 180;

/** Engine torque at its largest, no more than a clutch passes [N·m]. */
export function largestTorque(build: Build): {
  readonly torque: number;
  readonly limitedBy: 'engine' | 'clutch';
} {
  const { torque, motor } = build.engine;
  const engine = motor
    ? motor.constant * motor.motorCurrent - (motor.drag ?? 0)
    : Math.max(0, ...(torque ?? []).map((point) => point.torque));
  const clutch = build.driveline.stages.find((stage) => stage.kind === 'clutch');
  const capacity = clutch?.kind === 'clutch' ? clutch.capacity : undefined;
  return capacity !== undefined && capacity < engine
    ? { torque: capacity, limitedBy: 'clutch' }
    : { torque: engine, limitedBy: 'engine' };
}

/**
 * Pulls of all drives when the engine gives this torque, belts in their lowest gear, without losses, which is on the
 * heavy side at the wheel. The strand that the driven wheel is pulled forward by is the tight one.
 * @source derived, T = F·r; shigley-9, section 17-2 for belts at slip
 */
export function drivePulls(
  build: Build,
  bike: Bike,
  driveline: DrivelineSolution,
  engineTorque: number,
): readonly DrivePull[] {
  let torque = engineTorque;
  return build.driveline.stages.flatMap((stage): DrivePull[] => {
    if (stage.kind === 'clutch') return [];
    const [from, to] = [bike.shafts[stage.from], bike.shafts[stage.to]];
    const line = bike.ladder.lines.find((one) => one.drive === stage.id);
    if (!from || !to) return [];
    const [y1, y2] = [line?.driverY ?? from.y, line?.drivenY ?? to.y];
    const sizes = stage.kind === 'chain' ? chainSizes(driveline, stage.id) : beltSizes(driveline, stage.id);
    if (!sizes) return [];
    const [r1, r2] = sizes.radii;
    const torqueIn = torque;
    torque = (torqueIn * r2) / r1;
    const { tight, slack, belt } = tensionsOf(stage, torqueIn, sizes);
    const places = { from: { ...from, y: y1 }, to: { ...to, y: y2 }, r1, r2 };
    const name = { drive: stage.id, from: stage.from, to: stage.to };
    return [
      {
        ...name,
        kind: stage.kind,
        torqueIn,
        torqueOut: torque,
        tight,
        slack,
        strands: [
          { ...name, ...strandOf(places, 1, tight) },
          ...(slack > 0 ? [{ ...name, ...strandOf(places, -1, slack) }] : []),
        ],
        ...(belt ? { belt } : {}),
      },
    ];
  });
}

/** A chain pulls with one side only, a belt with both. */
function tensionsOf(
  stage: Exclude<Build['driveline']['stages'][number], { kind: 'clutch' }>,
  torque: number,
  { radii, wrap }: Sizes,
): Pick<DrivePull, 'tight' | 'slack' | 'belt'> {
  if (stage.kind === 'chain') return { tight: torque / radii[0], slack: 0 };
  const grooveAngle = (stage.grooveAngle ?? USUAL_GROOVE) as Angle;
  const { tight, slack, ratio } = beltTensions({
    torque: torque as Torque,
    diameter: (2 * radii[0]) as Length,
    wrap: wrap as Angle,
    friction: grooveFriction(BELT_FRICTION, grooveAngle),
  });
  const speed = (stage.engages ?? 0) * radii[0];
  const centrifugal = (stage.beltMass ?? 0) * speed ** 2;
  return { tight, slack, belt: { wrap, grooveAngle, friction: BELT_FRICTION, ratio, centrifugal } };
}

interface Sizes {
  readonly radii: readonly [number, number];
  /** On the smaller sheave [rad]. */
  readonly wrap: number;
}

function chainSizes(driveline: DrivelineSolution, id: string): Sizes | undefined {
  const chain = driveline.chains[id];
  if (!chain) return undefined;
  return { radii: [chain.driver.pitchDiameter / 2, chain.driven.pitchDiameter / 2], wrap: Math.PI };
}

function beltSizes(driveline: DrivelineSolution, id: string): Sizes | undefined {
  const belt = driveline.belts[id];
  if (!belt) return undefined;
  const { driverDiameter, drivenDiameter } = belt.low;
  const reach = Math.min(1, Math.abs(drivenDiameter - driverDiameter) / (2 * belt.center));
  return { radii: [driverDiameter / 2, drivenDiameter / 2], wrap: Math.PI - 2 * Math.asin(reach) };
}

/** Outer tangent of the two pitch circles on the pulling side (+1) or the other. */
function strandOf(
  {
    from,
    to,
    r1,
    r2,
  }: { readonly from: Point3; readonly to: Point3; readonly r1: number; readonly r2: number },
  side: 1 | -1,
  tension: number,
): Pick<Strand, 'force' | 'at' | 'atDriven'> {
  const level = { ...from, y: to.y };
  const toward = unit3(subtract3(level, to));
  const center = Math.hypot(level.x - to.x, level.z - to.z);
  // Square to the line of centers, on the side where the driven wheel's rim moves toward the driver.
  const normal = scale3(cross(toward, ACROSS), side);
  const sine = Math.max(-1, Math.min(1, (r2 - r1) / center));
  const out = add3(scale3(toward, sine), scale3(normal, Math.sqrt(1 - sine * sine)));
  const at = add3(from, scale3(out, r1));
  const atDriven = add3(to, scale3(out, r2));
  // A chain that is out of line pulls askew by a degree or so; that part is left out.
  const pull = unit3(subtract3({ ...atDriven, y: at.y }, at));
  return { force: scale3(pull, tension), at, atDriven };
}

const cross = (a: Point3, b: Point3): Point3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
