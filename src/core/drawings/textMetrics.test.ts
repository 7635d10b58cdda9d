import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { text } from './shapes.ts';
import { boxesOverlap, missingCharacters, textBox, textWidth, wrapText } from './textMetrics.ts';

describe('wrapping', () => {
  test('no line is wider than asked and no letter is lost', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcW i.,/½°Ø'), minLength: 0, maxLength: 60 });
    fc.assert(
      fc.property(word, fc.double({ min: 6, max: 60, noNaN: true }), (content, width) => {
        const lines = wrapText(content, width, 3);
        for (const line of lines)
          if ([...line].length > 1) expect(textWidth(line, 3)).toBeLessThanOrEqual(width + 1e-9);
        expect(lines.join('').replaceAll(' ', '')).toBe(content.replaceAll(' ', ''));
      }),
    );
  });
});

test('a character that the font lacks is named, and controls count as spaces', () => {
  expect(missingCharacters('8 ⁷⁄₁₆ Ø ° – ☐ ½ µ')).toEqual([]);
  expect(missingCharacters('長さ')).toEqual(['長', 'さ']);
  expect(textWidth('a\tb', 3)).toBe(textWidth('a b', 3));
  expect(textWidth('e\u0301', 3)).toBe(textWidth('é', 3));
});

describe('boxes', () => {
  test('overlap is seen at any turn; touching is none', () => {
    const at = (x: number, y: number, turn = 0) => textBox(text({ x, y }, 'WWW', { size: 4, turn }));
    const wide = textWidth('WWW', 4);
    expect(boxesOverlap(at(0, 0), at(wide - 0.01, 0))).toBe(true);
    expect(boxesOverlap(at(0, 0), at(wide, 0))).toBe(false);
    expect(boxesOverlap(at(0, 0), at(wide / 2, -wide / 2, 90))).toBe(true);
    // Upright boxes would overlap by their surrounding rectangles; the turned ones do not.
    expect(boxesOverlap(at(0, 0, 45), at(5, -1, 45))).toBe(false);
  });
});
