import type { Shop } from '../build/index.ts';
import { type Segment, segments, spanAlong } from '../geometry/index.ts';
import { derived, mm } from '../quantity/index.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';

/** Sheet is sold this much off its nominal thickness [m]. */
const SAME_THICKNESS = mm(0.15);
const TURNS = Array.from({ length: 90 }, (_, k) => (k * Math.PI) / 180);

/**
 * Whether a sheet on hand of the plate's thickness is large enough for one plate, in any of the turns by one degree.
 * Says nothing when the shop lists no sheets.
 * @source derived, exact box of the outline
 */
export function stockFlaws(pattern: FlatPattern, shop: Shop | undefined): readonly PlateFlaw[] {
  const sheets = Object.values(shop?.sheetStock ?? {});
  if (sheets.length === 0) return [];
  const same = sheets.filter((sheet) => Math.abs(sheet.thickness - pattern.thickness) <= SAME_THICKNESS);
  const pieces = segments(pattern.outline);
  if (same.some((sheet) => fitsSheet(pieces, sheet))) return [];
  return [
    {
      plate: pattern.id,
      rule: 'does-not-fit-stock',
      features: ['outline'],
      value: sidesAt(pieces, 0)[0],
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

type Sheet = NonNullable<Shop['sheetStock']>[string];

/** In any turn by one degree, lengthwise or crosswise. */
function fitsSheet(pieces: readonly Segment[], sheet: Sheet): boolean {
  const [width, length] = [Math.min(sheet.width, sheet.length), Math.max(sheet.width, sheet.length)];
  return TURNS.some((angle) => {
    const [long, short] = sidesAt(pieces, angle);
    return long <= length + 1e-9 && short <= width + 1e-9;
  });
}

/** Longer and shorter side of the box round the plate, along and across `angle`. */
function sidesAt(pieces: readonly Segment[], angle: number): readonly [number, number] {
  const along = spanAlong(pieces, angle);
  const across = spanAlong(pieces, angle + Math.PI / 2);
  return [Math.max(along, across), Math.min(along, across)];
}
