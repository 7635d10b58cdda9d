import { expect, test } from 'vitest';
import sources from '../../../data/sources.json' with { type: 'json' };
import { chains, findChain } from './chain.ts';

test.each([
  ['#40', '#40'],
  ['40', '#40'],
  ['no. 40', '#40'],
  ['ANSI 40', '#40'],
  ['08A', '#40'],
  ['08a-1', '#40'],
  ['085', '#41'],
  ['06C', '#35'],
  [' 428 ', '428'],
  ['#530', '530'],
])('%s is %s', (given, name) => {
  const found = findChain(given);
  expect(found.ok && found.value.name).toBe(name);
});

test.each([
  ['#42', '#41'],
  ['429', '428'],
  ['1000', '530'],
])('%s is not in the table; near it is %s', (given, near) => {
  const found = findChain(given);
  if (found.ok) throw new Error('found');
  expect(found.issues[0]).toMatchObject({ code: 'not-in-table', given });
  expect(found.issues[0].code === 'not-in-table' && found.issues[0].nearest[0]).toBe(near);
});

test('a text without a number gets the whole list', () => {
  const found = findChain('bicycle');
  expect(!found.ok && found.issues[0].code === 'not-in-table' && found.issues[0].nearest).toHaveLength(
    chains.length,
  );
});

test('no two chains share a designation', () => {
  const names = chains.flatMap((chain) => [chain.name, ...chain.aliases]).map((name) => name.toLowerCase());
  expect(new Set(names).size).toBe(names.length);
});

test('every row is whole, in proportion, and names its sources', () => {
  for (const chain of chains) {
    expect(chain.rollerDiameter / chain.pitch).toBeGreaterThan(0.5);
    expect(chain.rollerDiameter / chain.pitch).toBeLessThan(0.7);
    expect(chain.pinDiameter).toBeLessThan(chain.rollerDiameter);
    // Half the inner width and the two plates of one side lie inside the half width.
    expect(chain.halfWidth).toBeGreaterThan(chain.innerWidth / 2 + 2 * chain.plateThickness);
    expect(chain.plateHeight).toBeLessThan(chain.pitch);
    for (const source of Object.values(chain.sources)) expect(Object.hasOwn(sources, source.key)).toBe(true);
  }
});

/** The minimum of ASME B29.1 is 12 500·P² lbf, P in inches; #41 is tabulated at 1500 instead. */
test.each([
  ['#25', 0.25],
  ['#35', 0.375],
  ['#40', 0.5],
  ['#50', 0.625],
  ['#60', 0.75],
])('strength of %s follows the rule of the standard', (name, pitch) => {
  const found = findChain(name);
  if (!found.ok) throw new Error('not found');
  // The table rounds to 5 lbf.
  expect(Math.abs(found.value.minimumTensileStrength / 4.4482216152605 - 12500 * pitch ** 2)).toBeLessThan(5);
});
