import { describe, expect, test } from 'vitest';
import { smallBuild } from '../../../tests/support/smallBuild.ts';
import { layOut, placeBike } from '../bike/index.ts';
import { solveDriveline } from '../driveline/index.ts';
import { leanContacts, lockContacts } from './index.ts';

const MM = 1000;
const rad = (angle: number): number => (angle * Math.PI) / 180;

/** A small build with one bar along the steering axis, `bearing` degrees around it from the left leg, toward the rear. */
function withBar(bearing: number) {
  const plain = smallBuild();
  const { forkOffset, headAngle, fork } = plain.steering;
  const out = Math.hypot(forkOffset, fork.legSpacing / 2);
  // From straight ahead of the axis, turning left; the leg is at atan2(half spacing, offset).
  const at = Math.atan2(fork.legSpacing / 2, forkOffset) + rad(bearing);
  const [u, v] = [out * Math.cos(at), out * Math.sin(at)];
  const place = (along: number) => ({
    from: 'neckBottom',
    forward: (u * Math.sin(headAngle) - along * Math.cos(headAngle)) * MM,
    up: (u * Math.cos(headAngle) + along * Math.sin(headAngle)) * MM,
    side: v * MM,
  });
  return smallBuild({
    frame: {
      nodes: { low: place(0.02), high: place(0.08) },
      tubes: { rail: null, bar: { tubing: 'rail', through: ['low', 'high'] } },
    },
  });
}

describe('lock against the frame', () => {
  test.each([30, 50, 65])(
    'a bar %d° around the axis from a leg is met where the chord is the two radii',
    (bearing) => {
      const build = withBar(bearing);
      const layout = layOut(build);
      const bike = placeBike(build, layout, layout.shafts);
      const { forkOffset, fork } = build.steering;
      const out = Math.hypot(forkOffset, fork.legSpacing / 2);
      const radii = fork.legDiameter / 2 + bike.tubes[0]!.outside / 2;
      const expected = rad(bearing) - 2 * Math.asin(radii / (2 * out));
      const left = lockContacts(build, bike).find(({ toward }) => toward === 'left');
      expect(left?.by).toBe('fork leg');
      expect(left?.against).toBe('bar');
      // Closed in on to 2°/2³⁰; placements are typed in millimeters with all digits.
      expect(Math.abs(left!.angle - expected)).toBeLessThan(1e-6);
    },
  );

  test('nothing near: no contact is told', () => {
    const build = smallBuild();
    const layout = layOut(build);
    expect(lockContacts(build, placeBike(build, layout, layout.shafts))).toEqual([]);
  });
});

describe('lean to first contact', () => {
  const build = smallBuild();
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  const contacts = leanContacts(build, bike, driveline);

  test('the peg touches where its outer end says', () => {
    const peg = contacts.find(({ part, side }) => part === 'seating.pegs' && side === 'left')!;
    // 180 + 90/2 mm across, 22 mm thick; crown 45 mm at both wheels.
    const y = 0.225;
    const z = layout.places.peg.z;
    const height = (z - 0.045) * Math.cos(peg.lean) - y * Math.sin(peg.lean) + 0.045 - 0.011;
    expect(Math.abs(height)).toBeLessThan(1e-12);
  });
  test('each part once a side, rising', () => {
    const keys = contacts.map(({ part, side }) => `${part} ${side}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(contacts.map(({ lean }) => lean)).toEqual(contacts.map(({ lean }) => lean).sort((a, b) => a - b));
  });
  test('a part given from outside counts', () => {
    const low = { part: 'plates.skid', at: { x: 0.5, y: 0.2, z: 0.05 }, radius: 0 };
    const [first] = leanContacts(build, bike, driveline, [low]);
    expect(first?.part).toBe('plates.skid');
    expect(first?.side).toBe('left');
  });
});
