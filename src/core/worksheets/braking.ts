import { z } from 'zod';
import {
  angleField,
  bad,
  countField,
  degrees,
  forceField,
  good,
  lengthField,
  massField,
  metersPerSecond,
  type Outcome,
  ratioField,
  resultField,
  speedField,
} from '../quantity/index.ts';
import {
  type BrakeChain,
  type BrakeSide,
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
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const shared = {
  control: forceField('Force on the lever or pedal.', { min: 0, max: 1000 }),
  leverRatio: ratioField(
    'Lever or pedal ratio; of a mechanical brake from the hand to the pad, band or shoe.',
    {
      above: 0,
      max: 100,
    },
  ),
  friction: ratioField('Pad or lining friction, where it is known.', { above: 0, max: 1 }).optional(),
  cableEfficiency: ratioField('Efficiency of the cable; left out: 0.75.', { above: 0, max: 1 }).optional(),
  tireRadius: lengthField('Tire radius under load.', { above: 0, max: 500 }),
};

const disc = z.strictObject({
  kind: z.literal('disc'),
  ...shared,
  masterBore: lengthField('Bore of the master cylinder; left out: pulled by a cable.', {
    above: 0,
    max: 40,
  }).optional(),
  pistonDiameter: lengthField('Diameter of a caliper piston.', { above: 0, max: 80 }).optional(),
  pistons: countField('Pistons, both sides together; left out: 2.', { min: 1, max: 12 }).optional(),
  style: z
    .enum(['opposed', 'sliding'])
    .meta({
      description: 'Pistons on both sides, or on one side of a sliding body; left out: opposed where even.',
    })
    .optional(),
  discOutside: lengthField('Outside diameter of the pad track.', { above: 0, max: 400 }),
  discInside: lengthField('Inside diameter of the pad track.', { above: 0, max: 400 }),
  discMass: massField('Mass of the disc, for its heat.', { above: 0, max: 10 }).optional(),
});

const band = z.strictObject({
  kind: z.literal('band'),
  ...shared,
  diameter: lengthField('Drum diameter.', { above: 0, max: 400 }),
  wrap: angleField('Wrap of the band; left out: 270 degrees.', { above: 0, max: 360 }).optional(),
  selfWraps: z
    .boolean()
    .meta({ description: 'Turning forward wraps the band on: the pulled end is the slack one.' }),
});

const drum = z.strictObject({
  kind: z.literal('drum'),
  ...shared,
  diameter: lengthField('Drum diameter.', { above: 0, max: 400 }),
  drumFactor: ratioField('Drum force over shoe force; left out: 2.', { above: 0, max: 10 }).optional(),
});

const brake = z.discriminatedUnion('kind', [disc, band, drum]);

const input = z.strictObject({
  mass: massField('Bike with rider.', { above: 0, max: 1000 }),
  wheelbase: lengthField('Wheelbase.', { above: 0, max: 5000 }),
  centerAhead: lengthField('Center of mass ahead of the rear axle.', { above: 0, max: 5000 }),
  centerHeight: lengthField('Center of mass above the ground.', { above: 0, max: 3000 }),
  friction: ratioField('Tire on road: 0.8 dry, 0.4 wet; left out: 0.8.', { above: 0, max: 2 }).optional(),
  speed: speedField('Speed at the start; left out: 40 km/h.', { above: 0, max: 100 }).optional(),
  reaction: z
    .number()
    .min(0)
    .max(10)
    .meta({ description: 'Reaction before the brake bites [s]; left out: 1.' })
    .optional(),
  front: brake.meta({ description: 'Front brake.' }).optional(),
  rear: brake.meta({ description: 'Rear brake.' }).optional(),
  stops: countField('Repeated stops for the disc; left out: 10.', { min: 1, max: 1000 }).optional(),
  interval: z
    .number()
    .positive()
    .max(3600)
    .meta({ description: 'From stop to stop [s]; left out: 60.' })
    .optional(),
  cooling: z
    .number()
    .min(0)
    .max(500)
    .meta({ description: 'Heat a disc gives to the air [W/(m²·K)]; left out: 15, the least of the usual.' })
    .optional(),
});

const plain = (doc: string) => z.number().meta({ description: doc });
const gains = z.object({
  low: resultField('ratio', 'At the lowest friction.'),
  usual: resultField('ratio', 'At the middle of the friction.'),
  high: resultField('ratio', 'At the highest friction.'),
});
const heat = z.object({
  energy: plain('Into the disc a stop [J].'),
  rise: plain('Rise a stop [K].'),
  after: z.array(z.number()).meta({ description: 'Rise over the air after each stop [K].' }),
  limit: plain('Rise over the air after many stops [K].').optional(),
});
const sideResult = z.object({
  gain: gains.meta({ description: 'Force at the ground over force at the lever.' }),
  force: resultField('force', 'At the ground, wheel turning, at the middle of the friction.'),
  lockControl: resultField(
    'force',
    'Lever or pedal force that locks this wheel alone, or lifts the rear one.',
  ),
  lockBy: z.enum(['locks', 'lift']),
  heat: heat.optional(),
});
const point = z.object({ front: z.number(), rear: z.number() });

const output = z.object({
  liftDeceleration: plain('Deceleration that lifts the rear wheel [m/s²].'),
  frontLimit: plain('Most deceleration with the front brake alone [m/s²].'),
  rearLimit: plain('Most deceleration with the rear brake alone [m/s²].'),
  bothLimit: plain('Most deceleration with both, ideally shared [m/s²].'),
  stops: z.array(
    z.object({
      with: z.enum(['front', 'rear', 'both']),
      deceleration: plain('[m/s²]'),
      limitedBy: z.enum(['hand', 'front-locks', 'rear-locks', 'both-lock', 'lift']),
      distance: plain('Stopping distance with reaction [m].').optional(),
    }),
  ),
  front: sideResult.optional(),
  rear: sideResult.optional(),
  frontShare: resultField('ratio', 'Share of the front in the braking force, wheels turning.').optional(),
  ideal: z.array(point).meta({ description: 'Ideal distribution, as shares of the weight.' }),
  real: z.array(point).meta({ description: "The bike's own line, as shares of the weight." }),
  reference: z
    .array(
      z.object({
        vehicle: z.string(),
        with: z.enum(['front', 'rear']),
        asked: plain('Mean fully developed deceleration [m/s²].'),
        found: plain('Deceleration of this brake alone here [m/s²].'),
        allowed: plain('Longest stopping distance at the test speed [m].'),
        distance: plain('Stopping distance at the test speed with the same delay [m].'),
        reaches: z.boolean(),
      }),
    )
    .meta({ description: 'Published figures, for reference only: no approval follows from them.' }),
});

type Given = z.output<typeof input>;
type Brake = z.output<typeof brake>;
type Result = z.output<typeof output>;

export const brakingWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'braking',
  title: 'Brakes: from the hand to the stop',
  summary:
    'Force of disc, band or drum brakes from the lever, where each wheel locks or lifts, stopping distance with reaction, ideal and real distribution, and the heat of repeated stops. An estimate for planning; try the real brakes gently first.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<Result>> => {
    if (!given.front && !given.rear)
      return bad({ code: 'missing', path: 'front', wanted: 'a front brake, a rear brake or both' });
    if (!(given.centerAhead < given.wheelbase)) {
      const reason = 'a bike whose center of mass is ahead of its front axle does not stand';
      return bad({ code: 'conflict', path: 'centerAhead', reason });
    }
    for (const wheel of ['front', 'rear'] as const) {
      const side = given[wheel];
      if (side?.kind === 'disc' && !(side.discInside < side.discOutside))
        return bad({ code: 'conflict', path: `${wheel}.discInside`, reason: 'the pad track has no width' });
      if (side?.kind === 'disc' && (side.masterBore === undefined) !== (side.pistonDiameter === undefined))
        return bad({
          code: 'missing',
          path: `${wheel}.${side.masterBore === undefined ? 'masterBore' : 'pistonDiameter'}`,
          wanted: 'both bores of a hydraulic line, or neither',
        });
    }
    return good(solve(given));
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

function solve(given: Given): WorksheetRun<Result> {
  const side = (of: Brake | undefined): BrakeSide | undefined =>
    of && { gain: brakeGain(chainOf(of)), control: of.control };
  const [front, rear] = [side(given.front), side(given.rear)];
  const asked: BrakingInput = {
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
  const braking = brakingOf(asked);
  const limits = longitudinalLimits(asked.bike, asked.friction);
  const frontShare = braking.frontShare ?? (front ? 1 : 0);
  const heats = {
    front: heatOf(given, given.front, frontShare),
    rear: heatOf(given, given.rear, 1 - frontShare),
  };
  const sideOf = (wheel: 'front' | 'rear'): z.output<typeof sideResult> | undefined => {
    const one = asked[wheel];
    if (!one) return undefined;
    const lock = wheel === 'front' ? braking.frontLock! : { ...braking.rearLock!, by: 'locks' as const };
    const warmth = heats[wheel];
    return {
      gain: { ...one.gain },
      force: one.gain.usual * one.control,
      lockControl: lock.control,
      lockBy: lock.by,
      ...(warmth ? { heat: { ...warmth, after: [...warmth.after] } } : {}),
    };
  };
  const [frontResult, rearResult] = [sideOf('front'), sideOf('rear')];
  const result: Result = {
    liftDeceleration: limits.stoppie,
    frontLimit: limits.frontBrake.value,
    rearLimit: limits.rearBrake.value,
    bothLimit: limits.bothBrakes.value,
    stops: braking.stops.map((stop) => ({ ...stop })),
    ...(frontResult ? { front: frontResult } : {}),
    ...(rearResult ? { rear: rearResult } : {}),
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
