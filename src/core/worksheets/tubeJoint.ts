import { z } from 'zod';
import type { Angle, Force, Outcome, Pressure, Torque } from '../quantity/index.ts';
import {
  angleField,
  bad,
  forceField,
  good,
  lengthField,
  pressureField,
  ratioField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import {
  type BraceJoint,
  braceFigures,
  braceInteraction,
  braceResistance,
  type ChordWall,
  chordPrestress,
  gapFactor,
  type OutsideRule,
  type PlateJoint,
  plateInteraction,
  plateJointFigures,
  plateResistance,
  wallRatio,
  weakest,
} from '../strength/index.ts';
import { oneOf } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const SIZE = { above: 0, max: 1000 };
const WALL = { above: 0, max: 100 };
const FORCE = { min: -1e8, max: 1e8 };
const TORQUE = { min: -1e7, max: 1e7 };

const input = z.strictObject({
  joint: oneOf('T or Y: one brace; X: another straight across; K: two on one side that balance each other.', [
    'T',
    'Y',
    'X',
    'K',
  ]).optional(),
  chord: z.strictObject({
    outside: lengthField('Outside diameter d0 of the tube that carries the joint.', SIZE),
    wall: lengthField('Its wall t0.', WALL),
    yield: pressureField('Its yield beside the weld.', { above: 0, max: 2000 }),
    push: pressureField('Largest push along it at the joint, of force and bending; left out: none.', {
      min: 0,
      max: 2000,
    }).optional(),
  }),
  brace: z
    .strictObject({
      outside: lengthField('Outside diameter d1 of the tube that is welded on.', SIZE),
      wall: lengthField('Its wall t1.', WALL),
      angle: angleField('θ between both center lines; left out: 90°.', { above: 0, max: 90 }).optional(),
    })
    .meta({ description: 'A tube welded all round; or a plate instead.' })
    .optional(),
  plate: z
    .strictObject({
      edge: oneOf('Edge along the tube or across it.', ['longitudinal', 'transverse']),
      length: lengthField('Length of its edge on the tube.', SIZE),
      thickness: lengthField('Thickness.', WALL),
    })
    .meta({ description: 'A flat plate welded edge on, instead of a brace.' })
    .optional(),
  gap: lengthField('Gap g between the toes of the braces of a K joint, negative where they overlap.', {
    min: -1000,
    max: 1000,
  }).optional(),
  normal: forceField('Force along the brace, or square to the tube.', FORCE).optional(),
  inPlane: torqueField(
    'Moment in the plane of brace and chord; for a plate, in its own plane.',
    TORQUE,
  ).optional(),
  outOfPlane: torqueField('Moment out of that plane; for a plate, about its edge.', TORQUE).optional(),
  factor: ratioField('Factor wanted against the rule; left out: 1.', { min: 1, max: 20 }).optional(),
});

const output = z.object({
  ratio: resultField('ratio', 'β: d1/d0, or length of the plate over d0.'),
  wallRatio: resultField('ratio', 'γ: d0/(2·t0).'),
  prestress: resultField('ratio', 'kp: what the push along the chord leaves.'),
  gapFactor: resultField('ratio', 'kg of a K joint.').optional(),
  normal: resultField('force', 'What the wall takes of force.'),
  inPlane: resultField('torque', 'Of moment in plane.'),
  outOfPlane: resultField('torque', 'Of moment out of plane.'),
  use: resultField('ratio', 'Interaction of all; over 1 is less than the factor wanted.'),
  share: resultField('ratio', 'Counted share of the rule: 0.85 outside its limits.'),
  outside: z.array(z.string()).meta({ description: 'Limits of the rules that are not kept.' }),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const tubeJointWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'tube-joint',
  title: 'Tube or plate welded to a tube',
  summary:
    'Whether the wall of a round tube stands a tube or a plate that is welded to it: its face may give way, or the part may shear out of it.',
  input,
  output,
  run,
  formulas: [
    'T, Y: NRd = γ^0.2·kp·fy0·t0²/sin θ·(2.8 + 14.2·β²); X: kp·fy0·t0²/sin θ·5.2/(1 − 0.81·β); K: kg·kp·fy0·t0²/sin θ·(1.8 + 10.2·β)',
    'punching: NRd = fy0/√3·t0·π·d1·(1 + sin θ)/(2·sin²θ)',
    'Mip,Rd = 4.85·kp·fy0·t0²·d1·√γ·β/sin θ; Mop,Rd = kp·fy0·t0²·d1/sin θ·2.7/(1 − 0.81·β)',
    'plate along: NRd = 5·kp·fy0·t0²·(1 + 0.25·l/d0), Mip = l·NRd; across: kp·fy0·t0²·(4 + 20·β²), Mop = 0.5·l·NRd',
    'use = N/NRd + (Mip/Mip,Rd)² + |Mop|/Mop,Rd',
    'kp = 1 − 0.3·n·(1 + n); kg = γ^0.2·(1 + 0.024·γ^1.2/(1 + e^(0.5·g/t0 − 1.33)))',
  ],
  sources: [
    { key: 'en-1993-1-8', where: 'tables 7.1 to 7.3 and 7.5; T, Y, X joints and moments from memory' },
    { key: 'tube-joint-guide', where: 'sections 2.1.1 and 5.1.6' },
    { key: 'tube-joint-sheets', where: 'K joints, kg' },
  ],
  example: {
    title: 'K joint of a 508 × 16 mm chord and a 114.3 × 6.3 mm brace, gap 11.3 mm',
    input: {
      joint: 'K',
      chord: { outside: 508, wall: 16, yield: 355 },
      brace: { outside: 114.3, wall: 6.3 },
      gap: 11.3,
    },
    expected: [
      // The sheet prints three decimals.
      { path: 'wallRatio', value: 15.875, tolerance: 0.0005 },
      { path: 'gapFactor', value: 2.575, tolerance: 0.0005 },
    ],
    source: { key: 'tube-joint-sheets', where: 'K joint of a 508 × 16 chord' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const { brace, plate, chord: stock } = given;
  if (stock.wall >= stock.outside / 2)
    return bad({ code: 'conflict', path: 'chord.wall', reason: 'the wall leaves no bore' });
  if (brace === undefined && plate === undefined)
    return bad({ code: 'missing', path: 'brace', wanted: 'what is welded to the tube: a brace or a plate' });
  if (brace !== undefined && plate !== undefined)
    return bad({ code: 'conflict', path: 'brace', reason: 'give a brace or a plate, not both' });
  const chord: ChordWall = { ...stock, push: stock.push ?? (0 as Pressure) };
  if (brace) return onBrace(given, chord, brace);
  return onPlate(given, chord, plate!);
}

const FORCE_0 = 0 as Force;
const TORQUE_0 = 0 as Torque;
const PART = { id: 'joint', of: 'welded tube' };

function onBrace(
  { joint = 'T', gap, normal, inPlane, outOfPlane, factor = 1 }: Input,
  chord: ChordWall,
  brace: NonNullable<Input['brace']>,
): Outcome<WorksheetRun<Result>> {
  if (brace.outside > chord.outside)
    return bad({ code: 'conflict', path: 'brace.outside', reason: 'the brace is wider than the chord' });
  if (brace.wall > brace.outside / 2)
    return bad({ code: 'conflict', path: 'brace.wall', reason: 'the wall is more than half the tube' });
  if (joint === 'K' && gap === undefined)
    return bad({ code: 'missing', path: 'gap', wanted: 'the gap between the braces of a K joint' });
  const angle = brace.angle ?? ((Math.PI / 2) as Angle);
  const of: BraceJoint = {
    kind: joint,
    chord,
    brace: { ...brace, angle },
    partialFactor: factor,
    ...(gap === undefined ? {} : { gap }),
  };
  const load = {
    normal: normal ?? FORCE_0,
    inPlane: inPlane ?? TORQUE_0,
    outOfPlane: outOfPlane ?? TORQUE_0,
  };
  const resistance = braceResistance(of);
  return good({
    result: {
      ratio: resistance.beta,
      wallRatio: resistance.gamma,
      prestress: resistance.prestress,
      ...(joint === 'K' && gap !== undefined ? { gapFactor: gapFactor(chord, gap) } : {}),
      normal: weakest(resistance.normal),
      inPlane: weakest(resistance.inPlane),
      outOfPlane: weakest(resistance.outOfPlane),
      use: braceInteraction(resistance, load),
      share: resistance.share,
      outside: inWords(resistance.outside),
    },
    figures: braceFigures(of, resistance, load, PART),
  });
}

function onPlate(
  { joint = 'T', normal, inPlane, outOfPlane, factor = 1 }: Input,
  chord: ChordWall,
  { edge, length, thickness }: NonNullable<Input['plate']>,
): Outcome<WorksheetRun<Result>> {
  const of: PlateJoint = {
    kind: edge,
    isCross: joint === 'X',
    chord,
    length,
    thickness,
    partialFactor: factor,
  };
  const load = {
    normal: normal ?? FORCE_0,
    alongEdge: inPlane ?? TORQUE_0,
    aboutEdge: outOfPlane ?? TORQUE_0,
  };
  const resistance = plateResistance(of);
  const { face, punching } = plateInteraction(of, resistance, load);
  return good({
    result: {
      ratio: length / chord.outside,
      wallRatio: wallRatio(chord),
      prestress: chordPrestress(chord, factor),
      normal: resistance.normal,
      inPlane: resistance.alongEdge,
      outOfPlane: resistance.aboutEdge,
      use: Math.max(face, punching),
      share: resistance.share,
      outside: inWords(resistance.outside),
    },
    figures: plateJointFigures(of, load, PART),
  });
}

const inWords = (outside: readonly OutsideRule[]): string[] => outside.map(({ what }) => what);
