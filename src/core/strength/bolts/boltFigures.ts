import type { Figure, Force, Length, Pressure, Torque } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';

export interface BoltFiguresInput {
  /** d [m]. */
  readonly diameter: Length;
  /** At [m²]. */
  readonly stressArea: number;
  /** Sp [Pa]. */
  readonly proof: Pressure;
  /** Fi on one bolt [N]. */
  readonly preload: Force;
  /** T on one bolt [N·m]. */
  readonly torque: Torque;
  /** K [-]. */
  readonly torqueFactor: number;
  readonly slip: {
    readonly load: Force;
    readonly friction: number;
    readonly faces: number;
    readonly holeFactor: number;
    /** Clamp of all bolts with the outer pull on them [N]. */
    readonly clamp: Force;
  };
}

/** The working of preload, torque and slip. */
export function boltFigures(of: BoltFiguresInput, names: PartNames): readonly Figure[] {
  const { preload, slip } = of;
  const workings: readonly Working[] = [
    {
      id: 'preload',
      symbol: 'Fi',
      name: 'preload of one bolt',
      value: preload,
      kind: 'force',
      formula: 'Fi = T/(K·d)',
      inputs: { T: [of.torque, 'torque'], K: [of.torqueFactor, 'ratio'], d: [of.diameter, 'length'] },
      source: { key: 'shigley-9', where: 'equation 8-27' },
    },
    {
      id: 'proofShare',
      symbol: 'Fi/Fp',
      name: 'share of the proof load',
      value: preload / (of.proof * of.stressArea),
      kind: 'ratio',
      formula: 'Fi/(Sp·At)',
      inputs: {
        Fi: [preload, 'force'],
        Sp: [of.proof, 'pressure'],
        At: [of.stressArea, 'area'],
      },
      source: { key: 'shigley-9', where: 'section 8-8; 0.75 is usual for joints that are opened again' },
    },
    {
      id: 'slipLoad',
      symbol: 'Fs',
      name: 'load at which the faces slip',
      value: slip.load,
      kind: 'force',
      formula: 'Fs = ks·µ·m·ΣFc',
      inputs: {
        ks: [slip.holeFactor, 'ratio'],
        µ: [slip.friction, 'ratio'],
        m: [slip.faces, 'count'],
        ΣFc: [slip.clamp, 'force'],
      },
      source: { key: 'en-1993-1-8', where: 'section 3.9, without its partial factor' },
    },
  ];
  return figuresOf(names, workings);
}
