import type { PlacedStack } from '../../../bike/index.ts';
import { inches, mm } from '../../../quantity/index.ts';
import type { StrengthInput } from '../strengthCore.ts';
import { type Change, wholeCheck } from './change.ts';

/** Stock sizes of axle and shaft with bearings of the same bore [m]. @source practice */
const SHAFTS = [
  ...[10, 12, 15, 17, 20, 25, 30, 35].map((v) => Number(mm(v))),
  ...[0.5, 0.625, 0.75, 0.875, 1, 1.25].map((v) => Number(inches(v))),
].sort((a, b) => a - b);

/** The next stock sizes of an axle or shaft. */
export function shaftChanges(
  input: StrengthInput,
  part: string,
  [name, stack]: readonly [string, PlacedStack],
): readonly Change[] {
  const { axle } = stack;
  if (!axle) return [];
  return SHAFTS.filter((size) => size > axle.diameter * 1.01).map((diameter) =>
    wholeCheck(
      `Make ${part} ${(diameter * 1000).toFixed(1)} mm (${(diameter / inches(1)).toFixed(3)} in) thick, with bearings and bores to suit`,
      {
        ...input,
        bike: {
          ...input.bike,
          stacks: { ...input.bike.stacks, [name]: { ...stack, axle: { ...axle, diameter } } },
        },
      },
    ),
  );
}
