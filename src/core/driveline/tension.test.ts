import { describe, expect, test } from 'vitest';
import type { Length, Outcome } from '../quantity/index.ts';
import { mm } from '../quantity/index.ts';
import {
  type ChainRun,
  type DriveShaft,
  solveTension,
  type TensionInput,
  type TensionSolution,
  tensionFigures,
} from './index.ts';

const chainRun = (id: string, from: string, to: string, more: Partial<ChainRun> = {}): ChainRun => ({
  kind: 'chain',
  id,
  from,
  to,
  pitch: mm(12.7),
  fromTeeth: 12,
  toTeeth: 24,
  ...more,
});
const shaft = (id: string, x: number, more: Partial<DriveShaft> = {}): DriveShaft => ({
  id,
  position: { x: x / 1000, z: 0.3 },
  ...more,
});
const slot = (min: number, max: number, direction = { x: 1, z: 0 }) => ({
  slide: { direction, travelMin: mm(min), travelMax: mm(max) },
});

function must(outcome: Outcome<TensionSolution>): TensionSolution {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}
const solved = (input: TensionInput) => must(solveTension(input));

describe('who slides for whom', () => {
  test('[DRV-3] a countershaft that carries the engine is set last-drive first, and the engine is left alone', () => {
    const solution = solved({
      shafts: [
        shaft('engine', 900, slot(-20, 40)),
        shaft('counter', 500, { ...slot(-20, 40), carries: ['engine'] }),
        shaft('axle', 0),
      ],
      drives: [chainRun('primary', 'engine', 'counter'), chainRun('final', 'counter', 'axle')],
    });
    expect(solution.fits).toBe(true);
    expect(solution.steps).toEqual([
      {
        drive: 'primary',
        slides: 'engine',
        carried: [],
        against: 'counter',
        undisturbed: [],
        resetAfter: [],
      },
      {
        drive: 'final',
        slides: 'counter',
        carried: ['engine'],
        against: 'axle',
        undisturbed: ['primary'],
        resetAfter: [],
      },
    ]);
    const [engine, counter] = solution.shafts;
    const rides = (counter?.slide.fresh ?? 0) + (engine?.slide.fresh ?? 0);
    expect(engine?.fresh.x).toBeCloseTo(0.9 + rides, 12);
  });

  test('[DRV-7] a drive with nothing to slide is named, and the other is still set', () => {
    const solution = solved({
      shafts: [shaft('engine', 900, slot(-20, 40)), shaft('counter', 500), shaft('axle', 0)],
      drives: [chainRun('primary', 'engine', 'counter'), chainRun('final', 'counter', 'axle')],
    });
    expect(solution.fits).toBe(false);
    expect(solution.problems).toEqual([{ code: 'nothing-slides', drive: 'final' }]);
    expect(solution.drives.map((drive) => [drive.id, drive.chosen !== undefined])).toEqual([
      ['primary', true],
      ['final', false],
    ]);
    const left = solution.drives[1];
    expect(left?.exactLinks).toBeGreaterThan(left?.alternatives[0]?.links ?? 0);
    expect(left?.alternatives).toHaveLength(2);
  });

  test('[DRV-2] two chains between the same shafts can not both be set', () => {
    const solution = solved({
      shafts: [shaft('engine', 500, slot(-20, 40)), shaft('axle', 0, slot(-20, 40))],
      drives: [chainRun('left', 'engine', 'axle'), chainRun('right', 'engine', 'axle', { fromTeeth: 13 })],
    });
    expect(solution.problems).toEqual([{ code: 'no-order', drives: ['left', 'right'] }]);
  });

  test('[DRV-3] an order that disturbs a drive already set is reported, and a workable one is solved', () => {
    const solution = solved({
      shafts: [shaft('engine', 900, slot(-20, 40)), shaft('counter', 500, slot(-20, 40)), shaft('axle', 0)],
      drives: [chainRun('primary', 'engine', 'counter'), chainRun('final', 'counter', 'axle')],
      order: [
        { drive: 'primary', slides: 'engine' },
        { drive: 'final', slides: 'counter' },
      ],
    });
    expect(solution.problems).toEqual([
      { code: 'order-disturbs', drive: 'final', slides: 'counter', disturbs: ['primary'] },
    ]);
    expect(solution.steps.map((step) => step.drive)).toEqual(['final', 'primary']);
    expect(solution.drives.every((drive) => drive.chosen?.coversLife)).toBe(true);
  });

  test('a drive can name the shaft that slides for it', () => {
    const shafts = [shaft('engine', 500, slot(-20, 40)), shaft('axle', 0, slot(-40, 20))];
    const by = (adjust: string) =>
      solved({ shafts, drives: [chainRun('only', 'engine', 'axle', { adjust })] });
    expect(by('axle').steps[0]?.slides).toBe('axle');
    expect(by('engine').steps[0]?.slides).toBe('engine');
    // Away is +x for the engine and −x for the axle.
    expect(by('axle').drives[0]?.chosen?.slide?.worn).toBeCloseTo(
      -(by('engine').drives[0]?.chosen?.slide?.worn ?? 0),
      12,
    );
  });
});

describe('slots', () => {
  test('[DRV-7] positions past the slot are reported with how much is short, and still given', () => {
    const solution = solved({
      shafts: [shaft('engine', 500, slot(-1, 1)), shaft('axle', 0)],
      drives: [chainRun('only', 'engine', 'axle', { links: 98 })],
    });
    const [drive] = solution.drives;
    const fresh = drive?.chosen?.slide?.fresh ?? 0;
    expect(solution.fits).toBe(false);
    const problem = solution.problems.find((one) => one.code === 'outside-travel' && one.at === 'fresh');
    expect(problem).toMatchObject({ drive: 'only', slides: 'engine', short: fresh - 0.001 });
    expect(drive?.takeUpLeft).toBeCloseTo(0.001 - fresh, 12);
    expect(drive?.elongationAtEnd).toBeLessThan(0);
  });

  test('a slot across the line of centers needs more travel than the center moves', () => {
    const turned = { x: Math.SQRT1_2, z: Math.SQRT1_2 };
    const lengthOf = (direction: { x: number; z: number }) =>
      solved({
        shafts: [shaft('engine', 500, slot(-60, 60, direction)), shaft('axle', 0)],
        drives: [chainRun('only', 'engine', 'axle')],
      }).drives[0]?.slotNeeded?.linkRounding ?? 0;
    expect(lengthOf(turned) / lengthOf({ x: 1, z: 0 })).toBeGreaterThan(1.35);
    expect(lengthOf(turned) / lengthOf({ x: 1, z: 0 })).toBeLessThan(1.48);
  });

  test('[DRV-7] a slide straight across may never slacken the chain', () => {
    const solution = solved({
      shafts: [shaft('engine', 500, slot(-200, 200, { x: 0, z: 1 })), shaft('axle', 0)],
      drives: [chainRun('only', 'engine', 'axle', { links: 97 })],
    });
    expect(solution.problems.map((problem) => problem.code)).toContain('never-slack');
  });

  test('[DRV-6] an open slot is made as long as needed', () => {
    const solution = solved({
      shafts: [
        shaft('engine', 500, { slide: { direction: { x: 2, z: 0 }, pusherPitch: mm(1.25) } }),
        shaft('axle', 0),
      ],
      drives: [chainRun('only', 'engine', 'axle', { offsetLinks: true })],
    });
    const [drive] = solution.drives;
    expect(solution.fits).toBe(true);
    expect(drive?.takeUpLeft).toBeUndefined();
    const [a, b] = drive?.alternatives ?? [];
    expect((b?.links ?? 0) - (a?.links ?? 0)).toBe(1);
    const need = drive?.slotNeeded;
    expect(need?.total).toBeCloseTo((need?.linkRounding ?? 0) + (need?.wear ?? 0) + (need?.fitting ?? 0), 12);
    expect(drive?.slackTurns).toBeCloseTo((drive?.slackSlide ?? 0) / 0.00125, 12);
  });

  test('a belt too short for its sheaves is a problem of the drive, not a fault of the file', () => {
    const solution = solved({
      shafts: [shaft('engine', 300, slot(-200, 200)), shaft('counter', 0)],
      drives: [
        {
          kind: 'belt',
          id: 'belt',
          from: 'engine',
          to: 'counter',
          fromDiameter: mm(70),
          toDiameter: mm(190),
          length: mm(400),
        },
      ],
    });
    expect(solution.problems).toEqual([{ code: 'no-length', drive: 'belt' }]);
  });
});

describe('unreadable input', () => {
  test('gathers every issue with its path', () => {
    const outcome = solveTension({
      shafts: [
        shaft('a', 0),
        shaft('a', 1),
        shaft('b', Number.NaN, { slide: { direction: { x: 0, z: 0 } } }),
      ],
      drives: [
        chainRun('d', 'a', 'nowhere', { fromTeeth: 5.5, links: 0, wearLimit: 2 }),
        {
          kind: 'belt',
          id: 'd',
          from: 'a',
          to: 'a',
          fromDiameter: -1 as Length,
          toDiameter: mm(10),
          length: mm(300),
        },
      ],
      order: [{ drive: 'x', slides: 'y' }],
    });
    if (outcome.ok) throw new Error('taken');
    expect(outcome.issues.map(({ code, path }) => `${code} ${path}`).sort()).toEqual(
      [
        'duplicate-name shafts[1]',
        'duplicate-name drives[1]',
        'wrong-type shafts[2].position.x',
        'conflict shafts[2].slide.direction',
        'unknown-name drives[0].to',
        'wrong-type drives[0].fromTeeth',
        'out-of-range drives[0].wearLimit',
        'wrong-type drives[0].links',
        'conflict drives[1]',
        'out-of-range drives[1].fromDiameter',
        'unknown-name order[0].drive',
        'unknown-name order[0].slides',
      ].sort(),
    );
  });
});

test('figures carry every number with its pieces', () => {
  const solution = solved({
    shafts: [shaft('engine', 500, slot(-30, 60)), shaft('axle', 0)],
    drives: [chainRun('final', 'engine', 'axle')],
  });
  const figures = tensionFigures(solution);
  const slotFigure = figures.find((figure) => figure.id === 'drive.final.slotLength');
  expect(slotFigure?.value).toBeCloseTo(
    (slotFigure?.inputs ?? []).reduce((sum, input) => sum + input.value, 0),
    12,
  );
  expect(new Set(figures.map((figure) => figure.id)).size).toBe(figures.length);
  expect(figures.every((figure) => Number.isFinite(figure.value) && figure.formula !== '')).toBe(true);
});
