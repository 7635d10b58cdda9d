import { placePoint } from '../../bike/index.ts';
import type { PlateOf } from '../../build/index.ts';
import { add3, type Frame3, scale3 } from '../../geometry/index.ts';
import { good, type Outcome } from '../../quantity/index.ts';
import { BEND_NOTE, planBend } from '../bends.ts';
import { middleFrame, planeAxes } from '../frames.ts';
import { atPath } from '../openings.ts';
import { cornersLoop } from '../outlines.ts';
import type { BendLine } from '../pattern.ts';
import { materialOf, type PlateContext, type PlateShape } from '../plan.ts';

type Entry = PlateOf<'free'>;

/** A plate by its corners; bends are where the file draws them, as the middle lines in the flat. */
export function freePlate(context: PlateContext, entry: Entry): Outcome<PlateShape> {
  const outline = cornersLoop(entry.corners, 'corners');
  if (!outline.ok) return outline;
  const bends: BendLine[] = [];
  for (const [i, bend] of (entry.bends ?? []).entries()) {
    const plan = planBend(bend, { thickness: entry.thickness, material: materialOf(entry) }, `bends[${i}]`);
    if (!plan.ok) return plan;
    const { angle, insideRadius, allowance } = plan.value;
    bends.push({
      from: bend.from,
      to: bend.to,
      angle,
      insideRadius,
      direction: bend.direction,
      allowance,
      note: BEND_NOTE,
    });
  }
  const frame = freeFrame(context, entry);
  if (!frame.ok) return frame;
  return good({
    title: entry.purpose ?? 'Plate',
    outline: outline.value,
    openings: [],
    bends,
    ...(frame.value ? { frame: frame.value } : {}),
  });
}

function freeFrame(context: PlateContext, entry: Entry): Outcome<Frame3 | undefined> {
  if (!entry.place) return good(undefined);
  const place = atPath(placePoint(context.bike.layout.points, entry.place), 'place');
  if (!place.ok) return place;
  const [a, b] = planeAxes[entry.plane ?? 'side'];
  const [c, s] = [Math.cos(entry.turn ?? 0), Math.sin(entry.turn ?? 0)];
  const x = add3(scale3(a, c), scale3(b, s));
  const y = add3(scale3(a, -s), scale3(b, c));
  return good(middleFrame(place.value, x, y, entry.thickness));
}
