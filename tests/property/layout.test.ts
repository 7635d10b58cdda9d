import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut, placeTubes, standOn, sumLumps } from '../../src/core/bike/index.ts';
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
