import type { Figure, Length } from '../../quantity/index.ts';
import { figuresOf, type PartNames } from '../workings.ts';
import type { FitPair } from './fitPair.ts';
import type { PressFit, PressFitInput } from './pressFit.ts';

/** The working of a fit. */
export function fitFigures(size: Length, pair: FitPair, names: PartNames): readonly Figure[] {
  const { hole, shaft, interference } = pair;
  const source = { key: 'iso-286', where: 'parts 1 and 2' };
  return figuresOf(names, [
    {
      id: 'clearance.most',
      symbol: 'c',
      name: 'largest clearance, negative is interference',
      value: -interference.least,
      kind: 'length',
      formula: 'c = ES − ei',
      inputs: { size: [size, 'length'], ES: [hole.upper, 'length'], ei: [shaft.lower, 'length'] },
      source,
    },
    {
      id: 'clearance.least',
      symbol: 'c',
      name: 'least clearance, negative is interference',
      value: -interference.most,
      kind: 'length',
      formula: 'c = EI − es',
      inputs: { size: [size, 'length'], EI: [hole.lower, 'length'], es: [shaft.upper, 'length'] },
      source,
    },
  ]);
}

/** The working of a press fit. */
export function pressFitFigures(input: PressFitInput, fit: PressFit, names: PartNames): readonly Figure[] {
  const source = { key: 'shigley-9', where: 'section 3-16, press and shrink fits' };
  const p = [fit.pressure, 'pressure'] as const;
  const seat = {
    d: [input.diameter, 'length'],
    L: [input.length, 'length'],
    µ: [input.friction, 'ratio'],
    p,
  } as const;
  return figuresOf(names, [
    {
      id: 'pressure',
      symbol: 'p',
      name: 'pressure in the seat',
      value: fit.pressure,
      kind: 'pressure',
      formula: 'p = δ/{d·[((Do² + d²)/(Do² − d²) + νo)/Eo + ((d² + di²)/(d² − di²) − νi)/Ei]}',
      inputs: {
        δ: [input.interference, 'length'],
        d: [input.diameter, 'length'],
        di: [input.innerBore, 'length'],
        Do: [input.hubOutside, 'length'],
        Eo: [input.hub.elasticModulus, 'pressure'],
        νo: [input.hub.poisson, 'ratio'],
        Ei: [input.inner.elasticModulus, 'pressure'],
        νi: [input.inner.poisson, 'ratio'],
      },
      source,
    },
    {
      id: 'hubHoop',
      symbol: 'σθ',
      name: 'tension round the bore of the hub',
      value: fit.hubHoop,
      kind: 'pressure',
      formula: 'σθ = p·(Do² + d²)/(Do² − d²)',
      inputs: { p, d: [input.diameter, 'length'], Do: [input.hubOutside, 'length'] },
      source,
    },
    {
      id: 'pushForce',
      symbol: 'F',
      name: 'force to push in',
      value: fit.pushForce,
      kind: 'force',
      formula: 'F = π·d·L·µ·p',
      inputs: seat,
      source,
    },
    {
      id: 'slipTorque',
      symbol: 'T',
      name: 'torque at which the seat slips',
      value: fit.slipTorque,
      kind: 'torque',
      formula: 'T = ½·π·d²·L·µ·p',
      inputs: seat,
      source,
    },
    {
      id: 'boreShrink',
      symbol: 'Δdi',
      name: 'shrink of the inner bore',
      value: fit.boreShrink,
      kind: 'length',
      formula: 'Δdi = 2·p·d²·di/(Ei·(d² − di²))',
      inputs: {
        p,
        d: [input.diameter, 'length'],
        di: [input.innerBore, 'length'],
        Ei: [input.inner.elasticModulus, 'pressure'],
      },
      source,
    },
  ]);
}
