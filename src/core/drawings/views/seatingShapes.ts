import { mirrored } from '../../bike/index.ts';
import { add3, type Point3, roundedPolygonLoop, scale3 } from '../../geometry/index.ts';
import type { PathItem, PenRole, SheetItem } from '../sheet.ts';
import { viewLine, viewLoop } from '../view.ts';
import { band } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';
import { box } from './wheelShapes.ts';

/** Seat thickness and stand leg where the build gives none, for the picture [m]. */
const SEAT_THICKNESS = 60e-3;
const STAND_RADIUS = 9e-3;
/** A body further than this from the center plane stands to one side [m]. */
const ASIDE = 30e-3;

/** How bodies that would hide the drive are drawn: solid, or as broken outlines over it. */
export type BodyStyle = 'solid' | 'phantom';

const penOf = (style: BodyStyle): PenRole => (style === 'solid' ? 'outline' : 'hidden');

/** Seat, with its front lower than its rear. */
export function seatLayers(p: Projector, { build, bike }: SceneInput, style: BodyStyle): readonly Layer[] {
  const { seat } = build.seating;
  const { places } = bike.layout;
  const thick = seat.thickness ?? SEAT_THICKNESS;
  const near = p.near({ ...places.seat, y: 0 }) + 0.5 * thick;
  const items = p.sight === 'top' ? seatFromAbove() : seatFromSide();
  return [{ near, items: named('seating.seat', items) }];

  function seatFromAbove(): readonly SheetItem[] {
    const outline = box(p.flat(places.seat), seat.length, seat.width, 0.4 * seat.width);
    return [viewLoop(p.view, outline, penOf(style), style === 'solid' ? 'dark' : 'none')];
  }

  function seatFromSide(): readonly SheetItem[] {
    const half = seat.length / 2;
    const corner = (x: number, z: number, radius: number) => ({
      ...p.flat({ x: places.seat.x + x * half, y: 0, z: places.seat.z + z * thick }),
      radius,
    });
    const loop = roundedPolygonLoop([
      corner(-1, -0.9, 0.1 * thick),
      corner(1, -1, 0.1 * thick),
      corner(0.96, -0.25, 0.3 * thick),
      corner(0.3, 0, 0.5 * thick),
      corner(-0.5, 0, 0.5 * thick),
      corner(-1, 0.28, 0.3 * thick),
    ]);
    const outline = loop.ok ? loop.value : box(p.flat(places.seat), seat.length, thick, 0);
    const pan = [-1, 1].map((x) =>
      p.flat({ x: places.seat.x + x * half, y: 0, z: places.seat.z - 0.8 * thick }),
    );
    return [
      viewLoop(p.view, outline, penOf(style), style === 'solid' ? 'dark' : 'none'),
      ...(style === 'solid' ? [viewLine(p.view, pan, 'thin')] : []),
    ];
  }
}

/** Tank, exhaust, guards and what else has a place and a size, as rounded boxes. */
export const bodyLayers = (p: Projector, { build, bike }: SceneInput, style: BodyStyle): readonly Layer[] =>
  Object.entries(build.bodies ?? {}).map(([name, body]): Layer => {
    const at = bike.layout.places.bodies[name]!;
    const across = p.sight === 'top' ? body.width : body.height;
    const outline = box(p.flat(at), body.length, across, 0.3 * Math.min(body.length, across));
    // What stands to one side (exhaust, guard) would hide the drive that it is beside.
    const own = Math.abs(at.y) > ASIDE ? 'phantom' : style;
    const items: readonly PathItem[] = [
      viewLoop(p.view, outline, penOf(own), own === 'solid' ? 'light' : 'none'),
    ];
    const half = p.sight === 'top' ? body.height / 2 : body.width / 2;
    return { near: p.near(at) + half, items: named(`bodies.${name}`, items) };
  });

/** Pegs and the side stand, swung up. */
export function pegLayers(p: Projector, { build, bike }: SceneInput): readonly Layer[] {
  const { pegs } = build.seating;
  const { peg, stand } = bike.layout.places;
  const half = { x: 0, y: pegs.length / 2, z: 0 };
  const bars = [peg, mirrored(peg)].map((at): Layer => {
    const ends = [add3(at, half), add3(at, scale3(half, -1))];
    const items = band(p, ends, pegs.diameter / 2, { pen: 'outline', fill: 'medium' });
    return { near: p.near(at), items: named('seating.pegs', items) };
  });
  if (!stand) return bars;
  const leg = band(p, [stand, folded(stand)], STAND_RADIUS, { pen: 'thin', fill: 'light' });
  return [...bars, { near: p.near(stand), items: named('seating.stand', leg) }];
}

/** The leg reaches the ground when it is down; swung up it lies level to the rear. */
const folded = (pivot: Point3): Point3 => ({ x: pivot.x - 1.15 * pivot.z, y: pivot.y, z: pivot.z });
