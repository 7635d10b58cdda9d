import { type PlacedTube, referenceAt } from '../../bike/index.ts';

/** The line along a tube that cope angles are counted from. */
export function referenceText({ centerline }: PlacedTube): string {
  if (centerline.bends.length > 0) return 'inside of bend 1';
  const side = referenceAt(centerline, 0);
  return Math.abs(side.z) >= Math.abs(side.x) ? 'upper side' : 'forward side';
}
