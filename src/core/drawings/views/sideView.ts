import type { Bounds } from '../../geometry/index.ts';
import { joinBounds } from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { type View, viewLine } from '../view.ts';
import { bikeLayers } from './bikeLayers.ts';
import { paintOrder, projector, type SceneGroup, type SceneInput } from './scene.ts';

export interface SideViewOptions {
  /** What is left out. */
  readonly hide?: readonly SceneGroup[];
  /** Left out: drawn. */
  readonly ground?: boolean;
}

/** Ground drawn past the tires [m]. */
const GROUND_OVERRUN = 0.06;

/**
 * The bike from its side at the design stance: the left side where the view runs forward to the left (`flipX`), else the
 * right. Far parts first, each filled over what it hides. Items carry the name of their part in the build file.
 */
export function sideViewItems(
  scene: SceneInput,
  view: View,
  options: SideViewOptions = {},
): readonly SheetItem[] {
  const layers = bikeLayers(projector(view, 'side'), scene, { hide: options.hide, bodies: 'solid' });
  const { minX, maxX } = wheelBounds(scene);
  const ground =
    options.ground === false
      ? []
      : [
          viewLine(
            view,
            [
              { x: minX - GROUND_OVERRUN, y: 0 },
              { x: maxX + GROUND_OVERRUN, y: 0 },
            ],
            'ground',
          ),
        ];
  return [...ground, ...paintOrder(layers)];
}

/** Box around the bike in the side view [m], x forward, y up; with the rider's head where it is drawn. */
export function sideBounds(scene: SceneInput, options: SideViewOptions = {}): Bounds {
  const { bike, build } = scene;
  const { grip, seat } = bike.layout.places;
  const wheels = wheelBounds(scene);
  const tops = [
    grip.z + 0.02,
    seat.z + 0.03,
    bike.engine.box.frame.origin.z + bike.engine.box.half.z,
    ...Object.entries(build.bodies ?? {}).map(
      ([name, body]) => bike.layout.places.bodies[name]!.z + body.height / 2,
    ),
  ];
  const halfSeat = build.seating.seat.length / 2;
  const box = joinBounds([
    wheels,
    {
      minX: seat.x - halfSeat,
      maxX: seat.x + halfSeat,
      minY: 0,
      maxY: Math.max(...tops),
    },
  ]);
  if (options.hide?.includes('rider')) return box;
  const { head, headRadius, hip } = bike.rider;
  return joinBounds([
    box,
    {
      minX: hip.x - headRadius * 1.1,
      maxX: head.x + headRadius,
      minY: 0,
      maxY: head.z + headRadius,
    },
  ]);
}

function wheelBounds({ bike }: SceneInput): Bounds {
  const { rear, front } = bike.layout.fitted;
  const [back, ahead] = [bike.shafts.rearAxle!, bike.shafts.frontAxle!];
  return {
    minX: back.x - rear.radius,
    maxX: ahead.x + front.radius,
    minY: 0,
    maxY: Math.max(back.z + rear.radius, ahead.z + front.radius),
  };
}
