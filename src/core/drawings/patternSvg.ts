import { joinBounds, type Loop, loopBounds, type Point } from '../geometry/index.ts';
import type { CutFile } from './cutFile.ts';
import { punchCross } from './dxf.ts';
import { penStyles } from './pens.ts';
import { escapeXml, svgPathData } from './svgSheet.ts';

const MM = 1000;
/** Blank border round the part [mm]. */
const BORDER = 5;
/** Hairline that cutters take for a path [mm]. */
const STROKE = 0.1;

/**
 * A part as SVG at true size in millimeters, with true arcs, in groups `cut`, `mark`, `bend` and, when asked for,
 * `cut-kerf` (not shown, so that it is never cut together with the true one).
 */
export function svgOfPattern(cut: CutFile): string {
  const box = joinBounds([cut.outline, ...(cut.kerf ? [cut.kerf.outline] : [])].map(loopBounds));
  const width = (box.maxX - box.minX) * MM + 2 * BORDER;
  const height = (box.maxY - box.minY) * MM + 2 * BORDER;
  const place = (p: Point) => ({ x: (p.x - box.minX) * MM + BORDER, y: (p.y - box.minY) * MM + BORDER });
  const loop = (vertices: Loop): string => {
    const path = { vertices: vertices.map((v) => ({ ...place(v), bulge: v.bulge })), closed: true };
    return `<path d="${svgPathData(path, height)}"/>`;
  };
  const line = (from: Point, to: Point, extra = ''): string => {
    const vertices = [from, to].map((p) => ({ ...place(p), bulge: 0 }));
    return `<path d="${svgPathData({ vertices, closed: false }, height)}"${extra}/>`;
  };
  const shape = (part: Pick<CutFile, 'outline' | 'openings' | 'circles'>): readonly string[] => [
    loop(part.outline),
    ...part.openings.map(loop),
    ...part.circles.map((c) => {
      const { x, y } = place(c.center);
      return `<circle cx="${num(x)}" cy="${num(height - y)}" r="${num((c.diameter / 2) * MM)}"/>`;
    }),
  ];
  const marks = cut.marks.flatMap((mark) =>
    mark.kind === 'line'
      ? [line(mark.from, mark.to)]
      : mark.kind === 'loop'
        ? [loop(mark.loop)]
        : punchCross(mark.at).map(([from, to]) => line(from, to)),
  );
  const bends = cut.bends.map((b) =>
    line(b.from, b.to, ` data-angle-deg="${num((b.angle * 180) / Math.PI)}"`),
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}">`,
    `<title>${escapeXml(cut.name)}</title>`,
    ...group('cut', penStyles.cut.color, shape(cut)),
    ...group('mark', '#2f7d32', marks),
    ...group('bend', '#1f4e9c', bends),
    ...(cut.kerf ? group('cut-kerf', penStyles.accent.color, shape(cut.kerf), ' display="none"') : []),
    '</svg>',
    '',
  ].join('\n');
}

function group(id: string, color: string, elements: readonly string[], extra = ''): readonly string[] {
  return [
    `<g id="${id}" fill="none" stroke="${color}" stroke-width="${STROKE}"${extra}>`,
    ...elements,
    '</g>',
  ];
}

function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot write ${value}`);
  return String(Number(value.toFixed(5)) + 0);
}
