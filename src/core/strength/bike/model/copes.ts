import type { Making } from './making.ts';
import { nearestOnLine } from './nearest.ts';

/** A cope further from its trunk than this is not fitted round it [m]. */
const COPE_GAP = 5e-3;

/** Coped ends are one with the nearest place of their trunk; a cope that falls short is told. */
export function tieCopes({ bike, draft, welds, flaws }: Making): void {
  for (const tube of bike.tubes) {
    const line = draft.lines.get(tube.id)!;
    tube.ends.forEach((end, k) => {
      const node = draft.station(line, k === 0 ? 0 : line.length);
      const trunk = end.onto === undefined ? undefined : draft.lines.get(end.onto);
      if (end.joint !== 'cope' || !trunk) return;
      const near = nearestOnLine(trunk, draft.nodes.get(node)!);
      const onTrunk = draft.station(trunk, near.at);
      const reach = (trunk.stock.outside + line.stock.outside) / 2 + COPE_GAP;
      if (near.distance > reach)
        flaws.push({
          rule: 'gap',
          part: tube.id,
          gap: near.distance - reach,
          reason: `its ${k === 0 ? 'start' : 'end'} does not reach "${trunk.id}"; taken as joined to it`,
        });
      draft.tie(onTrunk, node);
      welds.push({ node, line: tube.id, kind: 'cope', with: trunk.id });
      welds.push({ node: onTrunk, line: trunk.id, kind: 'trunk', with: tube.id });
    });
  }
}
