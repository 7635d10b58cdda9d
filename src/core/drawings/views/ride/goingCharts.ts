import type { Point } from '../../../geometry/index.ts';
import { type DriveSegment, forceAt, type Launch, type Riding, roadForces } from '../../../ride/index.ts';
import type { Block } from '../../bookPages.ts';
import { type ChartBand, type ChartCurve, type ChartLine, type ChartPoint, chart } from '../../chart.ts';
import { niceEnd } from '../../chartAxis.ts';
import type { PaperRect } from '../../shapes.ts';
import type { SheetItem } from '../../sheet.ts';
import type { DrawingContext } from '../context.ts';
import { axisScales, gradeText, printed } from '../rideWords.ts';

/** What there is once the ride could be worked out. */
export type Going = NonNullable<Riding['going']>;

/** Hills whose resistance is drawn. */
const GRADES = [0, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5];
const SAMPLES = 24;
/** A hill run is shown no longer than this many level ones. */
const HILL_RUN = 2.5;

/** Force at the tire over speed, against what each hill asks. */
export function forceChart(context: DrawingContext, going: Going): Block {
  const { ride, answers } = going;
  const { path } = answers.launch;
  const force = path.segments.flatMap(segmentPoints);
  const most = Math.max(...force.map((p) => p.y));
  const fastest = niceEnd(path.highest * 1.12, axisScales.speed(context)[0]);
  const end = force.at(-1);
  const pull: ChartCurve = {
    points: end ? [...force, { x: end.x, y: 0 }] : force,
    line: 'solid',
    label: 'pull at full throttle',
    labelAt: 0.25,
  };
  const grades = [...new Set([...GRADES, ride.use.grade])]
    .sort((a, b) => a - b)
    .map((grade) => ({ grade, forces: roadForces({ ...ride.launch.road, grade }) }))
    .filter(({ forces }) => forces.rolling + forces.climb < most);
  const resistances = grades.map(({ grade, forces }): ChartCurve => {
    const at = (k: number): Point => {
      const speed = (fastest * k) / SAMPLES;
      return { x: speed, y: forces.rolling + forces.climb + forces.air * speed * speed };
    };
    return {
      points: Array.from({ length: SAMPLES + 1 }, (_, k) => at(k)),
      line: resistanceLine(grade, ride.use.grade),
      label:
        grade === 0
          ? 'level'
          : grade === ride.use.grade
            ? `${gradeText(grade)}, hill of the use`
            : gradeText(grade),
      labelAt: 0.97,
    };
  });
  return {
    kind: 'drawing',
    height: 100,
    draw: (area) =>
      chart({
        area,
        x: { name: 'Road speed', scales: axisScales.speed(context), from: 0, to: fastest },
        y: {
          name: 'Force at the rear tire',
          scales: axisScales.force(context),
          from: 0,
          to: niceEnd(most * 1.1, axisScales.force(context)[0]),
        },
        curves: [pull, ...resistances],
        points: forcePoints(context, going),
        bands: phaseBands(path.segments),
      }),
  };
}

const resistanceLine = (grade: number, ofUse: number): ChartLine =>
  grade === 0 ? 'dashed' : grade === ofUse ? 'dash-dot' : 'faint';

/** Straight pieces need their ends alone; a shift is a hyperbola. */
function segmentPoints(segment: DriveSegment): readonly Point[] {
  const count = segment.power === 0 ? 1 : SAMPLES;
  return Array.from({ length: count + 1 }, (_, k) => {
    const speed = segment.from + ((segment.to - segment.from) * k) / count;
    return { x: speed, y: forceAt(segment, speed) };
  });
}

function forcePoints(context: DrawingContext, { answers }: Going): readonly ChartPoint[] {
  const { top, forces } = answers.launch;
  if (top.limitedBy === 'no-launch') return [];
  const resistance = forces.rolling + forces.climb + forces.air * top.speed ** 2;
  return [
    {
      at: { x: top.speed, y: resistance },
      label: `top speed ${printed(context, top.speed, 'speed')}`,
      accent: true,
    },
  ];
}

/** Where the clutch slips or the belt bites, and where the belt shifts. */
function phaseBands(segments: readonly DriveSegment[]): readonly ChartBand[] {
  const names = { slip: 'clutch slips', bite: 'belt bites', shift: 'belt shifts' } as const;
  return (['slip', 'bite', 'shift'] as const).flatMap((phase) => {
    const own = segments.filter((one) => one.phase === phase);
    if (own.length === 0) return [];
    const [from, to] = [Math.min(...own.map((one) => one.from)), Math.max(...own.map((one) => one.to))];
    return [{ from, to, label: names[phase] }];
  });
}

/** Speed and distance over time, side by side; none where it does not move off. */
export function runCharts(context: DrawingContext, { ride, answers }: Going): readonly Block[] {
  const { launch, onHill } = answers;
  if (!(launch.end.time > 0)) return [];
  const time = {
    name: 'Time',
    scales: axisScales.time(),
    from: 0,
    to: niceEnd(
      Math.max(launch.end.time, Math.min(onHill?.end.time ?? 0, HILL_RUN * launch.end.time)),
      axisScales.time()[0],
    ),
  };
  const runs: readonly (readonly [Launch, string, ChartLine])[] = [
    [launch, 'level', 'solid'],
    ...(onHill ? [[onHill, `${gradeText(ride.use.grade)} hill`, 'dashed'] as const] : []),
  ];
  const curves = (of: 'speed' | 'distance'): readonly ChartCurve[] =>
    runs.map(([run, label, look]) => ({
      points: run.trace.map((point) => ({ x: point.time, y: point[of] })),
      line: look,
      label,
      labelAt: 0.7,
    }));
  const most = (of: 'speed' | 'distance'): number =>
    Math.max(...runs.flatMap(([run]) => run.trace.filter((p) => p.time <= time.to).map((p) => p[of])));
  const { lockUp, end } = launch;
  const points: readonly ChartPoint[] = [
    { at: { x: end.time, y: end.speed }, label: 'top speed', accent: true },
    ...(lockUp
      ? [
          {
            at: { x: lockUp.time, y: lockUp.speed },
            label: ride.launch.drive.clutch ? 'clutch locks' : 'belt grips',
          },
        ]
      : []),
  ];
  const [speeds, ways] = [axisScales.speed(context), axisScales.distance(context)];
  const draw = (area: PaperRect): readonly SheetItem[] => {
    const middle = (area.left + area.right) / 2;
    return [
      ...chart({
        area: { ...area, right: middle - 3 },
        x: time,
        y: { name: 'Speed', scales: speeds, from: 0, to: niceEnd(most('speed') * 1.1, speeds[0]) },
        curves: curves('speed'),
        points,
      }),
      ...chart({
        area: { ...area, left: middle + 3 },
        x: time,
        y: { name: 'Distance', scales: ways, from: 0, to: niceEnd(most('distance') * 1.05, ways[0]) },
        curves: curves('distance'),
      }),
    ];
  };
  return [{ kind: 'drawing', height: 66, draw }];
}
