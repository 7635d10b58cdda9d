import type { Strength } from '../../strength/index.ts';
import type { DraftSheet } from '../bookPages.ts';
import type { DrawingContext } from './context.ts';
import { casePages } from './strength/casePages.ts';
import { comparisonPages } from './strength/comparisonPages.ts';
import { holdPages } from './strength/holdPages.ts';
import { shaftPages } from './strength/shaftPages.ts';

/** How the bike holds: the worst places and what was assumed, loads on the frame, shafts, then every comparison. */
export function strengthSheets(context: DrawingContext, strength: Strength): readonly DraftSheet[] {
  return [
    ...holdPages(context, strength),
    ...casePages(context, strength),
    ...shaftPages(context, strength),
    ...comparisonPages(context, strength),
  ];
}
