import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Feature,
  featureY,
  layLadder,
  layOut,
  placeStacks,
  type Row,
  type RowPin,
  solveRows,
} from '../../src/core/bike/index.ts';
import type { Build, StackItem } from '../../src/core/build/index.ts';
import { smallBuild } from '../support/smallBuild.ts';

/** Sums and halves of up to some dozen lengths under 1 m: rounding stays far below this [m]. */
const ROUNDING = 1e-11;

const length = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });

/** Millimeters of a bike with one wheel stack and one engine stack, all of it consistent. */
const sizes = fc.record({
  hub: length(60, 160),
  hubSpacer: length(0, 40),
  sprocket: length(3, 12),
  at: length(0, 3),
  rimOffset: length(-15, 15),
  halfFrame: length(90, 150),
  face: length(-40, 90),
  side: length(-40, 40),
  clutch: length(20, 60),
});

const bikeOf = (size: typeof sizes extends fc.Arbitrary<infer T> ? T : never): Build =>
  smallBuild({
    wheels: { rear: { hub: { width: size.hub, rimOffset: size.rimOffset } } },
    engine: { place: { side: size.side }, shaft: { face: size.face } },
    stacks: {
      rearAxle: {
        items: [
          {
            id: 'plate-left',
            kind: 'plate',
            length: 6,
            pin: { to: 'place', feature: 'right-face', y: size.halfFrame },
          },
          { id: 'spacer-left', kind: 'spacer', length: 'solve' },
          {
            id: 'sprocket',
            kind: 'sprocket',
            length: size.sprocket,
            planes: [{ runs: 'sprocket', drive: 'final', at: size.at }],
          },
          { id: 'spacer-hub', kind: 'spacer', length: size.hubSpacer },
          { id: 'hub', kind: 'hub', length: size.hub, pin: { to: 'rim-center' } },
          { id: 'spacer-right', kind: 'spacer', length: 'solve' },
          {
            id: 'plate-right',
            kind: 'plate',
            length: 6,
            pin: { to: 'place', feature: 'left-face', y: -size.halfFrame },
          },
        ],
      },
      engine: {
        items: [
          {
            id: 'clutch',
            kind: 'clutch',
            length: size.clutch,
            planes: [{ runs: 'sprocket', drive: 'final', at: 15 }],
            pin: { to: 'in-line', drive: 'final' },
          },
          { id: 'spacer-shaft', kind: 'spacer', length: 'solve' },
          { id: 'face', kind: 'face', length: 0, pin: { to: 'engine-face' } },
        ],
      },
    },
  });

type Item = Build['stacks'][string]['items'][number];
const negative = <T extends number>(value: T): T => -value as T;

/** The same bike seen in a mirror: left is right. */
function mirrored(build: Build): Build {
  const { rear } = build.wheels;
  const shaft = build.engine.shaft;
  return {
    ...build,
    wheels: {
      ...build.wheels,
      rear: { ...rear, hub: { ...rear.hub, rimOffset: negative(rear.hub.rimOffset!) } },
    },
    engine: {
      ...build.engine,
      place: { ...build.engine.place, side: negative(build.engine.place.side!) },
      shaft: { ...shaft, side: shaft.side === 'left' ? 'right' : 'left' },
    },
    stacks: Object.fromEntries(
      Object.entries(build.stacks).map(([name, entry]) => [
        name,
        { ...entry, items: [...entry.items].reverse().map(mirroredItem) },
      ]),
    ),
  };
}

function mirroredItem(item: Item): Item {
  const { pin, planes, ...rest } = item;
  return {
    ...rest,
    ...(planes === undefined ? {} : { planes: planes.map((plane) => mirroredPlane(plane, item.length)) }),
    ...(pin === undefined
      ? {}
      : { pin: pin.to === 'place' ? { ...pin, feature: otherFace[pin.feature], y: negative(pin.y) } : pin }),
  };
}

const otherFace = { 'left-face': 'right-face', 'right-face': 'left-face', middle: 'middle' } as const;

function mirroredPlane(plane: NonNullable<StackItem['planes']>[number], whole: Item['length']) {
  if (plane.at === undefined || whole === 'solve') return plane;
  return { ...plane, at: (whole - plane.at) as typeof plane.at };
}

test('a mirrored bike has mirrored stacks and a mirrored chain line', () => {
  fc.assert(
    fc.property(sizes, (size) => {
      const build = bikeOf(size);
      const image = mirrored(build);
      const [stacks, images] = [placeStacks(build, layOut(build)), placeStacks(image, layOut(image))];
      for (const [name, stack] of Object.entries(stacks)) {
        for (const item of stack.items) {
          const other = images[name]!.items.find((one) => one.id === item.id)!;
          expect(Math.abs(item.left + other.right)).toBeLessThan(ROUNDING);
          expect(Math.abs(item.length - other.length)).toBeLessThan(ROUNDING);
        }
        expect(images[name]!.gaps.length).toBe(stack.gaps.length);
      }
      const [line] = layLadder(build, layOut(build), stacks).lines;
      const [other] = layLadder(image, layOut(image), images).lines;
      expect(Math.abs(line!.drivenY + other!.drivenY)).toBeLessThan(ROUNDING);
      expect(Math.abs(line!.offset)).toBeLessThan(ROUNDING);
    }),
    { numRuns: 200 },
  );
});

test('both sides of every line add up to the plane, whatever the sizes', () => {
  fc.assert(
    fc.property(sizes, length(0, 40), (size, spacer) => {
      const closed = bikeOf(size);
      const engine = closed.stacks.engine!;
      const items = engine.items.map((item) => {
        const { pin: _, ...free } = item;
        if (item.id === 'clutch') return free;
        return item.id === 'spacer-shaft'
          ? { ...item, length: (spacer / 1000) as Exclude<Item['length'], 'solve'> }
          : item;
      });
      const build = { ...closed, stacks: { ...closed.stacks, engine: { ...engine, items } } };
      const [line] = layLadder(build, layOut(build), placeStacks(build, layOut(build))).lines;
      const { driverY, drivenY, driverSteps, drivenSteps, offset } = line!;
      const reach = (steps: typeof driverSteps) => steps.reduce((sum, step) => sum + step.to - step.from, 0);
      const outward = (steps: typeof driverSteps) => steps.reduce((sum, step) => sum + step.length, 0);
      expect(Math.abs(reach(driverSteps) - driverY)).toBeLessThan(ROUNDING);
      expect(Math.abs(reach(drivenSteps) - drivenY)).toBeLessThan(ROUNDING);
      expect(Math.abs(outward(drivenSteps) - Math.abs(drivenY))).toBeLessThan(ROUNDING);
      expect(Math.abs(offset - (driverY - drivenY))).toBeLessThan(ROUNDING);
    }),
    { numRuns: 200 },
  );
});

test('a shim on a solved side shortens the spacer there by itself and moves nothing else', () => {
  fc.assert(
    fc.property(sizes, length(0.05, 5), (size, shim) => {
      const build = bikeOf(size);
      const rear = build.stacks.rearAxle!;
      const washer = {
        id: 'shim',
        kind: 'washer',
        length: (shim / 1000) as Exclude<Item['length'], 'solve'>,
      } as const;
      const items = rear.items.flatMap((item): Item[] =>
        item.id === 'spacer-right' ? [item, washer] : [item],
      );
      const shimmed = { ...build, stacks: { ...build.stacks, rearAxle: { ...rear, items } } };
      const [before, after] = [placeStacks(build, layOut(build)), placeStacks(shimmed, layOut(shimmed))];
      for (const item of before.rearAxle!.items) {
        const now = after.rearAxle!.items.find((one) => one.id === item.id)!;
        const change = item.id === 'spacer-right' ? -shim / 1000 : 0;
        expect(Math.abs(now.length - item.length - change)).toBeLessThan(ROUNDING);
        expect(Math.abs(now.left - item.left)).toBeLessThan(ROUNDING);
      }
    }),
    { numRuns: 200 },
  );
});

/** Rows with arbitrary unknowns and pins: mostly contradictory or open, as files in the making are. */
const anyRows = fc
  .array(fc.array(fc.oneof(fc.constant('solve' as const), length(0, 0.2)), { minLength: 1, maxLength: 6 }), {
    minLength: 1,
    maxLength: 4,
  })
  .chain((lengths) => {
    const feature: fc.Arbitrary<Feature> = fc.nat({ max: lengths.length - 1 }).chain((row) =>
      fc.record({
        row: fc.constant(row),
        item: fc.nat({ max: lengths[row]!.length - 1 }),
        offset: length(-0.05, 0.05),
        share: fc.constantFrom(0, 0.5, 1),
      }),
    );
    const pin: fc.Arbitrary<RowPin> = fc.record({ on: feature, at: fc.oneof(length(-0.3, 0.3), feature) });
    const rows: readonly Row[] = lengths.map((row, r) => ({
      id: `row${r}`,
      items: row.map((one, i) => ({ id: `item${i}`, length: one })),
    }));
    return fc.tuple(fc.constant(rows), fc.array(pin, { maxLength: 8 }));
  });

test('whatever the pins, everything is placed, and each pin holds or a misfit of its size is told', () => {
  fc.assert(
    fc.property(anyRows, ([rows, pins]) => {
      const solved = solveRows(rows, pins);
      const numbers = [
        ...solved.lefts,
        ...solved.lengths.flat(),
        ...solved.misfits.map((misfit) => misfit.excess),
      ];
      expect(numbers.every(Number.isFinite)).toBe(true);
      rows.forEach((row, r) => {
        row.items.forEach((item, i) => {
          if (item.length !== 'solve') expect(solved.lengths[r]![i]).toBe(item.length);
        });
      });
      // The solution's own residuals, computed without the solver: every broken pin has been told.
      const errors = pins.map(
        (pin) => featureY(solved, pin.on) - (typeof pin.at === 'number' ? pin.at : featureY(solved, pin.at)),
      );
      const broken = errors.filter((error) => Math.abs(error) > 0.0501e-3);
      expect(solved.misfits.length).toBeGreaterThanOrEqual(broken.length);
      for (const error of broken) {
        const told = solved.misfits.map((misfit) => Math.abs(Math.abs(misfit.excess) - Math.abs(error)));
        expect(Math.min(...told)).toBeLessThan(1e-9);
      }
    }),
    { numRuns: 1000 },
  );
});

test('scaling every length and pin scales the solution', () => {
  fc.assert(
    fc.property(anyRows, fc.constantFrom(0.5, 2, 4), ([rows, pins], factor) => {
      const feature = (one: Feature): Feature => ({ ...one, offset: one.offset * factor });
      const scaled = solveRows(
        rows.map((row) => ({
          ...row,
          items: row.items.map((item) => ({
            ...item,
            length: item.length === 'solve' ? item.length : item.length * factor,
          })),
        })),
        pins.map((pin) => ({
          on: feature(pin.on),
          at: typeof pin.at === 'number' ? pin.at * factor : feature(pin.at),
        })),
      );
      const solved = solveRows(rows, pins);
      // Powers of two scale without rounding.
      for (const [row, left] of solved.lefts.entries())
        expect(scaled.lefts[row]! - left * factor).toBeCloseTo(0, 12);
      expect(scaled.gaps).toEqual(solved.gaps);
    }),
    { numRuns: 300 },
  );
});
