import { expect, test } from 'vitest';
import { darkMiddle, grayAt, rasterPages, readPgm } from './raster.ts';

const page = (): Uint8Array => {
  const head = new TextEncoder().encode('P5\n5 2\n255\n');
  return new Uint8Array([...head, 255, 255, 0, 128, 255, 255, 255, 255, 255, 255]);
};

test('reads a gray map and finds the middle of a line between pixels', () => {
  const raster = readPgm(page());
  expect(grayAt(raster, 2, 0)).toBe(0);
  // Darkness 255 at 2.5 and 127 at 3.5.
  expect(darkMiddle(raster, 'x', 0, 0, 4)).toBeCloseTo((255 * 2.5 + 127 * 3.5) / 382, 12);
});

test('fails loudly: no line, off the page, cut short, no renderer', () => {
  expect(() => darkMiddle(readPgm(page()), 'x', 1, 0, 4)).toThrow('no line');
  expect(() => grayAt(readPgm(page()), 5, 0)).toThrow('off the page');
  expect(() => readPgm(page().subarray(0, 15))).toThrow('bytes');
  expect(() => rasterPages(new Uint8Array(), 72, '/nowhere/pdftoppm')).toThrow(
    'apt-get install -y poppler-utils',
  );
});
