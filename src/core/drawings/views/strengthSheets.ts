import type { SlowStrength, Strength } from '../../strength/index.ts';
import type { DraftSheet } from '../bookPages.ts';
import type { DrawingContext } from './context.ts';
import { casePages } from './strength/casePages.ts';
import { comparisonPages } from './strength/comparisonPages.ts';
import { holdPages } from './strength/holdPages.ts';
import { shaftPages } from './strength/shaftPages.ts';
import { shakingPages } from './strength/shakingPages.ts';

/** How the bike holds: the worst places and what was assumed, loads on the frame, what shakes it, shafts, then every comparison. */
export function strengthSheets(
  context: DrawingContext,
  strength: Strength,
  shaking?: SlowStrength,
): readonly DraftSheet[] {
  return [
    ...holdPages(context, strength),
    ...casePages(context, strength),
    ...(shaking ? shakingPages(context, strength, shaking) : []),
    ...shaftPages(context, strength),
    ...comparisonPages(context, strength),
  ];
}
