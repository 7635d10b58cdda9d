/**
 * A drawing as plain data. A sheet is an edge of the program, so it is in paper millimeters:
 * origin at the lower left corner, x to the right, y up. Every writer (PDF, SVG) draws the same items;
 * text is set in one font whose widths the core knows, so that layout is the same everywhere.
 */

/** A point on paper [mm]. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** What a stroke means; writers map a role to weight, dash and color in one place (`penStyles`). */
export type PenRole =
  | 'outline' // visible edge of a part
  | 'thin' // lesser edge, table rule
  | 'hidden' // edge behind a part
  | 'center' // center line or center mark
  | 'dimension' // dimension and extension lines
  | 'cut' // line to cut on
  | 'mark' // line to scribe or punch
  | 'bend' // line to bend at
  | 'ground'
  | 'accent'; // what the reader should see first (a finding)

/** Closed shapes may be filled; `none` draws the stroke alone. */
export type FillRole = 'none' | 'paper' | 'light' | 'medium' | 'dark' | 'ink' | 'accent';

/** A segment of a path: straight to `to`, or an arc to it with `bulge` = tan(sweep/4), + counterclockwise. */
export interface PathStep extends PaperPoint {
  readonly bulge: number;
}

interface ItemBase {
  /** What the item draws, e.g. `plates.engine` or `register:A1-B1:0`; writers that can, keep it as a name. */
  readonly part?: string;
}

export type SheetItem = PathItem | CircleItem | TextItem;

export interface PathItem extends ItemBase {
  readonly type: 'path';
  /** First vertex and those after it; each vertex's bulge belongs to the segment that leaves it. */
  readonly vertices: readonly PathStep[];
  readonly closed: boolean;
  readonly pen: PenRole | 'none';
  readonly fill: FillRole;
}

export interface CircleItem extends ItemBase {
  readonly type: 'circle';
  readonly center: PaperPoint;
  readonly radius: number;
  readonly pen: PenRole | 'none';
  readonly fill: FillRole;
}

export interface TextItem extends ItemBase {
  readonly type: 'text';
  readonly at: PaperPoint;
  readonly text: string;
  /** Height of the em [mm]; capitals are about 0.73 of it. `at` is on the base line. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Counterclockwise about `at` [degrees]. */
  readonly turn: number;
  readonly weight: 'regular' | 'bold';
  readonly tone: 'ink' | 'muted' | 'accent';
}

export interface Sheet {
  /** Unique in a pack: `book-05-stack-rear-axle`, `template-engine-plate-1-of-2`. */
  readonly id: string;
  readonly title: string;
  /** [mm] */
  readonly width: number;
  /** [mm] */
  readonly height: number;
  /** Scale as written on the sheet, e.g. `1 : 1`, `1 : 8`; undefined for text pages. */
  readonly scale?: string;
  readonly items: readonly SheetItem[];
}
