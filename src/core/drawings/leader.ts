import { arrowhead } from './arrow.ts';
import type { DimensionText } from './dimensionText.ts';
import { dimensionTextSize } from './linearDimension.ts';
import { circle, line, maskedText, openPath } from './shapes.ts';
import type { PaperPoint, SheetItem } from './sheet.ts';
import { textDrop, textRise, textWidth } from './textMetrics.ts';

export interface LeaderInput {
  /** What the leader points at. */
  readonly tip: PaperPoint;
  /** Where the level landing begins. */
  readonly elbow: PaperPoint;
  readonly lines: readonly string[];
  /** End on an edge: arrow; end inside a shape: dot. Default arrow. */
  readonly end?: 'arrow' | 'dot' | 'none';
  readonly size?: number;
}

export interface DiameterLeaderInput {
  readonly center: PaperPoint;
  /** Radius of the circle on paper [mm]. */
  readonly radius: number;
  /** Way that the leader goes out [degrees]. */
  readonly toward: number;
  /** From the circle to the elbow [mm]. */
  readonly reach: number;
  readonly text: DimensionText;
  readonly size?: number;
}

export interface AngleDimensionInput {
  readonly vertex: PaperPoint;
  /** Radius of the dimension arc [mm]. */
  readonly radius: number;
  /** Directions of the two legs [degrees]; the arc goes counterclockwise from the first to the second. */
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** Draw the legs to the arc as extension lines, from this far out [mm]. */
  readonly legsFrom?: number;
  readonly size?: number;
}

const LANDING = 2;
const DOT_RADIUS = 0.5;

/** A leader with a level landing; its note stands beyond the landing, centered on it, on blank paper. */
export function leader(input: LeaderInput): readonly SheetItem[] {
  const { tip, elbow, lines, end = 'arrow', size = dimensionTextSize } = input;
  const side = elbow.x >= tip.x ? 1 : -1;
  const landing = { x: elbow.x + side * LANDING, y: elbow.y };
  const pitch = (textRise + textDrop) * size;
  const direction = (Math.atan2(tip.y - elbow.y, tip.x - elbow.x) * 180) / Math.PI;
  const tipItem =
    end === 'arrow'
      ? [arrowhead(tip, direction)]
      : end === 'dot'
        ? [circle(tip, DOT_RADIUS, 'dimension', 'ink')]
        : [];
  return [
    openPath([tip, elbow, landing], 'dimension'),
    ...tipItem,
    ...lines.flatMap((content, i) => {
      const foot = (i - (lines.length - 1) / 2) * pitch + ((textRise - textDrop) / 2) * size;
      const at = { x: landing.x + side * 0.8, y: landing.y - foot };
      return maskedText(at, content, { size, anchor: side > 0 ? 'start' : 'end' });
    }),
  ];
}

/** A leader to the edge of a circle, square to it; the text carries its own Ø or R. */
export function diameterLeader(input: DiameterLeaderInput): readonly SheetItem[] {
  const { center, radius, toward, reach, text, size = dimensionTextSize } = input;
  const turn = (toward * Math.PI) / 180;
  const out = (distance: number): PaperPoint => ({
    x: center.x + distance * Math.cos(turn),
    y: center.y + distance * Math.sin(turn),
  });
  return leader({ tip: out(radius), elbow: out(radius + reach), lines: text, size });
}

/** An arc with arrowheads between two legs; the text sits on its middle, on blank paper, or outside a short arc. */
export function angleDimension(input: AngleDimensionInput): readonly SheetItem[] {
  const { vertex, radius, from, text, legsFrom, size = dimensionTextSize } = input;
  const sweep = (((input.to - from) % 360) + 360) % 360;
  const at = (degrees: number, r = radius): PaperPoint => ({
    x: vertex.x + r * Math.cos((degrees * Math.PI) / 180),
    y: vertex.y + r * Math.sin((degrees * Math.PI) / 180),
  });
  const width = textWidth(text, size);
  const middle = from + sweep / 2;
  const fits = ((sweep * Math.PI) / 180) * radius > width + 6;
  const outward = fits ? radius : radius + 1.5 + width / 2 + size / 2;
  const legs =
    legsFrom === undefined
      ? []
      : [from, from + sweep].map((d) => line(at(d, legsFrom), at(d, radius + 1.5), 'dimension'));
  const place = at(middle, outward);
  const bulge = Math.tan((sweep * Math.PI) / 720);
  return [
    ...legs,
    {
      type: 'path',
      vertices: [
        { ...at(from), bulge },
        { ...at(from + sweep), bulge: 0 },
      ],
      closed: false,
      pen: 'dimension',
      fill: 'none',
    },
    arrowhead(at(from), from - 90),
    arrowhead(at(from + sweep), from + sweep + 90),
    ...maskedText({ x: place.x, y: place.y - ((textRise - textDrop) / 2) * size }, text, {
      size,
      anchor: 'middle',
    }),
  ];
}

/** Two crossing center lines that run past a circle of this radius on paper [mm]. */
export function centerMark(center: PaperPoint, radius: number, overrun = 1.5): readonly SheetItem[] {
  const reach = radius + overrun;
  return [
    line({ x: center.x - reach, y: center.y }, { x: center.x + reach, y: center.y }, 'center'),
    line({ x: center.x, y: center.y - reach }, { x: center.x, y: center.y + reach }, 'center'),
  ];
}
