import { expect, test } from 'vitest';
import { layOut } from '../../src/core/bike/index.ts';
import { toWorld } from '../../src/core/geometry/index.ts';
import { smallBuild } from '../support/smallBuild.ts';

// A trade story from the build file to its numbers, worked out independently and printed to tenths of a millimeter:
// wheelbase 1050, rake 27°, offset 38, front tire 410 to 355 mm, rear unchanged.
const TENTH = 0.05001;

const build = (forkOffset: number) =>
  smallBuild({
    wheels: {
      rear: { tire: { diameter: 410, width: 90 } },
      front: { tire: { diameter: 410, width: 90 }, fitted: { diameter: 355, width: 90 } },
    },
    steering: { wheelbase: 1050, headAngle: 63, forkOffset },
    frame: { nodes: { plate: { from: 'frontAxle', forward: -400 } } },
  });
const trails = (forkOffset: number) => {
  const { design, fitted } = layOut(build(forkOffset)).stances;
  return { design: design.trail * 1000, fitted: fitted.trail * 1000 };
};
const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

test('the trail falls from 61.8 to 42.6 mm', () => {
  near(trails(38).design, 61.8, TENTH);
  near(trails(38).fitted, 42.6, TENTH);
});

test('new offsets of 20 and 25 mm give 62.5 and 57.0 mm', () => {
  near(trails(20).fitted, 62.5, TENTH);
  near(trails(25).fitted, 57.0, TENTH);
});

test('a plate 400 mm behind the front axle drops by 17 mm as the frame pitches by 1.5°', () => {
  const { points, stances } = layOut(build(38));
  const plate = points.plate!;
  const dropped = (plate.z - toWorld(stances.fitted.frame, plate).z) * 1000;
  near(dropped, 17, 0.5);
  near((stances.fitted.pitch * 180) / Math.PI, 1.5, 0.05);
});
