import type { Loop, Point } from '../geometry/index.ts';

/** What is scribed or center punched, not cut. */
export type CutMark =
  | { readonly kind: 'punch'; readonly at: Point }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point };

/** A line to bend at. */
export interface CutBend {
  readonly from: Point;
  readonly to: Point;
  /** Turn of the leg beyond the line [rad]; positive up, toward the reader. */
  readonly angle: number;
}

/** The same part with the tool's half width given away, for a cutter that makes no allowance itself. */
export interface KerfOutlines {
  /** Full width of the cut [m], > 0. */
  readonly width: number;
  readonly outline: Loop;
  readonly openings: readonly Loop[];
  readonly circles: readonly { readonly center: Point; readonly diameter: number }[];
}

/** One flat part as it is cut: what a DXF or an SVG of it holds [m]. */
export interface CutFile {
  /** File name without extension: `plate-engine`. */
  readonly id: string;
  readonly name: string;
  readonly outline: Loop;
  /** Slots and windows. */
  readonly openings: readonly Loop[];
  /** Round holes. */
  readonly circles: readonly { readonly center: Point; readonly diameter: number }[];
  readonly marks: readonly CutMark[];
  readonly bends: readonly CutBend[];
  /** Written on its own layer beside the true size, never in its place. */
  readonly kerf?: KerfOutlines;
}
