import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { runWorksheet } from './index.ts';
import { tubeJointWorksheet } from './tubeJoint.ts';

describe('tube-joint', () => {
  const chord = { outside: 38, wall: 2, yield: 250 };
  const brace = { outside: 25, wall: 1.5 };
  const plate = { edge: 'longitudinal', length: 40, thickness: 4 };

  test.each([
    [{ chord }, 'brace: missing; wanted what is welded to the tube: a brace or a plate'],
    [{ chord, brace, plate }, 'brace: give a brace or a plate, not both'],
  ])('wants one part on the tube: %j', (json, says) => {
    const run = runWorksheet(tubeJointWorksheet, json);
    expect(run.ok ? [] : run.issues.map(describeIssue)).toEqual([says]);
  });
});
