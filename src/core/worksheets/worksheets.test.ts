import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { describeIssue, toEdgeFigure } from '../quantity/index.ts';
import { describeWorksheet, runWorksheet, worksheetNamed, worksheets } from './index.ts';

/** The value at a dotted path of plain JSON: `wraps.0`. */
function at(json: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key))
      throw new Error(`no ${path} in the result`);
    return (value as Record<string, unknown>)[key];
  }, json);
}

describe('the list of worksheets', () => {
  test('has worksheets, in order, each once, named in kebab case', () => {
    const ids = worksheets.map((worksheet) => worksheet.id);
    expect(ids.length).toBeGreaterThan(0);
    expect(ids).toEqual([...new Set(ids)].sort());
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test('finds one by its id', () => {
    expect(worksheetNamed('no-such-worksheet')).toBeUndefined();
    for (const worksheet of worksheets) expect(worksheetNamed(worksheet.id)).toBe(worksheet);
  });
});

describe.each(worksheets.map((worksheet) => [worksheet.id, worksheet] as const))(
  'worksheet %s',
  (_id, worksheet) => {
    test('gives the numbers of its worked example', () => {
      const outcome = runWorksheet(worksheet, worksheet.example.input);
      if (!outcome.ok) throw new Error(outcome.issues.map(describeIssue).join('; '));
      expect(worksheet.example.expected.length).toBeGreaterThan(0);
      for (const { path, value, tolerance } of worksheet.example.expected) {
        const found = at(outcome.value.result, path);
        expect(found, path).toBeTypeOf('number');
        expect(
          Math.abs((found as number) - value),
          `${path} = ${found}, wanted ${value}`,
        ).toBeLessThanOrEqual(tolerance);
      }
    });

    test('shows its working in finite numbers, each with formula and source', () => {
      const outcome = runWorksheet(worksheet, worksheet.example.input);
      if (!outcome.ok) throw new Error('refused');
      const figures = outcome.value.figures.map(toEdgeFigure);
      expect(figures.length).toBeGreaterThan(0);
      for (const figure of figures) {
        expect(
          Number.isFinite(figure.value) && figure.inputs.every((input) => Number.isFinite(input.value)),
        ).toBe(true);
        expect([figure.formula, figure.source.key, figure.source.where].every((text) => text !== '')).toBe(
          true,
        );
      }
    });

    // Independent check: a general JSON Schema validator reads the published schemas.
    test('its JSON Schemas take the example and the result, and name units', () => {
      const { input, output } = describeWorksheet(worksheet);
      const ajv = new Ajv2020({ strict: false, allErrors: true });
      const outcome = runWorksheet(worksheet, worksheet.example.input);
      if (!outcome.ok) throw new Error('refused');
      expect(ajv.validate(input, worksheet.example.input), ajv.errorsText()).toBe(true);
      expect(ajv.validate(output, outcome.value.result), ajv.errorsText()).toBe(true);
    });

    test('refuses what is no input, with issues', () => {
      for (const json of [undefined, null, 0, 'text', [], { 'no such field': 1 }]) {
        expect(runWorksheet(worksheet, json).ok).toBe(false);
      }
    });
  },
);
