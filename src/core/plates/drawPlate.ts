import type { PlateEntry, PlateHole } from '../build/index.ts';
import { type Frame3, isSimpleLoop, type Loop, type Outline, outlineOf, toWorld } from '../geometry/index.ts';
import { derived, describeIssue, good, type Issue, type Outcome } from '../quantity/index.ts';
import { materialNamed } from '../standards/index.ts';
import { edgesOf, type PlateEdges } from './edges.ts';
import { mirroredFrame } from './frames.ts';
import { type HoleMaking, makeOpening } from './holeSteps.ts';
import { measureRegion } from './measure.ts';
import { boltHole, holePlan, tappedHole } from './openings.ts';
import { cornersLoop } from './outlines.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';
import { materialOf, type OpeningPlan, type PlateContext, type PlateShape } from './plan.ts';
import { axlePlate } from './recipes/axlePlate.ts';
import { bearingPlate } from './recipes/bearingPlate.ts';
import { caliperBracket } from './recipes/caliperBracket.ts';
import { enginePlate } from './recipes/enginePlate.ts';
import { freePlate } from './recipes/freePlate.ts';
import { gusset } from './recipes/gusset.ts';
import { seatMount } from './recipes/seatMount.ts';
import { tab } from './recipes/tab.ts';
import { operationLimits } from './shopLimits.ts';

/** A plate as drawn, or why it could not be, with what its recipe found. */
export interface DrawnPlate {
  readonly plate?: { readonly pattern: FlatPattern; readonly edges: PlateEdges };
  readonly flaws: readonly PlateFlaw[];
}

/** A plate that reaches nearer to the center plane than this belongs to no side [m]. */
const ON_CENTER = 1e-3;

/**
 * One plate in the flat: exact outline, openings with the steps that make them, bends, checks, mass and place.
 * Without a pattern when it can't be drawn from what is given; the flaws say why.
 * @source derived, outlines by recipe; region properties by Green's theorem
 */
export function drawPlate(context: PlateContext, entry: PlateEntry): DrawnPlate {
  const shape = drawShape(context, entry);
  if (!shape.ok) return { flaws: [undrawable(context.id, shape.issues)] };
  const flaws = shape.value.flaws ?? [];
  const outline = outlineOf(shape.value.outline);
  if (!isSimpleLoop(outline)) return { flaws: [...flaws, crossing(context.id)] };
  const plate = patternOf(context, entry, shape.value, outline);
  if (!plate.ok) return { flaws: [...flaws, undrawable(context.id, plate.issues)] };
  return { plate: plate.value, flaws };
}

function drawShape(context: PlateContext, entry: PlateEntry): Outcome<PlateShape> {
  switch (entry.recipe) {
    case 'engine-plate':
      return enginePlate(context, entry);
    case 'axle-plate':
      return axlePlate(context, entry);
    case 'countershaft-plate':
    case 'outboard-support':
      return bearingPlate(context, entry);
    case 'caliper-bracket':
      return caliperBracket(context, entry);
    case 'seat-mount-front':
    case 'seat-mount-rear':
      return seatMount(context, entry);
    case 'gusset':
      return gusset(context, entry);
    case 'peg-tab':
    case 'stand-tab':
      return tab(context, entry);
    case 'free':
      return freePlate(context, entry);
  }
}

function undrawable(plate: string, issues: readonly Issue[]): PlateFlaw {
  return {
    plate,
    rule: 'cannot-be-drawn',
    features: [...new Set(issues.map((issue) => issue.path))],
    value: issues.length,
    limit: 0,
    kind: 'count',
    severity: 'stop',
    remedy: `Look at ${issues.map(describeIssue).join('; ')}.`,
    source: derived('the outline does not follow from what is given'),
  };
}

const crossing = (plate: string): PlateFlaw => ({
  plate,
  rule: 'outline-crosses-itself',
  features: ['outline'],
  value: 1,
  limit: 0,
  kind: 'count',
  severity: 'stop',
  remedy: 'Put the corners in order round the plate; check radii, hollow and sizes that leave no width.',
  source: derived('pieces of the outline meet where they should not'),
});

function patternOf(
  context: PlateContext,
  entry: PlateEntry,
  shape: PlateShape,
  outline: Outline,
): Outcome<NonNullable<DrawnPlate['plate']>> {
  const { shop } = context.build;
  const limits = operationLimits(shop, entry.make);
  const cuts = cutsOf(entry, shape, {
    make: entry.make,
    thickness: entry.thickness,
    limits,
    drill: operationLimits(shop, entry.make === 'saw' ? 'saw' : 'drill'),
  });
  if (!cuts.ok) return cuts;
  const edges = edgesOf(outline, cuts.value);
  const measured = measureRegion(outline, [...edges.openings.map(({ edge }) => edge), ...edges.windows]);
  if (!measured.ok) return measured;
  const { area, centroid, ixx, iyy, ixy } = measured.value;
  const material = materialOf(entry);
  const { density, source } = materialNamed(material);
  const pair = entry.pair ?? false;
  const pattern: FlatPattern = {
    id: context.id,
    title: entry.purpose ?? shape.title,
    recipe: entry.recipe,
    thickness: entry.thickness,
    material,
    make: entry.make,
    count: (pair ? 2 : 1) * (entry.count ?? 1),
    pair,
    outline: shape.outline,
    ...cuts.value,
    punches: shape.punches ?? [],
    bends: shape.bends ?? [],
    checks: shape.checks ?? [],
    ...(shape.up ? { up: shape.up } : {}),
    area,
    centroid,
    secondMoments: [ixx, iyy, ixy],
    mass: area * entry.thickness * density,
    placed: shape.frame ? copies(shape.outline, shape.frame, entry.thickness, pair) : [],
    oldHoles: oldHolesOf(entry),
    notes: shape.notes ?? [],
    sources: [...(shape.sources ?? []), limits.source, source],
  };
  return good({ pattern, edges });
}

/** Openings and windows of the recipe, then those that the file adds. */
function cutsOf(
  entry: PlateEntry,
  shape: PlateShape,
  making: HoleMaking,
): Outcome<Pick<FlatPattern, 'openings' | 'windows'>> {
  const openings = furtherOpenings(entry);
  if (!openings.ok) return openings;
  const windows = furtherWindows(entry);
  if (!windows.ok) return windows;
  return good({
    openings: [...shape.openings, ...openings.value].map((plan) => makeOpening(plan, making)),
    windows: [...(shape.windows ?? []), ...windows.value],
  });
}

function copies(outline: Loop, frame: Frame3, thickness: number, pair: boolean): FlatPattern['placed'] {
  if (pair) {
    const other = mirroredFrame(frame, thickness);
    const [left, right] = frame.origin.y >= 0 ? [frame, other] : [other, frame];
    return [
      { hand: 'left', frame: left },
      { hand: 'right', frame: right },
    ];
  }
  const ys = outline.map((v) => toWorld(frame, { ...v, z: thickness / 2 }).y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const side = low > ON_CENTER ? 'left' : high < -ON_CENTER ? 'right' : 'center';
  return [{ hand: side, frame }];
}

function furtherOpenings(entry: PlateEntry): Outcome<readonly OpeningPlan[]> {
  const plans: OpeningPlan[] = [];
  for (const [i, hole] of (entry.holes ?? []).entries()) {
    const plan = furtherOpening(hole, i);
    if (!plan.ok) return plan;
    plans.push(plan.value);
  }
  return good(plans);
}

function furtherOpening(hole: PlateHole, i: number): Outcome<OpeningPlan> {
  const center = { x: hole.x, y: hole.y };
  const id = `hole-${i + 1}`;
  const slot =
    hole.travel === undefined
      ? {}
      : ({ kind: 'slot', travel: hole.travel, direction: hole.direction ?? 0 } as const);
  const named = hole.for === undefined ? {} : { for: hole.for };
  if (hole.diameter !== undefined) {
    const { diameter } = hole;
    return good({
      id,
      kind: 'hole',
      center,
      diameter,
      for: 'free hole',
      carries: 'nothing',
      system: 'metric',
      ...slot,
      ...named,
    });
  }
  const bolt =
    hole.thread === undefined
      ? boltHole(hole.bolt!, `holes[${i}].bolt`, hole.fit)
      : tappedHole(hole.thread, `holes[${i}].thread`);
  if (!bolt.ok) return bolt;
  return good({ ...holePlan(id, center, bolt.value), ...slot, ...named });
}

function furtherWindows(entry: PlateEntry): Outcome<readonly Loop[]> {
  const loops: Loop[] = [];
  for (const [i, corners] of (entry.windows ?? []).entries()) {
    const loop = cornersLoop(corners, `windows[${i}]`);
    if (!loop.ok) return loop;
    loops.push(loop.value);
  }
  return good(loops);
}

function oldHolesOf(entry: PlateEntry): FlatPattern['oldHoles'] {
  const old = entry.oldHoles;
  if (!old) return [];
  return [1, -1].flatMap((sx) =>
    [1, -1].map((sy) => ({
      center: {
        x: (old.x ?? 0) + (sx * old.alongBike) / 2,
        y: (old.y ?? 0) + (sy * old.acrossBike) / 2,
      },
      diameter: old.diameter,
    })),
  );
}
