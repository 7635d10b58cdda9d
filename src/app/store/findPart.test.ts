import { expect, test } from 'vitest';
import { findPart } from './findPart.ts';

const file = {
  wheels: { rear: { hub: { width: 1 } } },
  stacks: { rear: { items: [{ id: 'nut' }, { id: 'hub' }] } },
  frame: { tubes: { rail: {} } },
  driveline: { stages: [{ id: 'first' }, { id: 'final' }] },
};

test.each([
  ['frame.tubes.rail', ['frame', 'tubes', 'rail']],
  ['rail.right', ['frame', 'tubes', 'rail']],
  ['stacks.rear.hub', ['stacks', 'rear', 'items', 1]],
  ['driveline.final', ['driveline', 'stages', 1]],
  ['first', ['driveline', 'stages', 0]],
  ['wheels.rear', ['wheels', 'rear']],
  ['wheels.nothing', ['wheels']],
  ['nothing', undefined],
])('%s', (part, path) => {
  expect(findPart(file, part)).toEqual(path);
});
