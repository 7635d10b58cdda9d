import type { PaperPoint, Sheet, SheetItem, TextItem } from '../../src/core/drawings/index.ts';
import { boxesOverlap, paper, printableArea, textBox } from '../../src/core/drawings/index.ts';
import { flattened } from '../../src/core/drawings/stretch.ts';

/** Texts among the items. */
export const texts = (items: readonly SheetItem[]): readonly TextItem[] =>
  items.filter((item): item is TextItem => item.type === 'text');

/** All points of an item that could leave the paper. */
export function reach(item: SheetItem): readonly PaperPoint[] {
  if (item.type === 'text') return textBox(item);
  if (item.type === 'path') return flattened(item, 0.01);
  const { center, radius } = item;
  return [
    { x: center.x - radius, y: center.y - radius },
    { x: center.x + radius, y: center.y + radius },
  ];
}

/** Pairs of texts whose boxes share area. */
export function meetingTexts(sheet: Sheet): readonly string[] {
  const items = texts(sheet.items).filter((one) => one.text.trim() !== '');
  const boxes = items.map(textBox);
  return boxes.flatMap((box, i) =>
    boxes.flatMap((other, j) =>
      j > i && boxesOverlap(box, other) ? [`${items[i]!.text} × ${items[j]!.text}`] : [],
    ),
  );
}

/** What leaves the printable area, or has no place at all. */
export function outsideMargins(sheet: Sheet): readonly string[] {
  const area = printableArea(
    [paper('a4'), paper('letter'), paper('a4', 'landscape'), paper('letter', 'landscape')].find(
      (one) => one.width === sheet.width && one.height === sheet.height,
    )!,
  );
  const inside = ({ x, y }: PaperPoint): boolean =>
    x >= area.left - 1e-6 && x <= area.right + 1e-6 && y >= area.bottom - 1e-6 && y <= area.top + 1e-6;
  return sheet.items
    .filter((item) => !reach(item).every(inside))
    .map((item) => (item.type === 'text' ? item.text : (item.part ?? item.type)));
}
