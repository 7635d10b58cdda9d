import type { z } from 'zod';
import { bad, degrees, good, type Issue, metersPerSecond, type Outcome } from '../quantity/index.ts';
import {
  type BrakeChain,
  type BrakeSide,
  type Braking,
  type BrakingInput,
  brakeGain,
  brakingFigures,
  brakingOf,
  type DiscHeat,
  discHeat,
  effectiveRadius,
  idealDistribution,
  longitudinalLimits,
  realDistribution,
} from '../ride/index.ts';
import { brakeFacts, padFriction } from '../standards/index.ts';
import { type brakeInput, type brakeResult, brakingInput, brakingOutput } from './brakingSchemas.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

type Given = z.output<typeof brakingInput>;
type Brake = z.output<typeof brakeInput>;
type Result = z.output<typeof brakingOutput>;

export const brakingWorksheet: Worksheet<typeof brakingInput, typeof brakingOutput> = {
  id: 'braking',
  title: 'Brakes: from the hand to the stop',
  summary:
    'Force of disc, band or drum brakes from the lever, where each wheel locks or lifts, stopping distance with reaction, ideal and real distribution, and the heat of repeated stops. An estimate for planning; try the real brakes gently first.',
  input: brakingInput,
  output: brakingOutput,
  run: (given): Outcome<WorksheetRun<Result>> => {
    const [first, ...more] = issuesOf(given);
    return first ? bad(first, ...more) : good(solve(given));
  },
  formulas: [
    'p = F·i/A_mc; N = p·A_one side; T = 2·μ·N·r_e; F_tire = T/R',
    'band: T = P·r·(e^(μθ) − 1) pulled at the slack end, P·r·(1 − e^(−μθ)) at the tight end',
    'N_f = m·g·(b + x·h)/p; lift at x = (p − b)/h',
    'front alone x = μ·b/(p − μ·h); rear alone x = μ·(p − b)/(p + μ·h); ideal front share (b + x·h)/p',
    'S = v·t_r + v²/(2·x·g)',
    'ΔT = ½·m·v²·share/(m_d·c); after n stops ΔT·(1 − qⁿ)/(1 − q), q = e^(−h·A·t/(m_d·c))',
  ],
  sources: [
    { key: 'derived', where: "moments about the contacts, Pascal's law, capstan equation" },
    { key: 'sae-j866', where: 'friction classes of linings' },
    { key: 'ece-93-14', where: 'appendix 1, section 2: figures for reference' },
  ],
  example: {
    title: 'A hand brake of 100 N on two opposed 27 mm pistons from a 12.7 mm master cylinder',
    input: {
      mass: 120,
      wheelbase: 1000,
      centerAhead: 420,
      centerHeight: 620,
      friction: 0.8,
      speed: 12.5,
      reaction: 1,
      front: {
        kind: 'disc',
        control: 100,
        leverRatio: 6,
        friction: 0.38,
        masterBore: 12.7,
        pistonDiameter: 27,
        discOutside: 180,
        discInside: 140,
        tireRadius: 200,
      },
    },
    expected: [
      { path: 'front.force', value: 824.413, tolerance: 5e-4 },
      { path: 'liftDeceleration', value: 9.173963, tolerance: 5e-7 },
      { path: 'frontLimit', value: 6.537767, tolerance: 5e-6 },
    ],
    source: { key: 'derived', where: 'worked out independently, printed to six digits' },
  },
};

/** What the schema alone cannot tell. */
function issuesOf(given: Given): Issue[] {
  if (!given.front && !given.rear)
    return [{ code: 'missing', path: 'front', wanted: 'a front brake, a rear brake or both' }];
  const tips: Issue = {
    code: 'conflict',
    path: 'centerAhead',
    reason: 'a bike whose center of mass is ahead of its front axle does not stand',
  };
  return [
    ...(given.centerAhead < given.wheelbase ? [] : [tips]),
    ...(['front', 'rear'] as const).flatMap((wheel) => discIssues(wheel, given[wheel])),
  ];
}

function discIssues(wheel: string, of: Brake | undefined): Issue[] {
  if (of?.kind !== 'disc') return [];
  const bore = of.masterBore === undefined;
  const half = bore !== (of.pistonDiameter === undefined);
  const path = `${wheel}.${bore ? 'masterBore' : 'pistonDiameter'}`;
  return [
    ...(of.discInside < of.discOutside
      ? []
      : [{ code: 'conflict', path: `${wheel}.discInside`, reason: 'the pad track has no width' } as const]),
    ...(half
      ? [{ code: 'missing', path, wanted: 'both bores of a hydraulic line, or neither' } as const]
      : []),
  ];
}

function solve(given: Given): WorksheetRun<Result> {
  const asked = askedOf(given);
  const braking = brakingOf(asked);
  const limits = longitudinalLimits(asked.bike, asked.friction);
  const frontShare = braking.frontShare ?? (asked.front ? 1 : 0);
  const heats = {
    front: heatOf(given, given.front, frontShare),
    rear: heatOf(given, given.rear, 1 - frontShare),
  };
  const { front, rear } = asked;
  const result: Result = {
    liftDeceleration: limits.stoppie,
    frontLimit: limits.frontBrake.value,
    rearLimit: limits.rearBrake.value,
    bothLimit: limits.bothBrakes.value,
    stops: braking.stops.map((stop) => ({ ...stop })),
    ...(front ? { front: sideOf(front, braking.frontLock!, heats.front) } : {}),
    ...(rear ? { rear: sideOf(rear, { ...braking.rearLock!, by: 'locks' }, heats.rear) } : {}),
    ...(braking.frontShare === undefined ? {} : { frontShare: braking.frontShare }),
    ideal: idealDistribution(asked.bike),
    real: realDistribution(asked),
    reference: braking.reference.map((row) => ({
      vehicle: row.figure.vehicle,
      with: row.with,
      asked: row.figure.deceleration,
      found: row.deceleration,
      allowed: row.allowed,
      distance: row.distance,
      reaches: row.reaches,
    })),
  };
  return { result, figures: brakingFigures(asked, braking, heats) };
}

function askedOf(given: Given): BrakingInput {
  const side = (of: Brake | undefined): BrakeSide | undefined =>
    of && { gain: brakeGain(chainOf(of)), control: of.control };
  const [front, rear] = [side(given.front), side(given.rear)];
  return {
    bike: {
      mass: given.mass,
      wheelbase: given.wheelbase,
      ahead: given.centerAhead,
      height: given.centerHeight,
    },
    friction: given.friction ?? 0.8,
    speed: given.speed ?? metersPerSecond(40 / 3.6),
    reaction: given.reaction ?? 1,
    ...(front ? { front } : {}),
    ...(rear ? { rear } : {}),
  };
}

const sideOf = (
  { gain, control }: BrakeSide,
  lock: NonNullable<Braking['frontLock']>,
  heat: DiscHeat | undefined,
): z.output<typeof brakeResult> => ({
  gain: { ...gain },
  force: gain.usual * control,
  lockControl: lock.control,
  lockBy: lock.by,
  ...(heat ? { heat: { ...heat, after: [...heat.after] } } : {}),
});

function chainOf(given: Brake): BrakeChain {
  const known = given.friction;
  const friction =
    known === undefined
      ? padFriction(given.kind === 'disc' ? 'unknown' : 'bandLining')
      : { low: known, usual: known, high: known };
  const cable = given.cableEfficiency ?? brakeFacts.cableEfficiency.usual;
  const base = { leverRatio: given.leverRatio, friction, tireRadius: given.tireRadius };
  switch (given.kind) {
    case 'disc': {
      const radius = effectiveRadius(given.discInside / 2, given.discOutside / 2).wornIn;
      const { masterBore, pistonDiameter, pistons = 2, style } = given;
      if (masterBore === undefined || pistonDiameter === undefined)
        return { kind: 'cable-disc', effectiveRadius: radius, efficiency: cable, ...base };
      const isOpposed = (style ?? (pistons % 2 === 0 ? 'opposed' : 'sliding')) === 'opposed';
      const pistonsOneSide = isOpposed ? pistons / 2 : pistons;
      return {
        kind: 'disc',
        masterBore,
        pistonDiameter,
        pistonsOneSide,
        effectiveRadius: radius,
        efficiency: 1,
        ...base,
      };
    }
    case 'band':
      return {
        kind: 'band',
        radius: given.diameter / 2,
        wrap: given.wrap ?? degrees(270),
        selfWraps: given.selfWraps,
        efficiency: cable,
        ...base,
      };
    case 'drum': {
      const factor = given.drumFactor;
      const drumFactor = factor === undefined ? undefined : { low: factor, usual: factor, high: factor };
      return {
        kind: 'drum',
        radius: given.diameter / 2,
        efficiency: cable,
        ...base,
        ...(drumFactor ? { drumFactor } : {}),
      };
    }
  }
}

function heatOf(given: Given, of: Brake | undefined, share: number): DiscHeat | undefined {
  if (of?.kind !== 'disc' || of.discMass === undefined) return undefined;
  return discHeat({
    mass: given.mass,
    speed: given.speed ?? 40 / 3.6,
    share,
    discMass: of.discMass,
    heatCapacity: brakeFacts.heatCapacity,
    discArea: (Math.PI / 2) * (of.discOutside ** 2 - of.discInside ** 2),
    cooling: given.cooling ?? brakeFacts.cooling[0]!,
    interval: given.interval ?? 60,
    stops: given.stops ?? 10,
  });
}
