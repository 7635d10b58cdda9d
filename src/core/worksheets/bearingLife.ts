import { z } from 'zod';
import type { AngularSpeed, Force, Outcome } from '../quantity/index.ts';
import {
  angularSpeedField,
  bad,
  forceField,
  good,
  lengthField,
  ratioField,
  resultField,
} from '../quantity/index.ts';
import { bearingConstants, findBearing } from '../standards/index.ts';
import {
  axialLimit,
  type BearingLoad,
  type BearingRating,
  bearingFigures,
  type EquivalentLoad,
  type EquivalentRule,
  equivalentLoad,
  isoReliabilityFactor,
  lifeHours,
  meanDuty,
  ratingLife,
  reliabilityFactor,
  requiredRating,
  speedLimit,
  staticLoad,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const LOAD = { min: 0, max: 1e7 };
const SPEED = { above: 0, max: 200_000 };

const input = z.strictObject({
  bearing: z
    .string()
    .max(20)
    .meta({ description: 'Deep groove ball bearing, for example 6203; the lowest listed ratings are used.' })
    .optional(),
  dynamicRating: forceField("C, the maker's own if known.", { above: 0, max: 1e7 }).optional(),
  staticRating: forceField(
    "C0, the maker's own if known; wanted with an axial load, and for the static factor.",
    { above: 0, max: 1e7 },
  ).optional(),
  f0: ratioField('Factor of the axial load table of ISO 281; wanted with an axial load.', {
    above: 0,
    max: 30,
  }).optional(),
  bore: lengthField('Bore, for limits of speed and axial load.', { above: 0, max: 1000 }).optional(),
  outside: lengthField('Outside diameter, for the speed limit.', { above: 0, max: 2000 }).optional(),
  radial: forceField('Fr; instead of duty.', LOAD).optional(),
  axial: forceField('Fa, either way; left out: none.', LOAD).optional(),
  speed: angularSpeedField('Speed; instead of duty.', SPEED).optional(),
  duty: z
    .array(
      z.strictObject({
        radial: forceField('Fr.', LOAD),
        axial: forceField('Fa.', LOAD).optional(),
        speed: angularSpeedField('Speed.', SPEED),
        share: ratioField('Share of the time.', { above: 0, max: 1e6 }),
      }),
    )
    .min(1)
    .max(100)
    .meta({ description: 'Parts of a varying duty; instead of radial, axial and speed.' })
    .optional(),
  rule: oneOf('Table for X and Y: ISO 281 by f0·Fa/C0, or the textbook by Fa/C0; left out: iso-281.', [
    'iso-281',
    'textbook',
  ]).optional(),
  outerRingTurns: z
    .boolean()
    .meta({ description: 'Textbook only: V = 1.2 for a turning outer ring. ISO 281 has no such factor.' })
    .optional(),
  hours: ratioField('Life that is wanted, h.', { above: 0, max: 1e7 }).optional(),
  reliability: ratioField('Probability of reaching the life, for example 0.95; left out: 0.9.', {
    min: 0.5,
    max: 0.999,
  }).optional(),
  reliabilityRule: oneOf(
    'iso-281: a1 of the table of 2007 (from memory), at 0.9, 0.95, 0.96, 0.97, 0.98, 0.99, 0.992, 0.994, 0.996, 0.998 and 0.999 only; weibull: the formula of a textbook, at any. Left out: iso-281.',
    ['iso-281', 'weibull'],
  ).optional(),
  seal: oneOf('For the speed limit; left out: sealed.', ['grease', 'sealed']).optional(),
});

const output = z.object({
  dynamicRating: resultField('force', 'C used.'),
  staticRating: resultField('force', 'C0 used; left out where it is not known.').optional(),
  relativeAxial: resultField('ratio', 'f0·Fa/C0 (iso-281) or Fa/C0 (textbook), of the heaviest part.'),
  e: resultField('ratio', 'Limit of Fa/(V·Fr).'),
  x: resultField('ratio', 'X.'),
  y: resultField('ratio', 'Y.'),
  table: z
    .enum(['inside', 'below', 'above'])
    .meta({ description: 'Place in the axial table; above its end the load is more than the table covers.' }),
  equivalentLoad: resultField('force', 'P, or the mean load of the duty.'),
  millionRevolutions: resultField('ratio', 'L10, million revolutions; left out without load.').optional(),
  lifeHours: resultField('ratio', 'L10h, h; left out without load.').optional(),
  reliableHours: resultField('ratio', 'Life at the reliability asked for, h.').optional(),
  a1: resultField('ratio', 'Share of L10h that is reached with it.').optional(),
  requiredRating: resultField('force', 'C for the hours wanted.').optional(),
  staticLoad: resultField('force', 'P0 of the heaviest part.'),
  staticFactor: resultField('ratio', 's0 = C0/P0; left out without load or C0.').optional(),
  axialLimit: resultField('force', 'Axial load not to be passed.').optional(),
  speedLimit: resultField('angularSpeed', 'By n·dm.').optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;
interface Part extends BearingLoad {
  readonly speed: AngularSpeed;
  readonly share: number;
}

export const bearingLifeWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'bearing-life',
  title: 'Life of a ball bearing',
  summary:
    'Equivalent load, basic rating life, required rating, static factor and speed limit of a single-row deep groove ball bearing under a steady or varying load.',
  input,
  output,
  run,
  formulas: [
    'P = X·V·Fr + Y·Fa, X = 1 and Y = 0 while Fa/(V·Fr) ≤ e',
    'L10 = (C/P)³, L10h = 10⁶·L10/(60·n)',
    'Pm = ∛(ΣP³·n·t/Σn·t)',
    'P0 = max(Fr, 0.6·Fr + 0.5·Fa), s0 = C0/P0',
    'L = a1·L10: a1 by table, or x0 + (θ − x0)·(ln 1/R)^(1/b)',
  ],
  sources: [
    { key: 'iso-281', where: 'basic rating life; table 3 from memory' },
    { key: 'iso-76', where: 'static equivalent load' },
    { key: 'shigley-9', where: 'table 11-1, V, and section 11-4' },
    { key: 'memory', where: 'n·dm limits; ISO 281:2007, a1 for reliability' },
  ],
  example: {
    title: '65 mm bearing of series 02, outer ring turning: Fr 7 kN, Fa 3 kN, 500 rpm',
    input: {
      dynamicRating: '55.9 kN',
      staticRating: '34 kN',
      radial: '7 kN',
      axial: '3 kN',
      speed: 500,
      rule: 'textbook',
      outerRingTurns: true,
    },
    expected: [
      // Printed with Y cut to 1.53: 9.294 kN; the whole Y of 1.5337 makes 11 N more.
      { path: 'y', value: 1.5346, tolerance: 0.002 },
      { path: 'equivalentLoad', value: 9294, tolerance: 15 },
    ],
    source: { key: 'shigley-9', where: 'problem of chapter 11, printed solution' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const parts = partsOf(given);
  if (!parts.ok) return parts;
  const isAxial = parts.value.some(({ axial }) => axial > 0);
  const rating = ratingOf(given, isAxial);
  if (!rating.ok) return rating;
  const rule = ruleOf(given);
  if (!rule.ok) return rule;
  const reach = reachOf(given);
  if (!reach.ok) return reach;
  // Without axial load C0 and f0 have no part in P: 0 over anything is 0.
  const { staticRating = Number.POSITIVE_INFINITY as Force } = rating.value;
  const loads = parts.value.map((part) =>
    equivalentLoad(part, { ...rating.value, staticRating }, rule.value),
  );
  const mean = meanDuty(parts.value.map(({ speed, share }, i) => ({ load: loads[i]!.load, speed, share })));
  const heaviest = loads.reduce((most, one, i) => (one.load > loads[most]!.load ? i : most), 0);
  const load = parts.value[heaviest]!;
  const equivalent = loads[heaviest]!;
  const result = resultOf(given, rating.value, {
    equivalent,
    mean,
    parts: parts.value,
    reach: reach.value,
  });
  const figures = bearingFigures(
    {
      rating: rating.value,
      load,
      equivalent,
      lifeLoad: mean.load,
      speed: mean.speed,
      rotationFactor: rule.value.rotationFactor,
    },
    { id: 'bearing', of: 'bearing' },
  );
  return good({ result, figures });
}

interface Solved {
  readonly equivalent: EquivalentLoad;
  readonly mean: { readonly load: Force; readonly speed: AngularSpeed };
  readonly parts: readonly Part[];
  /** a1, where a reliability is asked for. */
  readonly reach: number | undefined;
}

function resultOf(given: Input, rating: Rated, { equivalent, mean, parts, reach }: Solved): Result {
  const millions = ratingLife(rating.dynamicRating, mean.load);
  const still = Math.max(...parts.map(staticLoad));
  const hours = lifeHours(millions, mean.speed);
  const { bore, outside, staticRating } = rating;
  return {
    dynamicRating: rating.dynamicRating,
    ...(staticRating === undefined ? {} : { staticRating }),
    relativeAxial: equivalent.relativeAxial,
    e: equivalent.e,
    x: equivalent.x,
    y: equivalent.y,
    table: equivalent.table,
    equivalentLoad: mean.load,
    ...(mean.load > 0 ? { millionRevolutions: millions, lifeHours: hours } : {}),
    ...(reach === undefined || mean.load === 0 ? {} : { reliableHours: hours * reach, a1: reach }),
    ...(given.hours === undefined
      ? {}
      : { requiredRating: requiredRating(mean.load, mean.speed, given.hours) }),
    staticLoad: still,
    ...(still > 0 && staticRating !== undefined ? { staticFactor: staticRating / still } : {}),
    ...(bore === undefined || staticRating === undefined
      ? {}
      : { axialLimit: axialLimit(staticRating, bore) }),
    ...(bore === undefined || outside === undefined
      ? {}
      : { speedLimit: speedLimit(bore, outside, given.seal ?? 'sealed') }),
  };
}

interface Rated extends Pick<BearingRating, 'dynamicRating' | 'f0'>, Pick<Input, 'bore' | 'outside'> {
  readonly staticRating?: Force;
}

/** Typed ratings go before those of the table. */
function ratingOf(given: Input, isAxial: boolean): Outcome<Rated> {
  const listed = given.bearing === undefined ? undefined : atPath(findBearing(given.bearing), 'bearing');
  if (listed && !listed.ok) return listed;
  const dynamicRating = given.dynamicRating ?? listed?.value.dynamicRating.low;
  const staticRating = given.staticRating ?? listed?.value.staticRating.low;
  // The high f0 is on the heavy side: a larger Y.
  const f0 = given.f0 ?? listed?.value.f0.high;
  if (dynamicRating === undefined)
    return bad({ code: 'missing', path: 'dynamicRating', wanted: 'bearing or dynamicRating' });
  if (isAxial && staticRating === undefined)
    return bad({
      code: 'missing',
      path: 'staticRating',
      wanted: 'bearing or staticRating, with an axial load',
    });
  if (isAxial && f0 === undefined && given.rule !== 'textbook')
    return bad({
      code: 'missing',
      path: 'f0',
      wanted: 'bearing or f0, or the textbook rule, with an axial load',
    });
  const bore = given.bore ?? listed?.value.bore;
  const outside = given.outside ?? listed?.value.outside;
  if (bore !== undefined && outside !== undefined && bore >= outside)
    return bad({ code: 'conflict', path: 'bore', reason: 'the bore is smaller than the outside' });
  const still = staticRating === undefined ? {} : { staticRating };
  return good({ dynamicRating, ...still, f0: f0 ?? 0, bore, outside });
}

/** a1; between the rows of ISO 281 nothing is said there, so nothing is guessed. */
function reachOf({ reliability, reliabilityRule }: Input): Outcome<number | undefined> {
  if (reliability === undefined) return good(undefined);
  if (reliabilityRule === 'weibull') return good(reliabilityFactor(reliability));
  const a1 = isoReliabilityFactor(reliability);
  if (a1 !== undefined) return good(a1);
  const rows = bearingConstants.lifeReliabilities.map((row) => row.reliability).join(', ');
  const reason = `ISO 281 gives ${rows} only; take one of them, or reliabilityRule weibull`;
  return bad({ code: 'conflict', path: 'reliability', reason });
}

function partsOf(given: Input): Outcome<readonly Part[]> {
  const { radial, axial, speed, duty } = given;
  if (duty !== undefined) {
    if (radial === undefined && axial === undefined && speed === undefined)
      return good(duty.map((part) => ({ ...part, axial: part.axial ?? (0 as Force) })));
    const reason = 'duty holds radial, axial and speed itself; give one or the others';
    return bad({ code: 'conflict', path: 'duty', reason });
  }
  if (radial === undefined) return bad({ code: 'missing', path: 'radial', wanted: 'radial or duty' });
  if (speed === undefined) return bad({ code: 'missing', path: 'speed', wanted: 'speed or duty' });
  return good([{ radial, axial: axial ?? (0 as Force), speed, share: 1 }]);
}

function ruleOf({ rule = 'iso-281', outerRingTurns }: Input): Outcome<EquivalentRule> {
  if (rule === 'iso-281' && outerRingTurns)
    return bad({
      code: 'conflict',
      path: 'outerRingTurns',
      reason: 'ISO 281 has no factor for a turning outer ring; take rule textbook for V = 1.2',
    });
  return good({ rule, rotationFactor: outerRingTurns ? bearingConstants.rotatingOuterRing : 1 });
}
