/** What the drives ask of the slide of one shaft. */
export interface SlotNeed {
  /** Shaft that slides, e.g. `engine` or `rearAxle`. */
  readonly shaft: string;
  /** Travel that the drives need, from the slack end to the tight end [m], ≥ 0. */
  readonly length: number;
  /** Way it slides to tighten, from straight ahead, upward positive [rad]. */
  readonly direction: number;
  /** From the shaft's drawn place to the middle of that travel, along `direction` [m]; 0 when left out. */
  readonly middle?: number;
}

/** A part of a slide that one drive uses, from the drawn place along the way it tightens [m]. */
export interface SlideSpan {
  readonly shaft: string;
  /** [rad] */
  readonly direction: number;
  readonly from: number;
  readonly to: number;
}

/** One need for each shaft, long enough for every span of its slide. The first span of a shaft gives the direction. */
export function slotNeeds(spans: readonly SlideSpan[]): readonly SlotNeed[] {
  return [...new Set(spans.map((span) => span.shaft))].map((shaft) => {
    const own = spans.filter((span) => span.shaft === shaft);
    const from = Math.min(...own.flatMap((span) => [span.from, span.to]));
    const to = Math.max(...own.flatMap((span) => [span.from, span.to]));
    return { shaft, direction: own[0]!.direction, length: to - from, middle: (from + to) / 2 };
  });
}
