import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A gray picture of one page. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

const PDFTOPPM = '/usr/bin/pdftoppm';

/** Pages of a PDF as gray pictures, drawn by poppler; throws with the install line when it is absent. */
export function rasterPages(pdf: Uint8Array, dotsPerInch: number, renderer = PDFTOPPM): readonly Raster[] {
  if (!existsSync(renderer)) throw new Error(`${renderer} is missing: apt-get install -y poppler-utils`);
  const folder = mkdtempSync(join(tmpdir(), 'jigwright-raster-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    const run = spawnSync(renderer, [
      '-gray',
      '-r',
      String(dotsPerInch),
      join(folder, 'in.pdf'),
      join(folder, 'page'),
    ]);
    if (run.status !== 0) throw new Error(`pdftoppm: ${run.stderr}`);
    const names = readdirSync(folder).filter((n) => n.endsWith('.pgm'));
    return names.sort().map((n) => readPgm(readFileSync(join(folder, n))));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Binary portable graymap: `P5`, width, height, largest value, one white space, then the bytes. */
export function readPgm(bytes: Uint8Array): Raster {
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 100));
  const found = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(head);
  if (found === null) throw new Error('not a binary 8-bit PGM');
  const [width, height] = [Number(found[1]), Number(found[2])];
  const pixels = bytes.subarray(found[0].length);
  if (pixels.length !== width * height)
    throw new Error(`PGM of ${width} × ${height} has ${pixels.length} bytes`);
  return { width, height, pixels };
}

/** Gray at a pixel, 0 black to 255 white; x from the left, y from the top. */
export function grayAt(raster: Raster, x: number, y: number): number {
  if (x < 0 || y < 0 || x >= raster.width || y >= raster.height)
    throw new RangeError(`pixel ${x}, ${y} is off the page`);
  return raster.pixels[y * raster.width + x] as number;
}

/**
 * Middle of the dark line that crosses a scan, to a part of a pixel: the center of gravity of its darkness.
 * The scan goes `from`–`to` along one axis at a fixed place on the other.
 */
export function darkMiddle(raster: Raster, axis: 'x' | 'y', fixed: number, from: number, to: number): number {
  let [sum, moment] = [0, 0];
  for (let i = Math.round(from); i <= Math.round(to); i += 1) {
    const gray = axis === 'x' ? grayAt(raster, i, Math.round(fixed)) : grayAt(raster, Math.round(fixed), i);
    sum += 255 - gray;
    moment += (255 - gray) * (i + 0.5);
  }
  if (sum < 100) throw new Error(`no line between ${from} and ${to} along ${axis} at ${fixed}`);
  return moment / sum;
}
