import { hangNodes } from './contact.ts';
import type { ModelFlaw } from './frameTypes.ts';
import type { Making } from './making.ts';

/** Ties a node to the tube nearest to it. */
export function hang({ draft, frameLines }: Making, node: string, part: string, flaws: ModelFlaw[]): void {
  const contact = hangNodes(draft, frameLines, draft.nodes.get(node)!, 0);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part, reason: 'there is no tube to hold it' });
    return;
  }
  draft.tie(contact.nodes[0]!, node);
  flaws.push({
    rule: 'gap',
    part,
    gap: contact.gap,
    reason: `no plate holds it; taken as held by "${contact.lines[0]}"`,
  });
}
