import { contentArea, type DraftSheet } from '../bookPages.ts';
import { paper } from '../paper.ts';
import { inset } from '../shapes.ts';
import type { DrawingContext } from './context.ts';
import { fitted } from './sheetFit.ts';
import { sideBounds, sideViewItems } from './sideView.ts';

/** The bike with its rider, without figures: for the eye. */
export function riderSheet(context: DrawingContext): DraftSheet {
  const sheet = paper(context.paper, 'landscape');
  const area = contentArea(sheet);
  const view = fitted(sideBounds(context.scene), inset(area, 6), true);
  return {
    id: 'rider',
    title: 'Rider on the bike, left side',
    paper: sheet,
    scale: view.scale.label,
    items: sideViewItems(context.scene, view),
  };
}
