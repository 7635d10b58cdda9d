import { describe, expect, test } from 'vitest';
import { inches, mm } from '../quantity/index.ts';
import {
  drillSteps,
  type HoleMaking,
  makeOpening,
  type OpeningPlan,
  operationLimits,
  shopDefaults,
} from './index.ts';

const THICK = mm(6);
const making = (make: 'drill' | 'torch' | 'saw'): HoleMaking => ({
  make,
  thickness: THICK,
  limits: shopDefaults[make],
  drill: shopDefaults.drill,
});
const hole = (diameter: number, more: Partial<OpeningPlan> = {}): OpeningPlan => ({
  id: 'one',
  kind: 'hole',
  center: { x: 0, y: 0 },
  diameter,
  for: 'test',
  carries: 'bolt',
  system: 'metric',
  ...more,
});
const does = (plan: OpeningPlan, make: 'drill' | 'torch' | 'saw') =>
  makeOpening(plan, making(make)).steps.map((step) => step.do);

describe('torch: smallest hole 1.5 thicknesses, clean from 3 (common practice)', () => {
  test('under 1.5 thicknesses: a punch mark, drilled', () => {
    const made = makeOpening(hole(mm(8.9)), making('torch'));
    expect(made.cutAs).toEqual({ as: 'punch' });
    expect(made.steps.map((step) => step.do)).toContain('drill');
  });

  test('1.5 to 3 thicknesses: cut under size and drilled', () => {
    const made = makeOpening(hole(mm(13)), making('torch'));
    expect(made.cutAs).toEqual({ as: 'undersize', diameter: mm(12) });
    expect(made.steps).toEqual([
      { do: 'cut-undersize', diameter: mm(12) },
      { do: 'drill', diameter: mm(13) },
    ]);
  });

  test('the undersize cut is never smaller than the torch can cut', () => {
    const made = makeOpening(hole(mm(9.5)), making('torch'));
    expect(made.cutAs.as === 'undersize' && made.cutAs.diameter).toBeCloseTo(1.5 * THICK, 9);
  });

  test('from 3 thicknesses: cut to size', () => {
    expect(makeOpening(hole(mm(18)), making('torch')).cutAs).toEqual({ as: 'full' });
  });

  test('a shop that holds smaller holes says so', () => {
    const limits = operationLimits({ torch: { smallestHolePerThickness: 1 } }, 'torch');
    const made = makeOpening(hole(mm(8.9)), { ...making('torch'), limits });
    expect(made.cutAs.as).toBe('undersize');
    expect(limits.kerf).toBe(shopDefaults.torch.kerf);
  });

  test('a narrow slot has its ends drilled', () => {
    expect(does(hole(mm(8.5), { kind: 'slot', travel: mm(30), direction: 0 }), 'torch').at(-1)).toBe(
      'saw-and-file',
    );
  });
});

describe('bores', () => {
  const bore = (finish: 'bored' | 'by-hand') =>
    hole(mm(35), { kind: 'bore', fit: 'N7', carries: 'bearing', finish });

  test('are cut under size and bored', () => {
    const made = makeOpening(bore('bored'), making('torch'));
    expect(made.cutAs).toEqual({ as: 'undersize', diameter: mm(34) });
    expect(made.steps.at(-1)).toEqual({ do: 'bore', diameter: mm(35) });
  });

  test('or opened by hand until the bearing just seats', () => {
    const made = makeOpening(bore('by-hand'), making('drill'));
    expect(made.cutAs.as).toBe('undersize');
    expect(made.steps.at(-1)).toEqual({ do: 'open-by-hand', diameter: mm(35) });
  });
});

describe('drilling (common practice: pilot = web of the next bit, last bit one size under, then finish)', () => {
  test('9 mm: punch, pilot, one size under, finish', () => {
    expect(drillSteps(mm(9), 'metric')).toEqual([
      { do: 'punch' },
      { do: 'pilot', diameter: mm(2) },
      { do: 'drill', diameter: mm(8.5) },
      { do: 'drill', diameter: mm(9) },
    ]);
  });

  test('inch holes take inch bits: 11/32 for a 5/16 in bolt', () => {
    expect(drillSteps(inches(0.344), 'inch').at(-1)).toEqual({ do: 'drill', diameter: inches(11 / 32) });
  });

  test('bits rise and none is over the hole; the pilot is at least the web of the next bit', () => {
    for (let size = 3; size <= 25; size += 0.5) {
      const bits = drillSteps(mm(size), 'metric').flatMap((step) =>
        'diameter' in step ? [step.diameter] : [],
      );
      expect([...bits].sort((a, b) => a - b)).toEqual(bits);
      expect(bits.at(-1)).toBeCloseTo(mm(size), 6);
      if (bits.length > 1) expect(bits[0]!).toBeGreaterThanOrEqual(0.2 * bits[1]! - 1e-9);
    }
  });

  test('a tapped hole is drilled for its tap and tapped last', () => {
    const made = makeOpening(hole(mm(6.8), { thread: 'M8' }), making('drill'));
    expect(made.steps.at(-2)).toEqual({ do: 'drill', diameter: mm(6.8) });
    expect(made.steps.at(-1)).toEqual({ do: 'tap', thread: 'M8' });
  });

  test('a size that no bit has is opened by hand', () => {
    expect(drillSteps(mm(15.25), 'metric').at(-1)).toEqual({ do: 'open-by-hand', diameter: mm(15.25) });
  });
});
