import { mirrored } from '../../bike/index.ts';
import { along3, distance3, type Point3, subtract3 } from '../../geometry/index.ts';
import type { SheetItem } from '../sheet.ts';
import { viewCircle } from '../view.ts';
import { type Look, limb } from './bands.ts';
import { type Layer, named, type Projector, type SceneInput } from './scene.ts';

/** Radii of limbs as shares of the head's radius, thick end and thin end; for the picture alone. */
const THICK = {
  thigh: [0.78, 0.56],
  shank: [0.56, 0.4],
  foot: [0.4, 0.3],
  upperArm: [0.48, 0.4],
  forearm: [0.4, 0.3],
  trunk: [1.02, 1.12],
  neck: [0.55, 0.55],
} as const;

const GHOST: Look = { pen: 'dimension', fill: 'light' };
const OUTLINE: Look = { pen: 'dimension', fill: 'none' };

/** Behind everything the whole figure, lightly; over everything the outline of the near leg and arm. */
export function riderLayers(p: Projector, { bike }: SceneInput): readonly Layer[] {
  const { rider } = bike;
  const hide = (q: Point3): Point3 => (p.sight === 'right' ? mirrored(q) : q);
  const part = (kind: keyof typeof THICK, from: Point3, to: Point3, look: Look) =>
    limb(p, from, to, THICK[kind].map((share) => share * rider.headRadius) as [number, number], look);
  const limbs = (side: (q: Point3) => Point3, look: Look): readonly SheetItem[] => [
    part('thigh', side(rider.hip), side(rider.knee), look),
    part('shank', side(rider.knee), side(rider.ankle), look),
    part('foot', side(rider.ankle), side(footTip(rider)), look),
    part('upperArm', side(rider.shoulder), side(rider.elbow), look),
    part('forearm', side(rider.elbow), side(rider.grip), look),
  ];
  const middle = (q: Point3): Point3 => ({ ...q, y: rider.head.y });
  const far = p.sight === 'top' ? limbs(mirrored, GHOST) : [];
  const ghost = [
    ...far,
    part('neck', middle(rider.shoulder), rider.head, GHOST),
    viewCircle(p.view, p.flat(rider.head), rider.headRadius, 'dimension', 'light'),
    part('trunk', middle(rider.hip), middle(rider.shoulder), GHOST),
    ...limbs(hide, GHOST),
  ];
  return [
    { near: -100, items: named('rider', ghost) },
    { near: 100, items: named('rider', limbs(hide, OUTLINE)) },
  ];
}

/** The sole stays on the peg: the foot's tip lies as high over it as its own thickness. */
function footTip({ ankle, toe, headRadius }: SceneInput['bike']['rider']): Point3 {
  const length = distance3(ankle, toe);
  return length > 0
    ? { ...along3(ankle, subtract3(toe, ankle), 0.92), z: toe.z + THICK.foot[1] * headRadius }
    : toe;
}
