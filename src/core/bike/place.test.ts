import { describe, expect, test } from 'vitest';
import { type Patch, smallBuild } from '../../../tests/support/smallBuild.ts';
import { distance3 } from '../geometry/index.ts';
import { bodyLinks } from '../standards/index.ts';
import { layOut, layoutFigures, massFigures, massOfBody, placeBike, weigh } from './index.ts';

const bikeOf = (patch: Patch = {}, slide = { x: 0, z: 0 }) => {
  const build = smallBuild(patch);
  const layout = layOut(build);
  const { engine } = layout.shafts;
  const shafts = { engine: { ...engine!, x: engine!.x + slide.x, z: engine!.z + slide.z } };
  const bike = placeBike(build, layout, shafts);
  return { build, layout, bike, mass: weigh(build, bike, []) };
};

describe('engine', () => {
  test('moves as a whole with its shaft', () => {
    const [still, moved] = [bikeOf().bike.engine, bikeOf({}, { x: 0.012, z: 0 }).bike.engine];
    expect(moved.base.x - still.base.x).toBeCloseTo(0.012, 12);
    expect(moved.holes[3].x - still.holes[3].x).toBeCloseTo(0.012, 12);
    expect(moved.faceY).toBe(still.faceY);
  });

  test('has its face and shaft end on the shaft’s side', () => {
    const left = bikeOf().bike.engine;
    const right = bikeOf({ engine: { shaft: { side: 'right' } } }).bike.engine;
    expect([left.faceY, left.shaftEndY]).toEqual([expect.closeTo(0.05, 12), expect.closeTo(0.112, 12)]);
    expect([right.faceY, right.shaftEndY]).toEqual([expect.closeTo(-0.07, 12), expect.closeTo(-0.132, 12)]);
  });

  test('has its holes at the spacing of its mount, front left first', () => {
    const [frontLeft, frontRight, rearLeft] = bikeOf({ engine: { tilt: 20 } }).bike.engine.holes;
    expect(distance3(frontLeft, frontRight)).toBeCloseTo(0.0755, 12);
    expect(distance3(frontLeft, rearLeft)).toBeCloseTo(0.162, 12);
    expect(frontLeft.y).toBeGreaterThan(frontRight.y);
    expect(frontLeft.z).toBeGreaterThan(rearLeft.z);
  });
});

describe('brakes', () => {
  const drum = { kind: 'drum', diameter: 90, width: 20 };
  test('a drum without a plane bears on the hub’s face on its side', () => {
    const [brake] = bikeOf({ brakes: { rear: { ...drum, side: 'right' } } }).bike.brakes;
    // The small build's hub is 100 mm wide and its rim in the middle.
    expect(brake!.y).toBeCloseTo(-0.06, 12);
  });

  test('a drum without a stack is placed from the hub width and the rim offset', () => {
    const patch = {
      brakes: { front: { ...drum, side: 'left' } },
      wheels: { front: { hub: { rimOffset: 3 } } },
    };
    const [brake] = bikeOf(patch).bike.brakes;
    expect(brake!.y).toBeCloseTo(-0.003 + 0.04 + 0.01, 12);
  });
});

describe('rider', () => {
  test('keeps the lengths of the links', () => {
    const { build, bike } = bikeOf({ rider: { mass: 80, stature: 1755 } });
    const links = bodyLinks(build.rider);
    const { rider } = bike;
    expect(rider.outOfReach).toEqual([]);
    expect(distance3(rider.hip, rider.knee)).toBeCloseTo(links.thigh, 9);
    expect(distance3(rider.knee, rider.ankle)).toBeCloseTo(links.shank, 9);
    expect(distance3(rider.shoulder, rider.elbow)).toBeCloseTo(links.upperArm, 9);
    expect(distance3(rider.elbow, rider.grip)).toBeCloseTo(links.forearm, 9);
    expect(rider.knee.x).toBeGreaterThan(rider.hip.x);
  });

  test('leans further to a grip further away, and says when it is out of reach', () => {
    const lean = (forward: number) => {
      const { rider } = bikeOf({ steering: { bars: { grip: { forward } } } }).bike;
      return { x: rider.shoulder.x - rider.hip.x, missing: rider.outOfReach };
    };
    expect(lean(100).x).toBeGreaterThan(lean(-60).x);
    expect(lean(900).missing).toEqual(['arm']);
  });

  test('a child cannot reach the pegs of a tall bike', () => {
    const { rider } = bikeOf({
      rider: { mass: 25, stature: 1100 },
      seating: { seat: { place: { height: 900 } } },
    }).bike;
    expect(rider.outOfReach).toContain('leg');
  });
});

describe('weigh', () => {
  test('the wheel loads carry the weight and balance about the center of mass', () => {
    const { mass, layout } = bikeOf();
    const { wheelbase } = layout.stances.design;
    expect(mass.frontLoad + mass.rearLoad).toBeCloseTo(mass.total * 9.80665, 9);
    expect(mass.frontLoad * (wheelbase - mass.center.x)).toBeCloseTo(mass.rearLoad * mass.center.x, 8);
  });

  test('the rider weighs what he was said to weigh, the parts make up the whole', () => {
    const { mass } = bikeOf();
    // Published segment fractions have three digits.
    expect(Math.abs(massOfBody(mass, ['rider']).mass - 80)).toBeLessThanOrEqual(80 * 2e-3);
    const machine = massOfBody(mass, ['frame', 'front', 'rearWheel', 'frontWheel']);
    expect(machine.mass).toBeCloseTo(mass.bare, 9);
    expect(mass.parts.reduce((sum, part) => sum + part.mass, 0)).toBeCloseTo(mass.total, 9);
  });

  test('a lump of another room counts with its mass and place', () => {
    const { build, bike, mass } = bikeOf();
    const inertia = [0, 0, 0, 0, 0, 0] as const;
    const heavier = weigh(build, bike, [
      { id: 'plates.x', mass: 5, center: { x: 1.05, y: 0, z: 0 }, inertia },
    ]);
    expect(heavier.total - mass.total).toBeCloseTo(5, 9);
    // Over the front axle it loads the front wheel alone.
    expect(heavier.frontLoad - mass.frontLoad).toBeCloseTo(5 * 9.80665, 8);
    expect(heavier.rearLoad).toBeCloseTo(mass.rearLoad, 8);
  });

  test('no part has a negative mass or a place that is no number', () => {
    for (const part of bikeOf().mass.parts) {
      expect(part.mass, part.id).toBeGreaterThanOrEqual(0);
      for (const value of [part.center.x, part.center.y, part.center.z, ...part.inertia]) {
        expect(Number.isFinite(value), part.id).toBe(true);
      }
    }
  });

  test('ids of parts are unique', () => {
    const ids = bikeOf().mass.parts.map((part) => part.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('figures', () => {
  test('each has an id of its own, a finite value, a formula and a source', () => {
    const { build, layout, mass } = bikeOf({ wheels: { front: { fitted: { diameter: 300, width: 90 } } } });
    const figures = [...layoutFigures(build, layout), ...massFigures(build, layout, mass)];
    expect(new Set(figures.map((figure) => figure.id)).size).toBe(figures.length);
    for (const figure of figures) {
      expect(Number.isFinite(figure.value), figure.id).toBe(true);
      expect(figure.formula.length).toBeGreaterThan(2);
      expect(figure.source.key.length).toBeGreaterThan(1);
    }
    const trail = figures.find((figure) => figure.id === 'steering.fitted.trail');
    expect(trail?.value).toBe(layout.stances.fitted.trail);
  });
});
