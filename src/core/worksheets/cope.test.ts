import { describe, expect, test } from 'vitest';
import { copeWorksheet } from './cope.ts';
import { runWorksheet } from './run.ts';

type Pair = readonly [number, number];
interface Result {
  readonly ordinates: readonly Pair[];
  readonly insideOrdinates?: readonly Pair[];
  readonly controllingOrdinates?: readonly Pair[];
  readonly lowest: Pair;
  readonly highest: Pair;
  readonly depth: number;
  readonly jointLength: number;
}

function run(input: unknown): Result {
  const outcome = runWorksheet(copeWorksheet, input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value.result as Result;
}

function refusal(input: unknown): string[] {
  const outcome = runWorksheet(copeWorksheet, input);
  return outcome.ok ? [] : outcome.issues.map((issue) => issue.path);
}

describe('cope worksheet', () => {
  // Derived apart from this program by root finding in space; 4 printed digits.
  test('offset and slanted, in degrees and millimeters', () => {
    const result = run({ branchDiameter: 22.225, trunkDiameter: 38.1, angle: 55, offset: 4 });
    const at = (degrees: number): number =>
      result.ordinates.find(([around]) => Math.abs(around - degrees) < 1e-9)![1];
    const wanted: readonly Pair[] = [
      [0, 14.9563],
      [30, 13.3794],
      [90, 14.1586],
      [180, 30.5184],
      [270, 21.5741],
      [330, 16.4394],
    ];
    for (const [degrees, s] of wanted) expect(Math.abs(at(degrees) - s)).toBeLessThan(5.1e-5);
    expect(Math.abs(result.depth - 18.4188)).toBeLessThan(5.1e-5);
    expect(Math.abs(result.jointLength - 81.482)).toBeLessThan(5.1e-4);
  });

  test('every 5°, 0 to 360', () => {
    const { ordinates } = run({ branchDiameter: 25, trunkDiameter: 30, angle: 70 });
    ordinates.forEach(([around], k) => {
      expect(around).toBeCloseTo(5 * k, 10);
    });
    expect(ordinates).toHaveLength(73);
  });

  test('inside and controlling lines come with the wall only', () => {
    const thick = run({
      branchDiameter: '1 in',
      branchWall: '14 ga',
      trunkDiameter: '1 1/4 in',
      angle: '60°',
      offset: 0,
    });
    expect(thick.insideOrdinates).toHaveLength(73);
    // Inside at 90°: √(15.875² − (12.7 − 2.1082)²)/sin 60°; 14 gauge tube wall is 0.083 in.
    const inner = Math.sqrt(15.875 ** 2 - (12.7 - 2.1082) ** 2) / Math.sin(Math.PI / 3);
    expect(thick.insideOrdinates![18]![1]).toBeCloseTo(inner, 9);
    thick.controllingOrdinates!.forEach(([, s], k) => {
      expect(s).toBeGreaterThanOrEqual(
        Math.max(thick.ordinates[k]![1], thick.insideOrdinates![k]![1]) - 1e-9,
      );
    });
    expect(run({ branchDiameter: 25, trunkDiameter: 30, angle: 70 }).insideOrdinates).toBeUndefined();
  });

  test('refusals name the field', () => {
    expect(refusal({ branchDiameter: 30, trunkDiameter: 25, angle: 90, offset: 0 })).toEqual([
      'branchDiameter',
    ]);
    expect(refusal({ branchDiameter: 20, trunkDiameter: 25, angle: 90, offset: 3 })).toEqual(['offset']);
    expect(refusal({ branchDiameter: 20, branchWall: 10, trunkDiameter: 25, angle: 90 })).toEqual([
      'branchWall',
    ]);
    expect(refusal({ branchDiameter: 20, trunkDiameter: 25, angle: 0 })).toEqual(['angle']);
  });
});
