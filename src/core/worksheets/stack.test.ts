import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { runWorksheet } from './index.ts';
import { stackWorksheet } from './stack.ts';

function solve(json: unknown) {
  const run = runWorksheet(stackWorksheet, json);
  if (!run.ok) throw new Error(run.issues.map(describeIssue).join('; '));
  return run.value.result as {
    spacers: Record<string, number>;
    overall: number;
    rimOffset?: number;
    misfits: { between: string[]; excess: number }[];
    open: { reason: string; items: string[] }[];
  };
}

const refusal = (json: unknown): readonly string[] => {
  const run = runWorksheet(stackWorksheet, json);
  return run.ok ? [] : run.issues.map((issue) => `${issue.path} ${issue.code}`);
};

describe('a wheel between two faces', () => {
  test('true wheel: half the difference on each side, in any unit', () => {
    // (216 − 4 in = 101.6)/2 = 57.2
    expect(solve({ frameWidth: 216, hubWidth: '4 in' }).spacers).toEqual({
      'left-spacer': 57.2,
      'right-spacer': 57.2,
    });
  });

  test('a rim off its hub: the spacers differ by twice the offset', () => {
    const { spacers, rimOffset } = solve({ frameWidth: 110, hubWidth: 80, rim: { left: 12, right: 23 } });
    // Read from the hub's own faces: (23 − 12)/2 = 5.5 left. A stepped spacer then differs by 11 mm, as shop notes tell.
    expect(rimOffset).toBeCloseTo(5.5, 10);
    expect(spacers['left-spacer']! - spacers['right-spacer']!).toBeCloseTo(11, 10);
    expect(spacers['left-spacer']).toBeCloseTo(20.5, 10);
  });

  test('no room comes out negative, not zero', () => {
    expect(solve({ frameWidth: 70, hubWidth: 80 }).spacers['left-spacer']).toBeCloseTo(-5, 10);
  });
});

describe('a stack of one’s own', () => {
  const items = [
    { id: 'collar', length: 9 },
    { id: 'outer', length: 'solve' },
    { id: 'sprocket', length: 6, plane: 2, pin: { at: 'plane', y: 70 } },
    { id: 'inner', length: 'solve' },
    { id: 'bearing', length: 15 },
  ];

  test('a sprocket held in line between two faces', () => {
    // Left face 100: 100 − 9 − (70 + 2) = 19. Right face 0: 72 − 6 − 15 = 51.
    expect(solve({ faces: [100, 0], items }).spacers).toEqual({ outer: 19, inner: 51 });
  });

  test('what does not close and what stays open is told', () => {
    const fixed = items.map((item) => ({ ...item, length: item.length === 'solve' ? 20 : item.length }));
    const tight = solve({ faces: [100, 5], items: fixed });
    // From the sprocket's plane: left end 72 + 20 + 9 = 101, 1 too long; right end 72 − 6 − 20 − 15 = 31, 26 short of 5.
    expect(tight.misfits.map((misfit) => [misfit.between, Math.round(misfit.excess * 1e6) / 1e6])).toEqual([
      [['collar', 'sprocket'], 1],
      [['sprocket', 'bearing'], -26],
    ]);
    const { pin: _, ...loose } = items[2]!;
    const open = solve({ faces: [100, 0], items: [items[0], items[1], loose, items[3], items[4]] });
    expect(open.open).toEqual([{ reason: 'two-unknowns', items: ['outer', 'inner'] }]);
  });
});

test.each([
  [{ frameWidth: 110 }, 'items missing'],
  [{ frameWidth: 110, faces: [50, -50], hubWidth: 80 }, 'frameWidth conflict'],
  [{ faces: [-50, 50], hubWidth: 80 }, 'faces conflict'],
  [{ items: [{ id: 'a', length: 1 }], hubWidth: 80 }, 'hubWidth conflict'],
  [
    {
      items: [
        { id: 'a', length: 1 },
        { id: 'a', length: 2 },
      ],
    },
    'items[1].id duplicate-name',
  ],
  [{ items: [{ id: 'a', length: 1, pin: { at: 'plane', y: 0 } }] }, 'items[0].plane missing'],
  [{ items: [{ id: 'wheel', length: 1 }], rim: { left: 1, right: 1 } }, 'rim.item unknown-name'],
])('refuses %j: %s', (json, wanted) => {
  expect(refusal(json)).toContain(wanted);
});
