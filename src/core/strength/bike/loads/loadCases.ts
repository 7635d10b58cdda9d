import type { Bike, MassSummary } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { DrivelineSolution } from '../../../driveline/index.ts';
import { type Point3, scale3, subtract3, unit3 } from '../../../geometry/index.ts';
import { derived, practice, type SourceRef } from '../../../quantity/index.ts';
import type { BikeFrame } from '../model/bikeFrame.ts';
import type { LoadSettings } from './assumptions.ts';
import {
  type AppliedLoad,
  type BalancedCase,
  balanceCase,
  type FrameMasses,
  frameMasses,
  type RiderHold,
} from './balance.ts';
import { type DrivePull, drivePulls, largestTorque } from './drivePull.ts';
import { driveShafts, solveDriveShaft } from './shaftModel.ts';

/** A load case by name, with what it is made of. */
export interface LoadCase {
  readonly id: string;
  readonly name: string;
  /** In one sentence, with the numbers used. */
  readonly basis: string;
  readonly source: SourceRef;
  readonly applied: readonly AppliedLoad[];
  readonly balanced: BalancedCase;
  readonly pulls: readonly DrivePull[];
}

/** The limits of starting and stopping that the cases are made of. */
export interface DriveLimits {
  readonly torque: number;
  readonly limitedBy: 'engine' | 'clutch';
  /** Force at the rear contact from that torque, in the lowest gear [N]. */
  readonly engineForce: number;
  /** Where the rear tire lets go, and where the front wheel lifts [N]. */
  readonly gripForce: number;
  readonly liftForce: number;
  /** The least of the three [N], and which it is. */
  readonly driveForce: number;
  readonly governedBy: 'engine' | 'clutch' | 'grip' | 'front wheel lifts';
}

export interface CasesInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly masses: MassSummary;
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
}

const GRAVITY = 9.80665;
const DOWN: Point3 = { x: 0, y: 0, z: -GRAVITY };

/** Numbers of the whole bike that the cases share. */
interface Whole {
  readonly weight: number;
  readonly front: number;
  readonly rear: number;
  /** Wheel loads without rider [N]. */
  readonly bareFront: number;
  readonly bareRear: number;
  readonly wheelbase: number;
  readonly ahead: number;
  readonly height: number;
  /** A pothole's edge pushes through the axle, since the wheel turns freely. */
  readonly frontAxleHeight: number;
  readonly contact: { readonly front: Point3; readonly rear: Point3 };
}

interface Draft {
  readonly id: string;
  readonly name: string;
  readonly basis: string;
  readonly source: SourceRef;
  readonly applied: readonly AppliedLoad[];
  readonly hold: RiderHold;
  readonly withRider?: boolean;
  readonly gravity?: Point3;
  readonly pulls?: readonly DrivePull[];
}

/** All load cases of a placed bike, each balanced by the accelerations of its parts. */
export function loadCases(input: CasesInput): {
  readonly cases: readonly LoadCase[];
  readonly limits: DriveLimits;
} {
  const { frame } = input;
  const withRider = frameMasses(frame, true);
  const bare = frameMasses(frame, false);
  const whole = wholeBike(input, withRider, bare);
  const limits = driveLimits(input, whole);
  const holds = riderHolds(frame);
  const drafts: Draft[] = [
    ...restCases(input, whole, holds),
    ...bumpCases(input, whole, holds),
    ...brakeCases(input, whole, holds),
    ...driveCases(input, whole, holds, limits),
    ...sideCases(input, whole, holds, bare),
  ];
  const cases = drafts.map(({ id, name, basis, source, applied, pulls = [], ...rest }): LoadCase => {
    const carried = rest.withRider !== false;
    const balanced = balanceCase(frame, carried ? withRider : bare, {
      applied,
      hold: rest.hold,
      withRider: carried,
      gravity: rest.gravity ?? DOWN,
    });
    return { id, name, basis, source, applied, balanced, pulls };
  });
  return { cases, limits };
}

function wholeBike({ bike }: CasesInput, { total, center }: FrameMasses, bare: FrameMasses): Whole {
  const rearAxle = bike.shafts.rearAxle!;
  const frontAxle = bike.shafts.frontAxle!;
  const { front, rear } = bike.layout.fitted;
  const wheelbase = frontAxle.x - rearAxle.x;
  const weight = total * GRAVITY;
  const ahead = center.x - rearAxle.x;
  const bareAhead = (bare.center.x - rearAxle.x) / wheelbase;
  const ground = Math.min(rearAxle.z - rear.radius, frontAxle.z - front.radius);
  return {
    weight,
    front: (weight * ahead) / wheelbase,
    rear: weight * (1 - ahead / wheelbase),
    bareFront: bare.total * GRAVITY * bareAhead,
    bareRear: bare.total * GRAVITY * (1 - bareAhead),
    wheelbase,
    ahead,
    height: center.z - ground,
    frontAxleHeight: frontAxle.z,
    contact: {
      front: { x: frontAxle.x, y: 0, z: frontAxle.z - front.radius },
      rear: { x: rearAxle.x, y: 0, z: rearAxle.z - rear.radius },
    },
  };
}

/** Shares of the rider's weight: on the seat with hands and feet resting, or standing. @source practice */
const SEATED = { seat: 0.7, pegs: 0.2, grips: 0.1 };
const STANDING = { seat: 0, pegs: 0.8, grips: 0.2 };

function riderHolds(frame: BikeFrame): { readonly seated: RiderHold; readonly standing: RiderHold } {
  const hold = (shares: typeof SEATED): RiderHold =>
    [
      ...frame.seats.map(({ node, weight }) => ({ node, weight: weight * shares.seat })),
      ...frame.pegs.map((node) => ({ node, weight: shares.pegs / 2 })),
      ...frame.grips.map((node) => ({ node, weight: shares.grips / 2 })),
    ].filter(({ weight }) => weight > 0);
  return { seated: hold(SEATED), standing: hold(STANDING) };
}

type Holds = ReturnType<typeof riderHolds>;

const onWheel = (wheel: 'front' | 'rear', at: Point3, force: Partial<Point3>): AppliedLoad => ({
  what: `${wheel} wheel on the ground`,
  carrier: { by: 'wheel', wheel },
  at,
  force: { x: 0, y: 0, z: 0, ...force },
});

const rest = (whole: Whole, front = 1, rear = 1): AppliedLoad[] => [
  onWheel('front', whole.contact.front, { z: whole.front * front }),
  onWheel('rear', whole.contact.rear, { z: whole.rear * rear }),
];

const CHASSIS: SourceRef = { key: 'memory', where: 'chassis practice: 3 g bump, 2 g along, 1 g across' };

function restCases(input: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { settings } = input;
  const { pegLoad, dropHeight, tireRate } = settings;
  const drop = landing(whole, settings);
  return [
    {
      id: 'seated',
      name: 'rider seated',
      basis: `Weight of ${newtons(whole.weight)} at rest, rider on the seat, feet and hands resting.`,
      source: derived('moments about the rear contact'),
      applied: rest(whole),
      hold: holds.seated,
    },
    {
      id: 'standing',
      name: 'rider on the pegs',
      basis: 'At rest, rider standing on both pegs.',
      source: derived('moments about the rear contact'),
      applied: rest(whole),
      hold: holds.standing,
    },
    {
      id: 'drop',
      name: 'landing on both wheels',
      basis: `The bike without rider lands from ${(dropHeight * 1000).toFixed(0)} mm on two tires of ${(tireRate / 1000).toFixed(0)} N/mm, and the rider, knees bent, adds ${KNEES} times his weight: ${newtons(drop.total)} on both wheels.`,
      source: derived('m·g·(1 + √(1 + 2·h·k/(m·g))), fall onto a spring'),
      applied: [
        ...rest(whole, drop.total / whole.weight, drop.total / whole.weight),
        {
          what: 'rider on bent knees',
          carrier: { by: 'rider' },
          at: riderCenter(input),
          force: { x: 0, y: 0, z: -drop.rider },
        },
      ],
      hold: holds.standing,
      withRider: false,
    },
    {
      id: 'peg',
      name: 'all weight on one peg',
      basis: `${newtons(pegLoad)} down on the left peg in place of the rider.`,
      source: { key: 'memory', where: 'bicycle frame tests, 1000 to 1200 N on a pedal' },
      applied: pegLoads(input, whole),
      hold: holds.standing,
      withRider: false,
    },
  ];
}

/** How much of his weight a standing rider brings on the pegs as the bike lands. @source practice */
const KNEES = 2;

function landing(whole: Whole, { dropHeight, tireRate }: LoadSettings) {
  const bare = whole.bareFront + whole.bareRear;
  const rider = KNEES * (whole.weight - bare);
  const machine = bare * (1 + Math.sqrt(1 + (2 * dropHeight * 2 * tireRate) / bare));
  return { rider, total: machine + rider };
}

const riderCenter = ({ frame, bike }: CasesInput): Point3 =>
  frame.bodies.find((body) => body.carrier.by === 'rider')?.center ?? bike.layout.places.seat;

/** The load on the left peg, and the wheels under it. */
function pegLoads({ frame, settings }: CasesInput, whole: Whole): AppliedLoad[] {
  const at = frame.draft.nodes.get(frame.pegs[0])!;
  const down = settings.pegLoad;
  const share = (at.x - whole.contact.rear.x) / whole.wheelbase;
  return [
    {
      what: 'foot on the left peg',
      carrier: { by: 'node', node: frame.pegs[0] },
      at,
      force: { x: 0, y: 0, z: -down },
    },
    onWheel('front', whole.contact.front, { z: whole.bareFront + down * share }),
    onWheel('rear', whole.contact.rear, { z: whole.bareRear + down * (1 - share) }),
  ];
}

function bumpCases({ settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { bumpFactor: n, potholeRearward } = settings;
  const basis = (where: string) => `${n} times the load at rest on the ${where} wheel, the other as at rest.`;
  return [
    {
      id: 'bump-front',
      name: 'bump at the front wheel',
      basis: basis('front'),
      source: CHASSIS,
      applied: rest(whole, n, 1),
      hold: holds.seated,
    },
    {
      id: 'bump-rear',
      name: 'bump at the rear wheel',
      basis: basis('rear'),
      source: CHASSIS,
      applied: rest(whole, 1, n),
      hold: holds.seated,
    },
    {
      id: 'pothole',
      name: 'pothole at the front wheel',
      basis: `${n} times the load at rest up and ${potholeRearward} times rearward on the front wheel, at the axle.`,
      source: CHASSIS,
      applied: [
        ...rest(whole, n, 1),
        onWheel(
          'front',
          { ...whole.contact.front, z: whole.frontAxleHeight },
          { x: -potholeRearward * whole.front },
        ),
      ],
      hold: holds.seated,
    },
  ];
}

function brakeCases({ build, settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const mu = settings.brakingGrip;
  const { weight, wheelbase: p, ahead: b, height: h } = whole;
  const lift = (p - b) / h;
  const share = p > mu * h ? (mu * b) / (p - mu * h) : Number.POSITIVE_INFINITY;
  const a = Math.min(share, lift);
  const frontLoad = (weight * (b + h * a)) / p;
  const rear = (mu * (p - b)) / (p + mu * h);
  const rearLoad = (weight * (p - b - h * rear)) / p;
  const source = derived('ISO 8855 statics: N = m·g·(b + h·a/g)/p');
  const cases: Draft[] = [];
  if (build.brakes.front)
    cases.push({
      id: 'braking-front',
      name: 'front brake at its limit',
      basis: `Front brake alone, ${a.toFixed(2)} g: ${share <= lift ? `grip of ${mu}` : 'the rear wheel lifts'}.`,
      source,
      applied: [
        onWheel('front', whole.contact.front, { x: -a * weight, z: frontLoad }),
        onWheel('rear', whole.contact.rear, { z: weight - frontLoad }),
      ],
      hold: holds.seated,
    });
  if (build.brakes.rear)
    cases.push({
      id: 'braking-rear',
      name: 'rear brake at its limit',
      basis: `Rear brake alone, ${rear.toFixed(2)} g: grip of ${mu}.`,
      source,
      applied: [
        onWheel('front', whole.contact.front, { z: weight - rearLoad }),
        onWheel('rear', whole.contact.rear, { x: -rear * weight, z: rearLoad }),
      ],
      hold: holds.seated,
    });
  return cases;
}

function driveLimits({ build, bike, driveline, settings }: CasesInput, whole: Whole): DriveLimits {
  const { torque, limitedBy } = largestTorque(build);
  const pulls = drivePulls(build, bike, driveline, torque);
  const atWheel = pulls.at(-1)?.to === 'rearAxle' ? pulls.at(-1)!.torqueOut : 0;
  const engineForce = atWheel / bike.layout.fitted.rear.radius;
  const { weight, wheelbase: p, ahead: b, height: h } = whole;
  const mu = settings.drivingGrip;
  const liftForce = (weight * b) / h;
  const gripForce = mu * h < p ? (mu * weight * (p - b)) / (p - mu * h) : liftForce;
  const driveForce = Math.min(engineForce, liftForce, gripForce);
  const governedBy =
    driveForce === engineForce ? limitedBy : driveForce === liftForce ? 'front wheel lifts' : 'grip';
  return { torque, limitedBy, engineForce, gripForce, liftForce, driveForce, governedBy };
}

function driveCases(input: CasesInput, whole: Whole, holds: Holds, limits: DriveLimits): Draft[] {
  const { build, bike, driveline } = input;
  if (!(limits.engineForce > 0)) return [];
  const make = (id: string, name: string, torque: number, basis: string): Draft => {
    const pulls = drivePulls(build, bike, driveline, torque);
    const push = (pulls.at(-1)?.torqueOut ?? 0) / bike.layout.fitted.rear.radius;
    const { weight, wheelbase: p, ahead: b, height: h } = whole;
    const frontLoad = Math.max(0, (weight * b - h * push) / p);
    return {
      id,
      name,
      basis,
      source: derived('T·ratio/r, no losses; ISO 8855 statics'),
      applied: [
        onWheel('front', whole.contact.front, { z: frontLoad }),
        onWheel('rear', whole.contact.rear, { x: push, z: weight - frontLoad }),
        ...pullLoads(input, pulls),
      ],
      hold: holds.seated,
      pulls,
    };
  };
  const share = limits.driveForce / limits.engineForce;
  const full = `${limits.torque.toFixed(1)} N·m at the engine, lowest gear`;
  return [
    make(
      'driving',
      'driving at the limit',
      limits.torque * share,
      `${newtons(limits.driveForce)} at the rear wheel, limited by ${limits.governedBy}; ${full} would give ${newtons(limits.engineForce)}.`,
    ),
    make(
      'chain-pull',
      'largest chain pull',
      limits.torque,
      `${full}, the wheel held by an obstacle: ${newtons(limits.engineForce)} at the rear wheel, though on the level ${limits.governedBy} ends it at ${newtons(limits.driveForce)}.`,
    ),
  ];
}

/** Strands as pairs of forces on the shafts' bearings, the engine and the rear wheel. */
function pullLoads({ build, bike, frame }: CasesInput, pulls: readonly DrivePull[]): AppliedLoad[] {
  const loads: AppliedLoad[] = [];
  for (const strand of pulls.flatMap((pull) => pull.strands))
    for (const [shaft, at, sign] of [
      [strand.from, strand.at, 1],
      [strand.to, strand.atDriven, -1],
    ] as const) {
      const carrier =
        shaft === 'engine'
          ? ({ by: 'node', node: frame.engine } as const)
          : shaft === 'rearAxle'
            ? ({ by: 'wheel', wheel: 'rear' } as const)
            : undefined;
      const what = `${strand.drive} on ${shaft}`;
      if (carrier) loads.push({ what, carrier, at, force: scale3(strand.force, sign), inner: true });
    }
  for (const model of driveShafts(build, bike, frame.bearings, pulls)) {
    const solved = solveDriveShaft(model);
    solved?.supports.forEach((support, i) => {
      const { node, item } = model.bearings[i]!;
      const [z, x] = support.force;
      loads.push({
        what: `${model.id} on ${item}`,
        carrier: { by: 'node', node },
        at: frame.draft.nodes.get(node)!,
        force: { x: -x, y: 0, z: -z },
        inner: true,
      });
    });
  }
  return loads;
}

/** Lean at which a bike that falls over lies on its peg. @source practice */
const FALLEN = Math.PI / 4;

function sideCases(input: CasesInput, whole: Whole, holds: Holds, bare: FrameMasses): Draft[] {
  const { frame, settings } = input;
  const side = settings.cornering;
  const peg = frame.draft.nodes.get(frame.pegs[0])!;
  const fall = ((bare.total * GRAVITY) / 2) * (1 + settings.dropHeight / settings.pegGive);
  const up: Point3 = { x: 0, y: -Math.sin(FALLEN), z: Math.cos(FALLEN) };
  return [
    {
      id: 'cornering',
      name: 'side force on both wheels',
      basis: `${side} times the load at rest sideways on each wheel, bike upright: more across the frame than a leaned corner gives.`,
      source: CHASSIS,
      applied: [
        onWheel('front', whole.contact.front, { y: side * whole.front, z: whole.front }),
        onWheel('rear', whole.contact.rear, { y: side * whole.rear, z: whole.rear }),
      ],
      hold: holds.seated,
    },
    {
      id: 'side-drop',
      name: 'fall onto the left peg',
      basis: `Without rider, half the mass falls ${(settings.dropHeight * 1000).toFixed(0)} mm onto the peg and stops within ${(settings.pegGive * 1000).toFixed(0)} mm: ${newtons(fall)}.`,
      source: derived('m·g·(1 + h/s), work of a fall'),
      applied: [
        {
          what: 'ground on the left peg',
          carrier: { by: 'node', node: frame.pegs[0] },
          at: peg,
          force: scale3(up, fall),
        },
      ],
      hold: holds.standing,
      withRider: false,
    },
    barPull(input, whole, holds),
    ...standCase(input, whole, holds),
  ];
}

/** Hands pull toward the shoulders, the feet push back. */
function barPull({ bike, frame, settings }: CasesInput, whole: Whole, holds: Holds): Draft {
  const { shoulder } = bike.rider;
  const loads = frame.grips.flatMap((node, i): AppliedLoad[] => {
    const at = frame.draft.nodes.get(node)!;
    const aim = { ...shoulder, y: (i === 0 ? 1 : -1) * Math.abs(shoulder.y) };
    const force = scale3(unit3(subtract3(aim, at)), settings.barPull);
    return [
      { what: 'hand', carrier: { by: 'node', node }, at, force, inner: true },
      { what: 'seat and feet', carrier: { by: 'rider' }, at, force: scale3(force, -1), inner: true },
    ];
  });
  return {
    id: 'bar-pull',
    name: 'pull on the bars',
    basis: `${newtons(settings.barPull)} at each grip toward the shoulders, held against by seat and feet.`,
    source: { key: 'memory', where: 'bicycle bar tests' },
    applied: [...rest(whole), ...loads],
    hold: holds.standing.filter(({ node }) => !frame.grips.includes(node)).concat(seatOnly(holds, frame)),
  };
}

const seatOnly = (holds: Holds, frame: BikeFrame): RiderHold =>
  holds.seated.filter(({ node }) => frame.seats.some((seat) => seat.node === node));

function standCase({ build, bike, frame, settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { stand } = build.seating;
  const pivot = bike.layout.places.stand;
  if (!stand || !pivot || !frame.stand) return [];
  const splay = stand.splay ?? USUAL_SPLAY;
  const foot = { x: pivot.x, y: pivot.y + pivot.z * Math.tan(splay), z: 0 };
  const up: Point3 = { x: 0, y: -Math.sin(stand.lean), z: Math.cos(stand.lean) };
  // About the line of the two contacts: the center leans over, the foot holds it.
  const arm = foot.y * Math.cos(stand.lean) + foot.z * Math.sin(stand.lean);
  const onStand = (settings.standFactor * whole.weight * whole.height * Math.sin(stand.lean)) / arm;
  const share = (foot.x - whole.contact.rear.x) / whole.wheelbase;
  const n = settings.standFactor;
  const lift = (wheel: 'front' | 'rear', load: number): AppliedLoad =>
    onWheel(wheel, whole.contact[wheel], scale3(up, load));
  return [
    {
      id: 'stand',
      name: 'side stand, rider on',
      basis: `${n} times the weight with the rider on, leaned ${((stand.lean * 180) / Math.PI).toFixed(0)}°: ${newtons(onStand)} on the stand.`,
      source: practice('rider sits down on the parked bike'),
      applied: [
        {
          what: 'ground on the stand',
          carrier: { by: 'node', node: frame.stand },
          at: foot,
          force: scale3(up, onStand),
        },
        lift('front', n * whole.front - onStand * share),
        lift('rear', n * whole.rear - onStand * (1 - share)),
      ],
      gravity: scale3(up, -GRAVITY),
      hold: holds.seated,
    },
  ];
}

/** @source practice */
const USUAL_SPLAY = (20 * Math.PI) / 180;

const newtons = (force: number): string => `${Math.round(force)} N`;
