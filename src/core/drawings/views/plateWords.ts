import type { FlatPattern, HoleStep } from '../../plates/index.ts';

/** `2 off, one left and one right (mirror image)`. */
export function handText(pattern: Pick<FlatPattern, 'count' | 'pair'>): string {
  if (!pattern.pair) return `${pattern.count} off`;
  const half = pattern.count / 2;
  const each = half === 1 ? 'one' : String(half);
  return `${pattern.count} off, ${each} left as drawn and ${each} right as its mirror image`;
}

const MAKING = { drill: 'saw or file, drill', torch: 'cut by torch', saw: 'saw' } as const;

export const makingText = (pattern: Pick<FlatPattern, 'make'>): string => MAKING[pattern.make];

/** Steps of an opening in the order of the work, diameters in mm: `punch, pilot 2, drill 8.5, drill 9`. */
export const stepsText = (steps: readonly HoleStep[]): string => steps.map(stepText).join(', ');

function stepText(step: HoleStep): string {
  switch (step.do) {
    case 'punch':
      return 'punch';
    case 'saw-and-file':
      return 'saw and file between';
    case 'tap':
      return `tap ${step.thread}`;
    case 'cut':
      return `cut ${sizeText(step.diameter)}`;
    case 'cut-undersize':
      return `cut under size ${sizeText(step.diameter)}`;
    case 'open-by-hand':
      return `open by hand to ${sizeText(step.diameter)}`;
    case 'pilot':
    case 'drill':
    case 'bore':
      return `${step.do} ${sizeText(step.diameter)}`;
  }
}

/** A diameter [m] as drill sizes are written: millimeters to a hundredth, without trailing zeros. */
export const sizeText = (diameter: number): string => String(Math.round(diameter * 1e5) / 100);
