import { z } from 'zod';
import type { Length, Outcome, Pressure } from '../quantity/index.ts';
import {
  bad,
  derived,
  good,
  lengthField,
  pressureField,
  ratioField,
  resultField,
} from '../quantity/index.ts';
import { heatingForAssembly, type PressFitInput, pressFit, pressFitFigures } from '../strength/index.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

/** Steel, where nothing is given. */
const STEEL = { elasticModulus: 206e9 as Pressure, poisson: 0.3, expansion: 12e-6 };
const FRICTION = 0.12;

const body = (doc: string) =>
  z
    .strictObject({
      E: pressureField('Modulus of elasticity; left out: 206 GPa.', { above: 0, max: 1e7 }).optional(),
      poisson: ratioField('ν; left out: 0.3.', { min: 0, max: 0.5 }).optional(),
      expansion: ratioField('α, 1/K; left out: 12e-6.', { above: 0, max: 1e-3 }).optional(),
    })
    .meta({ description: doc });

const input = z.strictObject({
  diameter: lengthField('Diameter of the seat.', { above: 0, max: 1000 }),
  interference: lengthField('Diametral interference.', { above: 0, max: 10 }),
  bore: lengthField(
    'Bore of the inner part; for a bearing outer ring the mean of its raceway. Left out: solid.',
    { min: 0, max: 1000 },
  ).optional(),
  hubOutside: lengthField('Outside of the hub; left out: a wide plate.', {
    above: 0,
    max: 10_000,
  }).optional(),
  length: lengthField('Length of the seat.', { above: 0, max: 1000 }),
  friction: ratioField('µ; left out: 0.12.', { min: 0, max: 1 }).optional(),
  hub: body('Material of the hub; left out: steel.').optional(),
  inner: body('Material of the inner part; left out: steel.').optional(),
  hubYield: pressureField('Sy of the hub.', { above: 0, max: 5000 }).optional(),
  clearance: lengthField('Play wanted for dropping it in hot; left out: 0.01 mm.', {
    min: 0,
    max: 1,
  }).optional(),
});

const output = z.object({
  pressure: resultField('pressure', 'Pressure in the seat.'),
  hubHoop: resultField('pressure', 'Tension round the bore of the hub.'),
  hubEquivalent: resultField('pressure', 'von Mises there.'),
  hubFactor: resultField('ratio', 'Sy over that.').optional(),
  innerHoop: resultField('pressure', 'Round the bore of the inner part; compression is negative.'),
  pushForce: resultField('force', 'Force at the end of pushing in.'),
  slipTorque: resultField('torque', 'Torque at which the seat slips.'),
  boreShrink: resultField('length', 'By how much the inner bore gets smaller.'),
  shrinkShare: resultField('ratio', "That as a share of the interference: comes off a bearing's play."),
  heating: resultField('ratio', 'K to heat the hub above the inner part to drop it in.'),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const pressFitWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'press-fit',
  title: 'Press fit',
  summary:
    'Pressure, stresses, push-in force, slip torque, shrink of a bearing ring and heating for a press fit in a hub or a plate.',
  input,
  output,
  run,
  formulas: [
    'p = δ/{d·[((Do² + d²)/(Do² − d²) + νo)/Eo + ((d² + di²)/(d² − di²) − νi)/Ei]}',
    'σθ = p·(Do² + d²)/(Do² − d²)',
    'F = π·d·L·µ·p, T = ½·π·d²·L·µ·p',
    'Δdi = 2·p·d²·di/(Ei·(d² − di²))',
    'ΔT = (δ + clearance)/(α·d)',
  ],
  sources: [{ key: 'shigley-9', where: 'section 3-16, press and shrink fits' }],
  example: {
    title: 'Ring 35 × 31 in a hub of 55 mm, 0.020 mm tight, seat 11 mm long',
    input: { diameter: 35, bore: 31, hubOutside: 55, interference: 0.02, length: 11 },
    expected: [
      { path: 'pressure', value: 11.0619, tolerance: 0.00006 },
      { path: 'hubHoop', value: 26.1184, tolerance: 0.00006 },
      { path: 'pushForce', value: 1605.5, tolerance: 0.06 },
      { path: 'slipTorque', value: 28.097, tolerance: 0.0006 },
      { path: 'boreShrink', value: 0.015449, tolerance: 6e-7 },
    ],
    source: derived('both thick rings solved together for their boundary values'),
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const bore = given.bore ?? (0 as Length);
  const hubOutside = given.hubOutside ?? (Number.POSITIVE_INFINITY as Length);
  if (bore >= given.diameter)
    return bad({ code: 'conflict', path: 'bore', reason: 'the bore is smaller than the seat' });
  if (hubOutside <= given.diameter)
    return bad({ code: 'conflict', path: 'hubOutside', reason: 'the hub is larger than the seat' });
  const fitInput: PressFitInput = {
    diameter: given.diameter,
    interference: given.interference,
    innerBore: bore,
    hubOutside,
    length: given.length,
    friction: given.friction ?? FRICTION,
    hub: materialOf(given.hub),
    inner: materialOf(given.inner),
  };
  const fit = pressFit(fitInput);
  const clearance = given.clearance ?? (0.00001 as Length);
  const expansion = given.hub?.expansion ?? STEEL.expansion;
  const result: Result = {
    ...fit,
    ...(given.hubYield === undefined ? {} : { hubFactor: given.hubYield / fit.hubEquivalent }),
    shrinkShare: fit.boreShrink / given.interference,
    heating: heatingForAssembly(given.interference, clearance, expansion, given.diameter),
  };
  return good({ result, figures: pressFitFigures(fitInput, fit, { id: 'pressFit', of: 'press fit' }) });
}

const materialOf = (given: Input['hub']) => ({
  elasticModulus: given?.E ?? STEEL.elasticModulus,
  poisson: given?.poisson ?? STEEL.poisson,
});
