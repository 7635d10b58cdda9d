import { expect, test } from 'vitest';
import { RankedSystem } from './rankedSystem.ts';

test('solves a small system exactly', () => {
  const system = new RankedSystem(2);
  expect(system.add({ coefficients: [1, 1], value: 10 })).toBeUndefined();
  expect(system.add({ coefficients: [1, -1], value: 4 })).toBeUndefined();
  expect(system.solution()).toEqual([7, 3]);
  expect(system.looseSets()).toEqual([]);
});

test('names the equations that a contradiction stands against, and by how much', () => {
  const system = new RankedSystem(3);
  system.add({ coefficients: [1, 0, 0], value: 1 });
  system.add({ coefficients: [0, 0, 1], value: 9 });
  system.add({ coefficients: [-1, 1, 0], value: 2 });
  // Unknown 1 is 1 + 2 = 3; equation 1 has no part in it.
  expect(system.add({ coefficients: [0, 1, 0], value: 3.5 })).toEqual({
    equation: 3,
    residual: 0.5,
    against: expect.arrayContaining([0, 2]),
  });
  expect(system.add({ coefficients: [0, 1, 0], value: 3 })!.residual).toBe(0);
});

test('tells which unknowns are loose together', () => {
  const system = new RankedSystem(5);
  system.add({ coefficients: [1, 0, 0, 0, 0], value: 1 });
  system.add({ coefficients: [0, 1, 1, 0, 0], value: 10 });
  expect(system.looseSets()).toEqual([[1, 2], [3], [4]]);
  expect(() => system.solution()).toThrow();
});
