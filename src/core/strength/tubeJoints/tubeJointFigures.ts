import type { Figure } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import {
  type BraceJoint,
  type BraceLoad,
  type BraceResistance,
  braceInteraction,
  type FaceAndPunching,
} from './braceJoint.ts';
import { type ChordWall, gapFactor, steelFactor, TUBE_JOINT_FACTOR } from './chordWall.ts';
import {
  type PlateJoint,
  type PlateLoad,
  type PlateResistance,
  plateInteraction,
  plateResistance,
} from './plateJoint.ts';

const SOURCE = { key: 'en-1993-1-8', where: 'tables 7.2 and 7.5, expression 7.3' };
const PLATE_SOURCE = { key: 'en-1993-1-8', where: 'table 7.3' };

type Inputs = Working['inputs'];

/** The chord, and s: what counts of the rule outside its limits and over 355 MPa, by the factor wanted [-]. */
const chordInputs = (chord: ChordWall, share: number, partialFactor = TUBE_JOINT_FACTOR): Inputs => ({
  d0: [chord.outside, 'length'],
  t0: [chord.wall, 'length'],
  fy0: [chord.yield, 'pressure'],
  s: [(share * steelFactor(chord.yield)) / partialFactor, 'ratio'],
});

/** The working of a brace on its chord. */
export function braceFigures(
  joint: BraceJoint,
  resistance: BraceResistance,
  load: BraceLoad,
  names: PartNames,
): readonly Figure[] {
  const { chord, brace, kind, gap, partialFactor } = joint;
  const { beta, gamma, prestress, share } = resistance;
  const inputs: Inputs = {
    ...chordInputs(chord, share, partialFactor),
    d1: [brace.outside, 'length'],
    θ: [brace.angle, 'angle'],
    β: [beta, 'ratio'],
    γ: [gamma, 'ratio'],
    kp: [prestress, 'ratio'],
    ...(kind === 'K' && gap !== undefined ? { kg: [gapFactor(chord, gap), 'ratio'] as const } : {}),
  };
  const { normal, inPlane, outOfPlane } = resistance;
  return figuresOf(names, [
    ...faceAndPunching({ id: 'normal', symbol: 'NRd', kind: 'force', inputs }, normal, [
      FACES[kind],
      'NRd = s·fy0/√3·t0·π·d1·(1 + sin θ)/(2·sin²θ)',
    ]),
    ...faceAndPunching({ id: 'inPlane', symbol: 'Mip,Rd', kind: 'torque', inputs }, inPlane, [
      'Mip,Rd = s·4.85·kp·fy0·t0²·d1·√γ·β/sin θ',
      'Mip,Rd = s·fy0·t0·d1²/√3·(1 + 3·sin θ)/(4·sin²θ)',
    ]),
    ...faceAndPunching({ id: 'outOfPlane', symbol: 'Mop,Rd', kind: 'torque', inputs }, outOfPlane, [
      'Mop,Rd = s·kp·fy0·t0²·d1/sin θ·2.7/(1 − 0.81·β)',
      'Mop,Rd = s·fy0·t0·d1²/√3·(3 + sin θ)/(4·sin²θ)',
    ]),
    {
      id: 'interaction',
      symbol: 'U',
      name: 'use of the wall',
      value: braceInteraction(resistance, load),
      kind: 'ratio',
      formula: 'U = N/NRd + (Mip/Mip,Rd)² + |Mop|/Mop,Rd',
      inputs: {
        N: [load.normal, 'force'],
        Mip: [load.inPlane, 'torque'],
        Mop: [load.outOfPlane, 'torque'],
      },
      source: SOURCE,
    },
  ]);
}

const FACES: Readonly<Record<BraceJoint['kind'], string>> = {
  T: 'NRd = s·γ^0.2·kp·fy0·t0²/sin θ·(2.8 + 14.2·β²)',
  Y: 'NRd = s·γ^0.2·kp·fy0·t0²/sin θ·(2.8 + 14.2·β²)',
  X: 'NRd = s·kp·fy0·t0²/sin θ·5.2/(1 − 0.81·β)',
  K: 'NRd = s·kg·kp·fy0·t0²/sin θ·(1.8 + 10.2·β)',
};

/** Both limits of one kind of load; where nothing is left to punch through there is no second. */
function faceAndPunching(
  of: Pick<Working, 'id' | 'symbol' | 'kind' | 'inputs'>,
  value: FaceAndPunching,
  [face, punching]: readonly [face: string, punching: string],
): readonly Working[] {
  const one = (way: 'face' | 'punching', limit: number, formula: string): Working => ({
    ...of,
    id: `${of.id}.${way}`,
    name: `${way} of the wall`,
    value: limit,
    formula,
    source: SOURCE,
  });
  return [
    one('face', value.face, face),
    ...(value.punching === undefined ? [] : [one('punching', value.punching, punching)]),
  ];
}

/** The working of a plate on a tube. */
export function plateJointFigures(joint: PlateJoint, load: PlateLoad, names: PartNames): readonly Figure[] {
  const resistance = plateResistance(joint);
  const inputs: Inputs = {
    ...chordInputs(joint.chord, resistance.share, joint.partialFactor),
    l: [joint.length, 'length'],
    t1: [joint.thickness, 'length'],
    kp: [resistance.prestress, 'ratio'],
  };
  return figuresOf(names, [
    {
      id: 'normal',
      symbol: 'NRd',
      name: 'face of the wall',
      value: resistance.normal,
      kind: 'force',
      formula: plateFace(joint),
      inputs,
      source: PLATE_SOURCE,
    },
    ...plateUse(joint, resistance, load, inputs),
  ]);
}

function plateFace({ kind, isCross }: PlateJoint): string {
  if (kind === 'longitudinal') return 'NRd = s·5·kp·fy0·t0²·(1 + 0.25·l/d0)';
  return isCross
    ? 'NRd = s·kp·fy0·t0²·5/(1 − 0.81·β), β = l/d0 ≤ 1'
    : 'NRd = s·kp·fy0·t0²·(4 + 20·β²), β = l/d0 ≤ 1';
}

function plateUse(
  joint: PlateJoint,
  resistance: PlateResistance,
  load: PlateLoad,
  inputs: Inputs,
): readonly Working[] {
  const { face, punching } = plateInteraction(joint, resistance, load);
  const loads: Inputs = { N: [load.normal, 'force'], M: [load.alongEdge, 'torque'] };
  return [
    {
      id: 'face',
      symbol: 'U',
      name: 'use of the face',
      value: face,
      kind: 'ratio',
      formula:
        joint.kind === 'longitudinal'
          ? 'U = N/NRd + (M/(l·NRd))² + |M′|/(0.5·t1·NRd)'
          : 'U = N/NRd + |M|/(0.5·l·NRd) + (M′/(0.5·t1·NRd))²',
      inputs: { ...loads, 'M′': [load.aboutEdge, 'torque'] },
      source: PLATE_SOURCE,
    },
    {
      id: 'punching',
      symbol: 'U',
      name: 'use in punching shear',
      value: punching,
      kind: 'ratio',
      formula: 'U = (N/l + 6·M/l²)/(s·2·t0·fy0/√3)',
      inputs: { ...loads, ...inputs },
      source: { key: 'tube-joint-guide', where: 'section 5.1.6' },
    },
  ];
}
