import type { Figure } from '../quantity/index.ts';
import type { Clearance } from './clearances.ts';

/** The room between parts that come near each other, so that what a change does to it can be told. */
export function clearanceFigures(found: readonly Clearance[]): readonly Figure[] {
  return found.map(({ rule, parts, gap, limit, source }) => ({
    id: `clearance.${rule}.${parts.join('-').replaceAll(' ', '-')}.gap`,
    symbol: 'g',
    name: `room, ${rule.replaceAll('-', ' to ')}, ${parts.join(' and ')}`,
    value: gap,
    kind: 'length',
    formula: 'g = distance of the surfaces; negative where they meet',
    inputs: [{ name: 'wanted', value: limit, kind: 'length' }],
    source,
  }));
}
