import type { FlatPattern } from '../../../plates/index.ts';
import type { Making } from './making.ts';

/** The axle plate holds the axle and the tube ends that land on it. */
export function landPlate(making: Making, pattern: FlatPattern, index: number, node: string): boolean {
  const { build, bike, draft, welds } = making;
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'axle-plate') return false;
  const right = pattern.placed[index]!.hand === 'right';
  const names = entry.landings.map(({ at }) => (right ? `${at}.right` : at));
  const ends = bike.tubes.flatMap((tube) =>
    tube.ends.flatMap((end, k) => (end.onto === undefined && names.includes(end.node) ? [{ tube, k }] : [])),
  );
  for (const { tube, k } of ends) {
    const line = draft.lines.get(tube.id)!;
    const end = draft.station(line, k === 0 ? 0 : line.length);
    draft.tie(node, end);
    welds.push({ node: end, line: tube.id, kind: 'landing', with: pattern.id });
  }
  const axle = (entry.shaft ?? 'rearAxle') === 'rearAxle' ? draft.lines.get('rearAxle') : undefined;
  if (axle) draft.tie(node, draft.station(axle, right ? axle.length : 0));
  return ends.length > 0;
}
