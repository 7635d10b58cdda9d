import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { layOut, placeBike, weigh } from '../../src/core/bike/index.ts';
import { type Build, readBuild } from '../../src/core/build/index.ts';
import type { DrawingContext } from '../../src/core/drawings/index.ts';
import { solveDriveline } from '../../src/core/driveline/index.ts';
import { plateLumps, platesOf, slotNeeds } from '../../src/core/plates/index.ts';
import { type ShopWork, shopWork } from '../../src/core/shop/index.ts';

/** The builds that the program comes with. */
export const demoNames = ['light', 'heavy'] as const;

/** A build solved as far as its drawings need, and the shop's lists of it. */
export interface SolvedDrawing {
  readonly context: DrawingContext;
  readonly work: ShopWork;
}

export function demoDrawing(name: (typeof demoNames)[number]): SolvedDrawing {
  const path = fileURLToPath(new URL(`../../demo/${name}.build.json`, import.meta.url));
  const read = readBuild(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(`demo build ${name} can't be read`);
  return drawingOf(read.value);
}

export function drawingOf(build: Build): SolvedDrawing {
  const layout = layOut(build);
  const driveline = solveDriveline(build, layout);
  const bike = placeBike(build, layout, driveline.shafts);
  const { patterns } = platesOf(build, bike, slotNeeds(driveline.slots));
  const masses = weigh(build, bike, plateLumps(build, patterns));
  return {
    context: {
      scene: { build, bike, driveline, patterns, masses },
      paper: build.shop?.paper ?? 'a4',
      system: build.about.units ?? 'both',
    },
    work: shopWork({ build, bike, driveline, patterns }),
  };
}
