import { type Build, originalName, type TubeEntry, type Tubing } from '../build/index.ts';
import { buildCenterline, type Centerline, type Point3 } from '../geometry/index.ts';
import type { Issue } from '../quantity/index.ts';
import { materialNamed, tubeSection } from '../standards/index.ts';
import type { Layout, PlacedTube, TubeFlaw } from './bike.ts';
import { namedPoint } from './placePoint.ts';
import { type BareTube, placeTubeEnd, type TubeEndQuestion } from './tubeEnds.ts';

/** The frame's tubes, and what cannot be made of them as drawn. */
export interface PlacedTubes {
  readonly tubes: readonly PlacedTube[];
  readonly flaws: readonly TubeFlaw[];
}

/** Bend radius in outside diameters where neither tube, tubing nor bender says one. @source practice, 3 D dies */
const USUAL_BEND = 3;
/** Material of a tubing that names none. */
const USUAL_MATERIAL = 'mild-steel';
/** Share of the bend radius that just fits, so that rounding does not undo it. */
const JUST_FITS = 0.999;
/** Bend radii tried, each half of the one before, when the wanted one does not fit. */
const TRIES = 12;

/**
 * Every tube of the frame in place, mirrored pairs as two. A bend that has no room is drawn with a smaller radius and
 * told as a flaw; a tube without any centerline is left out and told.
 * @source derived, tangent arcs in the corners of the nodes
 */
export function placeTubes(build: Build, layout: Layout): PlacedTubes {
  const flaws: TubeFlaw[] = [];
  const bare = Object.entries(build.frame.tubes).flatMap(([entry, tube]) =>
    (tube.mirror ? (['left', 'right'] as const) : (['center'] as const)).flatMap((hand) => {
      const placed = bareTube(build, layout, { entry, tube, hand });
      flaws.push(...placed.flaws);
      return placed.tube ? [placed.tube] : [];
    }),
  );
  const tubes = bare.map((tube) => {
    const ends = ([0, 1] as const).map((end) => placeTubeEnd(endQuestion(build, layout, bare, tube, end)));
    const [start, finish] = [ends[0]!, ends[1]!];
    flaws.push(...start.flaws, ...finish.flaws);
    const cutLength = tube.centerline.length - start.meanCut - finish.meanCut;
    if (!(cutLength > 0)) {
      const reason = 'the copes of its two ends meet and leave no tube between them';
      flaws.push({ tube: tube.id, rule: 'copes-meet', reason });
    }
    const { area } = tubeSection(tube.outside, tube.wall);
    const purpose = build.frame.tubes[tube.entry]?.purpose;
    return {
      ...tube,
      ends: [start.end, finish.end] as const,
      ...(purpose === undefined ? {} : { purpose }),
      // The flaw above tells it; a negative mass would spoil the sums.
      mass: Math.max(0, cutLength) * area * materialNamed(tube.material).density,
    };
  });
  return { tubes, flaws };
}

/** Centerline radius that a tube is bent to [m]: its own, its tubing's, the bender's, else 3 outside diameters. */
export function bendRadius(build: Build, tube: TubeEntry): number {
  const tubing = build.frame.tubing[tube.tubing]!;
  return (
    tube.centerlineRadius ??
    tubing.centerlineRadius ??
    build.shop?.bender?.centerlineRadius ??
    USUAL_BEND * tubing.outside
  );
}

interface Hand {
  readonly entry: string;
  readonly tube: TubeEntry;
  readonly hand: PlacedTube['hand'];
}

function bareTube(
  build: Build,
  layout: Layout,
  { entry, tube, hand }: Hand,
): { readonly tube?: BareTube; readonly flaws: readonly TubeFlaw[] } {
  const tubing: Tubing = build.frame.tubing[tube.tubing]!;
  const id = hand === 'right' ? `${entry}.right` : entry;
  const nodes = tube.through.map((name) => (hand === 'right' ? mirrorName(name) : name));
  const points = nodes.map((name) => namedPoint(layout.points, name)!);
  const { line, flaws } = roundedLine(id, points, bendRadius(build, tube));
  if (!line) return { flaws };
  const { outside, wall, material = USUAL_MATERIAL } = tubing;
  return { flaws, tube: { id, entry, hand, nodes, centerline: line, outside, wall, material } };
}

/** The centerline with the wanted radius, or else the largest tried that fits. */
function roundedLine(
  tube: string,
  points: readonly Point3[],
  radius: number,
): { readonly line?: Centerline; readonly flaws: readonly TubeFlaw[] } {
  const wanted = buildCenterline({ points, bendRadius: radius });
  if (wanted.ok) return { line: wanted.value, flaws: [] };
  const reason = wanted.issues.map(reasonOf).join('; ');
  const fits = (smaller: number): Centerline | undefined => {
    const line = buildCenterline({ points, bendRadius: smaller });
    return line.ok ? line.value : undefined;
  };
  let [low, high] = [0, radius];
  for (let k = 0; k < TRIES && low === 0; k++) {
    const half = high / 2;
    if (fits(half)) low = half;
    else high = half;
  }
  if (low === 0) return { flaws: [{ tube, rule: 'no-centerline', reason }] };
  for (let k = 0; k < TRIES; k++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  const line = fits(low * JUST_FITS)!;
  return { line, flaws: [{ tube, rule: 'bends-overlap', reason, value: radius, limit: low }] };
}

const reasonOf = (issue: Issue): string => (issue.code === 'conflict' ? issue.reason : issue.code);

/** Name of the mirror image of a node or tube. */
const mirrorName = (name: string): string =>
  originalName(name) === name ? `${name}.right` : originalName(name);

function endQuestion(
  build: Build,
  layout: Layout,
  all: readonly BareTube[],
  tube: BareTube,
  end: 0 | 1,
): TubeEndQuestion {
  const entry = build.frame.tubes[tube.entry]!;
  const joint = (end === 0 ? entry.start : entry.end) ?? { joint: 'square' as const };
  if (joint.joint !== 'cope' || joint.onto === undefined) return { tube, end, joint };
  if (joint.onto === 'neck') {
    const { neckBottom } = layout.points;
    const neck = { id: 'neck', outside: build.steering.neck.outside };
    return {
      tube,
      end,
      joint,
      trunk: { ...neck, axis: { point: neckBottom!, direction: layout.steeringAxis } },
    };
  }
  const named = tube.hand === 'right' ? mirrorName(joint.onto) : joint.onto;
  // A center tube has no mirror image: both of a pair are fitted round the one.
  const trunk = all.find((one) => one.id === named) ?? all.find((one) => one.id === joint.onto);
  return trunk ? { tube, end, joint, trunk } : { tube, end, joint };
}
