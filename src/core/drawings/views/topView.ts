import type { Bounds } from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { type View, viewLine } from '../view.ts';
import { bikeLayers } from './bikeLayers.ts';
import { paintOrder, projector, type SceneGroup, type SceneInput } from './scene.ts';

export interface TopViewOptions {
  /** What is left out. */
  readonly hide?: readonly SceneGroup[];
  /** Seat and bodies as broken outlines, so that the drive under them is seen. Left out: broken outlines. */
  readonly bodies?: 'phantom' | 'solid';
}

/** Center line drawn past the tires [m]. */
const OVERRUN = 0.05;

/**
 * The bike from above at the design stance, its center line through it. Where the view runs forward to the left
 * (`flipX`) the rider's left is below. Items carry the name of their part in the build file.
 */
export function topViewItems(
  scene: SceneInput,
  view: View,
  options: TopViewOptions = {},
): readonly SheetItem[] {
  const layers = bikeLayers(projector(view, 'top'), scene, {
    hide: options.hide,
    bodies: options.bodies ?? 'phantom',
  });
  const { minX, maxX } = topBounds(scene);
  const center = viewLine(
    view,
    [
      { x: minX - OVERRUN, y: 0 },
      { x: maxX + OVERRUN, y: 0 },
    ],
    'center',
  );
  return [...paintOrder(layers), center];
}

/** Box around the bike seen from above [m], x forward, y across. */
export function topBounds({ bike }: SceneInput): Bounds {
  const { rear, front } = bike.layout.fitted;
  const half = halfWidth(bike);
  return {
    minX: bike.shafts.rearAxle!.x - rear.radius,
    maxX: bike.shafts.frontAxle!.x + front.radius,
    minY: -half,
    maxY: half,
  };
}

/** Half of the grip's length, as it is drawn [m]. */
const HALF_GRIP = 60e-3;

const halfWidth = ({ layout, stacks }: SceneInput['bike']): number =>
  Math.max(
    layout.places.grip.y + HALF_GRIP,
    layout.places.peg.y,
    ...Object.values(stacks).flatMap(({ axle }) => (axle ? [axle.left, -axle.right] : [])),
  );
