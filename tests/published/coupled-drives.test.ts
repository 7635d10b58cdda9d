/**
 * A story of belt and chain that share a countershaft, and figures of slack, worked by hand beside the trade's
 * practice. The chain lengths of the story come from the handbooks' closed form; ours are exact, so they may differ
 * by what that form leaves out (0.1 mm, 0.02 link), and the closed form is worked here to show that it is that.
 */
import { describe, expect, test } from 'vitest';
import {
  beltCenter,
  looseLengthOfPlay,
  planChainDrive,
  playOfLooseLength,
  solveTension,
  type TensionInput,
  wearLimit,
} from '../../src/core/driveline/index.ts';
import { type Length, mm, type Outcome } from '../../src/core/quantity/index.ts';

const CLOSED_FORM_MM = 0.1;

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const final = {
  kind: 'chain',
  id: 'final',
  from: 'countershaft',
  to: 'rearAxle',
  pitch: mm(12.7),
  fromTeeth: 9,
  toTeeth: 72,
  wearLimit: 0.015,
} as const;

describe('9 and 72 teeth of 1/2 in pitch at a wanted center of 545 mm', () => {
  const plan = must(
    planChainDrive({
      pitch: mm(12.7),
      driverTeeth: 9,
      drivenTeeth: 72,
      wantedCenter: mm(545),
      wearLimit: 0.015,
    }),
  );

  test('the story is the closed form: 128.67 links, 540.6 and 553.7 mm', () => {
    const term = (63 / (2 * Math.PI)) ** 2;
    const pitches = 545 / 12.7;
    const center = (links: number) => (12.7 / 4) * (links - 40.5 + Math.sqrt((links - 40.5) ** 2 - 8 * term));
    expect(2 * pitches + 40.5 + term / pitches).toBeCloseTo(128.67, 2);
    expect(center(128)).toBeCloseTo(540.6, 1);
    expect(center(130)).toBeCloseTo(553.7, 1);
  });

  test('needs 128.67 links: 128 (C 540.6) or 130 (C 553.7)', () => {
    expect(Math.abs(plan.exactLinks - 128.67)).toBeLessThan(0.02);
    expect(plan.chosen.links).toBe(128);
    const center = (links: number) =>
      (plan.alternatives.find((choice) => choice.links === links)?.center ?? 0) * 1000;
    expect(Math.abs(center(128) - 540.6)).toBeLessThan(CLOSED_FORM_MM);
    expect(Math.abs(center(130) - 553.7)).toBeLessThan(CLOSED_FORM_MM);
  });

  test('slot covers 13.1 mm of link rounding and 12.7 mm of 1.5 % wear, about 26 mm plus fitting', () => {
    expect(Math.abs(plan.slot.linkRounding * 1000 - 13.1)).toBeLessThan(0.06);
    expect(Math.abs(plan.slot.wear * 1000 - 12.7)).toBeLessThan(0.06);
    expect(Math.abs((plan.slot.total - plan.slot.fitting) * 1000 - 26)).toBeLessThan(0.5);
  });
});

describe('engine slides for the belt, countershaft is bolted, axle slides for the chain', () => {
  const belt = { driverDiameter: mm(70), drivenDiameter: mm(190) };
  const engineCenter = must(beltCenter(belt, mm(913.17572)));
  const train = (engineOff: number): TensionInput => ({
    shafts: [
      {
        id: 'engine',
        position: { x: 0.545 + engineCenter + engineOff, z: 0.3 },
        slide: { direction: { x: 1, z: 0 }, travelMin: mm(-20), travelMax: mm(20) },
      },
      { id: 'countershaft', position: { x: 0.545, z: 0.3 } },
      {
        id: 'rearAxle',
        position: { x: 0, z: 0.3 },
        slide: { direction: { x: -1, z: 0 }, travelMin: mm(-12), travelMax: mm(22), pusherPitch: mm(1.25) },
      },
    ],
    drives: [
      {
        kind: 'belt',
        id: 'belt',
        from: 'engine',
        to: 'countershaft',
        fromDiameter: mm(70),
        toDiameter: mm(190),
        length: mm(913.17572),
      },
      final,
    ],
  });

  test('[DRV-4] order, link counts and centers of the story', () => {
    const solution = must(solveTension(train(0.003)));
    expect(solution.problems).toEqual([]);
    expect(solution.steps.map(({ drive, slides, against }) => [drive, slides, against])).toEqual([
      ['belt', 'engine', 'countershaft'],
      ['final', 'rearAxle', 'countershaft'],
    ]);
    const [beltSet, chainSet] = solution.drives;
    // The engine was drawn 3 mm too far forward for this belt.
    expect((beltSet?.chosen?.slide?.fresh ?? 0) * 1000).toBeCloseTo(-3, 6);
    expect(chainSet?.chosen?.links).toBe(128);
    expect(chainSet?.alternatives.map((choice) => choice.links)).toEqual([128, 130]);
    expect(Math.abs((chainSet?.chosen?.center ?? 0) * 1000 - 540.6)).toBeLessThan(CLOSED_FORM_MM);
    const slot = chainSet?.slotNeeded;
    expect(Math.abs(((slot?.linkRounding ?? 0) + (slot?.wear ?? 0)) * 1000 - 25.8)).toBeLessThan(0.1);
    expect(slot?.following).toBe(0);
  });

  test('[DRV-5] a 24 mm slot that starts at the wanted center takes the longer chain', () => {
    const input = train(0);
    const shafts = input.shafts.map((shaft) =>
      shaft.id === 'rearAxle' && shaft.slide
        ? { ...shaft, slide: { ...shaft.slide, travelMin: mm(0), travelMax: mm(24) } }
        : shaft,
    );
    const solution = must(solveTension({ ...input, shafts }));
    expect(solution.drives.find((drive) => drive.id === 'final')?.chosen?.links).toBe(130);
    expect(solution.fits).toBe(true);
  });
});

describe('what a thumb feels is next to nothing in center distance', () => {
  const centerMm = (spanMm: number, playMm: number) => (looseLengthOfPlay(mm(spanMm), mm(playMm)) / 2) * 1000;

  test('12.7 mm of play on a 430 mm run is 0.09 mm of center distance', () => {
    expect(centerMm(430, 12.7)).toBeCloseTo(0.09, 2);
    expect(centerMm(430, 12.7)).toBeLessThan(0.1);
  });

  test('play that goes from 4 to 18 mm round a turn is 0.09 mm of sprocket eccentricity', () => {
    // An eccentric sprocket moves the center by twice its eccentricity in a turn.
    expect((centerMm(430, 18) - centerMm(430, 4)) / 2).toBeCloseTo(0.09, 2);
  });

  test('play and loose length are inverse', () => {
    expect(playOfLooseLength(mm(430), looseLengthOfPlay(mm(430), mm(12.7)))).toBeCloseTo(0.0127, 12);
  });
});

describe("wear limits of chain makers' questions and answers", () => {
  test.each([
    [60, false, 3],
    [72, false, 2.78],
    [84, false, 2.38],
    [100, false, 2],
    [60, true, 1.5],
    [200, true, 1],
  ])('%i teeth, fixed centers %s: %f percent', (largestTeeth, fixedCenters, percent) => {
    expect(100 * wearLimit({ largestTeeth, fixedCenters }).elongation).toBeCloseTo(percent, 2);
  });
});

test('[DRV-6] a countershaft moved for the chain changes the belt too, and the solver says so', () => {
  // The trap of the trade: the countershaft is slid to take up chain, and the belt goes slack.
  const solution = must(
    solveTension({
      shafts: [
        {
          id: 'engine',
          position: { x: 0.8, z: 0.3 },
          slide: { direction: { x: 1, z: 0 }, travelMin: mm(-60), travelMax: mm(60) },
        },
        {
          id: 'countershaft',
          position: { x: 0.545, z: 0.3 },
          slide: { direction: { x: 1, z: 0 }, travelMin: mm(-30), travelMax: mm(40) },
        },
        { id: 'rearAxle', position: { x: 0, z: 0.3 } },
      ],
      drives: [
        {
          kind: 'belt',
          id: 'belt',
          from: 'engine',
          to: 'countershaft',
          fromDiameter: mm(70),
          toDiameter: mm(190),
          length: mm(913.17572),
        },
        final,
      ],
    }),
  );
  expect(solution.steps.map(({ drive, slides, resetAfter }) => [drive, slides, resetAfter])).toEqual([
    ['final', 'countershaft', ['belt']],
    ['belt', 'engine', []],
  ]);
  const beltSet = solution.drives.find((drive) => drive.id === 'belt');
  const chainSet = solution.drives.find((drive) => drive.id === 'final');
  // As the chain wears, the engine has to follow the countershaft by just as much.
  const moved = (chainSet?.chosen?.slide?.worn ?? 0) - (chainSet?.chosen?.slide?.fresh ?? 0);
  expect(moved * 1000).toBeGreaterThan(12);
  expect((beltSet?.slotNeeded?.following ?? 0) as Length).toBeCloseTo(moved, 9);
});
