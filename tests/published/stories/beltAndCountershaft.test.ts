/**
 * A trade story from its build file: rollout 1470 mm, a variable belt of 2.7 to 0.9, 45 km/h wanted, chain of 1/2 in
 * pitch at a wanted center of 545 mm. Its numbers were worked out apart from this program; the chain lengths by the
 * handbooks' closed form, from which the exact ones differ by up to 0.1 mm and 0.02 link.
 */
import { expect, test } from 'vitest';
import { findChain } from '../../../src/core/standards/index.ts';
import { rulesOf, solvedStory } from '../../support/story.ts';

const CLOSED_FORM_MM = 0.1;
const CLOSED_FORM_LINKS = 0.02;
/** The story rounds to whole km/h and N. */
const WHOLE = 0.5;

const solution = solvedStory('beltAndCountershaft');
const faster = solvedStory('beltAndCountershaft', 'faster');
const rollout = 1.47;

/** Road speed at an engine speed [km/h]. */
const kilometersPerHour = (rpm: number, ratio: number): number => ((rpm / ratio) * rollout * 60) / 1000;
const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

test('9 on 72 teeth: 44 km/h at the governor, 21.6 to 1 at launch, bite at 9 km/h', () => {
  const { low, high } = solution.driveline.ratio;
  near(low, 21.6, 0.005);
  near(high, 7.2, 0.005);
  near(kilometersPerHour(3600, high), 44, WHOLE);
  near(kilometersPerHour(2200, low), 9, WHOLE);
});

test('10 on 60 teeth gives 59 km/h', () => {
  near(kilometersPerHour(3600, faster.driveline.ratio.high), 59, WHOLE);
});

test('545 mm needs 128.67 links: 128 (C 540.6) or 130 (C 553.7)', () => {
  const { tension, plan } = solution.driveline.chains.final!;
  near(tension.exactLinks ?? Number.NaN, 128.67, CLOSED_FORM_LINKS);
  expect(plan!.chosen.links).toBe(128);
  const centers = new Map(tension.alternatives.map((choice) => [choice.links, choice.center * 1000]));
  expect([...centers.keys()]).toEqual([128, 130]);
  near(centers.get(128)!, 540.6, CLOSED_FORM_MM);
  near(centers.get(130)!, 553.7, CLOSED_FORM_MM);
});

test('the slot covers 13.1 mm of link rounding and 12.7 mm of 1.5 % wear, about 26 mm plus fitting', () => {
  const slot = solution.driveline.chains.final!.tension.slotNeeded!;
  near(slot.linkRounding * 1000, 13.1, CLOSED_FORM_MM);
  near(slot.wear * 1000, 12.7, CLOSED_FORM_MM);
  near((slot.total - slot.fitting) * 1000, 26, WHOLE);
  expect(rulesOf(solution).filter((rule) => rule.startsWith('tension.'))).toEqual([]);
});

test('engine slides for the belt, the countershaft is bolted, the axle slides for the chain, in that order', () => {
  expect(
    solution.driveline.tension!.steps.map(({ drive, slides, against }) => [drive, slides, against]),
  ).toEqual([
    ['belt', 'engine', 'countershaft'],
    ['final', 'rearAxle', 'countershaft'],
  ]);
});

test('the chain pulls 1440 N at launch: 11 times on #40, 6 times on #41', () => {
  // 11 N·m through the belt at launch, 0.9 of it left, on the small sprocket's radius.
  const { driver } = solution.driveline.chains.final!;
  const belt = solution.driveline.belts.belt!;
  const pull = (11 * belt.low.ratio * belt.stage.efficiency!) / (driver.pitchDiameter / 2);
  near(pull, 1440, 1);
  near(pull / 4.4482216152605, 324, WHOLE);
  // The trade reckons with average strengths, 3700 and 2000 lb.
  near(averageOf('#40') / pull, 11, WHOLE);
  near(averageOf('#41') / pull, 6, WHOLE);
});

function averageOf(name: string): number {
  const chain = findChain(name);
  if (!chain.ok) throw new Error(name);
  return chain.value.averageTensileStrength ?? Number.NaN;
}
