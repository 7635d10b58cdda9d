import { describe, expect, test } from 'vitest';
import { degrees, mm, type Outcome } from '../quantity/index.ts';
import { copePosition } from './cope.ts';
import { clockingOf, copeBothEnds, copePlace, wrapTemplate } from './copeTube.ts';
import { isSimpleLoop } from './loopPoint.ts';
import { signedArea } from './loopProperties.ts';
import { loopBounds } from './outline.ts';

function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

const x = { x: 1, y: 0, z: 0 };
const z = { x: 0, y: 0, z: 1 };

describe('a tube between two trunks', () => {
  // A post straight up from a trunk along x; the trunk at its top runs along x, or along y.
  const post = { point: { x: 0, y: 0, z: 0 }, direction: z };
  const top = { point: { x: 0, y: 0, z: 0.4 }, direction: { x: 0, y: 0, z: -1 } };
  const start = must(copePlace(post, { point: { x: 0, y: 0, z: 0 }, direction: x }));

  test('parallel trunks: heels along the trunks; square trunks: a quarter turn apart', () => {
    const same = must(copePlace(top, { point: top.point, direction: x }));
    const across = must(copePlace(top, { point: top.point, direction: { x: 0, y: 1, z: 0 } }));
    expect(Math.abs(Math.sin(clockingOf(start, same)))).toBeLessThan(1e-15);
    expect(Math.abs(Math.cos(clockingOf(start, across)))).toBeLessThan(1e-15);
  });

  test('lengths of the wall: both copes alike on parallel trunks, opposite on crossed ones', () => {
    const joint = { branchRadius: mm(10), trunkRadius: mm(12.5), angle: Math.PI / 2, offset: 0 };
    const parallel = must(copeBothEnds({ length: mm(400), start: joint, end: joint, clocking: 0 }));
    const crossed = must(copeBothEnds({ length: mm(400), start: joint, end: joint, clocking: Math.PI / 2 }));
    const side = Math.sqrt(12.5 ** 2 - 10 ** 2); // 7.5
    const wallAt = (p: typeof parallel, degree: number): number => p.lines[degree / 5]!.wallLength;
    expect(wallAt(parallel, 0)).toBeCloseTo(mm(400 - 25), 14);
    expect(wallAt(parallel, 90)).toBeCloseTo(mm(400 - 2 * side), 14);
    expect(wallAt(crossed, 0)).toBeCloseTo(mm(400 - 12.5 - side), 14);
    expect(wallAt(crossed, 90)).toBeCloseTo(mm(400 - 12.5 - side), 14);
    // The blank spans the lowest points of both cuts wherever they lie around the tube.
    expect(crossed.blankLength).toBeCloseTo(mm(400 - 2 * side), 14);
  });

  test('copes that meet, parallel axes and bad joints are refused', () => {
    const joint = { branchRadius: mm(10), trunkRadius: mm(12.5), angle: degrees(40), offset: 0 };
    expect(copeBothEnds({ length: mm(20), start: joint, end: joint, clocking: 0 }).ok).toBe(false);
    expect(copePlace(post, { point: post.point, direction: z }).ok).toBe(false);
    const bad = copeBothEnds({
      length: 1,
      start: { ...joint, offset: 1 },
      end: { ...joint, branchRadius: 1 },
      clocking: 0,
    });
    expect(bad.ok ? [] : bad.issues.map((issue) => issue.path)).toEqual(['start.offset', 'end.branchRadius']);
  });
});

describe('wrap template', () => {
  const joint = {
    branchRadius: mm(12.7),
    wall: mm(3),
    trunkRadius: mm(19.05),
    angle: degrees(55),
    offset: mm(4),
  };
  const options = {
    joint,
    line: 'outside',
    paperThickness: 0,
    margin: mm(30),
    seam: 0,
    step: degrees(5),
  } as const;
  const template = must(wrapTemplate(options));

  test('is as wide as the tube is round, a simple outline, counterclockwise', () => {
    expect(template.width).toBeCloseTo(2 * Math.PI * mm(12.7), 15);
    expect(isSimpleLoop(template.outline)).toBe(true);
    expect(signedArea(template.outline)).toBeGreaterThan(0);
    expect(loopBounds(template.outline).maxY).toBe(template.height);
  });

  test('its upper edge falls by s: x = r·φ, y = margin + max s − s, with s = 0 at the trunk’s axis plane', () => {
    const upper = template.outline.slice(2).toReversed();
    upper.forEach((v, k) => {
      const phi = (k * Math.PI) / 36;
      expect(v.x).toBeCloseTo(mm(12.7) * phi, 15);
      expect(template.axisPlaneY - v.y).toBeCloseTo(copePosition(joint, phi), 15);
    });
    expect(Math.min(...upper.map((v) => v.y))).toBeGreaterThanOrEqual(mm(30));
  });

  test('paper of 0.1 mm makes it π·0.1 mm wider; a seam moves the marks', () => {
    const thick = must(wrapTemplate({ ...options, paperThickness: mm(0.1), seam: Math.PI }));
    expect(thick.width - template.width).toBeCloseTo(Math.PI * mm(0.1), 15);
    expect(thick.marks.map((m) => Math.round((m.x / thick.width) * 4))).toEqual([2, 3, 0, 1]);
    expect(template.marks.map((m) => Math.round((m.x / template.width) * 4))).toEqual([0, 1, 2, 3]);
  });

  test('the controlling line is never above the outside line', () => {
    const controlling = must(wrapTemplate({ ...options, line: 'controlling' }));
    controlling.outline.slice(2).forEach((v, k) => {
      expect(controlling.axisPlaneY - v.y).toBeGreaterThanOrEqual(
        template.axisPlaneY - template.outline[k + 2]!.y - 1e-15,
      );
    });
  });

  test('a joint that can not be gives no template', () => {
    expect(wrapTemplate({ ...options, joint: { ...joint, offset: mm(10) } }).ok).toBe(false);
  });
});

/**
 * Handedness, worked by hand: a branch straight up (z) from a trunk along x, offset 4 mm toward +y. Its heel is
 * −x·sin 90° = −x, φ = 90° is +y. Looking down from above (x to the right, y up on the sheet), from −x over +y is clockwise.
 * Seen from outside with the cut at the top the tube hangs upside down, and φ runs to the right.
 */
test('φ runs from the heel to the side of the offset', () => {
  const place = must(
    copePlace(
      { point: { x: 0, y: mm(4), z: 0.5 }, direction: z },
      { point: { x: 0, y: 0, z: 0 }, direction: x },
    ),
  );
  expect(place.offset).toBeCloseTo(mm(4), 15);
  expect(place.heel.x).toBeCloseTo(-1, 15);
  expect(place.side.y).toBeCloseTo(1, 15);
  expect(place.origin.z).toBeCloseTo(0, 15);
});
