import type { Build, StackEntry, StackItem } from '../build/index.ts';
import { findChain } from '../standards/index.ts';
import { stageOf, wheelOn } from './stackModel.ts';

/** Diameters of an item, for the picture where the file gives none. Checks use only what the file gives. */
export interface ItemSizes {
  /** [m] */
  readonly outside: number;
  /** [m]; 0 where neither the item nor its shaft has a size. */
  readonly bore: number;
}

/** Outside as a multiple of the shaft, by kind: what such parts look like. */
const OUTSIDE_PER_SHAFT: Readonly<Record<StackItem['kind'], number>> = {
  nut: 1.7,
  washer: 2,
  spacer: 1.5,
  plate: 3,
  hub: 3,
  bearing: 2.35,
  sprocket: 4,
  clutch: 6,
  sheave: 8,
  disc: 8,
  collar: 2,
  face: 3,
  adjuster: 2,
  leg: 2.5,
  clearance: 1,
};

/** Diameter of the axle or shaft that a stack sits on [m], undefined where the file does not say. */
export function shaftDiameter(build: Build, entry: StackEntry): number | undefined {
  if (entry.axle !== undefined) return entry.axle.diameter;
  if (entry.shaft === 'engine') return build.engine.shaft.diameter;
  return build.driveline.shafts[entry.shaft]?.diameter;
}

/** Bore that the file gives for an item: its own, or the wheel's for a hub [m]. */
export function givenBore(build: Build, entry: StackEntry, item: StackItem): number | undefined {
  return item.bore ?? (item.kind === 'hub' ? wheelOn(build, entry.shaft)?.hub.bore : undefined);
}

/** Outside that the file gives for an item: its own, or from the wheel, disc or sprocket it is [m]. */
export function givenOutside(build: Build, entry: StackEntry, item: StackItem): number | undefined {
  if (item.outside !== undefined) return item.outside;
  if (item.kind === 'hub') return wheelOn(build, entry.shaft)?.hub.flange;
  if (item.kind === 'leg') return build.steering.fork.legDiameter;
  for (const plane of item.planes ?? []) {
    const brake = plane.brake === 'front' || plane.brake === 'rear' ? build.brakes[plane.brake] : undefined;
    if (brake?.kind === 'disc') return brake.disc.diameter;
    const sprocket = plane.drive === undefined ? undefined : pitchDiameter(build, entry.shaft, plane.drive);
    if (sprocket !== undefined && item.kind === 'sprocket') return sprocket;
  }
  return undefined;
}

/** Pitch diameter of the sprocket of a chain drive on a shaft [m]: p / sin(π/N). */
export function pitchDiameter(build: Build, shaft: string, drive: string): number | undefined {
  const stage = stageOf(build, drive);
  if (stage?.kind !== 'chain') return undefined;
  const chain = findChain(stage.chain);
  if (!chain.ok) return undefined;
  return (
    chain.value.pitch / Math.sin(Math.PI / (stage.from === shaft ? stage.driverTeeth : stage.drivenTeeth))
  );
}

/** Sizes to draw an item with. */
export function itemSizes(build: Build, entry: StackEntry, item: StackItem): ItemSizes {
  const shaft = shaftDiameter(build, entry);
  const bore = givenBore(build, entry, item) ?? shaft ?? 0;
  const outside =
    givenOutside(build, entry, item) ?? OUTSIDE_PER_SHAFT[item.kind] * Math.max(bore, shaft ?? 0);
  return { outside, bore };
}
