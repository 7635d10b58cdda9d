import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bikeMeshes,
  layOut,
  placeBike,
  placeTubes,
  resolveLayout,
  standOn,
  sumLumps,
  weigh,
} from '../../src/core/bike/index.ts';
import { toWorld } from '../../src/core/geometry/index.ts';
import { smallBuild } from '../support/smallBuild.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

describe('layout', () => {
  test('a mirrored tube is the mirror image of its pair, copes and mass included', () => {
    fc.assert(
      fc.property(between(20, 200), between(150, 600), between(200, 700), (side, forward, height) => {
        const build = smallBuild({
          frame: {
            nodes: {
              foot: { from: 'rearAxle', left: side, forward },
              knee: { from: 'foot', forward: 300, up: 20 },
              head: { from: 'neckBottom', along: { toward: 'neckTop', distance: 40 } },
              shoulder: { from: 'origin', side, forward: forward + 250, height },
            },
            tubes: {
              rail: null,
              side: {
                tubing: 'rail',
                through: ['foot', 'knee', 'shoulder', 'head'],
                mirror: true,
                centerlineRadius: 20,
                end: { joint: 'cope', onto: 'neck' },
              },
            },
          },
        });
        const { tubes } = placeTubes(build, layOut(build));
        const [left, right] = tubes;
        if (!left || !right) throw new Error('a pair is two tubes');
        expect(right.mass).toBeCloseTo(left.mass, 9);
        expect(right.centerline.length).toBeCloseTo(left.centerline.length, 12);
        left.centerline.pieces.forEach((piece, k) => {
          const other = right.centerline.pieces[k]!;
          expect(other.from.x).toBeCloseTo(piece.from.x, 12);
          expect(other.from.y).toBeCloseTo(-piece.from.y, 12);
          expect(other.from.z).toBeCloseTo(piece.from.z, 12);
        });
        const [a, b] = [left.ends[1], right.ends[1]];
        expect(b.angle).toBeCloseTo(a.angle!, 12);
        expect(b.longPoint).toBeCloseTo(a.longPoint, 9);
        expect(b.shortPoint).toBeCloseTo(a.shortPoint, 9);
        // Mirrored, the cope turns the other way about the tube; half a turn is one place from both ways.
        expect(Math.cos(b.clock! + a.clock!)).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('a longer wheelbase carries the front along and leaves the rear where it is', () => {
    fc.assert(
      fc.property(between(500, 2400), between(-80, 80), (wheelbase, more) => {
        const points = (value: number) =>
          layOut(
            smallBuild({
              steering: { wheelbase: value },
              frame: {
                nodes: {
                  onNeck: { from: 'neckBottom', along: { toward: 'neckTop', distance: 30 }, left: 12 },
                  near: { from: 'onNeck', forward: -200, up: -50 },
                },
              },
            }),
          ).points;
        const [before, after] = [points(wheelbase), points(wheelbase + more)];
        for (const name of ['frontAxle', 'neckBottom', 'neckTop', 'onNeck', 'near', 'near.right']) {
          expect(after[name]!.x - before[name]!.x).toBeCloseTo(more / 1000, 9);
          expect(after[name]!.z).toBeCloseTo(before[name]!.z, 12);
        }
        for (const name of ['rearAxle', 'engineShaft', 'rail-rear'])
          expect(after[name]).toEqual(before[name]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('stance', () => {
  test('both tires touch the ground, and the frame keeps its shape', () => {
    fc.assert(
      fc.property(
        between(0.6, 2),
        between(0.95, 1.5),
        between(-0.03, 0.08),
        between(0.15, 0.35),
        between(0.15, 0.35),
        between(0, 0.08),
        between(0, 0.08),
        (wheelbase, headAngle, forkOffset, frontRadius, rearRadius, sag, rearRise) => {
          const design = { wheelbase, headAngle, forkOffset, frontRadius: 0.2, rearRadius: 0.22 };
          const stance = standOn('sag', design, { frontRadius, rearRadius, sag, rearRise });
          if (!stance.ok) throw new Error('these tires stand');
          const { frame, wheelbase: now, pitch } = stance.value;
          // Axles in the frame: the front one has come up its axis, the rear one has risen.
          const front = toWorld(frame, {
            x: wheelbase - sag * Math.cos(headAngle),
            y: 0,
            z: 0.2 + sag * Math.sin(headAngle),
          });
          const rear = toWorld(frame, { x: 0, y: 0, z: 0.22 + rearRise });
          expect(front.z).toBeCloseTo(frontRadius, 12);
          expect(rear.z).toBeCloseTo(rearRadius, 12);
          expect(rear.x).toBeCloseTo(0, 12);
          expect(front.x).toBeCloseTo(now, 12);
          expect(stance.value.headAngle - headAngle).toBeCloseTo(pitch, 12);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('masses', () => {
  test('the sum does not depend on the order or on how the parts are grouped', () => {
    const point = fc.record({
      mass: between(0.1, 20),
      x: between(-1, 1),
      y: between(-1, 1),
      z: between(0, 1),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), (points) => {
        const lumps = points.map(({ mass, x, y, z }) => ({
          mass,
          center: { x, y, z },
          inertia: [0, 0, 0, 0, 0, 0] as const,
        }));
        const at = Math.floor(lumps.length / 2);
        const grouped = sumLumps([sumLumps(lumps.slice(0, at)), sumLumps(lumps.slice(at))]);
        const plain = sumLumps([...lumps].reverse());
        expect(grouped.center.x).toBeCloseTo(plain.center.x, 10);
        plain.inertia.forEach((entry, k) => {
          expect(grouped.inertia[k]!).toBeCloseTo(entry, 9);
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('a build within the limits of the file', () => {
  test('is placed, weighed and made into solids without a number that is none', () => {
    const patch = fc.record({
      wheels: fc.record({
        rear: fc.record({ tire: fc.record({ diameter: between(100, 1000), width: between(20, 400) }) }),
        front: fc.record({
          tire: fc.record({ diameter: between(100, 1000), width: between(20, 400) }),
          fitted: fc.record({ diameter: between(100, 1000), width: between(20, 400) }),
        }),
      }),
      steering: fc.record({
        wheelbase: between(400, 2500),
        headAngle: between(40, 90),
        forkOffset: between(-100, 200),
        forkLength: between(100, 1200),
        bars: fc.record({
          grip: fc.record({ left: between(-500, 500), up: between(-500, 900), forward: between(-900, 900) }),
        }),
      }),
      engine: fc.record({ tilt: between(-90, 90) }),
      rider: fc.record({ stature: between(800, 2300), inseam: between(300, 1200) }),
      seating: fc.record({ seat: fc.record({ place: fc.record({ height: between(-200, 1500) }) }) }),
      frame: fc.record({
        nodes: fc.record({
          a: fc.record({ from: fc.constant('neckBottom'), left: between(-300, 300) }),
          b: fc.record({ from: fc.constant('a'), forward: between(-400, 400), up: between(-400, 400) }),
        }),
        tubes: fc.record({
          bent: fc.record({
            tubing: fc.constant('rail'),
            through: fc.constant(['a', 'b', 'rail-front', 'rail-rear']),
            mirror: fc.boolean(),
            start: fc.constant({ joint: 'cope', onto: 'neck' }),
            end: fc.constant({ joint: 'cope', onto: 'rail' }),
          }),
        }),
      }),
    });
    let stood = 0;
    fc.assert(
      fc.property(patch, (given) => {
        const build = smallBuild(given);
        const layout = resolveLayout(build);
        if (!layout.ok) {
          // Only tires on which the bike cannot stand are wrong within these limits.
          expect(layout.issues.every((issue) => issue.path === 'wheels')).toBe(true);
          return;
        }
        stood += 1;
        const bike = placeBike(build, layout.value, {});
        const mass = weigh(build, bike, []);
        const numbers = JSON.stringify([layout.value, bike.tubes, bike.rider, bike.engine, mass]);
        // JSON writes what is no number, and infinity, as null.
        expect(numbers).not.toContain('null');
        for (const { name, mesh } of bikeMeshes(build, bike, [], [])) {
          expect(mesh.positions.every(Number.isFinite), name).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
    expect(stood).toBeGreaterThan(30);
  });
});
