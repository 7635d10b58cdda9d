import type { Bike, PlacedTube } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { centerlineAt, cross3, dot3, length3, type Point3, subtract3, unit3 } from '../geometry/index.ts';

/** A place on a tube's centerline that can be held or measured from. */
export interface FrameSpot {
  /** Node of the build file, or `start of bend 1 of lowerRail`. */
  readonly name: string;
  readonly tube: PlacedTube;
  readonly at: Point3;
  /** Of the tube there, a unit vector. */
  readonly direction: Point3;
  /** Which point of the tube's `through` it stands for, and where it lies on the bend of a corner. */
  readonly corner: number;
  readonly on: 'node' | 'bend start' | 'bend end';
}

/** Ends nearer to the neck than this beyond its outside are on it [m]. */
const ON_NECK = 1e-3;

/**
 * Places of a tube that exist in metal: its ends and, of each corner, where the bend begins and ends. The corner itself
 * lies off the tube. Ends on the neck are left out: the neck bar holds them.
 * @source derived, tangent points of the centerline
 */
export function frameSpots(build: Build, bike: Bike, tube: PlacedTube): readonly FrameSpot[] {
  const { through } = build.frame.tubes[tube.entry] ?? { through: [] };
  const { centerline } = tube;
  const spot = (name: string, at: number, corner: number, on: FrameSpot['on']): FrameSpot => {
    const { point, direction } = centerlineAt(centerline, at);
    return { name, tube, at: point, direction, corner, on };
  };
  return through
    .flatMap((name, corner): FrameSpot[] => {
      const index = centerline.bends.findIndex((one) => one.point === corner);
      const bend = centerline.bends[index];
      if (bend) {
        const of = `of bend ${index + 1} of ${tube.entry}`;
        return [
          spot(`start ${of}`, bend.start, corner, 'bend start'),
          spot(`end ${of}`, bend.end, corner, 'bend end'),
        ];
      }
      if (!(name in build.frame.nodes)) return [];
      if (corner === 0) return [spot(name, 0, corner, 'node')];
      if (corner === through.length - 1) return [spot(name, centerline.length, corner, 'node')];
      // A node that the tube passes straight is where it is.
      const { direction } = centerlineAt(centerline, alongTube(centerline, bike.layout.points[name]!));
      return [{ name, tube, at: bike.layout.points[name]!, direction, corner, on: 'node' }];
    })
    .filter((one) => !isOnNeck(build, bike, one.at));
}

/** Where on a tube a point of its straights lies [m]. */
function alongTube({ pieces }: PlacedTube['centerline'], at: Point3): number {
  const shares = pieces.map((piece) => {
    const s = Math.min(piece.length, Math.max(0, dot3(subtract3(at, piece.from), piece.direction)));
    const aside = length3(cross3(subtract3(at, piece.from), piece.direction));
    return { s: piece.start + s, aside: piece.kind === 'straight' ? aside : Number.POSITIVE_INFINITY };
  });
  return shares.reduce((best, one) => (one.aside < best.aside ? one : best), {
    s: 0,
    aside: Number.POSITIVE_INFINITY,
  }).s;
}

function isOnNeck(build: Build, { layout }: Bike, at: Point3): boolean {
  const { neckBottom, neckTop } = layout.points as { readonly neckBottom: Point3; readonly neckTop: Point3 };
  const span = subtract3(neckTop, neckBottom);
  const axis = unit3(span);
  const arm = subtract3(at, neckBottom);
  const along = dot3(arm, axis);
  const { outside } = build.steering.neck;
  return (
    along >= -ON_NECK &&
    along <= length3(span) + ON_NECK &&
    length3(cross3(arm, axis)) <= outside / 2 + ON_NECK
  );
}
