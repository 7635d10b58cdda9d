import {
  type PaperRect,
  type SceneGroup,
  type Sheet,
  sideBounds,
  sideViewItems,
  svgOfSheet,
  topBounds,
  topViewItems,
  type View,
  viewLength,
} from '../../core/drawings/index.ts';
import type { Solution } from '../../core/index.ts';
import type { Sight } from './messages.ts';

/** Lines are as heavy on the screen as on a sheet of this scale: a light bike is then about 300 mm long. */
const SCALE = { ratio: 1 / 5, label: '1 : 5' };
/** White round the bike [mm]. */
const BORDER = 8;

const TITLES: Readonly<Record<Sight, string>> = {
  left: 'The bike from its left side',
  right: 'The bike from its right side',
  top: 'The bike from above',
};

/** The bike from one side as an SVG that is just as large as the bike. */
export function pictureOf(solution: Solution, sight: Sight, hide: readonly SceneGroup[]): string {
  const isTop = sight === 'top';
  const bounds = isTop ? topBounds(solution) : sideBounds(solution, { hide });
  const flipX = sight !== 'right';
  const view: View = { scale: SCALE, flipX, origin: { x: 0, y: 0 } };
  const [left, right] = flipX ? [-bounds.maxX, -bounds.minX] : [bounds.minX, bounds.maxX];
  const area: PaperRect = {
    left: viewLength(view, left) - BORDER,
    right: viewLength(view, right) + BORDER,
    bottom: viewLength(view, bounds.minY) - BORDER,
    top: viewLength(view, bounds.maxY) + BORDER,
  };
  const placed: View = { ...view, origin: { x: -area.left, y: -area.bottom } };
  const sheet: Sheet = {
    id: `screen-${sight}`,
    title: TITLES[sight],
    width: area.right - area.left,
    height: area.top - area.bottom,
    items: isTop ? topViewItems(solution, placed, { hide }) : sideViewItems(solution, placed, { hide }),
  };
  return svgOfSheet(sheet);
}
