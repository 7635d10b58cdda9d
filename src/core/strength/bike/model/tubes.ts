import type { Bike, MassSummary } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import { materialStrength } from '../../../standards/index.ts';
import type { DraftLine, FrameDraft } from './draft.ts';

/** Tubes and neck as lines of members, each with its own stock and mass. */
export function addTubes(draft: FrameDraft, build: Build, bike: Bike, masses: MassSummary): DraftLine[] {
  const massOf = (id: string): number => masses.parts.find((part) => part.id === id)?.mass ?? 0;
  const tubes = bike.tubes.map((tube) => {
    const { elasticModulus, shearModulus } = materialStrength(tube.material);
    const { outside, wall } = tube;
    const mass = massOf(`tubes.${tube.id}`);
    return draft.addTube(
      tube.id,
      { outside, wall: Math.min(wall, outside / 2), elasticModulus, shearModulus, mass },
      tube.centerline,
    );
  });
  const { neckBottom, neckTop } = bike.layout.points;
  const { outside, wall } = build.steering.neck;
  const { elasticModulus, shearModulus } = materialStrength('mild-steel');
  const stock = { outside, wall: Math.min(wall, outside / 2), elasticModulus, shearModulus };
  const neck = draft.addStraight('neck', { ...stock, mass: massOf('steering.neck') }, neckBottom!, neckTop!);
  return [...tubes, neck];
}
