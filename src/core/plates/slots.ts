import { derived, practice } from '../quantity/index.ts';
import type { PlateFlaw } from './pattern.ts';
import type { PlateContext } from './plan.ts';

/** A slot along a line of the plate. */
export interface PlateSlot {
  /** Center to center of its ends [m]. */
  readonly travel: number;
  /** From the bolt's drawn place to the middle of the slot, along the line [m]. */
  readonly middle: number;
  /** +1 where tightening moves along the line, −1 where against it. */
  readonly tightens: 1 | -1;
  readonly flaws: readonly PlateFlaw[];
}

/** A slide may leave the plane of its slot by this much before it is said [rad]: 2 degrees. */
const OFF_LINE = (2 * Math.PI) / 180;

/** Two lengths this near are the same [m]. */
const SAME = 1e-9;

/**
 * The slot that a shaft's slide wants along a line at `line` [rad, from straight ahead, upward positive]: the stated
 * travel, else the slide's own, else what the drives need. Where nothing says how long, the travel is 0 with a flaw.
 * @source derived, travel = stated or needed; the middle is that of the needed travel
 */
export function plateSlot(
  context: PlateContext,
  shaft: string,
  stated: number | undefined,
  line: number,
): PlateSlot {
  const slide = context.build.driveline.shafts[shaft]?.slide;
  const need = context.needs.find((one) => one.shaft === shaft);
  const direction = need?.direction ?? slide?.direction ?? line;
  const tightens = Math.cos(direction - line) < 0 ? -1 : 1;
  const off = Math.abs(Math.sin(direction - line));
  const travel = stated ?? slide?.travel ?? need?.length;
  const flaws: PlateFlaw[] = [];
  if (off > Math.sin(OFF_LINE)) {
    flaws.push({
      plate: context.id,
      rule: 'slot-direction',
      features: [shaft],
      value: Math.asin(Math.min(1, off)),
      limit: OFF_LINE,
      kind: 'angle',
      severity: 'caution',
      remedy: `Give the slide of ${shaft} the direction of the plate, or tilt the plate along the slide.`,
      source: derived('angle between the slide and the line of the slot'),
    });
  }
  if (travel === undefined) {
    flaws.push({
      plate: context.id,
      rule: 'slot-unknown',
      features: [shaft],
      value: 0,
      limit: 1,
      kind: 'count',
      severity: 'stop',
      remedy:
        'No drive says how long the slot must be: state its travel, or give the shaft a slide and a drive to set.',
      source: practice('25 to 40 mm of travel are usual'),
    });
  }
  const middle = slotMiddle(need?.middle, slide, travel);
  if (need && travel !== undefined && travel >= need.length) {
    const missed = Math.abs((need.middle ?? 0) - middle) - (travel - need.length) / 2;
    if (missed > SAME) flaws.push(misplaced(context.id, shaft, need.length - missed, need.length));
  }
  return { travel: travel ?? 0, middle: tightens * middle, tightens, flaws };
}

/** A slot that is long enough but lies too far to one side: what it covers of the need. */
const misplaced = (plate: string, shaft: string, covered: number, needed: number): PlateFlaw => ({
  plate,
  rule: 'slot-too-short',
  features: [shaft],
  value: covered,
  limit: needed,
  kind: 'length',
  severity: 'stop',
  remedy: `The slot is long enough but lies too far to one side: change how much of the slide of ${shaft} is on the slack side.`,
  source: derived('part of the needed travel that the slot covers'),
});

/** Needed middle where the drives give one; else by how much of the stated travel lies on the slack side. */
function slotMiddle(
  needed: number | undefined,
  slide: { readonly slack?: number | undefined } | undefined,
  travel: number | undefined,
): number {
  if (slide?.slack !== undefined && travel !== undefined) return travel / 2 - slide.slack;
  return needed ?? 0;
}
