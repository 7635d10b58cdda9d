/** Engine ratings: SAE J1349 correction and shapes of torque curves, worked separately [derived]. */
import { expect, test } from 'vitest';
import { type Outcome, rpm } from '../../src/core/quantity/index.ts';
import {
  correctionFactor,
  derate,
  engineCurve,
  greatestPower,
  meanEffectivePressure,
  pointsOfPower,
  pointsOfRating,
  standardPressure,
  torqueAt,
} from '../../src/core/ride/index.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

/** SAE J1349 formula as published; dry hPa, °C, factor to 6 decimals. */
test.each([
  [990, 25, 1],
  [1013.25, 15, 0.953414],
  [900, 35, 1.139599],
  [845, 30, 1.214035],
])('%f hPa and %i °C: %f', (pressure, temperature, factor) => {
  expect(Math.abs(correctionFactor(pressure * 100, temperature) - factor)).toBeLessThan(5.1e-7);
});

test('about 1500 m: 845 hPa, and an engine gives 1/CF of its rating', () => {
  // 845 is the row above, rounded to whole hPa with its altitude "about".
  expect(Math.abs(standardPressure(1500) / 100 - 845)).toBeLessThan(1);
  expect(standardPressure(0)).toBe(101_325);
  expect(derate(1500, 30)).toBeCloseTo(1 / 1.2135, 3);
});

test('196 cc and 12.4 N·m are 7.950 bar; 10.5 N·m at 3600 rpm are 3.958 kW', () => {
  expect(Math.abs(meanEffectivePressure(12.4, 196e-6) / 1e5 - 7.95)).toBeLessThan(0.0005);
  const [point] = pointsOfPower([{ speed: rpm(3600), power: 3958 }]);
  expect(Math.abs(point!.torque - 10.5)).toBeLessThan(0.0013);
});

test('rating alone: 2500 and 3600 rpm give 0.867470 and, at 1800 rpm, 0.946331 of the torque; power peaks at 3600', () => {
  const points = must(pointsOfRating({ torqueSpeed: rpm(2500), torque: 1, powerSpeed: rpm(3600) }, 2001));
  const curve = must(engineCurve({ points }));
  expect(Math.abs(torqueAt(curve, rpm(3600)) - 0.86747)).toBeLessThan(5.1e-7);
  // Straight lines between 2001 points of a parabola.
  expect(Math.abs(torqueAt(curve, rpm(1800)) - 0.946331)).toBeLessThan(6e-7);
  expect(greatestPower(curve).speed).toBeCloseTo(rpm(3600), 1);
  expect(pointsOfRating({ torqueSpeed: rpm(3600), torque: 1, powerSpeed: rpm(3600) }).ok).toBe(false);
});

test('first torque held below the first point, straight between, sharp cut or droop at the governor', () => {
  const points = [
    { speed: 200, torque: 10 },
    { speed: 300, torque: 14 },
  ];
  const curve = must(engineCurve({ points }));
  expect([0, 100, 200, 250, 300, 300.1].map((speed) => torqueAt(curve, speed))).toEqual([
    10, 10, 10, 12, 14, 0,
  ]);
  const droopy = must(engineCurve({ points, governed: 250, droop: 0.1 }));
  expect(torqueAt(droopy, 250)).toBeCloseTo(12, 12);
  expect(torqueAt(droopy, 262.5)).toBeCloseTo(6, 12);
  expect(droopy.highest).toBeCloseTo(275, 12);
  const longer = must(engineCurve({ points, governed: 400 }));
  expect([longer.extended, torqueAt(longer, 390)]).toEqual([true, 14]);
  expect(engineCurve({ points: [] }).ok).toBe(false);
  expect(engineCurve({ points: [points[1]!, points[0]!] }).ok).toBe(false);
});

test('greatest power of a falling line lies inside it', () => {
  const curve = must(
    engineCurve({
      points: [
        { speed: 0, torque: 20 },
        { speed: 400, torque: 0 },
      ],
    }),
  );
  expect(greatestPower(curve)).toEqual({ speed: 200, power: 2000 });
});

test('points closer than can be told apart, a sliver of droop, no speed at all: refused, never a NaN', () => {
  const at = (speed: number, torque: number) => ({ speed, torque });
  expect(engineCurve({ points: [at(0, 0), at(2.5e-323, 1000)] }).ok).toBe(false);
  expect(engineCurve({ points: [at(0, 5)] }).ok).toBe(false);
  expect(engineCurve({ points: [at(300, 5)], droop: 1e-9 }).ok).toBe(false);
  expect(engineCurve({ points: [at(0, 5), at(300, 5)], governed: 300 + 1e-9 }).ok).toBe(true);
});
