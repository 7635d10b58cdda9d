import type { Build } from '../../build/index.ts';
import {
  circleLoop,
  cylinderMesh,
  extrudedMesh,
  joinMeshes,
  type Loop,
  latheMesh,
  type Mesh,
  type Point,
  type Point3,
  polygonLoop,
} from '../../geometry/index.ts';
import type { Bike, BodyMesh, PlacedItem } from '../bike.ts';
import { pitchDiameter } from '../stackSizes.ts';
import { axleFrame, fattened, ringMesh, sideFrame, straightLoop } from './solids.ts';

/** The run of a chain or belt in the side view, for the picture. */
export interface ChainPath {
  readonly drive: string;
  /** Plane it runs in, left (+) of the center plane [m]. */
  readonly y: number;
  /** Pitch line, closed: the last point joins the first; x forward, z up [m]. */
  readonly points: readonly { readonly x: number; readonly z: number }[];
  /** Across the bike, and in its own plane [m]. */
  readonly width: number;
  readonly height: number;
}

/** Stack items that are drawn as plain turned parts; wheels, plates, discs and legs are drawn elsewhere. */
const TURNED: readonly PlacedItem['kind'][] = [
  'nut',
  'washer',
  'spacer',
  'collar',
  'bearing',
  'clutch',
  'adjuster',
];
const TOLERANCE = 0.2e-3;
/** Roller radius, tip height and plate of the usual chains, as shares of the pitch. @source asme-b29-1, proportions */
const TOOTH = { root: 0.3125, tip: 0.3, plate: 0.55 };
/** Sprockets of more teeth get lightening windows. */
const WINDOWED_FROM = 30;
/** Wall of a sheave's cone, for the picture [m]. */
const CONE = 6e-3;

/** Chains, sprockets, sheaves, and what sits on the shafts. */
export const driveMeshes = (build: Build, bike: Bike, paths: readonly ChainPath[]): BodyMesh[] => [
  ...paths.filter((path) => path.points.length >= 3).map(chainMesh),
  ...shaftMeshes(build, bike),
  ...itemMeshes(build, bike),
];

/** A band of the chain's width and height around the pitch line. */
function chainMesh(path: ChainPath): BodyMesh {
  const loop = polygonLoop(path.points.map((p): Point => ({ x: p.x, y: p.z })));
  const mesh = extrudedMesh({
    frame: sideFrame(path.y),
    outline: straightLoop(fattened(loop, path.height / 2)),
    holes: [straightLoop(fattened(loop, -path.height / 2))],
    from: -path.width / 2,
    to: path.width / 2,
    chordTolerance: TOLERANCE,
  });
  return { name: path.drive, part: `driveline.${path.drive}`, look: 'chain', mesh };
}

function shaftMeshes(build: Build, bike: Bike): BodyMesh[] {
  return Object.entries(bike.shafts).flatMap(([name, center]): BodyMesh[] => {
    if (name === 'engine') return [];
    const axle = Object.values(bike.stacks).find((stack) => stack.shaft === name)?.axle;
    const entry = build.driveline.shafts[name];
    const diameter = axle?.diameter ?? entry?.diameter;
    const length = axle?.length ?? entry?.length;
    if (diameter === undefined || length === undefined) return [];
    const [left, right] = axle ? [axle.left, axle.right] : [center.y + length / 2, center.y - length / 2];
    const mesh = cylinderMesh({ ...center, y: right }, { ...center, y: left }, diameter / 2);
    return [{ name: `shaft ${name}`, part: `driveline.shafts.${name}`, look: 'shaft', mesh }];
  });
}

function itemMeshes(build: Build, bike: Bike): BodyMesh[] {
  return Object.values(bike.stacks).flatMap((stack) => {
    const center = bike.shafts[stack.shaft];
    if (!center) return [];
    return stack.items.flatMap((item): BodyMesh[] => {
      const meshes = [...turned(item, center), ...runners(build, stack.shaft, item, center)];
      if (meshes.length === 0) return [];
      return [
        {
          name: `${item.id} on ${stack.id}`,
          part: `stacks.${stack.id}.${item.id}`,
          look: 'shaft',
          mesh: joinMeshes(meshes),
        },
      ];
    });
  });
}

function turned(item: PlacedItem, center: Point3): Mesh[] {
  const drawn = TURNED.includes(item.kind) || (item.kind === 'sprocket' && item.outside > item.bore);
  if (!drawn || !(item.left - item.right > 0 && item.outside > item.bore)) return [];
  const y = (item.left + item.right) / 2;
  // A sprocket whose item is its pitch circle would hide its own teeth.
  if (item.kind === 'sprocket' && item.planes.length > 0 && item.outside > 3 * item.bore) return [];
  return [
    ringMesh({ ...center, y }, Math.max(item.bore / 2, 1e-3), item.outside / 2, item.left - item.right, 32),
  ];
}

function runners(build: Build, shaft: string, item: PlacedItem, center: Point3): Mesh[] {
  return item.planes.flatMap((plane): Mesh[] => {
    const stage = build.driveline.stages.find((one) => one.id === plane.drive);
    if (!stage || stage.kind === 'clutch') return [];
    const at = { ...center, y: plane.y };
    if (stage.kind === 'variable-belt')
      return sheaves(at, stage.from === shaft ? stage.driver.smallest : stage.driven.largest, stage);
    const diameter = pitchDiameter(build, shaft, stage.id);
    const teeth = stage.from === shaft ? stage.driverTeeth : stage.drivenTeeth;
    return diameter === undefined ? [] : [sprocket(at, diameter, teeth, item.bore)];
  });
}

function sprocket(at: Point3, diameter: number, teeth: number, bore: number): Mesh {
  const pitch = diameter * Math.sin(Math.PI / teeth);
  const [root, tip] = [diameter / 2 - TOOTH.root * pitch, diameter / 2 + TOOTH.tip * pitch];
  const outline = Array.from({ length: teeth }, (_, k) => k).flatMap((k): Point[] => {
    const turn = (share: number): number => (2 * Math.PI * (k + share)) / teeth;
    return [
      polar(root, turn(-0.22)),
      polar(root, turn(0.22)),
      polar(tip, turn(0.44)),
      polar(tip, turn(0.56)),
    ];
  });
  return extrudedMesh({
    frame: sideFrame(at.y, { x: at.x, y: at.z }),
    outline: straightLoop(outline),
    holes: sprocketHoles(root, bore, teeth),
    from: (-TOOTH.plate * pitch) / 2,
    to: (TOOTH.plate * pitch) / 2,
    chordTolerance: TOLERANCE,
  });
}

function sprocketHoles(root: number, bore: number, teeth: number): Loop[] {
  const center = bore / 2 > 1e-3 && bore / 2 < 0.8 * root ? [circleLoop({ x: 0, y: 0 }, bore / 2)] : [];
  if (teeth < WINDOWED_FROM) return center;
  const ring = 0.66 * root;
  return [
    ...center,
    ...Array.from({ length: 6 }, (_, k) => circleLoop(polar(ring, (Math.PI * k) / 3), 0.19 * root)),
  ];
}

const polar = (radius: number, turn: number): Point => ({
  x: radius * Math.cos(turn),
  y: radius * Math.sin(turn),
});

/** Two cones with the belt's top width between them at the pitch diameter. */
function sheaves(
  at: Point3,
  diameter: number,
  stage: {
    readonly beltTopWidth: number;
    readonly driver: { readonly largest: number };
    readonly driven: { readonly largest: number };
  },
): Mesh[] {
  const outside = Math.max(diameter, stage.driver.largest, stage.driven.largest * 0.75) / 2;
  const gap = stage.beltTopWidth / 2;
  return [1, -1].map((side) => {
    const profile = [
      { x: 0, y: side * gap * 0.4 },
      { x: outside, y: side * gap },
      { x: outside, y: side * (gap + CONE / 2) },
      { x: 0, y: side * (gap + CONE * 2) },
    ];
    return latheMesh(axleFrame(at), side > 0 ? profile : [...profile].reverse(), 48);
  });
}
