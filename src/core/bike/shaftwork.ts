import type { Build } from '../build/index.ts';
import type { Point3 } from '../geometry/index.ts';
import { materialNamed } from '../standards/index.ts';
import type { Bike, MassPart, PlacedItem } from './bike.ts';
import { discInertia, type Lump, NO_INERTIA, rodLump, sumLumps } from './inertia.ts';
import { pitchDiameter } from './stackSizes.ts';

/** Share of a sprocket's inner chain width that its plate is thick. @source asme-b29-1, tooth width 0.93·W less 0.15 mm */
const SPROCKET_PLATE = 0.93;
/** Inner chain width over pitch of the common chains. @source asme-b29-1, W = 5/8·P */
const WIDTH_PER_PITCH = 0.625;

const STEEL = materialNamed('mild-steel').density;
const ACROSS: Point3 = { x: 0, y: 1, z: 0 };
/** Stack items that are plain steel rings. The others belong to a wheel, to a stage, or are weighed as plates. */
const STEEL_RINGS: readonly PlacedItem['kind'][] = ['nut', 'washer', 'spacer', 'collar', 'bearing'];

/** Shafts, what sits on them, and the clutch or belt drive. */
export const shaftwork = (build: Build, bike: Bike): MassPart[] => [
  ...shaftParts(build, bike),
  ...stackParts(build, bike),
  ...stageParts(build, bike),
];

/** Axles and countershafts as solid bars. A shaft with a stack is as long as its axle, else as its entry says. */
function shaftParts(build: Build, bike: Bike): MassPart[] {
  const names = Object.keys(bike.shafts).filter((name) => name !== 'engine');
  return names.flatMap((name): MassPart[] => {
    const axle = Object.values(bike.stacks).find((stack) => stack.shaft === name)?.axle;
    const entry = build.driveline.shafts[name];
    const [diameter, length] = [axle?.diameter ?? entry?.diameter, axle?.length ?? entry?.length];
    if (diameter === undefined || length === undefined) return [];
    const center = bike.shafts[name]!;
    const [left, right] = axle ? [axle.left, axle.right] : [center.y + length / 2, center.y - length / 2];
    const mass = (Math.PI / 4) * diameter ** 2 * length * STEEL;
    const bar = rodLump(mass, { ...center, y: left }, { ...center, y: right });
    return [
      {
        id: `shafts.${name}`,
        label: `shaft ${name}`,
        ...bar,
        body: name === 'frontAxle' ? 'front' : 'frame',
      },
    ];
  });
}

/** Spacers, nuts, collars and bearings as steel rings, sprockets as plates of their pitch diameter. */
function stackParts(build: Build, bike: Bike): MassPart[] {
  return Object.values(bike.stacks).flatMap((stack) => {
    const center = bike.shafts[stack.shaft];
    if (!center) return [];
    const front = stack.shaft === 'frontAxle';
    return stack.items.flatMap((item): MassPart[] => {
      const label = `${item.id} on ${stack.id}`;
      const id = `stacks.${stack.id}.${item.id}`;
      const ring = STEEL_RINGS.includes(item.kind) && item.length > 0;
      const plates = sprocketLumps(build, stack.shaft, item, center);
      const turning = stack.shaft === 'rearAxle' ? ('rearWheel' as const) : ('frame' as const);
      return [
        ...(ring
          ? [{ id, label, ...ringLump(item, center), body: front ? ('front' as const) : ('frame' as const) }]
          : []),
        ...(plates.length > 0
          ? [{ id: `${id}.sprocket`, label: `sprocket of ${label}`, ...sumLumps(plates), body: turning }]
          : []),
      ];
    });
  });
}

function ringLump(item: PlacedItem, shaft: Point3): Lump {
  const area = (Math.PI / 4) * Math.max(0, item.outside ** 2 - item.bore ** 2);
  const mass = area * item.length * STEEL;
  const center = { ...shaft, y: (item.left + item.right) / 2 };
  return { mass, center, inertia: discInertia(mass, item.outside / 2, item.length, ACROSS) };
}

/** Plates of the sprockets on an item; a clutch brings its own. */
function sprocketLumps(build: Build, shaft: string, item: PlacedItem, center: Point3): Lump[] {
  if (item.kind === 'clutch') return [];
  return item.planes.flatMap((plane): Lump[] => {
    if (plane.runs !== 'sprocket' || plane.drive === undefined) return [];
    const stage = build.driveline.stages.find((one) => one.id === plane.drive);
    const diameter = pitchDiameter(build, shaft, plane.drive);
    if (diameter === undefined || stage?.kind !== 'chain') return [];
    const teeth = stage.from === shaft ? stage.driverTeeth : stage.drivenTeeth;
    const pitch = diameter * Math.sin(Math.PI / teeth);
    const thickness = SPROCKET_PLATE * WIDTH_PER_PITCH * pitch;
    const mass = (Math.PI / 4) * Math.max(0, diameter ** 2 - item.bore ** 2) * thickness * STEEL;
    const at = { ...center, y: plane.y };
    return [{ mass, center: at, inertia: discInertia(mass, diameter / 2, thickness, ACROSS) }];
  });
}

/** Clutch on its shaft; the two units of a belt drive shared between their shafts. */
function stageParts(build: Build, bike: Bike): MassPart[] {
  return build.driveline.stages.flatMap((stage): MassPart[] => {
    if (stage.kind === 'chain' || stage.mass === undefined) return [];
    const on = stage.kind === 'clutch' ? [stage.on] : [stage.from, stage.to];
    const mass = stage.mass / on.length;
    const lumps = on.map(
      (name): Lump => ({ mass, center: stageCenter(bike, name, stage.id, stage.kind), inertia: NO_INERTIA }),
    );
    return [{ id: `driveline.${stage.id}`, label: stage.id, ...sumLumps(lumps), body: 'frame' }];
  });
}

function stageCenter(bike: Bike, shaft: string, id: string, kind: 'clutch' | 'variable-belt'): Point3 {
  const center = bike.shafts[shaft]!;
  const items = Object.values(bike.stacks)
    .filter((stack) => stack.shaft === shaft)
    .flatMap((stack) => stack.items);
  const clutch = kind === 'clutch' ? items.find((item) => item.kind === 'clutch') : undefined;
  if (clutch) return { ...center, y: (clutch.left + clutch.right) / 2 };
  const plane = items.flatMap((item) => item.planes).find((one) => one.drive === id);
  return plane ? { ...center, y: plane.y } : center;
}
