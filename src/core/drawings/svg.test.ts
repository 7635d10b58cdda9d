import { expect, test } from 'vitest';
import { circleLoop, loopPerimeter, roundedRectangleLoop, slotLoop } from '../geometry/index.ts';
import type { CutFile } from './cutFile.ts';
import { svgOfPattern } from './patternSvg.ts';
import { text } from './shapes.ts';
import type { Sheet } from './sheet.ts';
import { svgOfSheet } from './svgSheet.ts';

/** Length of path data by the arc rules of SVG 1.1, appendix F.6.5 (equal radii), y down. */
function pathLength(data: string): { length: number; arcs: number } {
  let [x, y, x0, y0, length, arcs] = [0, 0, 0, 0, 0, 0];
  for (const [, command, list] of data.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const n = (list ?? '')
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (command === 'M') [x, y, x0, y0] = [n[0]!, n[1]!, n[0]!, n[1]!];
    if (command === 'Z') [length, x, y] = [length + Math.hypot(x0 - x, y0 - y), x0, y0];
    if (command === 'L') [length, x, y] = [length + Math.hypot(n[0]! - x, n[1]! - y), n[0]!, n[1]!];
    if (command === 'A') {
      const [r, large, to] = [n[0]!, n[3] === 1, { x: n[5]!, y: n[6]! }];
      const half = Math.asin(Math.min(1, Math.hypot(to.x - x, to.y - y) / 2 / r));
      length += r * (large ? 2 * Math.PI - 2 * half : 2 * half);
      [x, y, arcs] = [to.x, to.y, arcs + 1];
    }
  }
  return { length, arcs };
}

const outline = roundedRectangleLoop({ x: 0, y: 0 }, 0.24, 0.19, 0.012);
if (!outline.ok) throw new Error('sample');
const slot = slotLoop({ x: -0.05, y: 0.03 }, { x: -0.02, y: 0.03 }, 0.0085);
const cut: CutFile = {
  id: 'plate',
  name: 'Plate <left> & "right"',
  outline: outline.value,
  openings: [slot],
  circles: [{ center: { x: 0.081, y: -0.06 }, diameter: 0.0085 }],
  marks: [{ kind: 'punch', at: { x: 0.01, y: 0.02 } }],
  bends: [{ from: { x: -0.12, y: 0.08 }, to: { x: 0.12, y: 0.08 }, angle: Math.PI / 2 }],
};
const groupOf = (svg: string, id: string): string =>
  new RegExp(`<g id="${id}"[^>]*>([\\s\\S]*?)</g>`).exec(svg)?.[1] ?? '';

test('a pattern keeps millimeters, groups and true arcs', () => {
  const svg = svgOfPattern(cut);
  expect(svg).toContain('width="250mm" height="200mm" viewBox="0 0 250 200"');
  const paths = [...groupOf(svg, 'cut').matchAll(/ d="([^"]*)"/g)].map((m) => pathLength(m[1]!));
  expect(paths.map((p) => p.arcs)).toEqual([4, 2]);
  // Four printed decimals of a millimeter over a dozen numbers.
  expect(paths[0]!.length).toBeCloseTo(loopPerimeter(outline.value) * 1000, 2);
  expect(paths[1]!.length).toBeCloseTo(loopPerimeter(slot) * 1000, 2);
  expect(groupOf(svg, 'cut')).toContain('<circle cx="206" cy="160" r="4.25"/>');
  expect(groupOf(svg, 'mark').match(/<path/g)?.length).toBe(2);
  expect(groupOf(svg, 'bend')).toContain('data-angle-deg="90"');
  expect(svg).toContain('<title>Plate &lt;left&gt; &amp; &quot;right&quot;</title>');
  expect(svg).not.toContain('cut-kerf');
  const kerf = { width: 0.001, outline: circleLoop({ x: 0, y: 0 }, 0.1), openings: [], circles: [] };
  expect(svgOfPattern({ ...cut, kerf })).toContain('<g id="cut-kerf"');
});

test('a sheet stands alone: size, flipped y, texts held to their width and escaped', () => {
  const sheet: Sheet = {
    id: 's',
    title: 'A & B',
    width: 210,
    height: 297,
    items: [
      text({ x: 100, y: 200 }, '5 < 6', { anchor: 'end', part: 'note' }),
      text({ x: 10, y: 20 }, 'up', { turn: 90 }),
      {
        type: 'path',
        vertices: [
          { x: 0, y: 0, bulge: Math.tan(Math.PI / 8) },
          { x: 10, y: 10, bulge: 0 },
        ],
        closed: false,
        pen: 'hidden',
        fill: 'none',
      },
    ],
  };
  const svg = svgOfSheet(sheet);
  expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
  expect(svg).toContain('5 &lt; 6');
  expect(svg).toMatch(/data-part="note"/);
  expect(svg).toContain('rotate(-90 10 277)');
  // A quarter counterclockwise from the origin bulges to the right: in a y-down plane that is sweep flag 0.
  expect(svg).toContain('d="M0 297A10 10 0 0 0 10 287"');
  expect(svg).toMatch(/stroke-dasharray="3 0.75"/);
  expect(svg).toMatch(/textLength="[\d.]+"/);
  expect(svgOfSheet(sheet)).toBe(svg);
});
