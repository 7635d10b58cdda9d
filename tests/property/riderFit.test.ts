import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut, placeBike, weigh } from '../../src/core/bike/index.ts';
import { bikeFrame } from '../../src/core/geometry/index.ts';
import {
  type RiderFitInput,
  riderFit,
  riderFitOfBuild,
  surveyRiders,
  suspensionOfBuild,
} from '../../src/core/ride/index.ts';
import { bodyLinks } from '../../src/core/standards/index.ts';
import { smallBuild } from '../support/smallBuild.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const contacts = fc.record({
  seat: fc.record({ x: fc.constant(0), y: fc.constant(0), z: between(0.5, 0.9) }),
  peg: fc.record({ x: between(0.1, 0.5), y: between(0.12, 0.3), z: between(0.15, 0.4) }),
  pegDiameter: fc.constant(0.022),
  grip: fc.record({ x: between(0.3, 0.8), y: between(0.2, 0.4), z: between(0.7, 1.2) }),
});
const asked = (of: RiderFitInput['contacts'], obstacles: RiderFitInput['obstacles'] = []): RiderFitInput => ({
  contacts: of,
  seatWidth: 0.2,
  obstacles,
});
const rider = (stature: number) => ({ label: 'rider', links: bodyLinks({ stature }) });

describe('[FIT-3] the linked figure', () => {
  test('links keep their lengths, and what is reached is touched', () => {
    fc.assert(
      fc.property(contacts, between(1.5, 1.95), (of, stature) => {
        const who = rider(stature);
        const { figure, reaches } = riderFit(asked(of), who);
        const apart = (a: { x: number; y: number; z: number }, b: typeof a) =>
          Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
        expect(apart(figure.hip, figure.knee)).toBeCloseTo(who.links.thigh, 9);
        expect(apart(figure.knee, figure.ankle)).toBeCloseTo(who.links.shank, 9);
        expect(apart(figure.shoulder, figure.elbow)).toBeCloseTo(who.links.upperArm, 9);
        expect(apart(figure.elbow, figure.grip)).toBeCloseTo(who.links.forearm, 9);
        if (reaches.grip) expect(apart(figure.grip, of.grip)).toBeLessThan(1e-9);
      }),
    );
  });

  test('knee angle by the law of cosines of the ends', () => {
    fc.assert(
      fc.property(contacts, between(1.5, 1.95), (of, stature) => {
        const who = rider(stature);
        const { figure, angles } = riderFit(asked(of), who);
        const { thigh, shank } = who.links;
        const span = Math.hypot(
          figure.hip.x - figure.ankle.x,
          figure.hip.y - figure.ankle.y,
          figure.hip.z - figure.ankle.z,
        );
        const cosine = (thigh ** 2 + shank ** 2 - span ** 2) / (2 * thigh * shank);
        expect(Math.cos(angles.knee)).toBeCloseTo(cosine, 9);
      }),
    );
  });

  test('a taller rider has more left over at a stop, a higher seat leaves less', () => {
    fc.assert(
      fc.property(contacts, between(1.5, 1.9), (of, stature) => {
        const own = riderFit(asked(of), rider(stature)).groundMargin;
        expect(riderFit(asked(of), rider(stature + 0.05)).groundMargin).toBeGreaterThan(own);
        const higher = { ...of, seat: { ...of.seat, z: of.seat.z + 0.02 } };
        expect(riderFit(asked(higher), rider(stature)).groundMargin).toBeLessThan(own);
      }),
    );
  });

  test('the survey rises from the 5th to the 95th percentile', () => {
    const of = {
      seat: { x: 0, y: 0, z: 0.7 },
      peg: { x: 0.3, y: 0.2, z: 0.28 },
      pegDiameter: 0.022,
      grip: { x: 0.5, y: 0.32, z: 0.95 },
    };
    for (const group of ['women', 'men']) {
      const margins = surveyRiders
        .filter((one) => one.group === group)
        .map((one) => riderFit(asked(of), one));
      expect(margins.map(({ rider: who }) => who.percentile)).toEqual([5, 50, 95]);
      expect(margins[0]!.groundMargin).toBeLessThan(margins[1]!.groundMargin);
      expect(margins[1]!.groundMargin).toBeLessThan(margins[2]!.groundMargin);
      // Longer legs on the same pegs fold more.
      expect(margins[2]!.angles.knee).toBeLessThan(margins[0]!.angles.knee);
    }
  });
});

describe('[FIT-4] room of the legs', () => {
  const of = {
    seat: { x: 0, y: 0, z: 0.7 },
    peg: { x: 0.3, y: 0.2, z: 0.28 },
    pegDiameter: 0.022,
    grip: { x: 0.5, y: 0.32, z: 0.95 },
  };
  const box = (x: number, y: number, z: number, half: number) => ({
    name: 'box',
    frame: { ...bikeFrame, origin: { x, y, z } },
    half: { x: half, y: half, z: half },
    isHot: true,
  });
  test('a box far ahead: the gap is its distance from the knee', () => {
    const fit = riderFit(asked(of, [box(2, 0, 0.6, 0.1)]), rider(1.75));
    expect(fit.splay).toEqual({ left: 0, right: 0 });
    const knee = fit.clearances.find(({ limb, side }) => limb === 'knee' && side === 'left')!;
    const out = (value: number) => Math.max(0, Math.abs(value) - 0.1);
    const { x, y, z } = fit.figure.knee;
    expect(knee.gap + 0.065).toBeCloseTo(Math.hypot(out(x - 2), out(y), out(z - 0.6)), 9);
  });
  test('an engine between the knees is straddled: the knees go out as far as they must', () => {
    const fit = riderFit(asked(of, [box(0.38, 0, 0.66, 0.12)]), rider(1.75));
    expect(fit.splay.left).toBeGreaterThan(0);
    expect(fit.splay.right).toBe(fit.splay.left);
    const [left, right] = (['left', 'right'] as const).map((side) =>
      Math.min(...fit.clearances.filter((one) => one.side === side).map(({ gap }) => gap)),
    );
    expect(left).toBeCloseTo(right!, 9);
    const narrow = riderFit(asked(of, [box(0.38, 0, 0.66, 0.1)]), rider(1.75));
    expect(narrow.splay.left).toBeLessThanOrEqual(fit.splay.left);
  });
});

describe('[FIT-5] of a build', () => {
  const build = smallBuild({ steering: { lock: 35 }, seating: { seat: { springRate: 24 } } });
  const layout = layOut(build);
  const bike = placeBike(build, layout, layout.shafts);
  const fit = riderFitOfBuild(build, bike);
  test('the own rider is the one the bike carries', () => {
    expect(fit.own.figure.knee.x).toBeCloseTo(bike.rider.knee.x, 12);
    expect(fit.own.figure.elbow.z).toBeCloseTo(bike.rider.elbow.z, 12);
    expect(fit.survey).toHaveLength(6);
  });
  test('at full lock the far grip is farther than straight ahead', () => {
    const { figure, rider: who, lockMargin } = fit.own;
    const straight =
      who.links.upperArm +
      who.links.forearm -
      Math.hypot(
        figure.shoulder.x - figure.grip.x,
        figure.shoulder.y - figure.grip.y,
        figure.shoulder.z - figure.grip.z,
      );
    expect(lockMargin).toBeLessThan(straight);
  });
  test('without suspension the tire is the spring; a sprung seat is told', () => {
    const masses = weigh(build, bike, []);
    const springs = suspensionOfBuild(build, bike, masses);
    expect([springs.front.by, springs.rear.by]).toEqual(['tire', 'tire']);
    expect(springs.seat?.sag).toBeCloseTo((0.75 * 80 * 9.80665) / 24e3, 12);
  });
  test('a fork takes its rate from its springs, else from its sag', () => {
    const of = (fork: Record<string, unknown>) => {
      const sprung = smallBuild({ steering: { fork: { kind: 'telescopic', travel: 100, ...fork } } });
      const placed = layOut(sprung);
      const other = placeBike(sprung, placed, placed.shafts);
      return suspensionOfBuild(sprung, other, weigh(sprung, other, [])).front;
    };
    const known = of({ springRate: 12, preload: 15 });
    expect(known.by).toBe('fork');
    const bySag = of({ sag: 30 });
    expect(bySag.by).toBe('fork-by-sag');
    // The sag that the rate was taken from comes back, as it counts upright.
    expect(bySag.result.sag).toBeCloseTo(0.03 * (bySag.end.travel! / 0.1), 9);
    expect(of({}).by).toBe('tire');
  });
});
