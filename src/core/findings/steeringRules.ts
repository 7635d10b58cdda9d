import type { Bike, Stance } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import type { Finding } from './finding.ts';
import { say, sayLength } from './words.ts';

/** Normal trail outside this wants a second look. */
const NORMAL_TRAIL = { min: 0.025, max: 0.11 };
const RAKE_DEGREES = { min: 18, max: 36 };
const DEGREE = Math.PI / 180;
/** Pitch of the fitted or sagged stance worth telling [rad]. */
const TELL_PITCH = 0.5 * DEGREE;

export function steeringFindings(build: Build, bike: Bike): readonly Finding[] {
  const { design, fitted, sag } = bike.layout.stances;
  const refitted = build.wheels.front.fitted !== undefined || build.wheels.rear.fitted !== undefined;
  const sags = (build.steering.fork.sag ?? 0) > 0;
  return [
    ...trailFindings(design),
    ...(refitted ? trailFindings(fitted) : []),
    ...(sags ? trailFindings(sag) : []),
    ...rakeFindings(design),
    ...(refitted ? pitchFindings(design, fitted) : []),
    ...radiusFindings(build, bike),
  ];
}

function trailFindings(stance: Stance): Finding[] {
  const { normalTrail } = stance;
  const base = {
    id: `steering.trail:${stance.name}`,
    question: 'ride' as const,
    part: 'steering',
    path: 'steering.forkOffset',
    value: normalTrail,
    kind: 'length' as const,
    source: { key: 'memory', where: 'usual normal trail of small machines, 25 to 110 mm' },
  };
  const where =
    stance.name === 'design' ? 'As drawn' : stance.name === 'sag' ? 'With sag' : 'With the tires now fitted';
  if (normalTrail <= 0) {
    return [
      {
        ...base,
        severity: 'stop',
        limit: 0,
        margin: normalTrail,
        what: `${where} the front wheel leads the steering axis: normal trail is ${sayLength(normalTrail)}.`,
        why: 'With no trail the steering does not center itself and the bars turn over.',
        remedy: 'Less fork offset, a slacker head angle or a larger front tire.',
      },
    ];
  }
  if (normalTrail < NORMAL_TRAIL.min) {
    return [
      {
        ...base,
        severity: 'caution',
        limit: NORMAL_TRAIL.min,
        margin: normalTrail - NORMAL_TRAIL.min,
        what: `${where} normal trail is ${sayLength(normalTrail)}, trail on the ground ${sayLength(stance.trail)}.`,
        why: 'Little trail makes the steering nervous.',
        remedy: 'Less fork offset, a slacker head angle or a larger front tire.',
      },
    ];
  }
  if (normalTrail <= NORMAL_TRAIL.max) return [];
  return [
    {
      ...base,
      severity: 'caution',
      limit: NORMAL_TRAIL.max,
      margin: NORMAL_TRAIL.max - normalTrail,
      what: `${where} normal trail is ${sayLength(normalTrail)}, trail on the ground ${sayLength(stance.trail)}.`,
      why: 'Much trail makes slow steering heavy, and the wheel flops.',
      remedy: 'More fork offset or a steeper head angle.',
    },
  ];
}

function rakeFindings(stance: Stance): Finding[] {
  const rake = stance.rake / DEGREE;
  if (rake >= RAKE_DEGREES.min && rake <= RAKE_DEGREES.max) return [];
  const limit = (rake < RAKE_DEGREES.min ? RAKE_DEGREES.min : RAKE_DEGREES.max) * DEGREE;
  return [
    {
      id: 'steering.rake',
      severity: 'caution',
      question: 'ride',
      part: 'steering',
      path: 'steering.headAngle',
      what: `Rake is ${say(stance.rake, 'angle')}.`,
      value: stance.rake,
      limit,
      margin: -Math.abs(stance.rake - limit),
      kind: 'angle',
      why: 'Outside the usual range the steering is either twitchy or slow.',
      source: { key: 'practice', where: 'usual rake 22 to 36 degrees; racing machines from 18' },
    },
  ];
}

function pitchFindings(design: Stance, fitted: Stance): Finding[] {
  if (Math.abs(fitted.pitch) < TELL_PITCH) return [];
  return [
    {
      id: 'steering.pitch:fitted',
      severity: 'caution',
      question: 'ride',
      part: 'wheels',
      what: `The tires now fitted pitch the frame ${say(Math.abs(fitted.pitch), 'angle', 0.01)} nose ${fitted.pitch > 0 ? 'down' : 'up'}: trail goes from ${sayLength(design.trail)} to ${sayLength(fitted.trail)}.`,
      value: fitted.pitch,
      kind: 'angle',
      why: 'Head angle, trail, engine level and peg heights all move with the pitch.',
      remedy: 'Match both tires, change the fork length, or change the fork offset for the trail you want.',
      source: { key: 'derived', where: 'stance on two tires' },
    },
  ];
}

/** A radius read off a size marking is right to 5 % only, and everything stands on it. */
function radiusFindings(build: Build, bike: Bike): Finding[] {
  return (['rear', 'front'] as const).flatMap((end): Finding[] => {
    const tire = end === 'rear' ? bike.layout.rearTire : bike.layout.frontTire;
    if (tire.by !== 'marking') return [];
    return [
      {
        id: `wheels.radius:${end}`,
        severity: 'note',
        question: 'together',
        part: `${end} tire`,
        path: `wheels.${end}.tire`,
        what: `The ${end} tire's radius of ${sayLength(tire.radius)} is read from the marking "${build.wheels[end].tire.size}", right to about ${sayLength(tire.doubt)}.`,
        value: tire.radius,
        kind: 'length',
        why: 'Axle height, trail and gearing stand on it.',
        remedy: 'Roll the wheel one turn with the rider on and enter the distance as `rollout`.',
        source: tire.source,
      },
    ];
  });
}
