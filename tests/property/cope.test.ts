import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Axis,
  add3,
  along3,
  anyAcross3,
  clockingOf,
  copeBothEnds,
  copePlace,
  copePosition,
  cross3,
  dot3,
  type Point3,
  rotate3,
  scale3,
  subtract3,
  unit3,
} from '../../src/core/geometry/index.ts';
import type { Outcome } from '../../src/core/quantity/index.ts';

/**
 * The cope against a direct intersection in space: the trunk is a cylinder anywhere in space, a line of the branch's
 * wall is run down from far out by bisection until it meets the cylinder. No formula of the cope is used.
 */

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

/** Square of the distance from a line's axis less R²: below 0 inside the cylinder. */
function outsideBy(p: Point3, trunk: Axis, radius: number): number {
  const d = unit3(trunk.direction);
  const v = subtract3(p, trunk.point);
  const across = subtract3(v, scale3(d, dot3(v, d)));
  return dot3(across, across) - radius * radius;
}

/** First meeting of the ray with the cylinder, coming from far outside: distance from `from` along `direction`. */
function meet(from: Point3, direction: Point3, trunk: Axis, radius: number, inside: number): number {
  let [a, b] = [inside, inside + 10];
  for (let k = 0; k < 80; k++) {
    const middle = (a + b) / 2;
    if (outsideBy(along3(from, direction, middle), trunk, radius) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

const unit = fc
  .tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true }))
  .map(
    ([z, t]): Point3 => ({ x: Math.sqrt(1 - z * z) * Math.cos(t), y: Math.sqrt(1 - z * z) * Math.sin(t), z }),
  );

const joints = fc.record({
  trunkRadius: fc.double({ min: 0.008, max: 0.04, noNaN: true }),
  share: fc.double({ min: 0.2, max: 0.95, noNaN: true }),
  offsetShare: fc.double({ min: -0.95, max: 0.95, noNaN: true }),
  angle: fc.double({ min: 0.5, max: Math.PI - 0.5, noNaN: true }),
  trunkDirection: unit,
  turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
  at: fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })),
});

test('each line of the wall meets the trunk where the cope says, anywhere in space', () => {
  fc.assert(
    fc.property(joints, (j) => {
      const t = j.trunkDirection;
      const perpendicular = rotate3(anyAcross3(t), t, j.turn);
      const across = cross3(t, perpendicular);
      const away = add3(scale3(t, Math.cos(j.angle)), scale3(perpendicular, Math.sin(j.angle)));
      const r = j.trunkRadius * j.share;
      const offset = (j.trunkRadius - r) * j.offsetShare;
      const trunk: Axis = { point: { x: j.at[0], y: j.at[1], z: 0.3 }, direction: scale3(t, 2.5) };
      // A point of the branch axis somewhere up the branch; the trunk point slides along the trunk.
      const crossing = add3(along3(trunk.point, t, j.at[1]), scale3(across, offset));
      const branch: Axis = { point: along3(crossing, away, 0.4), direction: away };

      const place = must(copePlace(branch, trunk));
      expect(place.angle).toBeLessThanOrEqual(Math.PI / 2 + 1e-12);
      expect(Math.abs(Math.abs(place.offset) - Math.abs(offset))).toBeLessThan(1e-12);
      const joint = { branchRadius: r, trunkRadius: j.trunkRadius, angle: place.angle, offset: place.offset };
      for (let k = 0; k < 12; k++) {
        const phi = (k * Math.PI) / 6 + 0.01;
        const arm = add3(scale3(place.heel, r * Math.cos(phi)), scale3(place.side, r * Math.sin(phi)));
        const from = add3(place.origin, arm);
        // The wall line is nearest the trunk's axis at −(arm · up)/sin θ; start the search there.
        const up = unit3(subtract3(away, scale3(unit3(t), dot3(away, unit3(t)))));
        const nearest = -dot3(subtract3(from, trunk.point), up) / Math.sin(place.angle);
        const found = meet(from, away, trunk, j.trunkRadius, nearest);
        // 1e-9 m: rounding of coordinates of order 1 m, grown by grazing incidence.
        expect(Math.abs(copePosition(joint, phi) - found)).toBeLessThan(1e-9);
      }
    }),
    { numRuns: 300, seed: 20 },
  );
});

test('a tube coped at both ends has the wall lengths found in space', () => {
  fc.assert(
    fc.property(joints, joints, (p, q) => {
      const from: Point3 = { x: 0.1, y: -0.2, z: 0.4 };
      const direction = p.trunkDirection;
      const length = 0.5;
      const to = along3(from, direction, length);
      const radius = 0.01;
      const trunkAt = (point: Point3, j: typeof p): { axis: Axis; radius: number } => {
        const across = rotate3(anyAcross3(direction), direction, j.turn);
        const t = add3(scale3(direction, Math.cos(j.angle)), scale3(across, Math.sin(j.angle)));
        const trunkRadius = radius + 0.02 * j.share;
        const side = cross3(across, direction);
        return {
          axis: { point: along3(point, side, (trunkRadius - radius) * j.offsetShare), direction: t },
          radius: trunkRadius,
        };
      };
      const [first, second] = [trunkAt(from, p), trunkAt(to, q)];
      const start = must(copePlace({ point: from, direction }, first.axis));
      const end = must(copePlace({ point: to, direction: scale3(direction, -1) }, second.axis));
      const between = dot3(subtract3(end.origin, start.origin), direction);
      const profile = must(
        copeBothEnds({
          length: between,
          start: {
            branchRadius: radius,
            trunkRadius: first.radius,
            angle: start.angle,
            offset: start.offset,
          },
          end: { branchRadius: radius, trunkRadius: second.radius, angle: end.angle, offset: end.offset },
          clocking: clockingOf(start, end),
        }),
      );
      for (const line of profile.lines.filter((_, k) => k % 9 === 0)) {
        const arm = rotate3(scale3(start.heel, radius), scale3(start.away, -1), line.around);
        const middle = add3(along3(start.origin, direction, between / 2), arm);
        const down = walk(middle, scale3(direction, -1), first);
        const up = walk(middle, direction, second);
        expect(Math.abs(line.wallLength - (down + up))).toBeLessThan(1e-9);
        expect(profile.blankLength).toBeGreaterThanOrEqual(line.wallLength - 1e-9);
      }
    }),
    { numRuns: 200, seed: 21 },
  );
});

/** Distance from a point outside along a direction to the near side of a cylinder. */
function walk(
  from: Point3,
  direction: Point3,
  trunk: { readonly axis: Axis; readonly radius: number },
): number {
  const d = unit3(trunk.axis.direction);
  const v = subtract3(from, trunk.axis.point);
  const v0 = subtract3(v, scale3(d, dot3(v, d)));
  const u0 = subtract3(direction, scale3(d, dot3(direction, d)));
  const nearest = -dot3(v0, u0) / dot3(u0, u0);
  let [a, b] = [0, nearest];
  for (let k = 0; k < 80; k++) {
    const middle = (a + b) / 2;
    if (outsideBy(along3(from, direction, middle), trunk.axis, trunk.radius) > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
