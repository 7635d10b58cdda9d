import { describe, expect, test } from 'vitest';
import { circleLoop, type Loop, type Point, polygonLoop, slotLoop } from '../../geometry/index.ts';
import { type CutPlate, cutPlate } from './cutPlate.ts';
import type { FlatPlate } from './flatPlate.ts';
import { heldBy } from './hold.ts';
import type { PlateLoads } from './plateLoads.ts';
import { unbalance, wrenchOf } from './plateLoads.ts';
import { type LoadedCut, loadedCut, worstCut } from './worstCut.ts';

const T = 0.006;
const ALLOWED = { plain: 1, welded: 1 };
/** Rounding of a closed form. */
const ROUNDING = 1e-9;

const rectangle = (length: number, width: number): Loop =>
  polygonLoop([
    { x: 0, y: -width / 2 },
    { x: length, y: -width / 2 },
    { x: length, y: width / 2 },
    { x: 0, y: width / 2 },
  ]);

const plate = (outline: Loop, openings: readonly Loop[] = []): FlatPlate => ({
  outline,
  openings,
  thickness: T,
});

const force = (x: number, y: number, z = 0) => ({ x, y, z });

/** The cut square to x at a place. */
function cutAt(cut: CutPlate, x: number, loads: PlateLoads): Omit<LoadedCut, 'share'> {
  const section = cut.sections.find(({ line }) => line.angle === 0 && Math.abs(line.offset - x) < 1e-9);
  if (!section) throw new Error(`no cut at ${x}`);
  return loadedCut(cut, section, loads);
}

const pair = (a: Point, b: Point, f: { x: number; y: number; z: number }): PlateLoads => ({
  points: [
    { at: a, force: f },
    { at: b, force: { x: -f.x, y: -f.y, z: -f.z } },
  ],
  lines: [],
});

describe('closed forms of beams', () => {
  const [length, width] = [0.12, 0.03];
  /** A place that the sweep is told to look at. */
  const at = 0.07;
  const root = { from: { x: 0, y: -width / 2 }, to: { x: 0, y: width / 2 } };
  const held = (loads: PlateLoads): PlateLoads => {
    const by = heldBy(loads, [{ by: 'line', ...root }], T / Math.sqrt(12));
    return { points: [...loads.points, ...by.points], lines: [...loads.lines, ...by.lines] };
  };
  const tip = { x: length, y: 0 };
  const cut = cutPlate(plate(rectangle(length + width / 2, width)), {
    spots: [tip, { x: at, y: 0 }],
    welds: [root],
    weldReach: 0,
  });

  test('cantilever in its plane: 6·F·L/(t·b²) at the root', () => {
    const worst = worstCut(cut, held({ points: [{ at: tip, force: force(0, -500) }], lines: [] }), ALLOWED)!;
    const root = (6 * 500 * length) / (T * width ** 2);
    // The last cut lies 0.3 mm from the root: 0.25 % of the moment.
    expect(worst.stress.equivalent / root).toBeGreaterThan(1 - 3e-3);
    expect(worst.stress.equivalent / root).toBeLessThan(1);
    expect(worst.section.width).toBeCloseTo(width, 9);
    expect(worst.section.centroid.x).toBeLessThan(4e-4);
  });

  test('cantilever out of its plane: 6·F·L/(b·t²), and twist of a load off its middle 3·T/(b·t²)', () => {
    const bend = held({ points: [{ at: tip, force: force(0, 0, 40) }], lines: [] });
    const middle = cutAt(cut, at, bend);
    const arm = length - at;
    expect(middle.stress.equivalent / ((6 * 40 * arm) / (width * T ** 2))).toBeCloseTo(1, 9);
    const off = held({ points: [{ at: { x: length, y: 0.01 }, force: force(0, 0, 40) }], lines: [] });
    const sigma = (6 * 40 * arm) / (width * T ** 2);
    const tau = (3 * 40 * 0.01) / (width * T ** 2);
    const twisted = cutAt(cut, at, off);
    expect(twisted.stress.equivalent / Math.hypot(sigma, Math.sqrt(3) * tau)).toBeCloseTo(1, 9);
    expect(Math.abs(twisted.forces.torque)).toBeCloseTo(0.4, 9);
  });

  test('short stub: 1.5·V/A in the middle, times √3', () => {
    const shear = held({ points: [{ at: { x: at + 0.002, y: 0 }, force: force(0, 1000) }], lines: [] });
    const near = cutAt(cut, at, shear);
    expect(near.stress.at).toBe('middle');
    expect(near.stress.equivalent).toBeCloseTo((Math.sqrt(3) * 1.5 * 1000) / (width * T), 2);
  });

  test('pull off the middle line: F/A + F·e·c/I', () => {
    const loads = held({ points: [{ at: { x: length, y: 0.008 }, force: force(2000, 0) }], lines: [] });
    const middle = cutAt(cut, at, loads);
    const expected = 2000 / (width * T) + (6 * 2000 * 0.008) / (T * width ** 2);
    expect(middle.stress.equivalent / expected).toBeCloseTo(1, 9);
    // Pull and bending add on the side of the load.
    expect(middle.forces.normal).toBeCloseTo(2000, 9);
  });
});

test('cuts through a seam are left out: what the plate is welded to bends with it there', () => {
  const seam = { from: { x: 0, y: -0.02 }, to: { x: 0.1, y: -0.02 } };
  const cut = cutPlate(plate(rectangle(0.2, 0.04)), { welds: [seam] });
  for (const { line, ends } of cut.sections) {
    if (line.angle !== 0) continue;
    expect(ends[0].x).toBeGreaterThan(0.1);
  }
  expect(cut.sections.some(({ isAtWeld }) => isAtWeld)).toBe(true);
  expect(cut.sections.some(({ isAtWeld }) => !isAtWeld)).toBe(true);
});

describe('net sections', () => {
  test('strip with a hole in pull: F/((b − d)·t)', () => {
    const hole = circleLoop({ x: 0.1, y: 0 }, 0.006);
    const [a, b] = [
      { x: 0.03, y: 0 },
      { x: 0.17, y: 0 },
    ];
    const cut = cutPlate(plate(rectangle(0.2, 0.05), [hole]), { spots: [a, b] });
    const at = cutAt(cut, 0.1, pair(b, a, force(9000, 0)));
    expect(at.stress.equivalent / (9000 / ((0.05 - 0.012) * T))).toBeCloseTo(1, 9);
    expect(at.section.width).toBeCloseTo(0.038, 12);
  });

  test('an even strip in pull shows F/A in whatever direction it is cut, to 6 % above', () => {
    // Of σ·cos² and σ·sin·cos, √(σ² + 3·τ²) is at most √(9/8)·σ: the stress along the cut is not seen.
    const [a, b] = [
      { x: 0.01, y: 0 },
      { x: 0.99, y: 0 },
    ];
    const cut = cutPlate(plate(rectangle(1, 0.05)));
    const loads = pair(b, a, force(9000, 0));
    const inner = cut.sections.filter(
      ({ ends }) => Math.min(...ends.map((p) => p.x)) > 0.02 && Math.max(...ends.map((p) => p.x)) < 0.98,
    );
    const found = inner.map(
      (section) => loadedCut(cut, section, loads).stress.equivalent / (9000 / (0.05 * T)),
    );
    expect(Math.max(...found)).toBeLessThan(1.07);
    expect(Math.max(...found)).toBeGreaterThan(1 - ROUNDING);
    expect(new Set(inner.map(({ line }) => line.angle)).size).toBeGreaterThan(8);
  });

  test('a hole near one edge bends the rest: N/A + N·e·c/I of the two unlike ligaments', () => {
    const hole = circleLoop({ x: 0.1, y: 0.01 }, 0.006);
    const cut = cutPlate(plate(rectangle(0.2, 0.05), [hole]));
    const at = cutAt(cut, 0.1, pair({ x: 0.19, y: 0 }, { x: 0.01, y: 0 }, force(9000, 0)));
    // By hand: ligaments 29 mm (middle −10.5) and 9 mm (middle 20.5).
    const [b1, b2] = [29, 9];
    const middle = (b1 * -10.5 + b2 * 20.5) / 38;
    const inertia = (b1 ** 3 + b2 ** 3) / 12 + b1 * (-10.5 - middle) ** 2 + b2 * (20.5 - middle) ** 2;
    const far = Math.max(25 - middle, 25 + middle);
    const sides = [25 - middle, -25 - middle].map((e) =>
      Math.abs(9000 / 38 - (9000 * middle * -e * -1) / inertia),
    );
    expect(far).toBeGreaterThan(25);
    expect(at.stress.equivalent / ((Math.max(...sides) / (T * 1e3)) * 1e6)).toBeCloseTo(1, 9);
  });

  test('a window between two posts: each bends by half the shear times half the height', () => {
    // Posts 15 mm wide, window 60 mm along: a frame of two posts that stay upright, M = V/2·h/2.
    const window = polygonLoop([
      { x: 0.07, y: -0.025 },
      { x: 0.13, y: -0.025 },
      { x: 0.13, y: 0.025 },
      { x: 0.07, y: 0.025 },
    ]);
    const cut = cutPlate(plate(rectangle(0.2, 0.08), [window]), {
      spots: [
        { x: 0.13 - 1e-6, y: 0 },
        { x: 0.1, y: 0 },
      ],
    });
    const v = 1500;
    // A shear without moment at the window's middle.
    const loads: PlateLoads = {
      points: [
        { at: { x: 0.2, y: 0 }, force: force(0, v), moment: { x: 0, y: 0, z: -v * 0.1 } },
        { at: { x: 0, y: 0 }, force: force(0, -v), moment: { x: 0, y: 0, z: -v * 0.1 } },
      ],
      lines: [],
    };
    const end = cutAt(cut, 0.13 - 1e-6, loads);
    const posts = (6 * (v / 2) * (0.03 - 1e-6)) / (T * 0.015 ** 2);
    const whole = (v * (0.03 - 1e-6) * 0.04) / ((T * (0.08 ** 3 - 0.05 ** 3)) / 12);
    expect(end.stress.equivalent / (posts + whole)).toBeCloseTo(1, 6);
    const middle = cutAt(cut, 0.1, loads);
    expect(middle.stress.equivalent / ((Math.sqrt(3) * 1.5 * v) / (2 * 0.015 * T))).toBeCloseTo(1, 9);
  });

  test('a slot that breaks out through the edge leaves what is beside it', () => {
    const open = slotLoop({ x: 0.1, y: 0.01 }, { x: 0.1, y: 0.06 }, 0.01);
    const cut = cutPlate(plate(rectangle(0.2, 0.05), [open]));
    const section = cut.sections.find(({ line }) => line.angle === 0 && Math.abs(line.offset - 0.1) < 1e-9)!;
    expect(section.ligaments).toHaveLength(1);
    expect(section.width).toBeCloseTo(0.03, 12);
    expect(section.centroid.y).toBeCloseTo(-0.01, 12);
  });
});

describe('shapes that a line meets more than once', () => {
  // A fork: back 20 mm, prongs 15 mm wide and 80 mm long, 40 mm apart.
  const fork = polygonLoop([
    { x: 0, y: -0.035 },
    { x: 0.1, y: -0.035 },
    { x: 0.1, y: -0.02 },
    { x: 0.02, y: -0.02 },
    { x: 0.02, y: 0.02 },
    { x: 0.1, y: 0.02 },
    { x: 0.1, y: 0.035 },
    { x: 0, y: 0.035 },
  ]);
  const [up, down] = [
    { x: 0.095, y: 0.0275 },
    { x: 0.095, y: -0.0275 },
  ];
  const cut = cutPlate(plate(fork), { spots: [{ x: 0.05, y: 0 }, { x: 0.0201, y: 0 }, up, down] });
  const spread = pair(up, down, force(0, 300));

  test('each prong of a spread fork is a cantilever of its own', () => {
    const both = cut.sections.filter(({ line }) => line.angle === 0 && Math.abs(line.offset - 0.05) < 1e-9);
    expect(both).toHaveLength(2);
    for (const section of both) {
      const { forces, stress } = loadedCut(cut, section, spread);
      expect(Math.abs(forces.shear)).toBeCloseTo(300, 9);
      expect(Math.abs(forces.moment)).toBeCloseTo(300 * 0.045, 9);
      expect(stress.equivalent / ((6 * 300 * 0.045) / (T * 0.015 ** 2))).toBeCloseTo(1, 9);
    }
  });

  test('the back takes pull and bending, F/A + F·a·c/I; the worst is the root of a prong', () => {
    const level = cut.sections.find(
      ({ line, width }) => Math.abs(line.angle - Math.PI / 2) < 1e-9 && Math.abs(width - 0.02) < 1e-9,
    )!;
    const { stress } = loadedCut(cut, level, spread);
    const arm = 0.095 - 0.01;
    const expected = 300 / (0.02 * T) + (6 * 300 * arm) / (T * 0.02 ** 2);
    expect(stress.equivalent / expected).toBeCloseTo(1, 9);
    const worst = worstCut(cut, spread, ALLOWED)!;
    // The root of a prong, 15 mm wide under 75 mm of lever, and the back, 20 mm under 85: 6FL/(tb²) 100 and 65 MPa.
    expect(worst.stress.equivalent).toBeGreaterThan(0.99 * ((6 * 300 * 0.075) / (T * 0.015 ** 2)));
  });

  test('a curved bow: a level cut through its crown takes F/A + F·(r + e)·c/I', () => {
    // Half ring of mean radius 40 mm and width 20 mm, its ends pulled apart square to the line between them.
    const bow: Loop = [
      { x: 0.03, y: 0, bulge: 0 },
      { x: 0.05, y: 0, bulge: 1 },
      { x: -0.05, y: 0, bulge: 0 },
      { x: -0.03, y: 0, bulge: -1 },
    ];
    const ends = [
      { x: 0.04, y: 0.001 },
      { x: -0.04, y: 0.001 },
    ] as const;
    const bowCut = cutPlate(plate(bow), { spots: [{ x: 0, y: 0 }] });
    const crown = bowCut.sections.find(({ line }) => line.angle === 0 && Math.abs(line.offset) < 1e-9)!;
    const { stress, forces } = loadedCut(bowCut, crown, pair(ends[0], ends[1], force(700, 0)));
    expect(crown.width).toBeCloseTo(0.02, 12);
    expect(forces.normal).toBeCloseTo(700, 9);
    const expected = 700 / (0.02 * T) + (6 * 700 * 0.039) / (T * 0.02 ** 2);
    expect(stress.equivalent / expected).toBeCloseTo(1, 9);
  });
});

describe('what holds a plate', () => {
  const acts: PlateLoads = {
    points: [{ at: { x: 0.01, y: 0.08 }, force: force(300, -500, 70), moment: { x: 3, y: -2, z: 5 } }],
    lines: [],
  };
  const line = (ax: number, ay: number, bx: number, by: number) =>
    ({ by: 'line', from: { x: ax, y: ay }, to: { x: bx, y: by } }) as const;

  test.each([
    ['one line', [line(-0.05, 0, 0.05, 0)]],
    ['two lines askew', [line(-0.05, 0, 0.05, 0.01), line(0.06, 0.02, 0.07, 0.09)]],
    [
      'bolts',
      [
        { by: 'point', at: { x: -0.05, y: 0 } },
        { by: 'point', at: { x: 0.05, y: 0 } },
        { by: 'point', at: { x: 0, y: 0.03 } },
      ] as const,
    ],
    ['one bolt', [{ by: 'point', at: { x: 0, y: 0 } }] as const],
  ])('%s keeps it at rest', (_, holders) => {
    const by = heldBy(acts, holders, 0.002);
    const all = { points: [...acts.points, ...by.points], lines: by.lines };
    expect(unbalance(all, { x: 0, y: 0 }, 0.1)).toBeLessThan(ROUNDING);
  });

  test('a weld line under moment in its plane: 6·M/L² a length at its ends', () => {
    const moment: PlateLoads = {
      points: [{ at: { x: 0, y: 0 }, force: force(0, 0), moment: { x: 0, y: 0, z: 12 } }],
      lines: [],
    };
    const { lines } = heldBy(moment, [line(-0.05, 0, 0.05, 0)], 0);
    expect(Math.abs(lines[0]!.force[0].y)).toBeCloseTo((6 * 12) / 0.1 ** 2, 6);
    expect(lines[0]!.force[0].y).toBeCloseTo(-lines[0]!.force[1].y, 6);
  });

  test('a moment about a single line goes into it as a moment all along', () => {
    const tip: PlateLoads = { points: [{ at: { x: 0, y: 0.1 }, force: force(0, 0, 50) }], lines: [] };
    const { lines } = heldBy(tip, [line(-0.05, 0, 0.05, 0)], T / Math.sqrt(12));
    expect(lines[0]!.moment.x).toBeCloseTo((-50 * 0.1) / 0.1, 9);
    expect(lines[0]!.force[0].z).toBeCloseTo(-500, 6);
  });

  test('four equal bolts under a load off their middle share as a bolt group does', () => {
    // shigley-9, example 8-7: 16 kN at 425 mm from the middle of bolts at ±75 and ±60 mm: 21.0 and 14.8 kN.
    const load: PlateLoads = { points: [{ at: { x: 0.425, y: 0 }, force: force(0, -16e3) }], lines: [] };
    const bolts = [
      [-0.075, 0.06],
      [0.075, 0.06],
      [-0.075, -0.06],
      [0.075, -0.06],
    ].map(([x, y]) => ({ by: 'point', at: { x: x!, y: y! } }) as const);
    const sizes = heldBy(load, bolts, 0).points.map(({ force: f }) => Math.hypot(f.x, f.y) / 1e3);
    // Printed to three digits.
    expect(Math.max(...sizes)).toBeCloseTo(21.0, 1);
    expect(Math.min(...sizes)).toBeCloseTo(14.8, 1);
  });

  test('loads that are not in balance are told', () => {
    expect(unbalance(acts, { x: 0, y: 0 }, 0.1)).toBeGreaterThan(0.5);
    expect(wrenchOf(acts, { x: 0.01, y: 0.08 })).toEqual([300, -500, 70, 3, -2, 5]);
  });
});
