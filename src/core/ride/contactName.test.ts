import { expect, test } from 'vitest';
import { contactName } from './index.ts';

test.each([
  ['drives.final.to', 'driven sprocket of final'],
  ['drives.first.from', 'driver sprocket of first'],
  ['seating.pegs', 'pegs'],
  ['tubes.lowerRail', 'lower rail'],
  ['tubes.lowerRail.right', 'lower rail'],
  ['stacks.rear-axle', 'end of rear axle'],
  ['brakes.front', 'front brake'],
  ['engine', 'engine'],
])('%s is the %s', (part, name) => expect(contactName(part)).toBe(name));
