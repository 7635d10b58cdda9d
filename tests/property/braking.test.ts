import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BrakingInput,
  brakedBy,
  brakingOf,
  contactLean,
  discHeat,
  idealDistribution,
  type LongitudinalBike,
  longitudinalLimits,
  STANDARD_GRAVITY,
  wheelLoads,
} from '../../src/core/ride/index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bikes = fc
  .record({
    mass: between(60, 300),
    wheelbase: between(0.8, 1.6),
    share: between(0.25, 0.6),
    height: between(0.4, 0.8),
  })
  .map(
    ({ mass, wheelbase, share, height }): LongitudinalBike => ({
      mass,
      wheelbase,
      ahead: share * wheelbase,
      height,
    }),
  );
const friction = between(0.1, 1.2);
const force = between(0, 1.5);

describe('[BRK-8] what two brake forces can do', () => {
  test('no tire carries more than its friction, no wheel less than nothing', () => {
    fc.assert(
      fc.property(bikes, friction, force, force, (bike, mu, front, rear) => {
        const { share, limitedBy } = brakedBy(bike, mu, { front, rear });
        const lift = longitudinalLimits(bike, mu).stoppie / STANDARD_GRAVITY;
        expect(share).toBeLessThanOrEqual(Math.min(mu, lift) + 1e-12);
        expect(share).toBeLessThanOrEqual(front + rear + 1e-12);
        const loads = wheelLoads(bike, -share * STANDARD_GRAVITY);
        const weight = bike.mass * STANDARD_GRAVITY;
        if (limitedBy === 'hand') {
          expect(front).toBeLessThanOrEqual((mu * loads.front) / weight + 1e-12);
          expect(rear).toBeLessThanOrEqual((mu * loads.rear) / weight + 1e-12);
          expect(share).toBeCloseTo(front + rear, 12);
        }
        if (limitedBy === 'front-locks') expect(share).toBeCloseTo((mu * loads.front) / weight + rear, 12);
        if (limitedBy === 'rear-locks') expect(share).toBeCloseTo(front + (mu * loads.rear) / weight, 12);
      }),
    );
  });

  test('more grip, or more of either brake, never stops later', () => {
    fc.assert(
      fc.property(bikes, friction, force, force, between(0, 0.5), (bike, mu, front, rear, more) => {
        const at = (grip: number, f: number, r: number): number =>
          brakedBy(bike, grip, { front: f, rear: r }).share;
        const own = at(mu, front, rear);
        expect(at(mu + more, front, rear)).toBeGreaterThanOrEqual(own - 1e-12);
        expect(at(mu, front, rear + more)).toBeGreaterThanOrEqual(own - 1e-12);
        expect(at(mu, front + more, rear)).toBeGreaterThanOrEqual(own - 1e-12);
      }),
    );
  });

  test('the ideal distribution is braked with both tires at the same share of their load', () => {
    fc.assert(
      fc.property(bikes, between(0.05, 0.9), (bike, part) => {
        const points = idealDistribution(bike, 101);
        const { front, rear } = points[Math.round(part * 100)]!;
        const x = front + rear;
        const loads = wheelLoads(bike, -x * STANDARD_GRAVITY);
        const weight = bike.mass * STANDARD_GRAVITY;
        expect((front * weight) / loads.front).toBeCloseTo(x, 9);
        expect((rear * weight) / loads.rear).toBeCloseTo(x, 6);
      }),
    );
  });
});

describe('[BRK-9] a stop', () => {
  const input = (bike: LongitudinalBike, mu: number, speed: number, control: number): BrakingInput => {
    const side = { gain: { low: 5, usual: 8, high: 10 }, control };
    return { bike, friction: mu, speed, reaction: 1, front: side, rear: side };
  };
  test('distance grows with speed and shrinks with the force of the hand until something locks', () => {
    fc.assert(
      fc.property(
        bikes,
        friction,
        between(1, 30),
        between(5, 150),
        between(1.01, 1.5),
        (bike, mu, speed, control, factor) => {
          const own = brakingOf(input(bike, mu, speed, control)).stops;
          const faster = brakingOf(input(bike, mu, speed * factor, control)).stops;
          const harder = brakingOf(input(bike, mu, speed, control * factor)).stops;
          own.forEach((stop, k) => {
            expect(faster[k]!.distance!).toBeGreaterThan(stop.distance!);
            expect(harder[k]!.distance!).toBeLessThanOrEqual(stop.distance! + 1e-9);
          });
          const [front, rear, both] = own;
          expect(both!.deceleration).toBeGreaterThanOrEqual(
            Math.max(front!.deceleration, rear!.deceleration) - 1e-9,
          );
        },
      ),
    );
  });
  test('just below the locking force the wheel turns, just above it is locked or the rear lifts', () => {
    fc.assert(
      fc.property(bikes, friction, (bike, mu) => {
        const locked = brakingOf(input(bike, mu, 10, 50));
        const gain = 8;
        const weight = bike.mass * STANDARD_GRAVITY;
        const front = (locked.frontLock!.control * gain) / weight;
        const rear = (locked.rearLock!.control * gain) / weight;
        expect(brakedBy(bike, mu, { front: front * 0.999, rear: 0 }).limitedBy).toBe('hand');
        expect(brakedBy(bike, mu, { front: front * 1.001, rear: 0 }).limitedBy).toBe(
          locked.frontLock!.by === 'lift' ? 'lift' : 'front-locks',
        );
        expect(brakedBy(bike, mu, { front: 0, rear: rear * 0.999 }).limitedBy).toBe('hand');
        expect(brakedBy(bike, mu, { front: 0, rear: rear * 1.001 }).limitedBy).toBe('rear-locks');
      }),
    );
  });
  test('no brake, no distance', () => {
    const { stops, reference } = brakingOf(
      input({ mass: 100, wheelbase: 1, ahead: 0.4, height: 0.6 }, 0.8, 10, 0),
    );
    expect(stops.every((stop) => stop.deceleration === 0 && stop.distance === undefined)).toBe(true);
    expect(reference).toEqual([]);
  });
});

test('[BRK-10] a disc warms from stop to stop and never past its limit', () => {
  fc.assert(
    fc.property(
      between(2, 30),
      between(0.2, 2),
      between(1, 60),
      between(5, 300),
      (speed, discMass, cooling, interval) => {
        const heat = discHeat({
          mass: 150,
          speed,
          share: 0.7,
          discMass,
          heatCapacity: 460,
          discArea: 0.03,
          cooling,
          interval,
          stops: 20,
        });
        heat.after.forEach((rise, k) => {
          expect(rise).toBeGreaterThanOrEqual((heat.after[k - 1] ?? 0) - 1e-12);
          expect(rise).toBeLessThanOrEqual(heat.limit! * (1 + 1e-12));
        });
      },
    ),
  );
});

test('[STL-5] the part touches where it is said to: its height there is 0', () => {
  fc.assert(
    fc.property(
      between(0.05, 0.5),
      between(0.06, 0.8),
      between(0, 0.05),
      between(0, 0.06),
      (across, height, radius, crown) => {
        const lean = contactLean({ across, height, radius, crown });
        if (lean === undefined || lean === 0) return;
        const at = (height - crown) * Math.cos(lean) - across * Math.sin(lean) + crown - radius;
        expect(Math.abs(at)).toBeLessThan(1e-12);
        const higher = contactLean({ across, height: height + 0.01, radius, crown });
        if (higher !== undefined) expect(higher).toBeGreaterThan(lean);
      },
    ),
  );
});
