import type { z } from 'zod';
import { type Build, buildSchema } from '../../src/core/build/index.ts';

export type BuildInput = z.input<typeof buildSchema>;

/** A JSON Merge Patch (RFC 7396): objects merge, null removes, anything else replaces. */
export type Patch = { readonly [key: string]: unknown };

/**
 * An invented, complete and modest build with one chain from the engine to the rear wheel, as a person would
 * type it. Every number is there for a test to lean on, none describes a real machine.
 */
export const smallBuildInput: BuildInput = {
  version: 1,
  about: { name: 'small test build', invented: true },
  rider: { mass: 80 },
  wheels: {
    rear: {
      tire: { diameter: 330, width: 90 },
      hub: { width: 100, bore: 15 },
      mass: 6,
    },
    front: {
      tire: { diameter: 330, width: 90 },
      hub: { width: 80, bore: 12 },
      mass: 5,
    },
  },
  steering: {
    wheelbase: 1050,
    headAngle: 64,
    forkOffset: 38,
    forkLength: 420,
    neck: { length: 120, outside: 38, wall: 3 },
    fork: { kind: 'rigid', legSpacing: 150, legDiameter: 32, dropoutSpacing: 110, mass: 4 },
    bars: { grip: { from: 'neckTop', left: 320, up: 150, forward: -60 }, mass: 1.5 },
  },
  frame: {
    tubing: { rail: { outside: '1 in', wall: 2.1 } },
    nodes: {
      'rail-rear': { from: 'rearAxle', left: 110, forward: 40 },
      'rail-front': { from: 'rearAxle', left: 110, forward: 500 },
    },
    tubes: { rail: { tubing: 'rail', through: ['rail-rear', 'rail-front'], mirror: true } },
  },
  engine: {
    class: '196 cc class, 3/4 in shaft',
    place: { from: 'rearAxle', forward: 430, up: 20, side: -10 },
    envelope: { length: 320, width: 360, height: 330 },
    mount: { alongBike: 162, acrossBike: 75.5, bolt: 'M8' },
    shaft: {
      side: 'left',
      diameter: '3/4 in',
      length: 62,
      key: '3/16 in',
      height: 106,
      forward: 0,
      face: 60,
    },
    mass: 16,
  },
  driveline: {
    shafts: {},
    stages: [
      { id: 'clutch', kind: 'clutch', on: 'engine', engages: 2000, locks: 2600 },
      {
        id: 'final',
        kind: 'chain',
        from: 'engine',
        to: 'rearAxle',
        chain: '#35',
        driverTeeth: 12,
        drivenTeeth: 72,
      },
    ],
  },
  stacks: {
    rearAxle: {
      shaft: 'rearAxle',
      items: [
        { id: 'plate-left', kind: 'plate', length: 6, pin: { to: 'place', feature: 'right-face', y: 105 } },
        { id: 'spacer-left', kind: 'spacer', length: 'solve' },
        { id: 'sprocket', kind: 'sprocket', length: 5, planes: [{ runs: 'sprocket', drive: 'final' }] },
        { id: 'spacer-hub', kind: 'spacer', length: 20 },
        { id: 'hub', kind: 'hub', length: 100, pin: { to: 'rim-center' } },
        { id: 'spacer-right', kind: 'spacer', length: 'solve' },
        { id: 'plate-right', kind: 'plate', length: 6, pin: { to: 'place', feature: 'left-face', y: -105 } },
      ],
    },
    engine: {
      shaft: 'engine',
      items: [
        {
          id: 'clutch',
          kind: 'clutch',
          length: 40,
          planes: [{ runs: 'sprocket', drive: 'final', at: 30 }],
          pin: { to: 'in-line', drive: 'final' },
        },
        { id: 'spacer-shaft', kind: 'spacer', length: 'solve' },
        { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
      ],
    },
  },
  plates: {},
  brakes: {},
  seating: {
    seat: { place: { from: 'rearAxle', forward: 150, height: 560 }, length: 400, width: 220 },
    pegs: { place: { from: 'rearAxle', forward: 420, left: 180, height: 220 }, length: 90, diameter: 22 },
  },
};

/** The small build with `patch` merged into its JSON, read through the schema. Throws when the result is no build. */
export function smallBuild(patch: Patch = {}): Build {
  return buildSchema.parse(mergePatch(smallBuildInput, patch));
}

/** RFC 7396 on plain JSON values; arguments are left as they are. */
export function mergePatch(target: unknown, patch: unknown): unknown {
  if (!isTable(patch)) return patch;
  const merged: Record<string, unknown> = isTable(target) ? { ...target } : {};
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) delete merged[key];
    else merged[key] = mergePatch(merged[key], value);
  }
  return merged;
}

const isTable = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
