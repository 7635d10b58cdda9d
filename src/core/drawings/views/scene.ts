import type { Bike, MassSummary } from '../../bike/index.ts';
import type { Build } from '../../build/index.ts';
import type { DrivelineSolution } from '../../driveline/index.ts';
import type { Point, Point3 } from '../../geometry/index.ts';
import type { FlatPattern } from '../../plates/index.ts';
import type { PaperPoint, SheetItem } from '../sheet.ts';
import { type View, viewLength, viewPoint } from '../view.ts';

/** What a drawing of the bike shows: the solved bike with what it was solved from. */
export interface SceneInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly driveline: DrivelineSolution;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
}

/** From where the bike is seen: its left side, its right side, or from above. */
export type Sight = 'left' | 'right' | 'top';

/** Parts that a view can leave out or draw as outlines alone. */
export type SceneGroup = 'rider' | 'seat' | 'bodies' | 'bars' | 'drive' | 'plates' | 'engine' | 'wheels';

/** Maps the bike onto paper. */
export interface Projector {
  readonly sight: Sight;
  readonly view: View;
  /** In the plane of the view [m]: forward and up, or forward and across. */
  readonly flat: (p: Point3) => Point;
  readonly point: (p: Point3) => PaperPoint;
  /** Nearness to the eye [m]: what is nearer is painted later. */
  readonly near: (p: Point3) => number;
  /** A length of the bike [m] on paper [mm]. */
  readonly length: (meters: number) => number;
  /** Unit vector toward the eye. */
  readonly toEye: Point3;
}

/** Items that lie together at one depth. */
export interface Layer {
  readonly near: number;
  readonly items: readonly SheetItem[];
}

/**
 * Side views: a view that runs forward to the left shows the left side, else the right side. From above: forward to the
 * left has the rider's left below, as third-angle projection puts it over the left side.
 */
export function projector(view: View, plane: 'side' | 'top'): Projector {
  const sight: Sight = plane === 'top' ? 'top' : view.flipX ? 'left' : 'right';
  const across = view.flipX ? -1 : 1;
  const toEye = {
    left: { x: 0, y: 1, z: 0 },
    right: { x: 0, y: -1, z: 0 },
    top: { x: 0, y: 0, z: 1 },
  }[sight];
  const flat = (p: Point3): Point => (sight === 'top' ? { x: p.x, y: across * p.y } : { x: p.x, y: p.z });
  return {
    sight,
    view,
    flat,
    toEye,
    point: (p) => viewPoint(view, flat(p)),
    near: (p) => p.x * toEye.x + p.y * toEye.y + p.z * toEye.z,
    length: (meters) => viewLength(view, meters),
  };
}

/** Far layers first; layers of one depth in the order given. */
export const paintOrder = (layers: readonly Layer[]): readonly SheetItem[] =>
  layers
    .map((layer, order) => ({ layer, order }))
    .sort((a, b) => a.layer.near - b.layer.near || a.order - b.order)
    .flatMap(({ layer }) => layer.items);

/** The items under one name, that of the part in the build file. */
export const named = (part: string, items: readonly SheetItem[]): readonly SheetItem[] =>
  items.map((item) => ({ ...item, part }));
