import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { beltDriveWorksheet } from './beltDrive.ts';
import { chainDriveWorksheet } from './chainDrive.ts';
import { runWorksheet, type Worksheet } from './index.ts';
import { sprocketWorksheet } from './sprocket.ts';

function resultOf(worksheet: unknown, json: unknown): Record<string, unknown> {
  const answer = runWorksheet(worksheet as Worksheet, json);
  if (!answer.ok) throw new Error(answer.issues.map(describeIssue).join('; '));
  return answer.value.result as Record<string, unknown>;
}

function refusalOf(worksheet: unknown, json: unknown): string {
  const answer = runWorksheet(worksheet as Worksheet, json);
  if (answer.ok) throw new Error('taken');
  return answer.issues.map((issue) => `${issue.code} ${issue.path}`).join(', ');
}

const chain = { chain: '#40', driverTeeth: 9, drivenTeeth: 72 };

describe('chain-drive', () => {
  test('a wanted center gives its exact links, and the even count to make up with its exact center', () => {
    const result = resultOf(chainDriveWorksheet, { ...chain, centerDistance: 545 });
    expect(result.links).toBeCloseTo(128.68036, 5);
    expect(result.centerDistance).toBe(545);
    const chosen = result.chosen as { links: number; centerDistance: number };
    expect(chosen.links).toBe(128);
    expect(chosen.centerDistance).toBeCloseTo(540.5557, 4);
    expect(result.alternatives).toHaveLength(4);
    const back = resultOf(chainDriveWorksheet, { ...chain, links: 128 });
    expect(back.centerDistance).toBeCloseTo(chosen.centerDistance, 9);
  });

  test('links need not be whole', () => {
    const result = resultOf(chainDriveWorksheet, {
      ...chain,
      chain: undefined,
      pitch: '1/2 in',
      links: 128.5,
    });
    expect(result.links).toBe(128.5);
    expect((result.chosen as { links: number }).links).toBe(128.5);
    expect(result.cautions).toEqual([
      { code: 'few-teeth', value: 9, limit: 17, bound: 'min', unit: '' },
      { code: 'ratio', value: 8, limit: 7, bound: 'max', unit: '' },
    ]);
  });

  test('screw turns and chain speed', () => {
    const result = resultOf(chainDriveWorksheet, {
      ...chain,
      links: 128,
      pusherPitch: 1.25,
      driverSpeed: 1000,
    });
    const slack = result.slack as {
      centerChange: number;
      screwTurns: number;
      centerChangeOfHalfInch: number;
    };
    expect(slack.screwTurns).toBeCloseTo(slack.centerChange / 1.25, 9);
    expect(slack.centerChangeOfHalfInch).toBeLessThan(0.1);
    expect(result.chainSpeed).toBeCloseTo((9 * 0.0127 * 1000) / 60, 9);
  });

  test.each([
    [{ ...chain }, 'missing links'],
    [{ ...chain, links: 128, centerDistance: 545 }, 'conflict centerDistance'],
    [{ ...chain, pitch: 12.7, links: 128 }, 'conflict pitch'],
    [{ driverTeeth: 9, drivenTeeth: 72, links: 128 }, 'missing chain'],
    [{ ...chain, chain: '#42', links: 128 }, 'not-in-table chain'],
    [{ ...chain, links: 40 }, 'out-of-range links'],
    [{ ...chain, links: 0 }, 'out-of-range links'],
    [{ ...chain, centerDistance: 100 }, 'out-of-range centerDistance'],
    [{ ...chain, driverTeeth: 9.5, links: 128 }, 'wrong-type driverTeeth'],
    [{ ...chain, driverTeeth: 5, links: 128 }, 'out-of-range driverTeeth'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(chainDriveWorksheet, json)).toBe(refusal);
  });
});

describe('belt-drive', () => {
  test('length and center are inverse; variable sheaves at their own ratio are the pair itself', () => {
    const there = resultOf(beltDriveWorksheet, { diameters: [70, 190], centerDistance: 245 });
    const back = resultOf(beltDriveWorksheet, {
      diameters: [70, 190],
      length: there.length,
      ratios: [190 / 70],
      grooveAngle: 26,
    });
    expect(back.centerDistance).toBeCloseTo(245, 9);
    expect(back.wraps).toEqual([expect.closeTo(151.6484, 4), expect.closeTo(360 - 151.6484, 4)]);
    expect(back.coupled).toEqual([
      { ratio: expect.closeTo(190 / 70, 9), diameters: [expect.closeTo(70, 7), expect.closeTo(190, 7)] },
    ]);
    expect(back.radiusPerTravel).toBeCloseTo(2.16574, 5);
  });

  test.each([
    [{ diameters: [70, 190] }, 'missing length'],
    [{ diameters: [70, 190], length: 900, centerDistance: 245 }, 'conflict centerDistance'],
    [{ diameters: [70, 190], centerDistance: 129 }, 'out-of-range centerDistance'],
    [{ diameters: [70, 190], length: 600 }, 'out-of-range length'],
    [{ diameters: [70, 190], centerDistance: 245, ratios: [2, 20] }, ''],
  ])('%j: %s', (json, refusal) => {
    if (refusal === '') expect(resultOf(beltDriveWorksheet, json).coupled).toHaveLength(2);
    else expect(refusalOf(beltDriveWorksheet, json)).toBe(refusal);
  });
});

describe('sprocket', () => {
  test('gives the whole outline in millimeters', () => {
    const result = resultOf(sprocketWorksheet, { chain: '428', teeth: 15 });
    const outline = result.outline as { x: number; y: number; bulge: number }[];
    expect(outline).toHaveLength(15 * 8);
    const outermost = Math.max(...outline.map(({ x, y }) => Math.hypot(x, y)));
    expect(outermost).toBeCloseTo((result.outsideDiameter as number) / 2, 9);
  });

  test.each([
    [{ chain: 'x', teeth: 15 }, 'not-in-table chain'],
    [{ chain: '428', teeth: 5 }, 'out-of-range teeth'],
    [{ chain: '428', teeth: 15.5 }, 'wrong-type teeth'],
    [{ chain: '428' }, 'missing teeth'],
  ])('refuses %j: %s', (json, refusal) => {
    expect(refusalOf(sprocketWorksheet, json)).toBe(refusal);
  });
});
