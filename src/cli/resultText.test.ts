import { describe, expect, test } from 'vitest';
import { describeWorksheet, runWorksheet, worksheets } from '../core/worksheets/index.ts';
import { resultText } from './resultText.ts';

const exampleOf = (id: string) => {
  const sheet = worksheets.find((one) => one.id === id)!;
  const run = runWorksheet(sheet, sheet.example.input);
  if (!run.ok) throw new Error(`the example of ${id} is refused`);
  const { output } = describeWorksheet(sheet);
  return { result: run.value.result, text: resultText(run.value.result, output, 'mm') };
};

describe('a result for people', () => {
  test("a frame's reactions are read with their units, in a line of their own", () => {
    // 100 N down at 400 mm out and 300 mm across: 100 N, 30 and 40 N·m at the wall, by hand.
    const { text } = exampleOf('frame');
    expect(text).toMatch(/^reactions:\n {2}wall: .*100(\.0+)? N, 30(\.0+)? N·m, [-−]40(\.0+)? N·m/m);
    expect(text).toContain('rad');
  });

  test.each(worksheets.map(({ id }) => id))('%s: every name and every text of the result is listed', (id) => {
    const { result, text } = exampleOf(id);
    const visit = (value: unknown): void => {
      if (typeof value === 'string') expect(text).toContain(value);
      if (typeof value !== 'object' || value === null) return;
      for (const [name, one] of Object.entries(value)) {
        if (!Array.isArray(value) && one !== undefined) expect(text).toContain(name);
        visit(one);
      }
    };
    visit(result);
    expect(text).not.toMatch(/NaN|undefined|\[object/);
  });

  test('variants keep their units; limits of fits keep their microns', () => {
    expect(exampleOf('bend').text).toMatch(/^flatLength: [\d.]+ mm$/m);
    // 35 mm N7, -8 and -33 µm by ISO 286-2.
    expect(exampleOf('fit-limits').text).toMatch(/largest: 34\.992 mm\n +smallest: 34\.967 mm/);
  });

  test('rows of one form are a table with a head', () => {
    const row = { type: 'object', properties: { at: { kind: 'length', unit: 'mm' }, as: {} } };
    const schema = { properties: { rows: { type: 'array', items: row } } };
    const rows = [
      { at: 12, as: 'a' },
      { at: 120, as: 'b' },
    ];
    expect(resultText({ rows }, schema, 'mm').split('\n')).toEqual([
      'rows:',
      expect.stringMatching(/^ {5}at +as$/),
      expect.stringMatching(/^ {2}1 {2}12(\.0+)? mm +a$/),
      expect.stringMatching(/^ {2}2 {2}120(\.0+)? mm +b$/),
      '',
    ]);
    expect(resultText({ rows: [] }, schema, 'mm')).toBe('rows: none\n');
  });
});
