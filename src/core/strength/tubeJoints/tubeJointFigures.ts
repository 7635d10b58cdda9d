import type { Figure } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import {
  type BraceJoint,
  type BraceLoad,
  type BraceResistance,
  braceInteraction,
  type FaceAndPunching,
} from './braceJoint.ts';
import {
  type PlateJoint,
  type PlateLoad,
  type PlateResistance,
  plateInteraction,
  plateResistance,
} from './plateJoint.ts';

const SOURCE = { key: 'en-1993-1-8', where: 'tables 7.2 and 7.5, expression 7.3' };
const PLATE_SOURCE = { key: 'en-1993-1-8', where: 'table 7.3' };

/** The working of a brace on its chord. */
export function braceFigures(
  { chord, brace, kind }: BraceJoint,
  resistance: BraceResistance,
  load: BraceLoad,
  names: PartNames,
): readonly Figure[] {
  const { beta, gamma, prestress, share } = resistance;
  const common: Working['inputs'] = {
    d0: [chord.outside, 'length'],
    t0: [chord.wall, 'length'],
    fy0: [chord.yield, 'pressure'],
    d1: [brace.outside, 'length'],
    θ: [brace.angle, 'angle'],
    β: [beta, 'ratio'],
    γ: [gamma, 'ratio'],
    kp: [prestress, 'ratio'],
    'share outside the limits': [share, 'ratio'],
  };
  const both = (
    id: string,
    value: FaceAndPunching,
    formulas: readonly [symbol: string, face: string, punching: string],
    unit: 'force' | 'torque',
  ): Working[] => {
    const [symbol, face, punching] = formulas;
    const one = (way: 'face' | 'punching', formula: string): Working[] =>
      value[way] === undefined
        ? []
        : [
            {
              id: `${id}.${way}`,
              symbol,
              name: `${way} of the wall`,
              value: value[way],
              kind: unit,
              formula,
              inputs: common,
              source: SOURCE,
            },
          ];
    return [...one('face', face), ...one('punching', punching)];
  };
  return figuresOf(names, [
    ...both(
      'normal',
      resistance.normal,
      ['NRd', FACES[kind], 'NRd = fy0/√3·t0·π·d1·(1 + sin θ)/(2·sin²θ)'],
      'force',
    ),
    ...both(
      'inPlane',
      resistance.inPlane,
      ['Mip,Rd', 'Mip,Rd = 4.85·kp·fy0·t0²·d1·√γ·β/sin θ', 'Mip,Rd = fy0·t0·d1²/√3·(1 + 3·sin θ)/(4·sin²θ)'],
      'torque',
    ),
    ...both(
      'outOfPlane',
      resistance.outOfPlane,
      [
        'Mop,Rd',
        'Mop,Rd = kp·fy0·t0²·d1/sin θ·2.7/(1 − 0.81·β)',
        'Mop,Rd = fy0·t0·d1²/√3·(3 + sin θ)/(4·sin²θ)',
      ],
      'torque',
    ),
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
  T: 'NRd = γ^0.2·kp·fy0·t0²/sin θ·(2.8 + 14.2·β²)',
  Y: 'NRd = γ^0.2·kp·fy0·t0²/sin θ·(2.8 + 14.2·β²)',
  X: 'NRd = kp·fy0·t0²/sin θ·5.2/(1 − 0.81·β)',
  K: 'NRd = kg·kp·fy0·t0²/sin θ·(1.8 + 10.2·β)',
};

/** The working of a plate on a tube. */
export function plateJointFigures(joint: PlateJoint, load: PlateLoad, names: PartNames): readonly Figure[] {
  const resistance: PlateResistance = plateResistance(joint);
  const { face, punching } = plateInteraction(joint, resistance, load);
  const inputs: Working['inputs'] = {
    d0: [joint.chord.outside, 'length'],
    t0: [joint.chord.wall, 'length'],
    fy0: [joint.chord.yield, 'pressure'],
    l: [joint.length, 'length'],
    t1: [joint.thickness, 'length'],
    kp: [resistance.prestress, 'ratio'],
    'share outside the limits': [resistance.share, 'ratio'],
  };
  const isLong = joint.kind === 'longitudinal';
  return figuresOf(names, [
    {
      id: 'normal',
      symbol: 'NRd',
      name: 'face of the wall',
      value: resistance.normal,
      kind: 'force',
      formula: isLong
        ? 'NRd = 5·kp·fy0·t0²·(1 + 0.25·l/d0)'
        : joint.isCross
          ? 'NRd = kp·fy0·t0²·5/(1 − 0.81·l/d0)'
          : 'NRd = kp·fy0·t0²·(4 + 20·(l/d0)²)',
      inputs,
      source: PLATE_SOURCE,
    },
    {
      id: 'face',
      symbol: 'U',
      name: 'use of the face',
      value: face,
      kind: 'ratio',
      formula: isLong
        ? 'U = N/NRd + (M/(l·NRd))² + |M′|/(0.5·t1·NRd)'
        : 'U = N/NRd + |M|/(0.5·l·NRd) + (M′/(0.5·t1·NRd))²',
      inputs: {
        N: [load.normal, 'force'],
        M: [load.alongEdge, 'torque'],
        'M′': [load.aboutEdge, 'torque'],
      },
      source: PLATE_SOURCE,
    },
    {
      id: 'punching',
      symbol: 'U',
      name: 'use in punching shear',
      value: punching,
      kind: 'ratio',
      formula: 'U = (N/l + 6·M/l²)/(2·t0·fy0/√3)',
      inputs: { N: [load.normal, 'force'], M: [load.alongEdge, 'torque'], l: [joint.length, 'length'] },
      source: { key: 'tube-joint-guide', where: 'section 5.1.6' },
    },
  ]);
}
