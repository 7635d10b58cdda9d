import type { Bike } from '../../../bike/index.ts';
import type { SourceRef } from '../../../quantity/index.ts';
import { materialStrength } from '../../../standards/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';

/** How strong the stock of a line is, as supplied and beside a weld [Pa]. */
export interface LineStrength {
  readonly yield: number;
  readonly weldedYield: number;
  readonly source: SourceRef;
}

/** Strength of every line: tubes by their material, bought parts by the settings. */
export function lineStrengths(bike: Bike, settings: LoadSettings): ReadonlyMap<string, LineStrength> {
  const of = (name: string): LineStrength => materialStrength(name);
  const shaft: LineStrength = {
    yield: settings.shaftYield,
    weldedYield: settings.shaftYield,
    source: { key: 'memory', where: '1018 cold-drawn, unless the file gives another' },
  };
  return new Map<string, LineStrength>([
    ...bike.tubes.map((tube) => [tube.id, of(tube.material)] as const),
    ['neck', of('mild-steel')],
    ['stem', of('drawn-tube-1020')],
    ['leg.left', of('drawn-tube-1020')],
    ['leg.right', of('drawn-tube-1020')],
    ['rearAxle', shaft],
    ['frontAxle', shaft],
  ]);
}
