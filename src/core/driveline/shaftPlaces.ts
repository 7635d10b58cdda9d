import { movedShafts } from './adjustmentOrder.ts';
import type { SlideLine } from './slideGeometry.ts';
import type { DriveRun, DriveShaft, ShaftSlide, SidePoint, SlideStates } from './tensionTypes.ts';

/** Slide positions of the shafts that have been set so far. */
export type Slides = ReadonlyMap<string, SlideStates>;

/** A drive with the geometry of its slide, the drives before it being set. */
export interface SetUp {
  readonly drive: DriveRun;
  readonly slides: string;
  readonly slide: ShaftSlide;
  /** Drives before it new. */
  readonly fresh: SlideLine;
  /** Drives before it worn. */
  readonly worn: SlideLine;
}

/** Where a shaft is once some have slid: its layout position and every slide it rides on [m]. */
export function placedShaft(
  shafts: readonly DriveShaft[],
  id: string,
  at: { readonly slides: Slides; readonly state: 'fresh' | 'worn' },
): SidePoint {
  const start = shafts.find((shaft) => shaft.id === id)?.position ?? { x: 0, z: 0 };
  return shafts.reduce((point, shaft) => {
    const states = at.slides.get(shaft.id);
    if (!states || !shaft.slide || !movedShafts(shafts, shaft.id).has(id)) return point;
    const direction = unitVector(shaft.slide.direction);
    return { x: point.x + states[at.state] * direction.x, z: point.z + states[at.state] * direction.z };
  }, start);
}

/** The slide line of a drive against its standing shaft, with the drives before it new and worn. */
export function setUpOf(
  shafts: readonly DriveShaft[],
  step: Pick<SetUp, 'drive' | 'slides' | 'slide'>,
  slides: Slides,
): SetUp {
  const { drive } = step;
  const sliding = movedShafts(shafts, step.slides).has(drive.from) ? drive.from : drive.to;
  const standing = sliding === drive.from ? drive.to : drive.from;
  const direction = unitVector(step.slide.direction);
  const line = (state: 'fresh' | 'worn'): SlideLine => {
    const a = placedShaft(shafts, sliding, { slides, state });
    const b = placedShaft(shafts, standing, { slides, state });
    return { offset: { x: a.x - b.x, z: a.z - b.z }, direction };
  };
  return { ...step, fresh: line('fresh'), worn: line('worn') };
}

function unitVector(direction: SidePoint): SidePoint {
  const size = Math.hypot(direction.x, direction.z);
  return { x: direction.x / size, z: direction.z / size };
}
