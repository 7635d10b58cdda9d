import { type Loop, offsetLoop, type Point } from '../geometry/index.ts';
import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** What is scribed or center punched, not cut. */
export type CutMark =
  | { readonly kind: 'punch'; readonly at: Point }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  /** Finished outline of an opening that is cut smaller and opened to it. */
  | { readonly kind: 'loop'; readonly loop: Loop };

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

/**
 * The same part with outlines for a tool that cuts `width` wide [m]: the outline half a kerf out, openings and holes
 * half a kerf in.
 * @issue conflict: an opening or a hole that the cut would close, or an outline that falls apart
 * @source derived, parallel curve at half the kerf
 */
export function withKerf(cut: CutFile, width: number): Outcome<CutFile> {
  if (!(width > 0)) return bad({ code: 'conflict', path: cut.id, reason: 'a kerf needs a width above 0' });
  const outline = offsetLoop(cut.outline, width / 2);
  const openings = cut.openings.map((opening) => offsetLoop(opening, -width / 2));
  const tight = cut.circles.filter((c) => c.diameter <= width);
  const issues: Issue[] = [outline, ...openings].flatMap((made) =>
    made.ok ? [] : made.issues.map((issue) => ({ ...issue, path: cut.id })),
  );
  for (const c of tight) {
    issues.push({
      code: 'conflict',
      path: cut.id,
      reason: `a hole of ${(c.diameter * 1000).toFixed(2)} mm is no wider than the kerf of ${(width * 1000).toFixed(2)} mm`,
    });
  }
  const [first, ...rest] = issues;
  if (first !== undefined) return bad(first, ...rest);
  if (!outline.ok) throw new Error('an outline with no issue is good');
  return good({
    ...cut,
    kerf: {
      width,
      outline: outline.value,
      openings: openings.flatMap((made) => (made.ok ? [made.value] : [])),
      circles: cut.circles.map((c) => ({ center: c.center, diameter: c.diameter - width })),
    },
  });
}
