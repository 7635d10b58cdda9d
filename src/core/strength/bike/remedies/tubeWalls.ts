import type { PlacedTube } from '../../../bike/index.ts';
import { inches } from '../../../quantity/index.ts';
import { tubeSection } from '../../../standards/index.ts';
import type { StrengthInput } from '../strengthCore.ts';
import { type Change, wholeCheck } from './change.ts';

/** Stock walls of steel tube [in]. @source practice */
export const WALLS: readonly number[] = [
  0.035, 0.049, 0.058, 0.065, 0.083, 0.095, 0.109, 0.12, 0.134, 0.156, 0.188, 0.25,
].map((v) => Number(inches(v)));

/** Heavier walls of the same tube on both sides, with the weight that they add. */
export function wallChanges(input: StrengthInput, tube: PlacedTube): readonly Change[] {
  const walls = WALLS.filter((wall) => wall > tube.wall * 1.01 && wall < tube.outside / 2);
  return walls.map((wall) => {
    const heavier = tubeSection(tube.outside, wall).area / tubeSection(tube.outside, tube.wall).area;
    const isSame = (entry: string): boolean => entry === tube.entry;
    const tubes = input.bike.tubes.map((one) =>
      isSame(one.entry) ? { ...one, wall, mass: one.mass * heavier } : one,
    );
    const parts = input.masses.parts.map((part) =>
      part.id === `tubes.${tube.entry}` || part.id === `tubes.${tube.entry}.right`
        ? { ...part, mass: part.mass * heavier }
        : part,
    );
    return wholeCheck(
      `Make "${tube.entry}" of ${(wall * 1000).toFixed(2)} mm (${(wall / inches(1)).toFixed(3)} in) wall`,
      { ...input, bike: { ...input.bike, tubes }, masses: { ...input.masses, parts } },
    );
  });
}
