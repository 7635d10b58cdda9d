import { describe, expect, test } from 'vitest';
import { bendWorksheet } from './bend.ts';
import { runWorksheet } from './run.ts';

interface TubeResult {
  readonly developedLength: number;
  readonly straightAfter: number;
  readonly schedule: readonly Readonly<Record<string, number>>[];
}

function run<T>(input: unknown): T {
  const outcome = runWorksheet(bendWorksheet, input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value.result as T;
}

function refusal(input: unknown): string[] {
  const outcome = runWorksheet(bendWorksheet, input);
  return outcome.ok ? [] : outcome.issues.map((issue) => issue.path);
}

describe('tube', () => {
  test('an L of 300 and 200 over 80: 500 − 160 + 40π', () => {
    const result = run<TubeResult>({
      of: 'tube',
      centerlineRadius: 80,
      legs: [300, 200],
      bends: [{ angle: 90 }],
    });
    expect(result.developedLength).toBeCloseTo(340 + 40 * Math.PI, 9);
    expect(result.straightAfter).toBeCloseTo(120, 9);
    expect(result.schedule[0]!.start).toBeCloseTo(220, 9);
  });

  test('points and legs give the same schedule; the second bend turns up by 90°', () => {
    const common = { of: 'tube', centerlineRadius: '60 mm', springback: '3 deg', benderOffset: 15 };
    const points = run<TubeResult>({
      ...common,
      points: [
        [0, 0, 0],
        [300, 0, 0],
        [300, 300, 0],
        [300, 300, 300],
      ],
    });
    const legs = run<TubeResult>({
      ...common,
      legs: [300, 300, 300],
      bends: [{ angle: 90 }, { angle: 90, rotation: 90 }],
    });
    expect(points.developedLength).toBeCloseTo(legs.developedLength, 9);
    points.schedule.forEach((row, i) => {
      for (const [key, value] of Object.entries(row))
        expect(value, key).toBeCloseTo(legs.schedule[i]![key]!, 9);
    });
    expect(points.schedule[1]!.rotation).toBeCloseTo(90, 9);
    expect(points.schedule[1]!.bentAngle).toBeCloseTo(93, 9);
    expect(points.schedule[0]!.mark).toBeCloseTo(300 - 60 - 15, 9);
    expect(points.schedule[1]!.mark).toBeCloseTo(240 + 30 * Math.PI + 180 - 15, 9);
  });

  test('a straight tube has no bends', () => {
    const result = run<TubeResult>({ of: 'tube', centerlineRadius: 60, legs: [412] });
    expect(result).toEqual({ of: 'tube', developedLength: 412, straightAfter: 412, schedule: [] });
  });

  test('refusals name the field', () => {
    const tube = { of: 'tube', centerlineRadius: 80 };
    expect(refusal(tube)).toEqual(['points']);
    expect(refusal({ ...tube, legs: [300, 200] })).toEqual(['legs']);
    expect(refusal({ ...tube, legs: [300, 70], bends: [{ angle: 90 }] })).toEqual(['legs[1]']);
    expect(
      refusal({
        ...tube,
        points: [
          [0, 0, 0],
          [70, 0, 0],
          [70, 300, 0],
        ],
      }),
    ).toEqual(['points[1]']);
    expect(
      refusal({
        ...tube,
        points: [
          [0, 0, 0],
          [70, 0, 0],
        ],
        legs: [3],
      }),
    ).toEqual(['points']);
    expect(refusal({ ...tube, legs: [9000, 9000], bends: [{ angle: 178 }], springback: 5 })).toEqual([
      'springback',
    ]);
  });
});

describe('plate', () => {
  const square = { of: 'plate', thickness: 3, insideRadius: 3, angle: 90, kFactor: 0.44 };

  test('a channel: two bends, bend lines in from both edges alike', () => {
    const result = run<{ flatLength: number; bendLines: number[]; deduction: number }>({
      ...square,
      legs: [40, 60, 40],
    });
    expect(result.flatLength).toBeCloseTo(140 - 2 * result.deduction, 9);
    expect(result.bendLines[0]! + result.bendLines[1]!).toBeCloseTo(result.flatLength, 9);
    // Middle of the bend from the edge: leg − setback + allowance/2 = leg − deduction/2.
    expect(result.bendLines[0]).toBeCloseTo(40 - result.deduction / 2, 9);
  });

  test('without legs there is no flat length', () => {
    expect(run<object>(square)).not.toHaveProperty('flatLength');
  });

  test('a leg inside its bend is refused', () => {
    expect(refusal({ ...square, legs: [5, 40] })).toEqual(['legs[0]']);
    expect(refusal({ ...square, legs: [40, 10, 40] })).toEqual(['legs[1]']);
  });
});
