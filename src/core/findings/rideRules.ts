import { practice } from '../quantity/index.ts';
import { type ClutchAnswers, contactName, type GearingRow, type Riding, type Stop } from '../ride/index.ts';
import type { Finding } from './finding.ts';
import { say, sayLength, sayList } from './words.ts';

/** Lean below which a hard part must not touch [rad]; soft ones earlier by a little. */
const LEAST_LEAN = (35 * Math.PI) / 180;
/** Deceleration that each brake alone should reach: the smallest of the published figures by calculation [m/s²]. */
const LEAST_BRAKING = 2.5;
/** Rise of a clutch drum by one launch that is too much [K]. */
const HOT_DRUM = 150;

/** How it goes, stops, leans and fits; each remedy was tried with the same calculation. */
export function rideFindings(riding: Riding): readonly Finding[] {
  return [
    ...(riding.going?.answers.clutch ? clutchFindings(riding, riding.going.answers.clutch) : []),
    ...hillFindings(riding),
    ...brakeFindings(riding),
    ...leanFindings(riding),
    ...lockFindings(riding),
    ...fitFindings(riding),
    ...travelFindings(riding),
    ...handlingNotes(riding),
  ];
}

function clutchFindings(riding: Riding, clutch: ClutchAnswers): Finding[] {
  const base = { question: 'ride' as const, part: 'clutch', path: 'driveline.stages' };
  const { use } = riding.going!.ride;
  const { lockUp: atLock, bite: atBite } = clutch.speeds;
  const findings: Finding[] = [];
  if (clutch.neverLocks) {
    findings.push({
      ...base,
      id: 'clutch.never-locks',
      severity: 'stop',
      what: 'Full throttle is more than the clutch carries at any speed up to the governor: it never locks.',
      why: 'A clutch that always slips burns.',
      remedy: 'A clutch of higher capacity, or a taller reduction so that less torque is asked of it.',
      source: practice('capacity above engine torque at governed speed'),
    });
  }
  if (clutch.level.slipping) {
    findings.push({
      ...base,
      id: 'clutch.slips-in-use',
      severity: 'caution',
      what: `At the riding speed of ${say(use.speed, 'speed')} the clutch slips all the time: it bites at ${say(atBite, 'speed')} and locks at ${say(atLock, 'speed')}.`,
      value: use.speed,
      limit: atLock,
      margin: use.speed - atLock,
      kind: 'speed',
      why: 'Builders gear for top speed and burn clutches: below lock-up the difference is heat.',
      remedy: slipRemedy(riding, use.speed),
      source: practice('stay above lock-up speed'),
    });
  }
  if (clutch.launchRise !== undefined && clutch.launchRise > HOT_DRUM) {
    findings.push({
      ...base,
      id: 'clutch.launch-heat',
      severity: 'caution',
      what: `One launch heats the clutch drum by ${Math.round(clutch.launchRise)} K.`,
      value: clutch.launchRise,
      limit: HOT_DRUM,
      margin: HOT_DRUM - clutch.launchRise,
      kind: 'count',
      why: 'Two or three in a row turn the shoes blue.',
      remedy: 'A taller reduction, less weight, or a variable belt.',
      source: practice('blue shoes mean over 600 °F'),
    });
  }
  return findings;
}

/** The pair nearest to the present one that locks up below the riding speed, of those that fit slot, tire and ground. */
function slipRemedy(riding: Riding, speed: number): string {
  const { gearing } = riding;
  const fits = (row: GearingRow) =>
    row.lockUp !== undefined &&
    row.lockUp < speed &&
    row.fit !== undefined &&
    (row.groundGap ?? 1) > 0 &&
    (row.tireGap ?? 1) > 0;
  const row = gearing?.rows.filter(fits).toSorted((a, b) => a.ratio - b.ratio)[0];
  const pair = row
    ? `Tried: ${row.driverTeeth} to ${row.drivenTeeth} teeth on "${gearing?.drive}" locks at ${say(row.lockUp!, 'speed')}, top ${say(row.governed, 'speed')} at the governor, and fits the slot with ${row.fit!.links} links.`
    : 'No pair of sprockets near the present one that fits slot, tire and ground locks lower: a countershaft, a smaller tire or a variable belt.';
  return `${pair}${engagementRemedy(riding, speed)}`;
}

/** Road speed at lock-up goes with the engine speed at lock-up, so the engagement that would do follows from one ratio. */
function engagementRemedy({ going }: Riding, speed: number): string {
  const { locks, engages } = going!.ride.speeds;
  const lockUp = going!.answers.clutch?.speeds.lockUp;
  if (locks === undefined || engages === undefined || lockUp === undefined) return '';
  const wanted = (locks * speed) / lockUp;
  return ` Or springs that let it lock by ${say(wanted, 'angularSpeed')} in place of ${say(locks, 'angularSpeed')} and bite by ${say((engages * wanted) / locks, 'angularSpeed')}, as long as that stays above idle.`;
}

function hillFindings(riding: Riding): Finding[] {
  if (!riding.going) return [];
  const { ride, answers } = riding.going;
  const { grade, limitedBy } = answers.hill.steepest;
  if (answers.onHill) return [];
  return [
    {
      id: 'ride.hill',
      severity: 'caution',
      question: 'ride',
      part: 'driveline',
      path: 'driveline.stages',
      what: `It does not start on the ${Math.round(ride.use.grade * 100)} % hill of its use; the steepest is ${Math.round(grade * 100)} % (${limitedBy}).`,
      value: grade,
      limit: ride.use.grade,
      margin: grade - ride.use.grade,
      kind: 'ratio',
      why: 'Held at full throttle on such a hill the clutch or belt takes the whole power as heat.',
      remedy: hillRemedy(riding, ride.use.grade),
      source: { key: 'derived', where: 'torque at the wheel against grade and rolling' },
    },
  ];
}

function hillRemedy(riding: Riding, grade: number): string {
  const row = riding.gearing?.rows
    .filter((one) => one.hill.grade >= grade && one.fit !== undefined)
    .toSorted((a, b) => a.ratio - b.ratio)[0];
  return row
    ? `Tried: ${row.driverTeeth} to ${row.drivenTeeth} teeth on "${riding.gearing?.drive}" starts on ${Math.round(row.hill.grade * 100)} %, top ${say(row.governed, 'speed')} at the governor.`
    : 'A larger reduction than the slots allow, or less weight.';
}

function brakeFindings(riding: Riding): Finding[] {
  const { stops } = riding.braking.braking;
  return stops
    .filter((stop) => stop.with !== 'both')
    .flatMap((stop: Stop): Finding[] =>
      stop.deceleration >= LEAST_BRAKING
        ? []
        : [
            {
              id: `brakes.deceleration:${stop.with}`,
              severity: 'caution',
              question: 'ride',
              part: `${stop.with} brake`,
              path: `brakes.${stop.with}`,
              what: `The ${stop.with} brake alone reaches ${stop.deceleration.toFixed(1)} m/s² at the usual hand force (${stop.limitedBy}).`,
              value: stop.deceleration,
              limit: LEAST_BRAKING,
              margin: stop.deceleration - LEAST_BRAKING,
              kind: 'count',
              why: 'Published figures ask 2.5 m/s² and more of each brake by itself; they are shown for reference only.',
              remedy:
                stop.limitedBy === 'hand'
                  ? 'More lever ratio, a smaller master, a larger disc or drum.'
                  : 'The tire is the limit: weight further over that wheel, or better ground.',
              source: { key: 'memory', where: 'stopping figures of motorcycle directives, each brake alone' },
            },
          ],
    );
}

function leanFindings(riding: Riding): Finding[] {
  const first = riding.leans[0];
  if (!first || first.lean >= LEAST_LEAN) return [];
  const low = riding.leans
    .filter((one) => one.lean < LEAST_LEAN)
    .map((one) => `${contactName(one.part)} ${say(one.lean, 'angle')}`);
  const same = [...new Set(low)];
  return [
    {
      id: 'ride.lean',
      severity: 'caution',
      question: 'ride',
      part: first.part,
      what: `In a lean to the ${first.side} the ${contactName(first.part)} touches first, at ${say(first.lean, 'angle')}; under ${say(LEAST_LEAN, 'angle')}: ${sayList(same.slice(0, 5))}.`,
      value: first.lean,
      limit: LEAST_LEAN,
      margin: first.lean - LEAST_LEAN,
      kind: 'angle',
      why: 'A hard part that touches lifts the wheels off the ground in the turn.',
      remedy: 'Raise it, bring it in, or let it fold.',
      source: { key: 'memory', where: '35 to 40 degrees to the first contact' },
    },
  ];
}

function lockFindings(riding: Riding): Finding[] {
  const wanted = riding.turning
    ? riding.figures.find((figure) => figure.id.endsWith('lock'))?.value
    : undefined;
  return riding.locks
    .filter((one) => wanted !== undefined && one.angle < wanted)
    .map((one) => ({
      id: `ride.lock:${one.toward}`,
      severity: 'stop' as const,
      question: 'ride' as const,
      part: one.against,
      path: 'steering.lock',
      what: `Turned to the ${one.toward}, the ${one.by} meets ${one.against} at ${say(one.angle, 'angle')}, before the lock.`,
      value: one.angle,
      limit: wanted!,
      margin: one.angle - wanted!,
      kind: 'angle' as const,
      why: 'The steering jams.',
      remedy: `Stops at ${say(one.angle * 0.95, 'angle')} or less.`,
      source: { key: 'derived', where: 'fork and tire turned about the steering axis' },
    }));
}

const JOINT_NAMES = { knee: 'knee', hip: 'hip', elbow: 'elbow', trunkLean: 'trunk' } as const;

function fitFindings(riding: Riding): Finding[] {
  const { own } = riding.fit;
  const joints = (Object.keys(JOINT_NAMES) as (keyof typeof JOINT_NAMES)[])
    .filter((joint) => own.comfort[joint] !== 'inside')
    .map((joint) => `${JOINT_NAMES[joint]} ${say(own.angles[joint], 'angle', 1)} (${own.comfort[joint]})`);
  const hot = own.clearances.filter((one) => one.isHot && one.gap < 0);
  const findings: Finding[] = [];
  if (joints.length > 0) {
    findings.push({
      id: 'fit.joints',
      severity: 'note',
      question: 'ride',
      part: 'seating',
      path: 'seating',
      what: `Outside the usual comfort: ${sayList(joints)}.`,
      why: 'A cramped or stretched rider tires and has less control.',
      remedy: 'Move seat, pegs or grips; see the rider sheet for other sizes.',
      source: { key: 'memory', where: 'usual comfort of joint angles' },
    });
  }
  for (const one of hot) {
    findings.push({
      id: `fit.hot:${one.side}-${one.limb}-${one.against}`,
      severity: 'caution',
      question: 'ride',
      part: one.against,
      what: `The ${one.side} ${one.limb} meets ${one.against} by ${sayLength(-one.gap)}, even held out.`,
      value: one.gap,
      limit: 0,
      margin: one.gap,
      kind: 'length',
      why: 'It burns the leg.',
      remedy: 'A shield, another pipe, or the seat further back.',
      source: practice('pipe 4 in from the leg, or a shield'),
    });
  }
  return findings;
}

function travelFindings(riding: Riding): Finding[] {
  const { bump, result } = riding.suspension.front;
  if (!bump?.bottoms || result.bottomsAt === undefined) return [];
  return [
    {
      id: 'suspension.bottoms',
      severity: 'caution',
      question: 'ride',
      part: 'fork',
      path: 'steering.fork',
      what: `The fork is used up at ${result.bottomsAt.toFixed(1)} times its load at rest.`,
      value: result.bottomsAt,
      limit: bump.factor,
      margin: result.bottomsAt - bump.factor,
      kind: 'ratio',
      why: 'A bump of that load bottoms it and hammers the head.',
      remedy: 'Stiffer springs, more travel or less sag.',
      source: { key: 'memory', where: 'bump case of three times the load at rest' },
    },
  ];
}

/** A comparison figure, not a statement about safety: the model has no tire slip, no flex and a rigid rider. */
function handlingNotes(riding: Riding): Finding[] {
  const speeds = riding.handling?.handling.speeds;
  if (!speeds) return [];
  const range = speeds.selfStable[0];
  return [
    {
      id: 'handling.self-stable',
      severity: 'note',
      question: 'ride',
      part: 'steering',
      what: range
        ? `By the linear model it steers itself from ${say(range.from, 'speed')}${range.to === undefined ? '' : ` to ${say(range.to, 'speed')}`}; below that the rider balances it.`
        : 'By the linear model there is no speed at which it steers itself; the rider balances it at all speeds.',
      why: 'For comparing layouts only: no tire slip, no flex, knife-edge wheels, a rigid rider, level ground; wobble is outside it.',
      source: { key: 'whipple-2007', where: 'eigenvalues over speed' },
    },
  ];
}
