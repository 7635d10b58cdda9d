import { z } from 'zod';
import type { Force, Length, Outcome, Pressure, Torque } from '../quantity/index.ts';
import {
  bad,
  countField,
  forceField,
  good,
  lengthField,
  pressureField,
  ratioField,
  resultField,
  torqueField,
} from '../quantity/index.ts';
import {
  type BoltClass,
  boltClass,
  clearanceHole,
  findThread,
  slipHoles,
  type Thread,
} from '../standards/index.ts';
import {
  boltFigures,
  boltStiffness,
  gripStiffness,
  groupForces,
  plateBearing,
  preloadOfTorque,
  shearYieldShare,
  slipLoad,
  tensionJoint,
  threadEngagement,
  torqueForPreload,
} from '../strength/index.ts';
import { atPath } from './atPath.ts';
import { oneOf, pair } from './tuples.ts';
import type { Worksheet, WorksheetRun } from './worksheet.ts';

const STEEL = 207e9 as Pressure;
const FORCE = { min: -1e7, max: 1e7 };
const PLACE = { min: -10_000, max: 10_000 };
const point = (doc: string) => pair(doc, lengthField('Along x.', PLACE), lengthField('Along y.', PLACE));

const input = z.strictObject({
  thread: z.string().max(20).meta({ description: 'Thread, for example M8, M10x1.25, 5/16-18.' }),
  boltClass: z.string().max(20).meta({ description: 'Property class or grade: 8.8, 10.9, grade 5.' }),
  count: countField('Number of bolts; left out: 1, or those of the pattern.', {
    min: 1,
    max: 100,
  }).optional(),
  torque: torqueField('Tightening torque; instead of proofShare.', { above: 0, max: 1e5 }).optional(),
  proofShare: ratioField('Preload as a share of the proof load; left out: 0.75.', {
    above: 0,
    max: 1,
  }).optional(),
  torqueFactor: ratioField('K in T = K·F·d; left out: 0.2, zinc-plated.', { min: 0.05, max: 0.6 }).optional(),
  shear: forceField('Force across the joint, all bolts; instead of pattern.', {
    min: 0,
    max: 1e7,
  }).optional(),
  pattern: z
    .strictObject({
      bolts: z
        .array(point('Place of a bolt in the plane of the joint.'))
        .min(1)
        .max(100)
        .meta({ description: 'Places of the bolts.' }),
      force: pair('Force across the joint.', forceField('Along x.', FORCE), forceField('Along y.', FORCE)),
      at: point('Where the force acts.'),
    })
    .meta({ description: 'Force off the center of the bolts; instead of shear and count.' })
    .optional(),
  pull: forceField('Force that pulls the joint apart, all bolts evenly.', { min: 0, max: 1e7 }).optional(),
  faces: countField('Faces in friction, also shear planes; left out: 1.', { min: 1, max: 6 }).optional(),
  friction: ratioField('µ of the clamped faces; left out: 0.15.', { above: 0, max: 1 }).optional(),
  hole: oneOf(
    'Shape of the holes for slip; a chain pull along the slot is long-slot-along. Left out: normal.',
    slipHoles.map(({ name }) => name),
  ).optional(),
  jointConstant: ratioField('C, share of the pull that the bolt feels; left out: from grip, else 0.3.', {
    min: 0,
    max: 1,
  }).optional(),
  grip: lengthField('Thickness clamped, steel; for the joint constant.', { above: 0, max: 1000 }).optional(),
  plate: z
    .strictObject({
      thickness: lengthField('Of the thinnest plate.', { above: 0, max: 200 }),
      edge: lengthField('Hole center to the edge, along the load.', { above: 0, max: 1000 }),
      yield: pressureField('Sy of the plate.', { above: 0, max: 5000 }),
      hole: lengthField('Hole; left out: normal clearance hole.', { above: 0, max: 200 }).optional(),
    })
    .meta({ description: 'For bearing and tear-out once the bolts bear.' })
    .optional(),
  nutTensile: pressureField('Sut of what the thread is tapped in, for the engagement.', {
    above: 0,
    max: 5000,
  }).optional(),
});

const output = z.object({
  stressArea: resultField('area', 'Tensile stress area of the thread.'),
  proofLoad: resultField('force', 'Proof load of one bolt.'),
  preload: resultField('force', 'Preload of one bolt.'),
  proofShare: resultField('ratio', 'Preload over proof load; above 1 the torque is too high.'),
  torque: resultField('torque', 'Tightening torque.'),
  clamp: resultField('force', 'What clamps the faces of one bolt with the pull on.'),
  separationFactor: resultField('ratio', 'Pull at which the faces part, over the pull.').optional(),
  boltStress: resultField('pressure', 'Pull in one bolt over the stress area.'),
  boltFactor: resultField('ratio', 'Proof strength over that.'),
  slipLoad: resultField('force', 'Force across at which the joint slips, all bolts.'),
  slipFactor: resultField(
    'ratio',
    'Slip load over force; with a pattern, of the hardest-loaded bolt.',
  ).optional(),
  boltForces: z
    .array(pair('Force on a bolt.', resultField('force', 'Along x.'), resultField('force', 'Along y.')))
    .meta({ description: 'With a pattern: force across on each bolt.' })
    .optional(),
  shearStress: resultField(
    'pressure',
    'Shear in the thread of the hardest-loaded bolt if it slips.',
  ).optional(),
  shearFactor: resultField('ratio', '0.577·Sy over that.').optional(),
  bearingFactor: resultField('ratio', 'Plate yield over bearing pressure.').optional(),
  tearOutFactor: resultField('ratio', '0.577 of plate yield over tear-out shear.').optional(),
  engagement: resultField('length', 'Thread length for the bolt to break before a thread strips.').optional(),
});

type Input = z.output<typeof input>;
type Result = z.output<typeof output>;

export const boltJointWorksheet: Worksheet<typeof input, typeof output> = {
  id: 'bolt-joint',
  title: 'Bolted joint',
  summary:
    'Preload and torque, slip (slots included), separation, shear, bearing, tear-out and thread engagement of a joint, with the force off center if need be.',
  input,
  output,
  run,
  formulas: [
    'At = π/4·(d − 0.938194·p)² metric, π/4·(d − 0.974279·p)² inch',
    'T = K·Fi·d',
    'Fs = ks·µ·m·Σ(Fi − (1 − C)·P)',
    'σ = (Fi + C·P)/At, n0 = Fi/(P·(1 − C))',
    'F = F/n + M·r/Σr²',
    'τ = F/(m·At), σ = F/(d·t), τ = F/(2·t·(e − d0/2))',
  ],
  sources: [
    { key: 'iso-898-1', where: 'property classes' },
    { key: 'sae-j429', where: 'grades' },
    { key: 'shigley-9', where: 'chapter 8' },
    { key: 'en-1993-1-8', where: 'table 3.6 and section 3.9; from memory' },
  ],
  example: {
    title: 'Four M8 of class 8.8 at 0.75 of proof, µ 0.15',
    input: { thread: 'M8', boltClass: '8.8', count: 4, shear: 5000 },
    expected: [
      { path: 'stressArea', value: 36.6, tolerance: 0.05 },
      { path: 'proofLoad', value: 21_200, tolerance: 50 },
      { path: 'torque', value: 25.48, tolerance: 0.006 },
      { path: 'slipLoad', value: 9554.83, tolerance: 0.06 },
    ],
    source: { key: 'iso-898-1', where: 'stress area and proof load tables, reprint; slip derived' },
  },
};

function run(given: Input): Outcome<WorksheetRun<Result>> {
  const bolt = boltOf(given);
  if (!bolt.ok) return bolt;
  const loads = loadsOf(given);
  if (!loads.ok) return loads;
  if (given.torque !== undefined && given.proofShare !== undefined)
    return bad({
      code: 'conflict',
      path: 'proofShare',
      reason: 'torque and proofShare are both given; one follows from the other, give one',
    });
  const clamped = clampOf(given, bolt.value, loads.value);
  const plate = plateOf(given, loads.value, bolt.value.thread.major);
  if (!plate.ok) return plate;
  const { slip, tension, preload, torque } = clamped;
  const result: Result = {
    stressArea: bolt.value.thread.stressArea,
    proofLoad: clamped.proofLoad,
    preload,
    proofShare: preload / clamped.proofLoad,
    torque,
    clamp: tension.clamp,
    ...(Number.isFinite(tension.separationFactor) ? { separationFactor: tension.separationFactor } : {}),
    boltStress: tension.boltStress,
    boltFactor: tension.yieldFactor,
    slipLoad: slip.load,
    ...shearOf(given, bolt.value, loads.value, slip.load),
    ...plate.value,
    ...engagementOf(given, bolt.value),
  };
  const figures = boltFigures(
    {
      diameter: bolt.value.thread.major,
      stressArea: bolt.value.thread.stressArea,
      proof: bolt.value.strength.proof,
      preload,
      torque,
      torqueFactor: clamped.torqueFactor,
      slip,
    },
    { id: 'boltJoint', of: 'bolted joint' },
  );
  return good({ result, figures });
}

interface Bolt {
  readonly thread: Thread;
  readonly strength: BoltClass;
}

interface Loads {
  readonly count: number;
  /** Force across on each bolt of a pattern. */
  readonly each: readonly (readonly [number, number])[] | undefined;
  /** Largest force across on one bolt [N]. */
  readonly largest: Force;
}

function boltOf(given: Input): Outcome<Bolt> {
  const thread = atPath(findThread(given.thread), 'thread');
  if (!thread.ok) return thread;
  const strength = atPath(boltClass(given.boltClass, thread.value.major), 'boltClass');
  return strength.ok ? good({ thread: thread.value, strength: strength.value }) : strength;
}

function loadsOf({ pattern, count, shear }: Input): Outcome<Loads> {
  if (pattern === undefined) {
    const n = count ?? 1;
    return good({ count: n, each: undefined, largest: ((shear ?? 0) / n) as Force });
  }
  if (count !== undefined || shear !== undefined) {
    const reason = 'pattern holds the bolts and the force itself; give it or count and shear';
    return bad({ code: 'conflict', path: 'pattern', reason });
  }
  const each = groupForces(pattern.bolts, pattern.force, pattern.at);
  const largest = Math.max(...each.map(([x, y]) => Math.hypot(x, y)));
  const isTurned = pattern.bolts.every(([x, y]) => x === pattern.bolts[0]![0] && y === pattern.bolts[0]![1]);
  const [bx, by] = pattern.bolts[0]!;
  const moment = (pattern.at[0] - bx) * pattern.force[1] - (pattern.at[1] - by) * pattern.force[0];
  if (isTurned && Math.abs(moment) > 1e-9 * Math.hypot(...pattern.force)) {
    const reason = 'bolts at one place do not resist a force that passes beside them';
    return bad({ code: 'conflict', path: 'pattern.bolts', reason });
  }
  return good({ count: each.length, each, largest: largest as Force });
}

function clampOf(given: Input, { thread, strength }: Bolt, { count }: Loads) {
  const proofLoad = (strength.proof * thread.stressArea) as Force;
  const torqueFactor = given.torqueFactor ?? 0.2;
  const preload =
    given.torque === undefined
      ? (((given.proofShare ?? 0.75) * proofLoad) as Force)
      : preloadOfTorque(given.torque, torqueFactor, thread.major);
  const torque: Torque = given.torque ?? torqueForPreload(preload, torqueFactor, thread.major);
  const tension = tensionJoint({
    preload,
    load: ((given.pull ?? 0) / count) as Force,
    jointConstant: given.jointConstant ?? constantOf(given.grip, thread),
    stressArea: thread.stressArea,
    proof: strength.proof,
  });
  const of = {
    clamp: (tension.clamp * count) as Force,
    friction: given.friction ?? 0.15,
    faces: given.faces ?? 1,
    holeFactor: slipHoles.find(({ name }) => name === (given.hole ?? 'normal'))!.value,
  };
  return { proofLoad, torqueFactor, preload, torque, tension, slip: { ...of, load: slipLoad(of) } };
}

/** Usual share of a steel joint where the grip is not told. */
const USUAL_CONSTANT = 0.3;

/** Bolt threaded over the whole grip, as short ones are. */
function constantOf(grip: Length | undefined, thread: Thread): number {
  if (grip === undefined) return USUAL_CONSTANT;
  const bolt = boltStiffness({
    elasticModulus: STEEL,
    diameter: thread.major,
    stressArea: thread.stressArea,
    shank: 0 as Length,
    thread: grip,
  });
  return bolt / (bolt + gripStiffness(STEEL, thread.major, grip));
}

function shearOf(given: Input, { thread, strength }: Bolt, loads: Loads, slipForce: Force) {
  const forces =
    loads.each === undefined ? {} : { boltForces: loads.each.map(([x, y]): [number, number] => [x, y]) };
  if (loads.largest === 0) return forces;
  const shearStress = loads.largest / ((given.faces ?? 1) * thread.stressArea);
  return {
    ...forces,
    slipFactor: slipForce / loads.count / loads.largest,
    shearStress,
    shearFactor: (shearYieldShare('distortion-energy') * strength.yield) / shearStress,
  };
}

function plateOf(
  given: Input,
  { largest }: Loads,
  diameter: Length,
): Outcome<Pick<Result, 'bearingFactor' | 'tearOutFactor'>> {
  const { plate } = given;
  if (plate === undefined || largest === 0) return good({});
  const hole = plate.hole === undefined ? holeOf(given.thread) : good(plate.hole);
  if (!hole.ok) return hole;
  if (hole.value < diameter)
    return bad({ code: 'conflict', path: 'plate.hole', reason: 'the hole is smaller than the bolt' });
  if (plate.edge <= hole.value / 2)
    return bad({ code: 'conflict', path: 'plate.edge', reason: 'the hole runs out of the edge' });
  const stress = plateBearing({
    load: largest,
    diameter,
    hole: hole.value,
    thickness: plate.thickness,
    edge: plate.edge,
  });
  return good({
    bearingFactor: plate.yield / stress.bearing,
    tearOutFactor: (shearYieldShare('distortion-energy') * plate.yield) / stress.tearOut,
  });
}

function holeOf(thread: string): Outcome<Length> {
  const hole = atPath(clearanceHole(thread), 'plate.hole');
  return hole.ok ? good(hole.value.diameter) : hole;
}

function engagementOf({ nutTensile }: Input, { thread, strength }: Bolt) {
  if (nutTensile === undefined) return {};
  const { major, pitch, stressArea } = thread;
  const found = threadEngagement({
    major,
    pitch,
    stressArea,
    boltTensile: strength.tensile,
    nutTensile,
  });
  return { engagement: found.needed };
}
