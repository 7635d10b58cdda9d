/**
 * The true chain is a polygon: rollers one pitch apart lie on the corners of the two pitch polygons, the runs are
 * straight between the last roller of one and the first of the other. It is placed here roller by roller, with no
 * circle and no wrap formula, and its length averaged over a turn of the driver by one tooth.
 */
import { describe, expect, test } from 'vitest';
import { centerForLinks } from '../../src/core/driveline/index.ts';
import { mm } from '../../src/core/quantity/index.ts';

interface Roller {
  readonly x: number;
  readonly y: number;
  readonly on: 'driver' | 'driven';
}

function seats(teeth: number, at: { x: number; turn: number; on: Roller['on'] }): Roller[] {
  const radius = 0.5 / Math.sin(Math.PI / teeth);
  return Array.from({ length: teeth }, (_, index) => {
    const angle = (2 * Math.PI * (index + at.turn)) / teeth;
    return { x: at.x + radius * Math.cos(angle), y: radius * Math.sin(angle), on: at.on };
  });
}

/** Corners of the stretched band round all seats, counterclockwise (monotone chain). */
function band(rollers: readonly Roller[]): Roller[] {
  const sorted = [...rollers].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (points: readonly Roller[]) => {
    const corners: Roller[] = [];
    for (const point of points) {
      for (let n = corners.length; n >= 2; n = corners.length) {
        const [o, a] = [corners[n - 2] as Roller, corners[n - 1] as Roller];
        if ((a.x - o.x) * (point.y - o.y) - (a.y - o.y) * (point.x - o.x) > 1e-12) break;
        corners.pop();
      }
      corners.push(point);
    }
    return corners.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

/** Lengths in pitches: the whole band and its upper run (driven to driver, counterclockwise with driven at +x). */
function chainAt(teeth: readonly [number, number], center: number, turns: readonly [number, number]) {
  const corners = band([
    ...seats(teeth[0], { x: 0, turn: turns[0], on: 'driver' }),
    ...seats(teeth[1], { x: center, turn: turns[1], on: 'driven' }),
  ]);
  let whole = 0;
  let upper = 0;
  for (const [index, from] of corners.entries()) {
    const to = corners[(index + 1) % corners.length] as Roller;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    whole += length;
    if (from.on === 'driven' && to.on === 'driver') upper = length;
  }
  return { whole, upper };
}

/** The driven turn at which the upper run holds a whole number of pitches, for a driver turn. */
function meshedTurn(teeth: readonly [number, number], center: number, driverTurn: number): number {
  const excess = (turn: number) => {
    const { upper } = chainAt(teeth, center, [driverTurn, turn]);
    return upper - Math.round(upper);
  };
  const STEPS = 64;
  for (let step = 0; step < STEPS; step += 1) {
    let [low, high] = [step / STEPS, (step + 1) / STEPS];
    const [atLow, atHigh] = [excess(low), excess(high)];
    // A jump from +1/2 to −1/2 is the rounding, not a mesh.
    if (atLow * atHigh > 0 || Math.abs(atLow - atHigh) > 0.5) continue;
    for (let bisect = 0; bisect < 50; bisect += 1) {
      const middle = (low + high) / 2;
      if (excess(middle) * atLow > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
  throw new Error('no mesh');
}

/**
 * One part in a million of a chain of 100 links: 1e-4 link is 0.6 µm of center distance at 1/2 in pitch. The wrap
 * equation takes the mean over all phases; the polygon's length swings by some thousandths of a link about it.
 */
const MEAN_LINKS = 1e-4;
/** With the upper run meshed only 24 driver phases are looked at. */
const MESHED_LINKS = 2e-3;

describe.each([
  [9.525, 10, 60, 108],
  [6.35, 11, 72, 110],
  [12.7, 12, 54, 104],
  [12.7, 17, 60, 112],
  [15.875, 13, 45, 100],
  [12.7, 9, 72, 128],
  [12.7, 21, 63, 122],
  [12.7, 15, 15, 80],
])('%f mm, %i/%i teeth, %i links', (pitch, driver, driven, links) => {
  const found = centerForLinks({ pitch: mm(pitch), driverTeeth: driver, drivenTeeth: driven }, links);
  if (!found.ok) throw new Error('refused');
  const center = (found.value * 1000) / pitch;

  test('the mean polygon at the solved center has that many links', () => {
    const PHASES = 40;
    let sum = 0;
    for (let i = 0; i < PHASES; i += 1) {
      for (let j = 0; j < PHASES; j += 1) {
        sum += chainAt([driver, driven], center, [(i + 0.5) / PHASES, (j + 0.5) / PHASES]).whole;
      }
    }
    expect(Math.abs(sum / PHASES ** 2 - links)).toBeLessThan(MEAN_LINKS);
  });

  test('so has the chain that meshes on both sprockets along its driving run', () => {
    const PHASES = 24;
    let sum = 0;
    for (let i = 0; i < PHASES; i += 1) {
      const turn = (i + 0.5) / PHASES;
      const { whole, upper } = chainAt([driver, driven], center, [
        turn,
        meshedTurn([driver, driven], center, turn),
      ]);
      expect(Math.abs(upper - Math.round(upper))).toBeLessThan(1e-9);
      sum += whole;
    }
    expect(Math.abs(sum / PHASES - links)).toBeLessThan(MESHED_LINKS);
  });

  test('an arc of the pitch circle in place of the teeth would be off by more', () => {
    const [r1, r2] = [0.5 / Math.sin(Math.PI / driver), 0.5 / Math.sin(Math.PI / driven)];
    const alpha = Math.asin((r2 - r1) / center);
    const arcs = 2 * center * Math.cos(alpha) + r1 * (Math.PI - 2 * alpha) + r2 * (Math.PI + 2 * alpha);
    expect(Math.abs(arcs - links)).toBeGreaterThan(20 * MESHED_LINKS);
  });
});
