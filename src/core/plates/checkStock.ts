import type { Shop } from '../build/index.ts';
import { type Segment, spanAlong } from '../geometry/index.ts';
import { derived, mm } from '../quantity/index.ts';
import type { PlateEdges } from './edges.ts';
import type { FlatPattern, PlateFlaw } from './pattern.ts';

/** Sheet is sold this much off its nominal thickness [m]. */
const SAME_THICKNESS = mm(0.15);
const TURNS = Array.from({ length: 90 }, (_, k) => (k * Math.PI) / 180);

/**
 * Whether a sheet on hand of the plate's thickness is large enough for one plate, in any of the turns by one degree.
 * Says nothing when the shop lists no sheets.
 * @source derived, exact box of the outline
 */
export function stockFlaws(
  pattern: FlatPattern,
  { outline }: PlateEdges,
  shop: Shop | undefined,
): readonly PlateFlaw[] {
  const sheets = Object.values(shop?.sheetStock ?? {});
  if (sheets.length === 0) return [];
  const same = sheets.filter((sheet) => Math.abs(sheet.thickness - pattern.thickness) <= SAME_THICKNESS);
  const base = { plate: pattern.id, features: ['outline'], kind: 'length', severity: 'note' } as const;
  if (same.length === 0) {
    const thicknesses = sheets.map((sheet) => sheet.thickness);
    return [
      {
        ...base,
        rule: 'no-sheet',
        value: pattern.thickness,
        limit: thicknesses.toSorted((a, b) => offBy(pattern, a) - offBy(pattern, b))[0]!,
        remedy: 'Buy a sheet of this thickness, or change the thickness of the plate.',
        source: derived('thickness of the plate against the sheets on hand'),
      },
    ];
  }
  const pieces = outline.pieces.map(({ piece }) => piece);
  const nearest = same.map((sheet) => excessOn(pieces, sheet)).toSorted((a, b) => a.by - b.by)[0]!;
  if (nearest.by <= 1e-9) return [];
  return [
    {
      ...base,
      rule: 'does-not-fit-stock',
      value: nearest.side,
      limit: nearest.room,
      remedy: 'Buy a larger sheet, or make the plate in two pieces.',
      source: derived('box of the outline against the sheets on hand'),
    },
  ];
}

type Sheet = NonNullable<Shop['sheetStock']>[string];

const offBy = (pattern: FlatPattern, thickness: number): number => Math.abs(thickness - pattern.thickness);

/** Side of the plate's box that stands out most over a sheet, in the turn where it does so least [m]. */
interface Excess {
  readonly by: number;
  readonly side: number;
  readonly room: number;
}

/** Best of the turns by one degree, lengthwise or crosswise; `by` is 0 or less where the plate fits. */
function excessOn(pieces: readonly Segment[], sheet: Sheet): Excess {
  const [width, length] = [Math.min(sheet.width, sheet.length), Math.max(sheet.width, sheet.length)];
  let best: Excess = { by: Number.POSITIVE_INFINITY, side: 0, room: 0 };
  for (const angle of TURNS) {
    const [long, short] = sidesAt(pieces, angle);
    const turn: Excess =
      long - length >= short - width
        ? { by: long - length, side: long, room: length }
        : { by: short - width, side: short, room: width };
    if (turn.by < best.by) best = turn;
    if (best.by <= 0) break;
  }
  return best;
}

/** Longer and shorter side of the box round the plate, along and across `angle`. */
function sidesAt(pieces: readonly Segment[], angle: number): readonly [number, number] {
  const along = spanAlong(pieces, angle);
  const across = spanAlong(pieces, angle + Math.PI / 2);
  return [Math.max(along, across), Math.min(along, across)];
}
