import type { Figure } from '../../quantity/index.ts';
import { figuresOf, type PartNames, type Working } from '../workings.ts';
import {
  cyclesToFailure,
  type FatigueEstimate,
  type FatigueRule,
  type StressBlock,
} from './nominalStress.ts';

/** The working of a nominal-stress life. */
export function fatigueFigures(
  of: {
    readonly estimate: FatigueEstimate;
    readonly spectrum: readonly StressBlock[];
    readonly rule: FatigueRule;
  },
  names: PartNames,
): readonly Figure[] {
  const { estimate, spectrum, rule } = of;
  const { line } = estimate;
  const source =
    rule === 'iiw'
      ? { key: 'iiw-fatigue', where: 'section 3.2, nominal stress' }
      : { key: 'en-1993-1-9', where: 'section 7.1 and annex A.5' };
  const limits: Working['inputs'] = {
    ΔσC: [line.category, 'pressure'],
    m: [line.slope, 'ratio'],
    ΔσD: [line.constantAmplitudeLimit, 'pressure'],
    ΔσL: [line.cutOff, 'pressure'],
  };
  const blocks = spectrum.map(
    ({ range, cycles }, i): Working => ({
      id: `block${i + 1}`,
      symbol: 'N',
      name: `cycles to failure at range ${i + 1}`,
      value: cyclesToFailure(line, range),
      kind: 'ratio',
      formula: 'N = 2·10⁶·(ΔσC/Δσ)^m above ΔσD, ND·(ΔσD/Δσ)⁵ below it, without limit under ΔσL',
      inputs: { Δσ: [range, 'pressure'], n: [cycles, 'ratio'], ...limits },
      source,
    }),
  );
  return figuresOf(names, [
    ...blocks,
    {
      id: 'damage',
      symbol: 'D',
      name: 'damage of one repeat',
      value: estimate.damage,
      kind: 'ratio',
      formula: 'D = Σ n/N',
      inputs: limits,
      source,
    },
  ]);
}
