import type { StrengthCore, StrengthInput } from '../strengthCore.ts';
import { type Change, wholeCheck } from './change.ts';

/** A larger fillet, as far as half more than the thinner part. */
export function legChanges(input: StrengthInput, core: StrengthCore, part: string): readonly Change[] {
  const stock =
    core.frame.draft.lines.get(part)?.stock.wall ?? input.patterns.find(({ id }) => id === part)?.thickness;
  if (stock === undefined) return [];
  const now = input.build.loads?.weldLeg ?? stock;
  return [1.25, 1.5].map((share) => {
    const leg = now * share;
    const loads = { ...input.build.loads, weldLeg: leg as NonNullable<typeof input.build.loads>['weldLeg'] };
    return wholeCheck(`Weld it with a leg of ${(leg * 1000).toFixed(1)} mm`, {
      ...input,
      build: { ...input.build, loads } as StrengthInput['build'],
    });
  });
}
