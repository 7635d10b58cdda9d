import type { Shop } from '../build/index.ts';
import { loopBounds, rotateLoop } from '../geometry/index.ts';
import { derived, mm } from '../quantity/index.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';

/** Sheet is sold this much off its nominal thickness [m]. */
const SAME_THICKNESS = mm(0.15);
const STEP = Math.PI / 180;

/**
 * Whether a sheet on hand of the plate's thickness is large enough for one plate, in any of the turns by one degree.
 * Says nothing when the shop lists no sheets.
 * @source derived, exact box of the outline
 */
export function stockFlaws(pattern: FlatPattern, shop: Shop | undefined): readonly PlateFlaw[] {
  const sheets = Object.values(shop?.sheetStock ?? {});
  if (sheets.length === 0) return [];
  const same = sheets.filter((sheet) => Math.abs(sheet.thickness - pattern.thickness) <= SAME_THICKNESS);
  const fits = Array.from({ length: 90 }, (_, k) => boxAt(pattern, k * STEP)).some(([long, short]) =>
    same.some((sheet) => {
      const [width, length] = [Math.min(sheet.width, sheet.length), Math.max(sheet.width, sheet.length)];
      return long <= length + 1e-9 && short <= width + 1e-9;
    }),
  );
  if (fits) return [];
  const [long] = boxAt(pattern, 0);
  return [
    {
      plate: pattern.id,
      rule: 'does-not-fit-stock',
      features: ['outline'],
      value: long,
      limit: Math.max(0, ...same.map((sheet) => Math.max(sheet.width, sheet.length))),
      kind: 'length',
      severity: 'note',
      remedy:
        same.length === 0
          ? 'No sheet of this thickness is on hand: buy one, or change the thickness.'
          : 'Buy a larger sheet, or make the plate in two pieces.',
      source: derived('box of the outline against the sheets on hand'),
    },
  ];
}

/** Longer and shorter side of the box round the plate, turned by `angle`. */
function boxAt(pattern: FlatPattern, angle: number): readonly [number, number] {
  const box = loopBounds(rotateLoop(pattern.outline, angle));
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  return [Math.max(w, h), Math.min(w, h)];
}
