import type { Loop, Point } from '../geometry/index.ts';
import type { PenRole } from './sheet.ts';

/** Which hand the part is; a mirror part is printed once and glued on turned over. */
export type HandMark = 'left' | 'right' | 'mirror' | 'none';

export interface TemplateLoop {
  readonly loop: Loop;
  /** `cut`, `mark`, `hidden` … */
  readonly pen: PenRole;
}

export interface TemplateCircle {
  readonly center: Point;
  readonly diameter: number;
  readonly pen: PenRole;
  /** Beside the circle: `drill 8.5`, `Ø 35 bore`. */
  readonly label?: string;
}

export interface TemplateLine {
  readonly from: Point;
  readonly to: Point;
  /** `bend`, `mark`, `center` … */
  readonly pen: PenRole;
  /** Along the line: `bend up 90°`. */
  readonly label?: string;
}

export interface TemplateLabel {
  readonly at: Point;
  readonly text: string;
  /** [mm]; default 3 */
  readonly size?: number;
}

/** `up`, `forward` … with the way it points. */
export interface TemplateArrow {
  readonly at: Point;
  /** Counterclockwise from the plane's x [rad]. */
  readonly direction: number;
  readonly text: string;
}

/** One outline with what belongs to it [m]. */
export interface TemplatePiece {
  readonly name: string;
  readonly loops: readonly TemplateLoop[];
  readonly circles: readonly TemplateCircle[];
  readonly lines: readonly TemplateLine[];
  readonly labels: readonly TemplateLabel[];
  readonly arrows: readonly TemplateArrow[];
}

/** Two places whose distance the builder measures on the print and on the part. */
export interface TemplateCheck {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
}

/** What is printed 1:1 together, in one plane [m]. */
export interface TemplateJob {
  /** `template-plate-engine` */
  readonly id: string;
  readonly title: string;
  readonly hand: HandMark;
  readonly pieces: readonly TemplatePiece[];
  readonly checks: readonly TemplateCheck[];
  readonly notes: readonly string[];
}
