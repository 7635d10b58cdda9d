import { describe, expect, test } from 'vitest';
import { readTire, tireDimensions } from './index.ts';

const codeOf = (outcome: ReturnType<typeof readTire>): string =>
  outcome.ok ? 'read' : outcome.issues[0].code;

describe('readTire', () => {
  test.each(['90/90-10 50J', '90/90 - 10', '90/90R10', '90/90 R 10', '90/90-10 TL'])(
    '%s is one size',
    (marking) => {
      const read = readTire(marking);
      expect(read.ok && read.value.outsideDiameter).toBeCloseTo(0.416, 12);
    },
  );

  test('a marking in hundredths of an inch is the same tire as one in inches', () => {
    const [a, b] = [readTire('410/350-4'), readTire('4.10/3.50-4')];
    expect(a.ok && b.ok && a.value.outsideDiameter === b.value.outsideDiameter).toBe(true);
  });

  test('a multiplication cross and a comma are read', () => {
    const [a, b] = [readTire('13×5,00-6'), readTire('13x5.00-6')];
    expect(a.ok && b.ok && a.value.width === b.value.width).toBe(true);
  });

  test.each([
    '',
    'big',
    '90/90',
    '10',
    '90/900-10',
    'x-4',
    '13x5.00',
    '1e9/1e9-10',
    '-',
    '0.00-10',
    '5x5.00-6',
  ])('not understood: "%s"', (marking) => {
    expect(codeOf(readTire(marking))).toBe('unreadable');
  });

  test('an unknown rim code names the nearest known ones', () => {
    const read = readTire('90/90-99');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.issues[0]).toMatchObject({ code: 'not-in-table', nearest: ['21', '20', '19'] });
  });

  test('a hostile marking takes no time', () => {
    const start = performance.now();
    readTire(`${'9'.repeat(20000)}/`);
    readTire(`9${' '.repeat(20000)}9`);
    // A quadratic match of this length would take seconds.
    expect(performance.now() - start).toBeLessThan(500);
  });
});

describe('tireDimensions', () => {
  test('rollout wins over diameter, diameter over marking', () => {
    const all = { size: '90/90-10', diameter: 0.42, rollout: 1.3, width: 0.09 };
    const by = (tire: Parameters<typeof tireDimensions>[0]) => {
      const read = tireDimensions(tire);
      return read.ok ? [read.value.by, read.value.radius] : read.issues;
    };
    expect(by(all)).toEqual(['rollout', 1.3 / (2 * Math.PI)]);
    expect(by({ size: '90/90-10', diameter: 0.42 })).toEqual(['diameter', 0.21]);
    expect(by({ size: '90/90-10' })).toEqual(['marking', expect.closeTo(0.208, 12)]);
  });

  test('a marking leaves a doubt of 5 %, a rollout of half a millimeter', () => {
    const marked = tireDimensions({ size: '90/90-10' });
    const rolled = tireDimensions({ size: '90/90-10', rollout: 1.3 });
    expect(marked.ok && marked.value.doubt).toBeCloseTo(0.0104, 12);
    expect(rolled.ok && rolled.value.doubt).toBeLessThan(0.001);
  });

  test('a marking that nobody understands matters only where it is needed', () => {
    expect(tireDimensions({ size: '?', rollout: 1.3, width: 0.09 }).ok).toBe(true);
    const needed = tireDimensions({ size: '?', rollout: 1.3 });
    expect(!needed.ok && needed.issues[0]).toMatchObject({ code: 'unreadable', path: 'size' });
  });

  test('without size, diameter and rollout, or without a width, something is missing', () => {
    const nothing = tireDimensions({ width: 0.09 });
    const narrow = tireDimensions({ rollout: 1.3 });
    expect(!nothing.ok && nothing.issues[0].code).toBe('missing');
    expect(!narrow.ok && narrow.issues[0]).toMatchObject({ code: 'missing', path: 'width' });
  });
});
