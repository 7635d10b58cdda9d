import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { DrivelineSolution } from '../driveline/index.ts';
import type { FlatPattern } from '../plates/index.ts';
import { printInches, printMillimeters, printQuantity } from '../quantity/index.ts';
import type { CutList } from './cutList.ts';
import type { FitUpSheet } from './fitUp.ts';

/** A step of the work; a hold point stops until its check is met. */
export interface WorkStep {
  readonly number: number;
  readonly title: string;
  readonly details: readonly string[];
  /** What to check before going on. */
  readonly hold?: string;
}

type Draft = Omit<WorkStep, 'number'>;

export interface WorkInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
  readonly cuts: CutList;
  readonly fitUp: FitUpSheet;
}

const length = (value: number): string => `${printMillimeters(value)} (${printInches(value)})`;

/**
 * The order of work with its hold points, made from the parts that this bike really has.
 * @source practice, build order of one-off tube frames: mock up with the real parts, tack, tram, weld, check again
 */
export function workOrder(input: WorkInput): readonly WorkStep[] {
  const drafts = [
    measureFirst(input),
    ...(input.patterns.length > 0 ? [cutPlates(input)] : []),
    cutTubes(input),
    ...bendTubes(input),
    setJig(input),
    fitAndTack(input),
    mockUp(input),
    weld(),
    checkAfterWelding(input),
    ...(input.build.shop?.coating ? [coat(input.build.shop.coating)] : []),
    assemble(input),
    ...setDrives(input),
    brakesAndControls(input),
    firstRun(),
  ];
  return drafts.map((draft, i) => ({ number: i + 1, ...draft }));
}

function measureFirst({ build }: WorkInput): Draft {
  const given = build.measured?.length ?? 0;
  return {
    title: 'Measure the parts in hand',
    details: [
      'Hub widths, bores, both rim edges, shaft diameter, length and height, mounting pattern, sprocket and disc offsets.',
      'Rollout of each tire with the rider on: mark, roll one turn, measure.',
      `Enter what differs under "measured" (${given} so far) and make the pack again before cutting.`,
    ],
    hold: 'Every purchased part is in hand and agrees with the parts list.',
  };
}

function cutPlates({ patterns }: WorkInput): Draft {
  const torch = patterns.some((pattern) => pattern.make === 'torch');
  return {
    title: 'Print the templates and cut the plates',
    details: [
      'Print at actual size. Measure the check bars in both axes on every page before anything is glued.',
      ...(torch
        ? [
            'Torch: marked holes are punched and drilled, bores are cut under size. Roll in from scrap, inside loops one way round, outlines the other.',
          ]
        : []),
      'Punch, pilot, then drill by the drilling schedule. Drill mating plates together.',
      'Hold checks: hole edge to the same edge of the next hole, each check length on the plate card, the diagonal last.',
      'Start each bend flush at half its angle, then finish about 1 mm further in.',
    ],
    hold: 'Each plate’s check lengths agree, hands (left, right) are marked on the metal.',
  };
}

function cutTubes({ cuts }: WorkInput): Draft {
  const long = cuts.rows.filter((row) => row.sawn - row.length > 1e-4);
  return {
    title: 'Saw the tubes',
    details: [
      'By the cut list, longest first, START end marked on each.',
      ...(long.length > 0
        ? [
            `Leave long until fit-up: ${long.map((row) => `${row.tube} +${printMillimeters(row.sawn - row.length)}`).join(', ')}.`,
          ]
        : []),
      'Do not trim an end that is still needed to find square.',
    ],
  };
}

function bendTubes({ build, cuts }: WorkInput): Draft[] {
  const bent = cuts.rows.filter((row) => row.bends > 0);
  if (bent.length === 0) return [];
  const springback = build.shop?.bender?.springback;
  return [
    {
      title: 'Bend',
      details: [
        springback === undefined
          ? 'Bend a sample of the same tube to 90 degrees, measure what it springs back, enter it under shop.bender.springback and print the schedule again.'
          : `The schedule allows for ${printQuantity(springback, 'angle', 'both')} of springback from your 90 degree sample.`,
        `By the bend schedule: ${bent.map((row) => row.tube).join(', ')}. Of a pair, the second turns the other way.`,
        'Lay each on a full-size line or against its mirror image.',
      ],
      hold: 'Pairs match when laid together.',
    },
  ];
}

function setJig({ fitUp }: WorkInput): Draft {
  return {
    title: 'Set up the jig',
    details: [
      'Level the bed in all directions. Strike the center line; plumb under the rear axle is station zero.',
      fitUp.props.length > 0
        ? `The frame stands on ${fitUp.props.map((prop) => `${prop.what} ${length(prop.thickness)}`).join(' + ')} = ${length(fitUp.propHeight)}; the block heights include it.`
        : 'Nothing props the frame but its blocks.',
      'Blocks and shims by the fit-up sheet; dummy axle and neck bar bolted in until all is cold.',
    ],
    hold: `Neck bar at ${printQuantity(fitUp.headAngle, 'angle', 'both', { resolution: 0.1 })} within half a degree, square to the axle.`,
  };
}

/** Mirrored tubes go left, right, left; cross tubes close the frame last, where a pull does least. */
function fitAndTack({ cuts }: WorkInput): Draft {
  const pairs = cuts.rows.filter((row) => row.pair).map((row) => `${row.tube} left, ${row.tube} right`);
  const crosses = cuts.rows.filter((row) => !row.pair).map((row) => row.tube);
  return {
    title: 'Fit and tack',
    details: [
      'Fit each cope with the paper wrap, then by file until no light shows; the better the fit, the less it pulls.',
      `Tack in this order: ${[...pairs, ...crosses].join('; ')}.`,
      'Four tacks a joint, opposite sides, short, swapping left and right, letting each cool.',
    ],
    hold: 'Tram lengths and plumb marks of the fit-up sheet: left and right agree within 1.5 mm (1/16 in) at the axle ends.',
  };
}

function mockUp({ build, bike }: WorkInput): Draft {
  const spacers = Object.values(bike.stacks).flatMap((stack) =>
    stack.items
      .filter((item) => item.solved && item.kind === 'spacer')
      .map((item) => `${stack.id}.${item.id} ${length(item.length)}`),
  );
  const coating = build.shop?.coating;
  return {
    title: 'Mock up with the real wheels, engine and chain',
    details: [
      `Make the spacers: ${spacers.length > 0 ? `${spacers.join('; ')}.` : 'none were asked for.'}`,
      'Straightedge over both sprocket faces of each drive; each line of the ladder sheet within its limit.',
      ...(coating ? [`Leave ${length(coating)} a face for the coating wherever parts meet.`] : []),
      'Turn the steering to both locks; sit on it; try reach to levers and pegs.',
    ],
    hold: 'Rim on the center line within 1 mm, every chain line within 1 mm, nothing touches at either lock.',
  };
}

function weld(): Draft {
  return {
    title: 'Weld',
    details: [
      'Neck, fork and brake mounts only by a proven welder, with a practice joint of the same tube cut up and looked at.',
      'Bevel thick parts, full penetration at the neck; do not grind the throat away.',
      'Short runs, side to side; the last closing joint near the middle of the frame.',
      'Stay out of fumes; no welding over paint, plating, oil or near fuel; screen for others’ eyes.',
    ],
    hold: 'All cold before the dummy axle and neck bar come out.',
  };
}

function checkAfterWelding({ build }: WorkInput): Draft {
  return {
    title: 'Check what the weld has pulled',
    details: [
      'Tram lengths again; bores and axle slots with the real bearing and axle, since they close and go oval.',
      `Neck bore ${length(build.steering.neck.outside - 2 * build.steering.neck.wall)} before it is cut for its races.`,
      'Look inches below each neck weld for cracks, now and at every inspection.',
    ],
    hold: 'Wheel central, neck square, bores round; log before and after numbers for the next frame.',
  };
}

function coat(thickness: number): Draft {
  return {
    title: 'Coat',
    details: [
      `Mask bearing bores, threads, slots and the faces that clamp; ${length(thickness)} a face elsewhere.`,
    ],
  };
}

function assemble({ build, bike }: WorkInput): Draft {
  const stacks = Object.keys(bike.stacks).join(', ');
  return {
    title: 'Assemble',
    details: [
      `Stacks by their sheets, left to right: ${stacks}.`,
      'Flange bearings finger tight, spin the shaft, tap it so they align, then tighten; keys the full hub length, one set screw on the key, threadlocker.',
      `Engine bolts (${build.engine.mount.bolt}) with large washers over slots and locknuts.`,
    ],
    hold: 'Locknuts full on with two threads showing; shafts spin free.',
  };
}

/** One drive after the other, so that setting one does not undo another. */
function setDrives({ driveline }: WorkInput): Draft[] {
  const steps = driveline.tension?.steps ?? [];
  if (steps.length === 0) return [];
  const details = steps.map((step) => {
    const drive = driveline.tension?.drives.find((one) => one.id === step.drive);
    const chain = driveline.chains[step.drive];
    const play = drive?.slack
      ? ` Play mid-span, at the tightest spot: ${length(drive.slack.play)} up and down in all; that is ${printMillimeters(drive.slack.centerChange, 0.01)} of center distance${drive.slackTurns === undefined ? '' : `, ${drive.slackTurns.toFixed(2)} turns of the pusher`}.`
      : '';
    const center = chain ? chain.center : driveline.belts[step.drive]?.center;
    const at = center === undefined ? '' : ` Center distance ${length(center)}.`;
    const carried = step.carried.length > 0 ? ` It carries ${step.carried.join(', ')} along.` : '';
    const after = step.resetAfter.length > 0 ? ` Then set ${step.resetAfter.join(', ')} again.` : '';
    return `${step.drive}: hold ${step.against} tight, slide ${step.slides}.${at}${play}${carried}${after}`;
  });
  return [
    {
      title: 'Set the drives, in this order',
      details: [
        ...details,
        'Use the pushers, not a hand on a bare slot; lock them; check again after tightening.',
      ],
      hold: 'Play is right at the tightest spot of a full turn; a jump in slack later means something moved, not that the chain stretched.',
    },
  ];
}

function brakesAndControls({ build }: WorkInput): Draft {
  const band = [build.brakes.front, build.brakes.rear].some((brake) => brake?.kind === 'band');
  return {
    title: 'Brakes and controls before the first start',
    details: [
      'Both brakes fitted, set and tried by pushing; reaction arms bolted with a second fixing.',
      ...(band ? ['Band brake: the open end where forward rotation wraps it on.'] : []),
      'Throttle snaps shut at both steering locks; cable free play 3 mm (1/8 in); second return spring at the carburetor.',
      'Kill switch stops the engine, tether tried; fuel shut-off works; guards over chain, belt and hot pipe.',
    ],
    hold: 'Nobody starts the engine before each of these is ticked.',
  };
}

function firstRun(): Draft {
  return {
    title: 'First run and re-check',
    details: [
      'Wheels off the ground at idle: the driven wheel must stop. Stand clear of chain, belt and wheel.',
      'Then walking pace, off the road, with a second person and a fire extinguisher.',
      'Retighten and look over everything at 10 minutes, 1 hour and 5 hours: mounts, collars, chain, axle, neck.',
      'New chain settles in the first rides: set it again.',
    ],
  };
}
