import { type Bike, layOut, placeBike } from '../../src/core/bike/index.ts';
import type { Build } from '../../src/core/build/index.ts';
import type { SlotNeed } from '../../src/core/plates/index.ts';
import { type BuildInput, mergePatch, type Patch, smallBuild } from './smallBuild.ts';

export type PlateInput = BuildInput['plates'][string];

/** One plate of every recipe on the small build, with invented sizes. */
export const everyPlate: Readonly<Record<string, PlateInput>> = {
  engine: {
    recipe: 'engine-plate',
    thickness: 6,
    make: 'drill',
    rails: { spacing: 220, pitch: 180, bolts: 2, bolt: 'M8' },
  },
  axle: {
    recipe: 'axle-plate',
    thickness: 6,
    make: 'torch',
    pair: true,
    inStack: 'plate-left',
    axle: 15,
    margin: 16,
    landings: [{ at: 'rail-rear', tubing: 'rail' }],
    adjuster: { bolt: 'M8', width: 40, length: 35, out: 18 },
  },
  counter: {
    recipe: 'countershaft-plate',
    thickness: 6,
    make: 'torch',
    shaft: 'countershaft',
    y: 60,
    seat: { kind: 'bore', bearing: '6202', fit: 'N7' },
    margin: 14,
    foot: { height: 70, width: 90, bolts: 2, bolt: 'M8', pitch: 55, edge: 16 },
  },
  outboard: {
    recipe: 'outboard-support',
    thickness: 6,
    make: 'saw',
    shaft: 'countershaft',
    y: 140,
    seat: { kind: 'flange', bolts: 2, boltCircle: 90, bolt: 'M10', opening: 40 },
    margin: 12,
    upright: 24,
    foot: { height: 140, width: 150, flange: { length: 40 }, bolts: 2, bolt: 'M8', pitch: 100, edge: 16 },
  },
  caliper: {
    recipe: 'caliper-bracket',
    thickness: 6,
    make: 'drill',
    brake: 'rear',
    margin: 9,
    anchors: [{ radius: 60, clock: 200, bolt: 'M8' }],
  },
  'seat-front': {
    recipe: 'seat-mount-front',
    thickness: 3,
    make: 'saw',
    place: { from: 'rearAxle', forward: 350, height: 540 },
    holePattern: { across: 60, along: 40, bolt: 'M6' },
    length: 90,
    width: 110,
    tongue: { width: 50, length: 45, bend: { angle: 60, direction: 'down' }, bolt: 'M6', tip: 15 },
  },
  'seat-rear': {
    recipe: 'seat-mount-rear',
    thickness: 3,
    make: 'saw',
    place: { from: 'rearAxle', forward: 0, height: 545 },
    holePattern: { across: 60, along: 0, bolt: '1/4 in' },
    length: 60,
    width: 100,
    tongue: { width: 40, length: 40 },
  },
  gusset: {
    recipe: 'gusset',
    thickness: 4,
    make: 'saw',
    pair: true,
    at: 'rail-front',
    between: ['rail', 'down'],
    legs: [70, 60],
    hollow: 6,
  },
  peg: {
    recipe: 'peg-tab',
    thickness: 6,
    make: 'drill',
    pair: true,
    place: { from: 'rail-rear', forward: 300 },
    seat: 'saddle',
    tube: '1 in',
    height: 30,
    base: 22,
    noseRadius: 16,
    bolt: 'M10',
  },
  stand: {
    recipe: 'stand-tab',
    thickness: 6,
    make: 'drill',
    place: { from: 'rail-rear', forward: 200 },
    stands: 270,
    tube: '1 in',
    height: 34,
    base: 60,
    noseRadius: 18,
    bolt: '3/8 in',
    stop: { x: 18, y: -20, diameter: 6 },
  },
  free: {
    recipe: 'free',
    thickness: 5,
    make: 'torch',
    material: 'aluminum-6061',
    corners: [
      { x: 0, y: 0, radius: 10 },
      { x: 120, y: 0, bulge: 0.3 },
      { x: 120, y: 60 },
      { x: 0, y: 80, radius: 25 },
    ],
    holes: [
      { x: 30, y: 25, bolt: 'M8' },
      { x: 80, y: 40, diameter: 20 },
      { x: 60, y: 18, bolt: 'M6', travel: 20, direction: 15 },
    ],
    windows: [
      [
        { x: 20, y: 45, radius: 3 },
        { x: 55, y: 45, radius: 3 },
        { x: 35, y: 66, radius: 3 },
      ],
    ],
    place: { from: 'rearAxle', forward: 200, left: 80, up: 100 },
  },
};

const FURNISHED: Patch = {
  driveline: {
    shafts: {
      engine: { slide: { direction: 180 } },
      rearAxle: { slide: { direction: 180 } },
      countershaft: { at: { from: 'rearAxle', forward: 250, up: 60 }, diameter: 15, length: 300 },
    },
  },
  frame: {
    nodes: { 'down-top': { from: 'rail-front', forward: 160, up: 240 } },
    tubes: { down: { tubing: 'rail', through: ['rail-front', 'down-top'], mirror: true } },
  },
  brakes: {
    rear: {
      kind: 'disc',
      side: 'right',
      disc: { diameter: 160, thickness: 3 },
      caliper: { mountSpacing: 60, bolt: 8, lugOffset: 10, lugRadius: 85, clock: 125 },
    },
  },
};

/** The small build with a countershaft, an upright tube, a rear disc and the given plates, patched last. */
export function plateBuild(
  plates: Readonly<Record<string, PlateInput>> = everyPlate,
  patch: Patch = {},
): Build {
  return smallBuild(mergePatch(mergePatch(FURNISHED, { plates }), patch) as Patch);
}

/** Bike of a build with every shaft as drawn. */
export function bikeOf(build: Build): Bike {
  const layout = layOut(build);
  return placeBike(build, layout, layout.shafts);
}

/** Slides that the small build's drives might need, invented. */
export const someNeeds: readonly SlotNeed[] = [
  { shaft: 'engine', length: 0.026, direction: Math.PI, middle: 0.004 },
  { shaft: 'rearAxle', length: 0.03, direction: Math.PI, middle: 0.01 },
];
