import { z } from 'zod';
import { bad, good, type Issue, type Outcome, resultField } from '../quantity/index.ts';
import {
  type Asymmetry,
  eigenvaluesOver,
  type Handling,
  handlingFigures,
  handlingOf,
  type Matrix2,
  WHIPPLE_LIMITS,
  type WhippleParameters,
  whippleFromBuild,
  whippleIssues,
} from '../ride/index.ts';
import { placedBuild } from './placedBuild.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

/** Plain numbers under their published names, in SI and radians, so that a published set can be typed as it stands. */
const number = (doc: string, unit: string) =>
  z.number().min(-1e6).max(1e6).meta({ description: doc, unit }).optional();

const parameterFields = {
  w: number('Wheelbase.', 'm'),
  c: number('Trail on the ground.', 'm'),
  lam: number('Steering axis from vertical.', 'rad'),
  g: number('Gravity.', 'm/s²'),
  rR: number('Rear wheel radius.', 'm'),
  mR: number('Rear wheel mass.', 'kg'),
  IRxx: number('Rear wheel, across its axle.', 'kg·m²'),
  IRyy: number('Rear wheel, spin.', 'kg·m²'),
  xB: number('Rear body with rider: center ahead of the rear contact.', 'm'),
  zB: number('Rear body with rider: center, downward positive; below 0 for a body above the ground.', 'm'),
  mB: number('Rear body with rider: mass.', 'kg'),
  IBxx: number('Rear body with rider.', 'kg·m²'),
  IBzz: number('Rear body with rider.', 'kg·m²'),
  IBxz: number('Rear body with rider, tensor entry −∫ x·z dm with z downward.', 'kg·m²'),
  xH: number('Fork and bars: center ahead of the rear contact.', 'm'),
  zH: number('Fork and bars: center, downward positive.', 'm'),
  mH: number('Fork and bars: mass.', 'kg'),
  IHxx: number('Fork and bars.', 'kg·m²'),
  IHzz: number('Fork and bars.', 'kg·m²'),
  IHxz: number('Fork and bars, tensor entry with z downward.', 'kg·m²'),
  rF: number('Front wheel radius.', 'm'),
  mF: number('Front wheel mass.', 'kg'),
  IFxx: number('Front wheel, across its axle.', 'kg·m²'),
  IFyy: number('Front wheel, spin.', 'kg·m²'),
};
const NAMES = Object.keys(parameterFields) as (keyof typeof parameterFields)[];

const input = z.strictObject({
  ...parameterFields,
  IByy: number('Taken and not used: it does not enter the equations.', 'kg·m²'),
  IHyy: number('Taken and not used: it does not enter the equations.', 'kg·m²'),
  gearedSpin: number('Σ J·κ of rotors that turn κ times the road speed, with the wheels positive.', 'kg·m'),
  speeds: z
    .array(z.number().min(0).max(1000))
    .max(5000)
    .meta({ description: 'Speeds for the eigenvalues [m/s]; left out: 0 to 10 by 1.' })
    .optional(),
  build: z
    .record(z.string(), z.unknown())
    .meta({
      description:
        'A build file, in place of the parameters; they are then worked out, as measured, and given back.',
    })
    .optional(),
});

const plain = (doc: string) => z.number().meta({ description: doc });
const matrix = (doc: string) => z.array(z.array(z.number())).meta({ description: doc });
const range = z.object({
  from: resultField('speed', 'Lower end.'),
  to: resultField('speed', 'Upper end; absent: none.').optional(),
});

const output = z.object({
  M: matrix('Mass matrix [kg·m²], rows lean and steer.'),
  C1: matrix('Damping-like matrix per speed [kg·m].'),
  K0: matrix('Stiffness per gravity [kg·m].'),
  K2: matrix('Stiffness per speed squared [kg].'),
  speeds: z.array(z.number()).meta({ description: 'Speeds of the eigenvalues [m/s].' }),
  eigenvalues: z.array(z.array(z.array(z.number()))).meta({
    description: 'A speed: four pairs [Re, Im] [1/s], by falling real part, then falling imaginary part.',
  }),
  weaveSpeed: resultField(
    'speed',
    'Lowest speed at which an oscillation stops growing; absent: none.',
  ).optional(),
  capsizeSpeed: resultField(
    'speed',
    'Speed above which it slowly falls into a turn; absent: none.',
  ).optional(),
  doubleRootSpeed: resultField(
    'speed',
    'Speed at which falling over becomes an oscillation; absent: none.',
  ).optional(),
  doubleRoot: plain('The root there [1/s].').optional(),
  selfStable: z
    .array(range)
    .meta({ description: 'Speeds at which every disturbance dies away, no hands on the bars.' }),
  changes: z
    .array(
      z.object({
        id: z.string(),
        change: z.string(),
        weave: resultField('speed', 'Weave speed with the change.').optional(),
        capsize: resultField('speed', 'Capsize speed with the change.').optional(),
        selfStable: range.optional(),
      }),
    )
    .meta({
      description: 'How trail, head angle and the placing of mass move the speeds, one change at a time.',
    }),
  limits: z.array(z.string()).meta({ description: 'What the model leaves out.' }),
  parameters: z
    .object(Object.fromEntries(NAMES.map((name) => [name, z.number()])))
    .meta({ description: 'With a build: the parameters worked out, in SI and radians.' })
    .optional(),
  asymmetry: z
    .object({
      y: plain('Center of mass left of the center plane [m].'),
      frontY: plain('Center of the front assembly left of the center plane [m].'),
      Ixy: plain('Product of inertia [kg·m²].'),
      Iyz: plain('Product of inertia [kg·m²].'),
    })
    .meta({ description: 'With a build: what the model leaves out of a bike whose sides differ.' })
    .optional(),
});

type Given = z.output<typeof input>;
type Result = z.output<typeof output>;

const DEFAULT_SPEEDS = Array.from({ length: 11 }, (_, k) => k);

export const handlingWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'handling',
  title: 'Steering stability of a two-wheeler, hands off',
  summary:
    'Mass, damping and stiffness matrices of the linearized bicycle equations, eigenvalues over speed, weave and capsize speed, and how trail, head angle and mass placing move them. It compares designs; it is no statement that a machine may be ridden.',
  input,
  output,
  run: (given): Outcome<WorksheetRun<Result>> => {
    const asked = parametersOf(given);
    if (!asked.ok) return asked;
    const { parameters, asymmetry } = asked.value;
    const issues = whippleIssues(parameters);
    const [first, ...more] = issues;
    if (first) return bad(first, ...more);
    const handling = handlingOf(parameters, given.gearedSpin ?? 0);
    const result = {
      ...resultOf(handling, given.speeds ?? DEFAULT_SPEEDS),
      ...(given.build ? { parameters: { ...parameters } } : {}),
      ...(asymmetry ? { asymmetry: { ...asymmetry } } : {}),
    };
    return good({ result, figures: handlingFigures(handling, asymmetry) });
  },
  formulas: [
    'M·q″ + v·C1·q′ + (g·K0 + v²·K2)·q = 0, q = (lean, steer)',
    'μ = c·cos λ/w; uA = (xA − w − c)·cos λ − zA·sin λ; SA = mA·uA + μ·mT·xT',
    'M = [ITxx, IAλx + μ·ITxz; ·, IAλλ + 2·μ·IAλz + μ²·ITzz]',
    'K0 = [mT·zT, −SA; −SA, −SA·sin λ]',
    'K2 = [0, (ST − mT·zT)·cos λ/w; 0, (SA + SF·sin λ)·cos λ/w]',
    'C1 = [0, μ·ST + SF·cos λ + ITxz·cos λ/w − μ·mT·zT; −(μ·ST + SF·cos λ), IAλz·cos λ/w + μ·(SA + ITzz·cos λ/w)]',
    'det(M·λ² + v·C1·λ + g·K0 + v²·K2) = a4·λ⁴ + a3·λ³ + a2·λ² + a1·λ + a0 = 0',
    'weave: a1·a2·a3 = a0·a3² + a4·a1²; capsize: a0 = 0',
  ],
  sources: [
    { key: 'whipple-2007', where: 'appendix A and table 2' },
    { key: 'derived', where: 'Routh-Hurwitz condition of a quartic' },
  ],
  example: {
    title: 'The published benchmark bicycle',
    input: {
      w: 1.02,
      c: 0.08,
      lam: Math.PI / 10,
      g: 9.81,
      rR: 0.3,
      mR: 2,
      IRxx: 0.0603,
      IRyy: 0.12,
      xB: 0.3,
      zB: -0.9,
      mB: 85,
      IBxx: 9.2,
      IBzz: 2.8,
      IBxz: 2.4,
      xH: 0.9,
      zH: -0.7,
      mH: 4,
      IHxx: 0.05892,
      IHzz: 0.00708,
      IHxz: -0.00756,
      rF: 0.35,
      mF: 3,
      IFxx: 0.1405,
      IFyy: 0.28,
      speeds: [5],
    },
    expected: [
      { path: 'M.0.0', value: 80.81722, tolerance: 1e-11 },
      { path: 'K2.0.1', value: 76.59734589573222, tolerance: 1e-11 },
      { path: 'weaveSpeed', value: 4.29238253634111, tolerance: 1e-11 },
      { path: 'capsizeSpeed', value: 6.02426201538837, tolerance: 1e-11 },
      { path: 'eigenvalues.0.0.0', value: -0.32286642900409, tolerance: 1e-11 },
    ],
    source: { key: 'whipple-2007', where: 'benchmark matrices and table 2' },
  },
};

interface Asked {
  readonly parameters: WhippleParameters;
  readonly asymmetry?: Asymmetry;
}

function parametersOf(given: Given): Outcome<Asked> {
  const typed = NAMES.filter((name) => given[name] !== undefined);
  if (given.build) {
    if (typed.length > 0)
      return bad({
        code: 'conflict',
        path: typed[0]!,
        reason: 'give either the parameters or a build, not both',
      });
    const placed = placedBuild(given.build);
    if (!placed.ok) return placed;
    const { bike, masses } = placed.value;
    return whippleFromBuild({ layout: bike.layout, masses });
  }
  const missing = NAMES.filter((name) => given[name] === undefined).map(
    (name): Issue => ({
      code: 'missing',
      path: name,
      wanted: 'a number in SI, or a build in place of all of them',
    }),
  );
  const [first, ...more] = missing;
  if (first) return bad(first, ...more);
  return good({
    parameters: Object.fromEntries(NAMES.map((name) => [name, given[name]])) as unknown as WhippleParameters,
  });
}

function resultOf(handling: Handling, speeds: readonly number[]): Result {
  const { matrices, speeds: found, changes } = handling;
  const rows = (m: Matrix2): number[][] => m.map((row) => [...row]);
  return {
    M: rows(matrices.M),
    C1: rows(matrices.C1),
    K0: rows(matrices.K0),
    K2: rows(matrices.K2),
    speeds: [...speeds],
    eigenvalues: eigenvaluesOver(matrices, speeds).map(({ eigenvalues }) =>
      eigenvalues.map((pair) => [...pair]),
    ),
    ...(found.weave === undefined ? {} : { weaveSpeed: found.weave }),
    ...(found.capsize === undefined ? {} : { capsizeSpeed: found.capsize }),
    ...(found.doubleRoot
      ? { doubleRootSpeed: found.doubleRoot.speed, doubleRoot: found.doubleRoot.root }
      : {}),
    selfStable: found.selfStable.map((one) => ({ ...one })),
    changes: changes.map(({ selfStable, ...row }) => ({
      ...row,
      ...(selfStable ? { selfStable: { ...selfStable } } : {}),
    })),
    limits: [...WHIPPLE_LIMITS],
  };
}
