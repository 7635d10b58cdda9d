/**
 * Clearance holes, threads, tap drills, keys and bearings against printed tables. Marked rows are from memory.
 * Inch hole sizes and drills are printed to a thousandth; stress areas to three or four digits.
 */
import { describe, expect, test } from 'vitest';
import { inches, mm } from '../../src/core/quantity/index.ts';
import {
  bearings,
  clearanceHole,
  findBearing,
  findDrill,
  findThread,
  keyForShaft,
  keyseatDepths,
} from '../../src/core/standards/index.ts';

const INCH = 0.0254;
const value = <T>(outcome: { ok: true; value: T } | { ok: false; issues: unknown }): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
};

describe('clearance holes', () => {
  /** ISO 273 fine, medium, coarse, from a public fastener table. */
  test.each([
    ['M5', 5.3, 5.5, 5.8],
    ['M6', 6.4, 6.6, 7],
    ['M8', 8.4, 9, 10],
    ['M10', 10.5, 11, 12],
    ['M12', 13, 13.5, 14.5],
    ['M14', 15, 15.5, 16.5],
    ['M16', 17, 17.5, 18.5],
  ])('ISO 273 %s', (bolt, close, normal, loose) => {
    expect(value(clearanceHole(bolt, 'close')).diameter).toBeCloseTo(close / 1e3, 9);
    expect(value(clearanceHole(bolt)).diameter).toBeCloseTo(normal / 1e3, 9);
    expect(value(clearanceHole(`${bolt} x 1`, 'loose')).diameter).toBeCloseTo(loose / 1e3, 9);
  });

  /** ASME B18.2.8 minimum holes: normal, close, loose; Machinery's Handbook 31st ed. p. 1741, close from memory. */
  test.each([
    ['#10', 0.221, 0.206, 0.238],
    ['1/4 in', 0.281, 0.266, 0.297],
    ['5/16 in', 0.344, 0.328, 0.359],
    ['3/8"', 0.406, 0.391, 0.422],
    ['7/16-14', 0.469, 0.453, 0.484],
    ['1/2 in', 0.562, 0.531, 0.609],
    ['5/8-11 UNC', 0.688, 0.656, 0.734],
  ])('ASME B18.2.8 %s', (bolt, normal, close, loose) => {
    expect(value(clearanceHole(bolt)).diameter / INCH).toBeCloseTo(normal, 9);
    expect(value(clearanceHole(bolt, 'close')).diameter / INCH).toBeCloseTo(close, 9);
    expect(value(clearanceHole(bolt, 'loose')).diameter / INCH).toBeCloseTo(loose, 9);
  });

  test('an unknown bolt is refused with its own kind', () => {
    const outcome = clearanceHole('M7');
    expect(outcome.ok).toBe(false);
    expect(JSON.stringify(outcome)).toContain('M8');
  });
});

describe('threads', () => {
  /** Tensile stress area of a public reprint of ISO 898-1; drills of the Mechanical Engineer's Data Handbook p. 299. */
  test.each([
    ['M5', 0.8, 14.2, 4.2],
    ['M6', 1, 20.1, 5],
    ['M8', 1.25, 36.6, 6.8],
    ['M10', 1.5, 58, 8.5],
    ['M12', 1.75, 84.3, 10.2],
    ['M14', 2, 115, 12],
    ['M16', 2, 157, 14],
  ])('%s', (name, pitch, area, drill) => {
    const thread = value(findThread(name));
    expect(thread.pitch).toBeCloseTo(mm(pitch), 9);
    // Three printed digits.
    expect(Math.abs(thread.stressArea * 1e6 - area)).toBeLessThan(area < 100 ? 0.06 : 0.6);
    expect(thread.tapDrill.diameter).toBeCloseTo(mm(drill), 9);
  });

  /** Areas of Shigley 9th ed. table 8-2 [in²]; tap drills from memory. */
  test.each([
    ['#10-24', 0.0175, '#25'],
    ['#10-32', 0.02, '#21'],
    ['1/4-20', 0.0318, '#7'],
    ['1/4-28', 0.0364, '#3'],
    ['5/16-18', 0.0524, 'F'],
    ['5/16-24', 0.058, 'I'],
    ['3/8-16', 0.0775, '5/16'],
    ['3/8-24', 0.0878, 'Q'],
    ['7/16-14', 0.1063, 'U'],
    ['1/2-13', 0.1419, '27/64'],
    ['1/2-20', 0.1599, '29/64'],
    ['5/8-11', 0.226, '17/32'],
  ])('%s', (name, area, drill) => {
    const thread = value(findThread(name));
    const square = INCH * INCH;
    // Four decimals printed, and the formula is one off in the last for two of them; 5/8 in to three decimals.
    expect(Math.abs(thread.stressArea / square - area)).toBeLessThan(area > 0.2 ? 6e-4 : 1.6e-4);
    expect(thread.tapDrill.name).toBe(drill);
    expect(thread.tapDrill.diameter).toBe(findDrill(drill)!.diameter);
  });

  test('a 5/16 in rod takes an 18-thread die (the coarse series, 18 threads an inch)', () => {
    expect(inches(1) / value(findThread('5/16 in')).pitch).toBeCloseTo(18, 9);
  });

  test('a tap drill leaves metal for the thread and is under the bolt', () => {
    for (const name of ['M8', 'M8x1', 'M12x1.25', '5/16-18', '1/2-20', '3/4-10']) {
      const { major, pitch, tapDrill } = value(findThread(name));
      expect(tapDrill.diameter).toBeLessThan(major);
      expect(tapDrill.diameter).toBeGreaterThan(major - 1.25 * pitch);
    }
    expect(findThread('M8x0.5').ok).toBe(false);
    expect(findThread('5/16-20').ok).toBe(false);
  });
});

describe('keys', () => {
  /** ASME B17.1 table 1, over to including. */
  test.each([
    [7 / 16, 3 / 32],
    [1 / 2, 1 / 8],
    [5 / 8, 3 / 16],
    [3 / 4, 3 / 16],
    [7 / 8, 3 / 16],
    [1, 1 / 4],
    [1.25, 1 / 4],
    [1.375, 5 / 16],
    [1.5, 3 / 8],
    [2, 1 / 2],
    [2.5, 5 / 8],
  ])('a %d in shaft takes a %d in key', (shaft, key) => {
    expect(value(keyForShaft(inches(shaft))).width / INCH).toBeCloseTo(key, 9);
  });

  /** ASME B17.1 depth control values S and T [in]; three decimals printed. */
  test.each([
    [1 / 2, 1 / 8, 0.43, 0.56],
    [9 / 16, 1 / 8, 0.493, 0.623],
    [5 / 8, 3 / 16, 0.517, 0.709],
    [3 / 4, 3 / 16, 0.644, 0.837],
    [7 / 8, 3 / 16, 0.771, 0.964],
    [1, 1 / 4, 0.859, 1.114],
  ])('depths of a %d in shaft', (shaft, key, bottom, top) => {
    const depths = keyseatDepths(inches(shaft), inches(key), inches(key));
    expect(Math.abs(depths.shaft / INCH - bottom)).toBeLessThan(6e-4);
    expect(Math.abs(depths.hub / INCH - top)).toBeLessThan(6e-4);
  });

  test('a shaft outside the table is refused', () => {
    expect(keyForShaft(inches(0.3)).ok).toBe(false);
    expect(keyForShaft(inches(3)).ok).toBe(false);
  });
});

describe('bearings', () => {
  /** ISO 15 boundary dimensions: 6203 and 6303 from a public bore table, the others from memory. */
  test.each([
    ['6203', 17, 40, 12],
    ['6303', 17, 47, 14],
    ['6202', 15, 35, 11],
    ['6004', 20, 42, 12],
    ['6205-2RS C3', 25, 52, 15],
  ])('%s', (designation, bore, outside, width) => {
    const bearing = value(findBearing(designation));
    expect(bearing.bore).toBeCloseTo(mm(bore), 9);
    expect(bearing.outside).toBeCloseTo(mm(outside), 9);
    expect(bearing.width).toBeCloseTo(mm(width), 9);
  });

  /** Makers' catalogs differ 3 to 19 % for one size: the printed range, not a point. */
  test('ratings are a range; 6203 and 6303 hold what three makers print', () => {
    const { dynamicRating: a } = value(findBearing('6203'));
    expect([a.low, a.high]).toEqual([9560, 9950]);
    const { dynamicRating: b } = value(findBearing('6303'));
    expect([b.low, b.high]).toEqual([13500, 14300]);
    for (const { dynamicRating, staticRating } of bearings) {
      expect(dynamicRating.high / dynamicRating.low).toBeLessThan(1.21);
      expect(staticRating.high / staticRating.low).toBeLessThan(1.21);
      expect(staticRating.high).toBeLessThan(dynamicRating.low);
    }
  });

  test('an unknown one is refused with the same bore', () => {
    const outcome = findBearing('6403');
    expect(outcome.ok).toBe(false);
    expect(JSON.stringify(outcome)).toContain('6203');
  });
});
