/**
 * A trade story from its build file: wheelbase 1050, rake 27°, offset 38, front tire 410 to 355 mm, rear unchanged.
 * Its numbers were worked out apart from this program and are printed to tenths of a millimeter.
 */
import { expect, test } from 'vitest';
import { steeringNumbers } from '../../../src/core/bike/index.ts';
import { toWorld } from '../../../src/core/geometry/index.ts';
import { partsOf, rulesOf, solvedStory } from '../../support/story.ts';

const TENTH = 0.05001;

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const stancesOf = (variant?: string) => solvedStory('smallerFrontWheel', variant).bike.layout.stances;

test('trail falls from 61.8 to 42.6 mm, with the pitch of 1.5°', () => {
  near(stancesOf().design.trail * 1000, 61.8, TENTH);
  const { fitted } = stancesOf('smaller');
  near(fitted.trail * 1000, 42.6, TENTH);
  near((fitted.pitch * 180) / Math.PI, 1.5, 0.05);
});

test('where the pitch is forgotten it would be 47.8 mm, 5.2 too much', () => {
  const { design, fitted } = stancesOf('smaller');
  const level = steeringNumbers(design.headAngle, 0.038, 0.355 / 2).trail;
  near(level * 1000, 47.8, TENTH);
  near((level - fitted.trail) * 1000, 5.2, 2 * TENTH);
});

test.each([
  ['smaller-offset-20', 62.5],
  ['smaller-offset-25', 57.0],
])('%s gives a trail of %s mm', (variant, trail) => {
  near(stancesOf(variant).fitted.trail * 1000, trail, TENTH);
});

test('the engine plate, 400 mm behind the front axle, drops by 17 mm', () => {
  const { layout } = solvedStory('smallerFrontWheel', 'smaller').bike;
  const plate = layout.points['engine-plate']!;
  near((plate.z - toWorld(layout.stances.fitted.frame, plate).z) * 1000, 17, 0.5);
});

test('the axle of 12 mm in the bore of 15 mm wants a 15 / 12 sleeve, full length', () => {
  const before = solvedStory('smallerFrontWheel');
  const after = solvedStory('smallerFrontWheel', 'smaller');
  expect(before.bike.stacks.front!.sleeves).toEqual([]);
  const [sleeve, ...more] = after.bike.stacks.front!.sleeves;
  expect(more).toEqual([]);
  expect(sleeve!.item).toBe('hub');
  near(sleeve!.outside * 1000, 15, 1e-9);
  near(sleeve!.inside * 1000, 12, 1e-9);
  near(sleeve!.length * 1000, 80, 1e-9);
  const part = partsOf(after).find(({ part }) => part === 'front.hub.sleeve');
  expect(part?.matters).toMatch(/15\.00 mm .*outside, 12\.00 mm .*inside, 80\.00 mm .*no split/);
});

test('left and right spacers: 110 between the legs, hub 80 with its rim 2 mm to the right of its middle', () => {
  const spacer = (id: string) =>
    solvedStory('smallerFrontWheel', 'smaller').bike.stacks.front!.items.find((item) => item.id === id)!
      .length;
  // Rim in the center plane: 55 − 42 = 13 on the left, 55 − (80 − 42) = 17 on the right.
  near(spacer('spacer-left') * 1000, 13, 1e-6);
  near(spacer('spacer-right') * 1000, 17, 1e-6);
});

test('the rotor has moved: 3 mm inboard of its caliper, and it is said', () => {
  expect(rulesOf(solvedStory('smallerFrontWheel'))).not.toContain('stack.disc-off-caliper');
  const moved = solvedStory('smallerFrontWheel', 'smaller').findings.find(({ id }) =>
    id.startsWith('stack.disc-off-caliper:front'),
  );
  // Old disc at 45 − 4 = 41; new one at 42 − 4 = 38.
  near(moved!.value! * 1000, 3, 1e-6);
  expect(moved!.margin!).toBeLessThan(0);
});
