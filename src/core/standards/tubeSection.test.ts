import { describe, expect, test } from 'vitest';
import { materialNamed, tubeSection } from './index.ts';

describe('tubeSection', () => {
  test('a 25.4 x 2.108 mm tube against the tables of tube makers', () => {
    // 1 in x 0.083 in: area 0.2391 in², I 0.0253 in⁴ (four and three printed digits).
    const { area, secondMoment } = tubeSection(0.0254, 0.083 * 0.0254);
    expect(area / 0.0254 ** 2).toBeCloseTo(0.2391, 4);
    expect(secondMoment / 0.0254 ** 4).toBeCloseTo(0.0253, 4);
  });

  test('a bar is a tube without a bore; twice I is J', () => {
    const { area, secondMoment, polarMoment, sectionModulus } = tubeSection(0.02, 0.01);
    expect(area).toBeCloseTo(Math.PI * 1e-4, 15);
    expect(polarMoment).toBe(2 * secondMoment);
    expect(sectionModulus).toBeCloseTo((Math.PI * 0.02 ** 3) / 32, 18);
  });

  test('no wall, or more wall than tube, is refused', () => {
    expect(() => tubeSection(0.02, 0)).toThrow(RangeError);
    expect(() => tubeSection(0.02, 0.011)).toThrow(RangeError);
  });

  test('a material that is not in the table is refused', () => {
    expect(materialNamed('mild-steel').density).toBe(7850);
    expect(() => materialNamed('cheese')).toThrow(RangeError);
  });
});
