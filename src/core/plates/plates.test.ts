import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bikeOf,
  everyPlate,
  type PlateInput,
  plateBuild,
  someNeeds,
} from '../../../tests/support/plateBuild.ts';
import type { Patch } from '../../../tests/support/smallBuild.ts';
import { distance2, isSimpleLoop, loopBounds, loopInside, toWorld } from '../geometry/index.ts';
import {
  type FlatPattern,
  openingLoop,
  plateFigures,
  plateLumps,
  platesOf,
  type SlotNeed,
  slotNeeds,
} from './index.ts';

function drawn(input: PlateInput, patch: Patch = {}, needs: readonly SlotNeed[] = someNeeds): FlatPattern {
  const build = plateBuild({ one: input }, patch);
  const [pattern] = platesOf(build, bikeOf(build), needs).patterns;
  if (!pattern) throw new Error(JSON.stringify(platesOf(build, bikeOf(build), needs).flaws));
  return pattern;
}

function flaws(input: PlateInput, patch: Patch = {}, needs: readonly SlotNeed[] = someNeeds) {
  const build = plateBuild({ one: input }, patch);
  return platesOf(build, bikeOf(build), needs).flaws;
}

const plate = (name: keyof typeof everyPlate, changes: Patch = {}): PlateInput =>
  ({ ...everyPlate[name], ...changes }) as PlateInput;
const opening = (pattern: FlatPattern, id: string) => pattern.openings.find((one) => one.id === id)!;

describe('every recipe', () => {
  const build = plateBuild();
  const patterns = platesOf(build, bikeOf(build), someNeeds).patterns;

  test.each(patterns.map((pattern) => [pattern.id, pattern] as const))('%s is a plate', (_id, pattern) => {
    expect(isSimpleLoop(pattern.outline)).toBe(true);
    for (const one of pattern.openings)
      expect(loopInside(openingLoop(one), pattern.outline), one.id).toBe(true);
    for (const window of pattern.windows) expect(loopInside(window, pattern.outline)).toBe(true);
    expect(pattern.mass).toBeGreaterThan(0);
    for (const check of pattern.checks) expect(distance2(check.from, check.to)).toBeGreaterThan(0);
    expect(JSON.stringify(pattern)).not.toContain('null');
  });

  test('patterns are data and do not depend on order', () => {
    expect(platesOf(build, bikeOf(build), [...someNeeds].reverse()).patterns).toEqual(patterns);
  });
});

describe('engine plate', () => {
  test('slots cover what the drive needs: over all, travel and the slot width; bolt + 0.5 mm wide (practice)', () => {
    const slot = opening(drawn(plate('engine')), 'engine-front-left');
    expect(slot.diameter).toBeCloseTo(0.0085, 9);
    const box = loopBounds(openingLoop(slot));
    expect(box.maxX - box.minX).toBeCloseTo(0.026 + 0.0085, 9);
    // Tightening is backward: the middle of the travel lies 4 mm behind the drawn hole.
    expect(slot.center.x).toBeCloseTo(0.081 - 0.004, 9);
  });

  test('slotted rails have the plate slide, so their slots lie the other way', () => {
    const pattern = drawn(plate('engine', { slotted: 'rails' }));
    expect(opening(pattern, 'engine-front-left').kind).toBe('hole');
    expect(opening(pattern, 'rail-left-1').center.x).toBeCloseTo(0.09 + 0.004, 9);
  });

  test('diagonals of the engine holes agree, and are those of a rectangle of 162 × 75.5', () => {
    const { checks } = drawn(plate('engine', { slotted: 'none' }));
    const [a, b] = checks.filter(({ name }) => name.startsWith('engine') && name.endsWith('diagonal'));
    expect(distance2(a!.from, a!.to)).toBeCloseTo(Math.hypot(0.162, 0.0755), 9);
    expect(distance2(b!.from, b!.to)).toBeCloseTo(distance2(a!.from, a!.to), 9);
  });

  test('a stated travel shorter than the need is a flaw of the slots', () => {
    const short = flaws(plate('engine', { travel: 20 })).filter(({ rule }) => rule === 'slot-too-short');
    expect(short).toHaveLength(1);
    expect(short[0]).toMatchObject({ value: 0.02, limit: 0.026, severity: 'stop' });
    expect(short[0]!.features).toHaveLength(4);
  });

  test('without a need or a travel the plate says that the slot is missing', () => {
    expect(flaws(plate('engine'), {}, []).map(({ rule }) => rule)).toContain('slot-unknown');
  });

  test('a slot long enough that lies too far to one side is said, with what it covers', () => {
    // Slide of 30 mm with all of it on the slack side covers −30 to 0; the drive wants −9 to 17 of the way.
    const patch = { driveline: { shafts: { engine: { slide: { travel: 30, slack: 30 } } } } };
    const [flaw] = flaws(plate('engine'), patch);
    expect(flaw).toMatchObject({ rule: 'slot-too-short', severity: 'stop' });
    expect(flaw!.value).toBeCloseTo(0.009, 9);
    const centered = { driveline: { shafts: { engine: { slide: { travel: 30, slack: 11 } } } } };
    expect(flaws(plate('engine'), centered)).toEqual([]);
  });

  test('a slide that leaves the plane of the plate is said', () => {
    const off = flaws(plate('engine'), { engine: { tilt: 10 } }).find(
      ({ rule }) => rule === 'slot-direction',
    );
    expect((off!.value * 180) / Math.PI).toBeCloseTo(10, 6);
  });

  test('the upper face carries the engine base', () => {
    const build = plateBuild({ one: plate('engine') });
    const bike = bikeOf(build);
    const [pattern] = platesOf(build, bike, someNeeds).patterns;
    const { frame } = pattern!.placed[0]!;
    const top = toWorld(frame, { x: 0.081, y: 0.03775, z: pattern!.thickness });
    const hole = bike.engine.holes[0];
    expect(Math.hypot(top.x - hole.x, top.y - hole.y, top.z - hole.z)).toBeLessThan(1e-9);
  });

  test('an engine swap: old base 146 × 80, new 162 × 75.5; centers 8.31 mm apart break into each other', () => {
    // √((162 − 146)² + (75.5 − 80)²)/2 = 8.310; holes of 8.5 mm, from a worked example of an engine swap.
    const engineHoles = [1, -1].flatMap((x) =>
      [1, -1].map((y) => ({ x: x * 81, y: y * 37.75, diameter: 8.5 })),
    );
    const found = flaws({
      recipe: 'free',
      thickness: 6,
      make: 'drill',
      corners: [
        { x: -110, y: -70 },
        { x: 110, y: -70 },
        { x: 110, y: 70 },
        { x: -110, y: 70 },
      ],
      holes: engineHoles,
      oldHoles: { alongBike: 146, acrossBike: 80, diameter: 8.5 },
    }).filter(({ rule }) => rule === 'breaks-into-old-hole');
    expect(found).toHaveLength(4);
    for (const flaw of found) {
      expect(Math.abs(flaw.value - 0.00831)).toBeLessThan(5e-6); // two printed decimals of a millimeter
      expect(flaw.limit).toBeCloseTo(0.0085, 9);
      expect(flaw.remedy).toMatch(/slot.*turned 90/);
    }
  });

  test('the same pattern turned a quarter clears the old holes', () => {
    const old = { oldHoles: { alongBike: 146, acrossBike: 80, diameter: 8.5 }, slotted: 'none' };
    const rules = (input: PlateInput) => flaws(input).map(({ rule }) => rule);
    expect(rules(plate('engine', old))).toContain('breaks-into-old-hole');
    expect(rules(plate('engine', { ...old, turned: true }))).not.toContain('breaks-into-old-hole');
  });

  test('a hole in the place of an old one, or a slot over it, is no flaw', () => {
    const same = { alongBike: 162, acrossBike: 75.5, diameter: 8.5 };
    expect(flaws(plate('engine', { oldHoles: same, slotted: 'none' }))).toEqual([]);
    expect(flaws(plate('engine', { oldHoles: { ...same, diameter: 8 } }))).toEqual([]);
  });
});

describe('brackets that follow the axle', () => {
  test('a caliper at 35° fixed to the frame loses 9.8 mm of pad when the axle moves 12 mm', () => {
    // 12·cos 35° = 9.83 mm, from a worked example of a frame-fixed caliper.
    const patch = { brakes: { rear: { caliper: { clock: 145 } } } };
    const needs = [{ shaft: 'rearAxle', length: 0.012, direction: Math.PI }];
    const found = flaws(plate('caliper', { axleHole: false }), patch, needs).find(
      ({ rule }) => rule === 'pad-overlap',
    );
    expect(found!.value * 1e3).toBeCloseTo(9.83, 2);
    expect(flaws(plate('caliper'), patch, needs).map(({ rule }) => rule)).not.toContain('pad-overlap');
  });

  test('lug holes lie where lug radius, clock and spacing put them', () => {
    const pattern = drawn(plate('caliper'));
    const [a, b] = [opening(pattern, 'lug-1').center, opening(pattern, 'lug-2').center];
    expect(distance2(a, b)).toBeCloseTo(0.06, 9);
    expect(Math.hypot(a.x, a.y)).toBeCloseTo(Math.hypot(0.085, 0.03), 9);
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    expect((Math.atan2(middle.y, middle.x) * 180) / Math.PI).toBeCloseTo(125, 9);
  });
});

describe('bends', () => {
  test('flat length = outside legs less 2·OSSB − BA: 6 mm, R 6, K 0.44 takes 10.428 mm of a square foot', () => {
    // 2·12 − (π/2)·(6 + 2.64) = 10.4283; worked by hand from BA = θ(R + K·T).
    const pattern = drawn(plate('outboard'));
    expect(loopBounds(pattern.outline).minY * 1e3).toBeCloseTo(-(140 + 40 - 10.4283), 3);
    const [bend] = pattern.bends;
    expect(bend!.allowance * 1e3).toBeCloseTo(13.5717, 3);
    // The line is the middle of the bend: 140 − 12 + BA/2 below the shaft.
    expect(bend!.from.y * 1e3).toBeCloseTo(-(128 + 13.5717 / 2), 3);
    expect(bend!.note).toMatch(/45 degrees.*1 mm/);
  });

  test('a plate that is bent hangs its foot out to the side it is bent to', () => {
    const build = plateBuild({ one: plate('outboard') });
    const [lump] = plateLumps(build, platesOf(build, bikeOf(build), someNeeds).patterns);
    expect(lump!.center.y).toBeGreaterThan(0.14);
    const inside = plateBuild({
      one: plate('outboard', {
        foot: { height: 140, width: 150, flange: { length: 40, toward: 'inside' }, bolts: 0 },
      }),
    });
    const [other] = plateLumps(inside, platesOf(inside, bikeOf(inside), someNeeds).patterns);
    expect(other!.center.y).toBeLessThan(0.14);
  });

  test('a bent plate weighs what the flat does', () => {
    const build = plateBuild();
    const patterns = platesOf(build, bikeOf(build), someNeeds).patterns;
    const total = patterns.reduce((sum, one) => sum + one.mass * one.count, 0);
    const lumps = plateLumps(build, patterns).reduce((sum, one) => sum + one.mass, 0);
    // Rounding of sums of a few hundred terms.
    expect(Math.abs(lumps - total)).toBeLessThan(1e-12 * total);
  });
});

describe('folding', () => {
  test('half of a square plate turned up a right angle', () => {
    // T 5, R 5, K 0.44: BA = (π/2)·(5 + 2.2) = 11.3097; each half 25 mm from the middle line; the middle layer turns at
    // R + T/2 = 7.5. Worked by hand, the half bends counted with their flats.
    const build = plateBuild({
      one: freeWith({
        bends: [{ from: { x: 0, y: 50 }, to: { x: 100, y: 50 }, angle: 90, direction: 'up' }],
        place: { from: 'rearAxle' },
        plane: 'level',
      }),
    });
    const bike = bikeOf(build);
    const [lump] = plateLumps(build, platesOf(build, bike, []).patterns);
    const half = 11.3097 / 2;
    const y = (25 + (50 - half + 7.5)) / 2;
    const z = (0 + (7.5 + 25 - half)) / 2;
    const { rearAxle } = bike.layout.points;
    expect((lump!.center.x - rearAxle!.x) * 1e3).toBeCloseTo(50, 3);
    expect((lump!.center.y - rearAxle!.y) * 1e3).toBeCloseTo(y, 3);
    expect((lump!.center.z - rearAxle!.z) * 1e3).toBeCloseTo(z, 3);
    // Principal sum 2·(Ixx + Iyy + Izz) is the same mass about its center however it is turned: Ixx + Iyy ≥ Izz.
    const [xx, yy, zz] = lump!.inertia;
    expect(xx + yy).toBeGreaterThan(zz);
    expect(Math.min(xx, yy, zz)).toBeGreaterThan(0);
  });
});

describe('pairs', () => {
  test.each(['axle', 'gusset', 'peg'] as const)(
    '%s: the right one is the mirror image of the left',
    (name) => {
      const pattern = drawn(plate(name));
      expect(pattern.count).toBe(2);
      expect(pattern.placed.map(({ hand }) => hand)).toEqual(['left', 'right']);
      const [left, right] = pattern.placed.map(({ frame }) => frame);
      for (const v of [...pattern.outline, ...pattern.openings.map(({ center }) => center)]) {
        for (const z of [0, pattern.thickness]) {
          const a = toWorld(left!, { x: v.x, y: v.y, z });
          const b = toWorld(right!, { x: v.x, y: v.y, z: pattern.thickness - z });
          expect(Math.hypot(a.x - b.x, a.y + b.y, a.z - b.z)).toBeLessThan(1e-9);
        }
      }
    },
  );

  test('lumps of a pair are mirror images', () => {
    const build = plateBuild({ one: plate('axle') });
    const [a, b] = plateLumps(build, platesOf(build, bikeOf(build), someNeeds).patterns);
    expect(b!.center).toEqual({ ...a!.center, y: -a!.center.y });
    expect(b!.mass).toBe(a!.mass);
  });
});

describe('a gusset ends on the sides of its tubes', () => {
  test('legs lie one tube radius off each axis', () => {
    const build = plateBuild({ one: plate('gusset') });
    const bike = bikeOf(build);
    const [pattern] = platesOf(build, bike, []).patterns;
    const { frame } = pattern!.placed[0]!;
    const node = bike.layout.points['rail-front']!;
    const far = bike.layout.points['down-top']!;
    const z = pattern!.thickness / 2;
    for (const [i, axis] of [
      { x: -1, y: 0, z: 0 },
      { x: far.x - node.x, y: 0, z: far.z - node.z },
    ].entries()) {
      const check = pattern!.checks[i]!;
      for (const p of [toWorld(frame, { ...check.from, z }), toWorld(frame, { ...check.to, z })]) {
        const length = Math.hypot(axis.x, axis.z);
        const off = Math.abs(((p.x - node.x) * axis.z - (p.z - node.z) * axis.x) / length);
        expect(off).toBeCloseTo(0.0127, 9);
        expect(p.y).toBeCloseTo(node.y, 9);
      }
    }
  });
});

const SQUARE_100 = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 100, y: 100 },
  { x: 0, y: 100 },
];
const freeWith = (changes: Patch): PlateInput =>
  ({ recipe: 'free', thickness: 5, make: 'drill', corners: SQUARE_100, ...changes }) as PlateInput;

describe('flaws', () => {
  const rules = (changes: Patch, patch: Patch = {}) => flaws(freeWith(changes), patch);

  test('edge distance: center to edge against 1.2 d0 of EN 1993-1-8 and 1.5 of practice', () => {
    const at = (x: number) => rules({ holes: [{ x, y: 50, bolt: 'M8' }] });
    expect(at(1.5 * 9)).toEqual([]);
    expect(at(13)).toMatchObject([
      {
        rule: 'edge-distance',
        severity: 'caution',
        value: expect.closeTo(0.013, 9),
        limit: expect.closeTo(0.0135, 9),
      },
    ]);
    expect(at(10.7)).toMatchObject([{ rule: 'edge-distance', severity: 'stop' }]);
    expect(at(10.7)[0]!.limit).toBeCloseTo(1.2 * 0.009, 9);
  });

  test('thin sheet wants 2 diameters', () => {
    const thin = rules({ thickness: 2, holes: [{ x: 15, y: 50, bolt: 'M8' }] });
    expect(thin).toMatchObject([{ rule: 'edge-distance', limit: 0.018 }]);
  });

  test('slot ends want 1.5 slot widths', () => {
    const end = rules({ holes: [{ x: 50, y: 13, bolt: 'M8', travel: 0.5, direction: 90 }] });
    expect(end.map(({ rule }) => rule)).toContain('slot-end');
  });

  test('torch: 1.5 thicknesses between cuts; drilled: one', () => {
    const holes = [
      { x: 40, y: 50, diameter: 20 },
      { x: 66, y: 50, diameter: 20 },
    ];
    expect(rules({ holes })).toEqual([]);
    expect(rules({ holes, make: 'torch' })).toMatchObject([
      { rule: 'ligament', limit: 0.0075, severity: 'caution' },
    ]);
    const overlapping = [holes[0], { ...holes[1], x: 55 }];
    expect(rules({ holes: overlapping })).toMatchObject([{ rule: 'ligament', value: 0, severity: 'stop' }]);
  });

  test('a hole across the edge or off the plate', () => {
    expect(rules({ holes: [{ x: 100, y: 50, bolt: 'M8' }] })).toMatchObject([{ rule: 'hole-outside' }]);
    expect(rules({ holes: [{ x: 300, y: 50, bolt: 'M8' }] })).toMatchObject([{ rule: 'hole-outside' }]);
  });

  test('an outline that crosses itself can not be drawn', () => {
    const corners = [SQUARE_100[0], SQUARE_100[2], SQUARE_100[1], SQUARE_100[3]];
    const found = rules({ corners });
    expect(found).toMatchObject([{ rule: 'outline-crosses-itself', severity: 'stop' }]);
  });

  test('bend too sharp for the material; hole too near to it', () => {
    const bend = {
      from: { x: 0, y: 50 },
      to: { x: 100, y: 50 },
      angle: 90,
      direction: 'up',
      insideRadius: 5,
    };
    expect(rules({ bends: [bend] })).toEqual([]);
    expect(rules({ bends: [bend], material: 'aluminum-6061' })).toMatchObject([
      { rule: 'bend-radius', limit: 0.015 },
    ]);
    // 2.5·5 + 5 = 17.5 mm from the hole edge.
    expect(rules({ bends: [bend], holes: [{ x: 50, y: 28, bolt: 'M8' }] })).toEqual([]);
    expect(rules({ bends: [bend], holes: [{ x: 50, y: 29, bolt: 'M8' }] })).toMatchObject([
      { rule: 'bend-near-hole', limit: 0.0175 },
    ]);
  });

  test('sheets on hand', () => {
    const stock = (width: number, thickness = 5) => ({
      shop: { sheetStock: { one: { thickness, width, length: 500 } } },
    });
    expect(rules({}, stock(100))).toEqual([]);
    expect(rules({}, stock(99))).toMatchObject([{ rule: 'does-not-fit-stock', value: 0.1, limit: 0.099 }]);
    expect(rules({}, stock(200, 3))).toMatchObject([{ rule: 'no-sheet', value: 0.005, limit: 0.003 }]);
  });

  test('hole sizes of the drill', () => {
    expect(rules({ holes: [{ x: 50, y: 50, diameter: 1 }] })).toMatchObject([{ rule: 'hole-too-small' }]);
    expect(rules({ holes: [{ x: 50, y: 50, diameter: 40 }] })).toMatchObject([{ rule: 'hole-too-large' }]);
    const larger = { shop: { drill: { largestHole: 40 } } };
    expect(rules({ holes: [{ x: 50, y: 50, diameter: 40 }] }, larger)).toEqual([]);
  });

  test('fits of a bearing bore: loose ones creep, tight ones want a press', () => {
    const withFit = (fit: string, thickness = 9) =>
      flaws(plate('counter', { thickness, seat: { kind: 'bore', bearing: '6202', fit } })).filter(
        ({ rule }) => rule.startsWith('bore-'),
      );
    expect(withFit('N7')).toEqual([]);
    expect(withFit('M7')).toEqual([]);
    expect(withFit('H7')).toMatchObject([{ rule: 'bore-loose', severity: 'caution' }]);
    expect(withFit('P7')).toMatchObject([{ rule: 'bore-tight', severity: 'note' }]);
    expect(withFit('N7', 6)).toMatchObject([{ rule: 'bore-thin-plate', severity: 'note', value: 0.006 }]);
  });

  test.each<[string, PlateInput, RegExp]>([
    ['an unknown bolt', freeWith({ holes: [{ x: 50, y: 50, bolt: 'M7' }] }), /M7/],
    ['an unknown bearing', plate('counter', { seat: { kind: 'bore', bearing: '9999' } }), /9999/],
    ['a nose in the tube', plate('peg', { height: 10 }), /reaches into the tube/],
    ['a saddle wider than its tube', plate('peg', { base: 26 }), /narrower than its tube/],
    ['tubes that do not meet', plate('gusset', { at: 'rail-rear' }), /does not pass node/],
    ['a brake that is no disc', plate('caliper', { brake: 'front' }), /not a disc brake/],
    [
      'a foot shorter than its bend',
      plate('outboard', { foot: { height: 140, width: 150, flange: { length: 8 }, bolts: 0 } }),
      /bend alone takes/,
    ],
    [
      'a tongue wider than its plate',
      plate('seat-rear', { tongue: { width: 120, length: 40 } }),
      /wider than the plate/,
    ],
    ['no window left', plate('outboard', { upright: 60 }), /window/],
    [
      'radii too large for a side',
      freeWith({ corners: SQUARE_100.map((c) => ({ ...c, radius: 60 })) }),
      /corner radii/,
    ],
    ['everything cut away', freeWith({ holes: [{ x: 50, y: 50, diameter: 200 }] }), /whole plate/],
  ])('%s: a finding with the reason, no throw', (_what, input, reason) => {
    const found = flaws(input);
    expect(found).toMatchObject([{ rule: 'cannot-be-drawn', severity: 'stop' }]);
    expect(found[0]!.remedy).toMatch(reason);
  });
});

describe('properties', () => {
  test('more margin, more mass', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        (margin, more) => {
          for (const name of ['engine', 'counter', 'caliper'] as const) {
            const [a, b] = [margin, margin + more].map((m) => drawn(plate(name, { margin: m })).mass);
            expect(b!).toBeGreaterThan(a!);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  test('a slot is as long as its need and its width, whatever the need', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (length, middle) => {
          const needs = [
            { shaft: 'rearAxle', length: length / 1e3, direction: Math.PI, middle: middle / 1e3 },
          ];
          const pattern = drawn(plate('axle', { adjuster: undefined }), {}, needs);
          const figure = plateFigures([pattern]).find(({ id }) => id.endsWith('axle.length'))!;
          expect(figure.value).toBeCloseTo(length / 1e3 + 0.0155, 9);
          expect(opening(pattern, 'axle').center.x).toBeCloseTo(-middle / 1e3, 9);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('needs of one shaft are joined into one', () => {
    const span = { shaft: 'engine', direction: Math.PI };
    const [need] = slotNeeds([
      { ...span, from: -0.004, to: 0.01 },
      { ...span, from: 0.002, to: 0.03 },
    ]);
    expect(need!.length).toBeCloseTo(0.034, 12);
    expect(need!.middle).toBeCloseTo(0.013, 12);
  });
});
