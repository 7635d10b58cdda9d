import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut, type MassPart, type MassSummary, placeBike, weigh } from '../../src/core/bike/index.ts';
import {
  characteristic,
  type WhippleMatrices,
  type WhippleParameters,
  whippleEigenvalues,
  whippleFromBuild,
  whippleIssues,
  whippleMatrices,
  whippleSpeeds,
  whippleSums,
} from '../../src/core/ride/index.ts';
import { smallBuild } from '../support/smallBuild.ts';
import { smallMotorcycle } from '../support/smallMotorcycle.ts';
import { whippleBenchmark } from '../support/whippleBenchmark.ts';

const near = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

/** Bikes around the two reference ones: each parameter within 15 % of the one or the other. */
const bikes = fc
  .tuple(
    fc.constantFrom(whippleBenchmark, smallMotorcycle()),
    fc.array(fc.double({ min: 0.85, max: 1.15, noNaN: true }), { minLength: 25, maxLength: 25 }),
  )
  .map(([base, factors]): WhippleParameters => {
    const entries = Object.entries(base) as [keyof WhippleParameters, number][];
    return Object.fromEntries(
      entries.map(([name, value], k) => [name, value * (factors[k] ?? 1)]),
    ) as unknown as WhippleParameters;
  })
  .filter((p) => whippleIssues(p).length === 0);
const speed = fc.double({ min: 0.1, max: 25, noNaN: true });

const entries = (m: WhippleMatrices): number[] => [m.M, m.C1, m.K0, m.K2].flat(2);

describe('[WHP-9] what holds for every bike', () => {
  test('M and K0 are symmetric, M is positive definite', () => {
    fc.assert(
      fc.property(bikes, (p) => {
        const { M, K0 } = whippleMatrices(p);
        expect(M[0][1]).toBe(M[1][0]);
        expect(K0[0][1]).toBe(K0[1][0]);
        expect(M[0][0] > 0 && M[0][0] * M[1][1] > M[0][1] ** 2).toBe(true);
      }),
    );
  });

  test('all masses and inertias times k: all matrices times k, the same motion', () => {
    fc.assert(
      fc.property(bikes, fc.double({ min: 0.2, max: 5, noNaN: true }), speed, (p, k, v) => {
        const isMass = (name: string): boolean => /^[mI]/.test(name);
        const heavier = Object.fromEntries(
          Object.entries(p).map(([name, value]) => [name, isMass(name) ? value * k : value]),
        ) as unknown as WhippleParameters;
        const [light, heavy] = [whippleMatrices(p), whippleMatrices(heavier)];
        entries(light).forEach((entry, i) => {
          near(entries(heavy)[i]!, k * entry, 1e-11 * k * 100);
        });
        near(whippleSpeeds(heavy).capsize ?? 0, whippleSpeeds(light).capsize ?? 0, 1e-9);
        whippleEigenvalues(light, v).forEach((root, i) => {
          // Roots that nearly meet lose half of their digits.
          near(whippleEigenvalues(heavy, v)[i]!.re, root.re, 1e-5);
        });
      }),
    );
  });

  test('a bike n times as long in all lengths is as fast by √n', () => {
    fc.assert(
      fc.property(bikes, fc.double({ min: 0.3, max: 3, noNaN: true }), (p, n) => {
        const power = (name: string): number => (/^I/.test(name) ? 2 : /^(w|c|x|z|r)/.test(name) ? 1 : 0);
        const longer = Object.fromEntries(
          Object.entries(p).map(([name, value]) => [name, value * n ** power(name)]),
        ) as unknown as WhippleParameters;
        const [own, other] = [whippleSpeeds(whippleMatrices(p)), whippleSpeeds(whippleMatrices(longer))];
        expect(other.weaveCrossings.length).toBe(own.weaveCrossings.length);
        own.weaveCrossings.forEach((one, k) => {
          near(other.weaveCrossings[k]! / Math.sqrt(n), one, 1e-8 * one);
        });
        if (own.capsize !== undefined) near(other.capsize! / Math.sqrt(n), own.capsize, 1e-9 * own.capsize);
      }),
    );
  });

  test('riding backward turns every root about', () => {
    fc.assert(
      fc.property(bikes, speed, (p, v) => {
        const m = whippleMatrices(p);
        const [ahead, back] = [characteristic(m, v), characteristic(m, -v)];
        ahead.forEach((coefficient, k) => {
          expect(back[k]).toBe(k % 2 === 0 ? coefficient : -coefficient);
        });
      }),
    );
  });

  test('roots satisfy their sum and product', () => {
    fc.assert(
      fc.property(bikes, speed, (p, v) => {
        const m = whippleMatrices(p);
        const [a0, , , a3, a4] = characteristic(m, v);
        const roots = whippleEigenvalues(m, v);
        const size = Math.max(...roots.map(({ re, im }) => Math.hypot(re, im)));
        near(
          roots.reduce((sum, { re }) => sum + re, 0),
          -a3 / a4,
          1e-10 * size,
        );
        let [re, im] = [1, 0];
        for (const root of roots) [re, im] = [re * root.re - im * root.im, re * root.im + im * root.re];
        near(re, a0 / a4, 1e-9 * size ** 4);
        near(im, 0, 1e-9 * size ** 4);
      }),
    );
  });

  test('inside a self-stable range every root decays, at its ends one does not', () => {
    fc.assert(
      fc.property(bikes, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (p, share) => {
        const m = whippleMatrices(p);
        for (const { from, to = from + 10 } of whippleSpeeds(m).selfStable) {
          const most = (v: number): number => Math.max(...whippleEigenvalues(m, v).map(({ re }) => re));
          expect(most(from + share * (to - from))).toBeLessThan(0);
          if (from > 0) near(most(from), 0, 1e-7);
        }
      }),
    );
  });
});

describe('[WHP-10] parameters of a placed bike', () => {
  const build = smallBuild({
    bodies: {
      tank: {
        name: 'tank',
        place: { from: 'rearAxle', forward: 500, left: 40, height: 620 },
        length: 200,
        width: 100,
        height: 120,
        mass: 5,
      },
    },
  });
  const layout = layOut(build);
  const bike = placeBike(build, layout, layout.shafts);
  const masses = weigh(build, bike, []);
  const parametersOf = (of: MassSummary, stance: 'design' | 'sag' = 'design') => {
    const found = whippleFromBuild({ layout, masses: of, stance });
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    return found.value;
  };
  const { parameters, asymmetry } = parametersOf(masses);
  const sums = whippleSums(parameters);

  test('mass, center and moments of the whole bike come back in the axes of the publication', () => {
    const { center, inertia, total } = masses;
    near(sums.mT, total, 1e-12 * total);
    near(sums.xT, center.x, 1e-12);
    near(sums.zT, -center.z, 1e-12);
    // About the rear contact, by the parallel axis theorem; the center's y is left out by the model.
    near(sums.ITxx, inertia[0] + total * (center.z ** 2 + center.y ** 2) - aside(), 1e-9);
    near(sums.ITzz, inertia[2] + total * (center.x ** 2 + center.y ** 2) - aside(), 1e-9);
    // z points down there: the entry −∫ x·z dm changes its sign.
    near(sums.ITxz, -(inertia[5] - total * center.x * center.z), 1e-9);
  });

  /** What the four bodies lose by being moved into the center plane. */
  function aside(): number {
    return (['rearWheel', 'frontWheel', 'front'] as const)
      .map((body) => masses.parts.filter((part) => part.body === body))
      .concat([masses.parts.filter((part) => part.body === 'frame' || part.body === 'rider')])
      .reduce((sum, parts) => {
        const mass = parts.reduce((all, part) => all + part.mass, 0);
        const y = parts.reduce((all, part) => all + part.mass * part.center.y, 0) / mass;
        return sum + mass * y * y;
      }, 0);
  }

  test('a mirrored bike has the same parameters, and its asymmetry on the other side', () => {
    const flip = (part: MassPart): MassPart => {
      const [xx, yy, zz, xy, yz, xz] = part.inertia;
      return { ...part, center: { ...part.center, y: -part.center.y }, inertia: [xx, yy, zz, -xy, -yz, xz] };
    };
    const mirrored = parametersOf({ ...masses, parts: masses.parts.map(flip) });
    for (const [name, value] of Object.entries(parameters))
      near(mirrored.parameters[name as keyof WhippleParameters], value, 1e-12 * Math.max(1, Math.abs(value)));
    near(mirrored.asymmetry.y, -asymmetry.y, 1e-15);
    near(mirrored.asymmetry.Iyz, -asymmetry.Iyz, 1e-12);
    expect(Math.abs(asymmetry.y)).toBeGreaterThan(1e-4);
  });

  test('a bike pitched by a smaller front tire keeps what pitch cannot change', () => {
    const smaller = smallBuild({ wheels: { front: { fitted: { diameter: 280, width: 90 } } } });
    const lowLayout = layOut(smaller);
    const lowBike = placeBike(smaller, lowLayout, lowLayout.shafts);
    const lowMasses = weigh(smaller, lowBike, []);
    const of = (stance: 'design' | 'sag') => {
      const found = whippleFromBuild({ layout: lowLayout, masses: lowMasses, stance });
      if (!found.ok) throw new Error(JSON.stringify(found.issues));
      return found.value.parameters;
    };
    const [level, pitched] = [of('design'), of('sag')];
    near(pitched.IBxx + pitched.IBzz, level.IBxx + level.IBzz, 1e-9);
    near(pitched.IBxx * pitched.IBzz - pitched.IBxz ** 2, level.IBxx * level.IBzz - level.IBxz ** 2, 1e-9);
    const { pitch } = lowLayout.stances.sag;
    expect(pitch).toBeGreaterThan(0.01);
    // Nose down brings the center of the rear body forward and takes its product along.
    expect(pitched.xB).toBeGreaterThan(level.xB);
    near(pitched.lam, level.lam - pitch, 1e-12);
    near(pitched.rF, 0.14, 1e-12);
  });

  test('a fork that sags brings the front wheel back by what the stance says', () => {
    const sprung = smallBuild({
      wheels: { front: { fitted: { diameter: 300, width: 90 } } },
      steering: { fork: { kind: 'telescopic', travel: 100, sag: 30 } },
    });
    const placed = layOut(sprung);
    const summary = weigh(sprung, placeBike(sprung, placed, placed.shafts), []);
    const found = whippleFromBuild({ layout: placed, masses: summary });
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    near(found.value.parameters.w, placed.stances.sag.wheelbase, 1e-12);
    near(found.value.parameters.c, placed.stances.sag.trail, 1e-15);
    expect(placed.stances.sag.wheelbase).toBeLessThan(placed.stances.fitted.wheelbase);
  });
});
