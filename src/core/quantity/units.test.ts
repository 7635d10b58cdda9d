import { describe, expect, test } from 'vitest';
import { type QuantityKind, readQuantity } from './index.ts';
import { fromSi, toSi, units } from './units.ts';

describe('the table of units', () => {
  const all = (Object.keys(units) as QuantityKind[]).flatMap((kind) =>
    units[kind].map((unit) => [kind, unit] as const),
  );

  test('every spelling reads as its own unit, in capitals and small letters too', () => {
    for (const [kind, unit] of all)
      for (const spelling of [unit.symbol, ...unit.also])
        for (const written of [spelling, spelling.toUpperCase(), spelling.toLowerCase()]) {
          if (kind === 'count' || kind === 'ratio') continue;
          const outcome = readQuantity(`7 ${written}`, kind);
          expect(outcome, `${written} of ${kind}`).toEqual({ ok: true, value: toSi(7, unit) });
        }
  });

  test('factors are finite, above zero and turn back', () => {
    for (const [, unit] of all) {
      expect(unit.times / unit.per).toBeGreaterThan(0);
      // Three roundings.
      expect(Math.abs(fromSi(toSi(12.7, unit), unit) - 12.7)).toBeLessThanOrEqual(12.7 * 4e-16);
    }
  });
});
