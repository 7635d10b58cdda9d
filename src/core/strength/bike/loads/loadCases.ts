import type { Point3 } from '../../../geometry/index.ts';
import { balanceCase, frameMasses } from './balance.ts';
import { brakeCases } from './brakeCases.ts';
import { bumpCases } from './bumpCases.ts';
import type { CasesInput, Draft, DriveLimits, LoadCase } from './caseTypes.ts';
import { driveCases } from './driveCases.ts';
import { driveLimits } from './driveLimits.ts';
import { restCases } from './restCases.ts';
import { riderHolds } from './riderHolds.ts';
import { sideCases } from './sideCases.ts';
import { GRAVITY, wholeBike } from './wholeBike.ts';

const DOWN: Point3 = { x: 0, y: 0, z: -GRAVITY };

/** All load cases of a placed bike, each balanced by the accelerations of its parts. */
export function loadCases(input: CasesInput): {
  readonly cases: readonly LoadCase[];
  readonly limits: DriveLimits;
} {
  const { frame } = input;
  const withRider = frameMasses(frame, true);
  const bare = frameMasses(frame, false);
  const whole = wholeBike(input, withRider, bare);
  const limits = driveLimits(input, whole);
  const holds = riderHolds(frame);
  const drafts: Draft[] = [
    ...restCases(input, whole, holds),
    ...bumpCases(input, whole, holds),
    ...brakeCases(input, whole, holds),
    ...driveCases(input, whole, holds, limits),
    ...sideCases(input, whole, holds, bare),
  ];
  const cases = drafts.map(({ id, name, basis, source, applied, pulls = [], ...rest }): LoadCase => {
    const carried = rest.withRider !== false;
    const balanced = balanceCase(frame, carried ? withRider : bare, {
      applied,
      hold: rest.hold,
      withRider: carried,
      gravity: rest.gravity ?? DOWN,
    });
    return { id, name, basis, source, applied, balanced, pulls };
  });
  return { cases, limits };
}
