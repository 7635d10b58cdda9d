import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawingOf, type SolvedDrawing } from '../../../tests/support/demoScene.ts';
import { readBuild } from '../build/index.ts';
import { type CutFile, dxfOfPattern, plateTemplateJobs, svgOfPattern } from '../drawings/index.ts';
import type { Loop, Point } from '../geometry/index.ts';
import type { FlatPattern, Opening } from '../plates/index.ts';
import { mm } from '../quantity/index.ts';
import { cutFileOf } from './cutFiles.ts';

/** Rounding of the arcs' ends [m]. */
const ROUNDING = 1e-9;

const DEMOS = ['light', 'heavy', 'wrong'] as const;

function demo(name: (typeof DEMOS)[number]): SolvedDrawing {
  const read = readBuild(readFileSync(new URL(`../../../demo/${name}.build.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`demo ${name} cannot be read`);
  return drawingOf(read.value);
}

/** Width of a slot: the chord of its half circle, bulge 1. */
const widthOf = (loop: Loop): number | undefined => {
  const i = loop.findIndex(({ bulge }) => Math.abs(Math.abs(bulge) - 1) < ROUNDING);
  const [a, b] = [loop[i], loop[(i + 1) % loop.length]];
  return a && b && Math.hypot(a.x - b.x, a.y - b.y);
};

/** The middle of a slot is the mean of the ends of its two arcs. */
const isAt = (loop: Loop, { x, y }: Point): boolean => {
  const mean = (of: (p: Point) => number) => loop.reduce((sum, p) => sum + of(p), 0) / loop.length;
  return Math.hypot(mean((p) => p.x) - x, mean((p) => p.y) - y) < 1e-6;
};

interface Cut {
  readonly loops: readonly Loop[];
  readonly circles: readonly { readonly center: Point; readonly diameter: number }[];
}

/** What is cut at the place of an opening: its width, or nothing. */
const cutAt = ({ loops, circles }: Cut, opening: Opening): number | undefined =>
  (opening.travel ?? 0) > 0
    ? loops.filter((loop) => loop.length === 4 && isAt(loop, opening.center)).map(widthOf)[0]
    : circles.find((one) => isAt([{ ...one.center, bulge: 0 }], opening.center))?.diameter;

const inFile = ({ openings, circles }: CutFile): Cut => ({ loops: openings, circles });

function onTemplate(pattern: FlatPattern): Cut {
  const pieces = plateTemplateJobs([pattern]).flatMap((job) => job.pieces);
  return {
    loops: pieces.flatMap((piece) => piece.loops.filter(({ pen }) => pen === 'cut').map(({ loop }) => loop)),
    circles: pieces.flatMap((piece) => piece.circles.filter(({ pen }) => pen === 'cut')),
  };
}

describe.each(DEMOS)('%s: what is cut is one width everywhere', (name) => {
  const { context, work } = demo(name);
  const openings = context.scene.patterns.flatMap((pattern) =>
    pattern.openings.map((opening) => [`${pattern.id} ${opening.id}`, pattern, opening] as const),
  );

  test.each(openings)('%s', (_, pattern, opening) => {
    const file = cutAt(inFile(cutFileOf(pattern)), opening);
    const row = work.drilling.find((one) => one.plate === pattern.id && one.holes.includes(opening.id));
    const scheduled =
      row?.cutAs.as === 'undersize'
        ? row.cutAs.diameter
        : row?.cutAs.as === 'full'
          ? row.diameter
          : undefined;
    expect(row).toBeDefined();
    for (const width of [file, cutAt(onTemplate(pattern), opening)]) {
      if (scheduled === undefined) expect(width).toBeUndefined();
      else expect(Math.abs(width! - scheduled)).toBeLessThan(ROUNDING);
    }
    const step = row!.steps.find((one) => one.do === 'cut' || one.do === 'cut-undersize');
    if (step && 'diameter' in step && pattern.make === 'torch') expect(step.diameter).toBe(file);
  });
});

describe('a torch cut slot in the files themselves', () => {
  const pattern = demo('heavy').context.scene.patterns.find(
    ({ openings, make }) =>
      make === 'torch' && openings.some(({ kind, cutAs }) => kind === 'slot' && cutAs.as === 'undersize'),
  )!;
  const slot = pattern.openings.find(({ kind, cutAs }) => kind === 'slot' && cutAs.as === 'undersize')!;

  test('CUT is narrower than MARK, which has the finished width', async () => {
    const dxf = (await dxfOfPattern(cutFileOf(pattern))).split(/\r?\n/).map((line) => line.trim());
    const loops = (layer: string): Loop[] => polylines(dxf, layer);
    const width = (layer: string) =>
      loops(layer)
        .filter((loop) => loop.length === 4 && isAt(loop, slot.center))
        .map((loop) => widthOf(loop)!);
    expect(width('MARK')[0]).toBeCloseTo(slot.diameter, 8);
    expect(slot.cutAs.as === 'undersize' && width('CUT')[0]! - slot.cutAs.diameter).toBeCloseTo(0, 8);
    expect(slot.diameter - width('CUT')[0]!).toBeGreaterThan(mm(0.5));
  });

  test('the SVG marks what the DXF marks', () => {
    const file = cutFileOf(pattern);
    const marked = /<g id="mark"[\s\S]*?<\/g>/.exec(svgOfPattern(file))![0];
    const strokes = file.marks.reduce((sum, mark) => sum + (mark.kind === 'punch' ? 2 : 1), 0);
    expect(marked.match(/<path/g)).toHaveLength(strokes);
  });
});

/** Closed polylines of a layer, from the code and value pairs of the exchange format [m]. */
function polylines(lines: readonly string[], layer: string): Loop[] {
  const loops: { x: number; y: number; bulge: number }[][] = [];
  let [kind, on] = ['', ''];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [code, value] = [lines[i]!, lines[i + 1]!];
    if (code === '0') {
      kind = value;
      on = '';
    } else if (kind === 'LWPOLYLINE' && code === '8') {
      on = value;
      if (on === layer) loops.push([]);
    } else if (kind === 'LWPOLYLINE' && on === layer) {
      const loop = loops.at(-1)!;
      if (code === '10') loop.push({ x: mm(Number(value)), y: 0, bulge: 0 });
      if (code === '20') loop.at(-1)!.y = mm(Number(value));
      if (code === '42') loop.at(-1)!.bulge = Number(value);
    }
  }
  return loops;
}
