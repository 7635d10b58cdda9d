/**
 * A trade story from its build file: an engine with a base of 146 x 80 and a shaft of 15.88 x 50, 76 high, gives way
 * to one of 162 x 75.5 with a shaft of 19.05 x 62, 106 high. The story's numbers were worked out apart from this
 * program; place and size of the cross tube are invented so that the chain meets it as the story tells.
 */
import { describe, expect, test } from 'vitest';
import { rippleOf } from '../../../src/core/fit/index.ts';
import type { Solution } from '../../../src/core/index.ts';
import { keyForShaft } from '../../../src/core/standards/index.ts';
import { partsOf, rulesOf, solvedStory } from '../../support/story.ts';

const before = solvedStory('engineSwap');
const swapped = solvedStory('engineSwap', 'new-engine');
const forward = solvedStory('engineSwap', 'new-engine-forward');

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};
const chainGap = ({ clearances }: Solution): number =>
  clearances.find(({ rule, parts }) => rule === 'chain-tube' && parts[1] === 'cross')!.gap * 1000;

describe('the new pattern over the old holes', () => {
  test('hole centers are 8.31 mm apart, so holes of 8.5 mm break into each other', () => {
    const broken = swapped.findings.filter(({ id }) =>
      id.startsWith('plate.breaks-into-old-hole:engine-plate'),
    );
    expect(broken).toHaveLength(4);
    for (const finding of broken) {
      near(finding.value! * 1000, 8.31, 0.005);
      expect(finding.limit! * 1000).toBeGreaterThanOrEqual(8.5);
      expect(finding.margin!).toBeLessThan(0);
      expect(finding.remedy).toMatch(/slot over both.*turned 90 degrees/);
    }
    expect(rulesOf(before)).not.toContain('plate.breaks-into-old-hole');
  });

  test('a new plate with the pattern turned has no such holes', () => {
    expect(rulesOf(forward)).not.toContain('plate.breaks-into-old-hole');
    const plates = partsOf(forward).filter(({ part }) => part === 'engine-plate');
    expect(plates).toHaveLength(1);
    expect(plates[0]!.count).toBe(1);
  });
});

describe('the shaft 30 mm higher', () => {
  test('the chain crosses the frame tube by 6 mm at its top run', () => {
    expect(chainGap(before)).toBeGreaterThan(5);
    near(chainGap(swapped), -6, 0.1);
    const crossed = swapped.findings.find(({ id }) => id === 'clearance.chain-tube:final-cross');
    expect(crossed).toMatchObject({ severity: 'stop' });
  });

  test('18 mm further forward it clears, though with less than the usual room', () => {
    expect(chainGap(forward)).toBeGreaterThan(0);
    expect(forward.findings.find(({ id }) => id === 'clearance.chain-tube:final-cross')).toMatchObject({
      severity: 'caution',
    });
  });

  test('links are counted again for the new centers', () => {
    const links = ({ driveline }: Solution) => driveline.chains.final!.plan!.exactLinks;
    expect(links(swapped)).toBeGreaterThan(links(before));
    expect(links(forward)).toBeGreaterThan(links(swapped));
  });
});

describe('shaft, clutch and spacer', () => {
  test('a 3/4 in shaft takes a 3/16 in key', () => {
    const key = keyForShaft(swapped.build.engine.shaft.diameter);
    near((key.ok ? key.value.width : Number.NaN) / 0.0254, 3 / 16, 1e-9);
    near(swapped.build.engine.shaft.key! / 0.0254, 3 / 16, 1e-9);
  });

  test('the spacer behind the clutch is 7.0 mm, where it was 12.5', () => {
    const spacer = ({ bike }: Solution) =>
      bike.stacks.engine!.items.find(({ id }) => id === 'spacer-shaft')!.length * 1000;
    near(spacer(before), 12.5, 1e-6);
    near(spacer(swapped), 7.0, 1e-6);
    expect(partsOf(swapped).find(({ part }) => part === 'engine.spacer-shaft')!.matters).toMatch(/^7\.00 mm/);
  });
});

describe('what the swap does to what is there already', () => {
  const changes = rippleOf(
    { figures: before.figures, made: before.build.made },
    { figures: swapped.figures, made: swapped.build.made },
  );

  test('at least eight items changed', () => {
    expect(new Set(changes.map(({ part }) => part)).size).toBeGreaterThanOrEqual(8);
  });

  test('what is made already comes first and is off by what moved', () => {
    const cut = changes.filter(({ alreadyCut }) => alreadyCut !== undefined);
    expect(changes.slice(0, cut.length)).toEqual(cut);
    const parts = new Set(cut.map(({ part }) => part));
    expect([...parts]).toEqual(expect.arrayContaining(['engine-plate', 'engine.spacer-shaft']));
    const spacer = cut.find(({ id }) => id === 'stack.engine.spacer-shaft.length')!;
    expect(spacer.state).toBe('made');
    near(spacer.alreadyCut!.off! * 1000, 7.0 - 12.5, 1e-6);
  });

  test('what the swap does not touch is not listed', () => {
    expect(changes.filter(({ id }) => id.startsWith('steering.') || id.startsWith('layout.rear'))).toEqual(
      [],
    );
  });
});
