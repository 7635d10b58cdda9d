import { arrowhead } from './arrow.ts';
import { clipStroke } from './clipPath.ts';
import { type Obstacle, placeLabels } from './labelPlace.ts';
import { seamCheckStrokes } from './seamCheck.ts';
import { line, maskedText } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { flattened, stretchStroke } from './stretch.ts';
import { registerCross, windowCorners } from './templateFrame.ts';
import { labelRequests, type TileDrawingInput, trims } from './templateLabels.ts';
import { textWidth } from './textMetrics.ts';
import { onPage } from './tileGrid.ts';

const ARROW_LENGTH = 16;
const LABEL_SIZE = 2.6;

/** Everything inside the window of one tile. */
export function tileDrawing(input: TileDrawingInput): readonly SheetItem[] {
  const { content, tile, window, marks, seams } = input;
  const onTile = (item: Parameters<typeof clipStroke>[0]) =>
    clipStroke(item, tile.region).map((s) => stretchStroke(tile.stretch, s));
  const strokes = content.strokes.flatMap((s) => onTile(s.item));
  const seamLines = seams.flatMap((s) => seamCheckStrokes(s)).flatMap(onTile);
  const ownMarks = marks.filter((m) => m.tiles.some((t) => t.name === tile.name));
  const crosses = ownMarks.flatMap((m) => registerCross(onPage(tile, m.at), m.id));
  const trimLines = trims(input).map((t) => line(t.from, t.to, 'hidden'));
  const arrows = arrowItems(input);
  const fixed = [...trimLines, ...strokes, ...seamLines, ...crosses, ...arrows];
  const obstacles = fixed.flatMap((item) => obstaclesOf(item));
  const area = { ...window, bottom: Math.max(window.bottom, input.floor ?? window.bottom) };
  const labels = placeLabels(labelRequests(input, area), obstacles, area);
  return [
    ...trimLines,
    ...strokes,
    ...seamLines,
    ...crosses,
    ...arrows,
    ...lineLabels(input),
    ...labels,
    ...windowCorners(window),
  ];
}

/** Straight pieces of strokes and the box of texts, for keeping labels clear. */
export function obstaclesOf(item: SheetItem, error = 0.2): readonly Obstacle[] {
  if (item.type === 'text') {
    const half = textWidth(item.text, item.size, item.weight) / 2;
    return [
      [
        { x: item.at.x - half, y: item.at.y },
        { x: item.at.x + half, y: item.at.y + item.size * 0.7 },
      ],
    ];
  }
  if (item.pen === 'none') return [];
  const path =
    item.type === 'path'
      ? item
      : {
          vertices: [
            { x: item.center.x + item.radius, y: item.center.y, bulge: 1 },
            { x: item.center.x - item.radius, y: item.center.y, bulge: 1 },
          ],
          closed: true,
        };
  const points = flattened(path, error);
  const last = path.closed ? points.length : points.length - 1;
  return Array.from(
    { length: Math.max(0, last) },
    (_, i) => [points[i] as PaperPoint, points[(i + 1) % points.length] as PaperPoint] as const,
  );
}

/** Words of bend and other lines, along the middle of what this tile shows of the line. */
function lineLabels(input: TileDrawingInput): readonly SheetItem[] {
  const { job, content, tile } = input;
  return job.pieces.flatMap((piece) =>
    piece.lines.flatMap((l) => {
      const whole = line(content.place(l.from), content.place(l.to), l.pen);
      const [shown] = clipStroke(whole, tile.region);
      if (l.label === undefined || shown?.type !== 'path') return [];
      const [a, b] = shown.vertices.map((v) => onPage(tile, v)) as [PaperPoint, PaperPoint];
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      if (length < textWidth(l.label, LABEL_SIZE) + 2) return [];
      let turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
      if (turn > 90 + 1e-9) turn -= 180;
      if (turn <= -90 + 1e-9) turn += 180;
      const up = (turn * Math.PI) / 180;
      const at = { x: (a.x + b.x) / 2 - 1.3 * Math.sin(up), y: (a.y + b.y) / 2 + 1.3 * Math.cos(up) };
      return maskedText(at, l.label, { size: LABEL_SIZE, turn, anchor: 'middle' });
    }),
  );
}

/** Arrows are drawn where their middle lies, pushed inside the window where they would leave it. */
function arrowItems(input: TileDrawingInput): readonly SheetItem[] {
  const { job, content, tile, window } = input;
  return job.pieces.flatMap((piece) =>
    piece.arrows.flatMap((arrow) => {
      const middle = onPage(tile, content.place(arrow.at));
      if (
        middle.x < window.left ||
        middle.x > window.right ||
        middle.y < window.bottom ||
        middle.y > window.top
      )
        return [];
      const direction = arrow.direction + (content.turned ? Math.PI / 2 : 0);
      const [c, s] = [Math.cos(direction), Math.sin(direction)];
      const half = ARROW_LENGTH / 2;
      const word = arrow.text.toUpperCase();
      const reach = half + textWidth(word, 3.4, 'bold');
      const at = {
        x: Math.min(window.right - reach, Math.max(window.left + reach, middle.x)),
        y: Math.min(window.top - half - 4, Math.max(window.bottom + half + 4, middle.y)),
      };
      const tip = { x: at.x + half * c, y: at.y + half * s };
      const tail = { x: at.x - half * c, y: at.y - half * s };
      const base = { x: tail.x - c * (textWidth(word, 3.4, 'bold') / 2 + 1), y: tail.y - s * 2.6 - 1.2 };
      return [
        line(tail, tip, 'outline'),
        arrowhead(tip, (direction * 180) / Math.PI, 'outline', 4),
        ...maskedText(base, word, { size: 3.4, weight: 'bold', anchor: 'middle' }),
      ];
    }),
  );
}
