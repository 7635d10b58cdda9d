import type { Build, StackItem, Stage, WheelEntry } from '../build/index.ts';
import type { Layout, PlacedPlane, StackGap } from './bike.ts';
import { type Feature, leftFace, middle, type Row, type RowPin, rightFace } from './stackRows.ts';

/** A plane in an item that other things must meet. */
export interface ModelPlane extends Omit<PlacedPlane, 'y'> {
  readonly on: Feature;
}

/** A pin of the build file with the equation it became. */
export interface ModelPin extends RowPin {
  readonly to: NonNullable<StackItem['pin']>['to'];
  readonly drive?: string;
}

/** All stacks of a build as rows, planes and pins. */
export interface StackModel {
  /** Names of the stacks, in the order of the rows. */
  readonly names: readonly string[];
  readonly rows: readonly Row[];
  readonly planes: readonly ModelPlane[];
  /** Strongest first: the rim and the engine are what everything else is measured from. */
  readonly pins: readonly ModelPin[];
  /** Pins that lead nowhere. */
  readonly gaps: readonly StackGap[];
}

/** Which pin wins where two do not agree. */
const STRENGTH: Readonly<Record<ModelPin['to'], number>> = {
  'rim-center': 0,
  'engine-face': 1,
  place: 2,
  caliper: 3,
  'in-line': 4,
};

const RUNS_BY_KIND: Readonly<Partial<Record<StackItem['kind'], PlacedPlane['runs']>>> = {
  sprocket: 'sprocket',
  clutch: 'sprocket',
  sheave: 'sheave',
  disc: 'disc',
};

/** Rows, planes and pins of the stacks of a build; nothing is worked out yet. */
export function stackModel(build: Build, layout: Layout): StackModel {
  const names = Object.keys(build.stacks);
  const entries = names.map((name) => build.stacks[name]!);
  const rows = entries.map((entry, row) => ({ id: names[row]!, items: entry.items }));
  const planes = entries.flatMap((entry, row) =>
    entry.items.flatMap((item, i) => planesOf(item, { row, item: i, wheel: wheelOn(build, entry.shaft) })),
  );
  const pins: ModelPin[] = [];
  const gaps: StackGap[] = [];
  entries.forEach((entry, row) => {
    entry.items.forEach((item, i) => {
      const found = pinOf({ build, layout, planes, entries, item, row, index: i });
      if (found === 'free') return;
      if (typeof found === 'string') gaps.push({ stack: names[row]!, reason: found, items: [item.id] });
      else pins.push(found);
    });
  });
  return { names, rows, planes, pins: pins.sort((a, b) => STRENGTH[a.to] - STRENGTH[b.to]), gaps };
}

/** The wheel that turns on a shaft, for its default hub and rim. */
export function wheelOn(build: Build, shaft: string): WheelEntry | undefined {
  if (shaft === 'rearAxle') return build.wheels.rear;
  return shaft === 'frontAxle' ? build.wheels.front : undefined;
}

/** The stage that a pin or plane names. */
export const stageOf = (build: Build, drive: string): Exclude<Stage, { kind: 'clutch' }> | undefined =>
  build.driveline.stages.filter((stage) => stage.kind !== 'clutch').find((stage) => stage.id === drive);

interface ItemPlace {
  readonly row: number;
  readonly item: number;
  readonly wheel: WheelEntry | undefined;
}

function planesOf(item: StackItem, { row, item: index, wheel }: ItemPlace): readonly ModelPlane[] {
  const given = (item.planes ?? []).map(
    ({ runs, drive, brake, at }): ModelPlane => ({
      runs,
      ...(drive === undefined ? {} : { drive }),
      ...(brake === undefined ? {} : { brake }),
      on: at === undefined ? middle(row, index) : { row, item: index, offset: at, share: 0 },
    }),
  );
  const implied = impliedPlane(item, { row, item: index, wheel }, given);
  return implied === undefined ? given : [...given, implied];
}

/** A hub has a rim and a pinned sprocket or disc a plane, even where the file does not spell it out. */
function impliedPlane(
  item: StackItem,
  { row, item: index, wheel }: ItemPlace,
  given: readonly ModelPlane[],
): ModelPlane | undefined {
  const on = middle(row, index);
  const pin = item.pin;
  if ((item.kind === 'hub' && wheel !== undefined) || pin?.to === 'rim-center') {
    if (given.some((plane) => plane.runs === 'rim')) return undefined;
    // The rim left of the hub's middle lies nearer the left face.
    return { runs: 'rim', on: { ...on, offset: -(wheel?.hub.rimOffset ?? 0) } };
  }
  if (pin?.to === 'in-line' && !given.some((plane) => plane.drive === pin.drive))
    return { runs: RUNS_BY_KIND[item.kind] ?? 'sprocket', drive: pin.drive, on };
  if (pin?.to === 'caliper' && !given.some((plane) => plane.brake === pin.brake))
    return { runs: 'disc', brake: pin.brake, on };
  return undefined;
}

interface PinContext {
  readonly build: Build;
  readonly layout: Layout;
  readonly planes: readonly ModelPlane[];
  readonly entries: readonly Build['stacks'][string][];
  readonly item: StackItem;
  readonly row: number;
  readonly index: number;
}

/** The pin of an item; `free` where there is none or where what it follows is itself free. */
function pinOf(context: PinContext): ModelPin | 'free' | 'unknown-drive' | 'no-pin' {
  const { build, layout, planes, item, row, index } = context;
  const pin = item.pin;
  if (pin === undefined) return 'free';
  const own = (fits: (plane: ModelPlane) => boolean): Feature =>
    planes.find((plane) => plane.on.row === row && plane.on.item === index && fits(plane))?.on ??
    middle(row, index);
  switch (pin.to) {
    case 'place':
      return { to: pin.to, on: faceOf(pin.feature, row, index), at: pin.y };
    case 'rim-center':
      return { to: pin.to, on: own((plane) => plane.runs === 'rim'), at: 0 };
    case 'engine-face': {
      // A shaft pointing left has the engine on its right, so it is the right face that bears on the engine.
      const on = build.engine.shaft.side === 'left' ? rightFace(row, index) : leftFace(row, index);
      return { to: pin.to, on, at: engineFaceY(build, layout) };
    }
    case 'caliper': {
      const brake = build.brakes[pin.brake];
      if (brake === undefined || brake.kind !== 'disc') return 'no-pin';
      const { centerY } = brake.caliper;
      return centerY === undefined
        ? 'free'
        : { to: pin.to, on: own((p) => p.brake === pin.brake), at: centerY };
    }
    case 'in-line': {
      const at = otherPlane(context, pin.drive);
      if (at === undefined) return 'unknown-drive';
      return { to: pin.to, drive: pin.drive, on: own((plane) => plane.drive === pin.drive), at };
    }
  }
}

/** Y of the engine face that the shaft comes out of [m]. */
export function engineFaceY(build: Build, layout: Layout): number {
  const base = layout.points.engineBase;
  if (base === undefined) throw new Error('a layout without its engine base');
  const { side, face } = build.engine.shaft;
  return base.y + (side === 'left' ? face : -face);
}

function faceOf(feature: 'left-face' | 'right-face' | 'middle', row: number, item: number): Feature {
  if (feature === 'middle') return middle(row, item);
  return feature === 'left-face' ? leftFace(row, item) : rightFace(row, item);
}

/** The plane of the same drive on the shaft at its other end. */
function otherPlane({ build, planes, entries, row, index }: PinContext, drive: string): Feature | undefined {
  const stage = stageOf(build, drive);
  if (stage === undefined) return undefined;
  const shaftOf = (one: number) => entries[one]?.shaft;
  const wanted = shaftOf(row) === stage.from ? stage.to : stage.from;
  const others = planes.filter(
    (plane) => plane.drive === drive && !(plane.on.row === row && plane.on.item === index),
  );
  return others.find((plane) => shaftOf(plane.on.row) === wanted)?.on;
}
