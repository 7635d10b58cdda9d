import type { Point } from '../../../geometry/index.ts';
import { type DriveSegment, forceAt, type Launch, type Riding, roadForces } from '../../../ride/index.ts';
import type { Block } from '../../bookPages.ts';
import { type ChartBand, type ChartCurve, type ChartLine, type ChartPoint, chart } from '../../chart.ts';
import { type ChartAxis, niceEnd } from '../../chartAxis.ts';
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
  const { path, forces } = going.answers.launch;
  const force = path.segments.flatMap(segmentPoints);
  const most = Math.max(forces.rolling, ...force.map((p) => p.y));
  const [speeds, pulls] = [axisScales.speed(context), axisScales.force(context)];
  const fastest = niceEnd(path.highest * 1.12, speeds[0]);
  const end = force.at(-1);
  const pull: ChartCurve = {
    points: end ? [...force, { x: end.x, y: 0 }] : force,
    line: 'solid',
    label: 'pull at full throttle',
    labelAt: 0.25,
  };
  return {
    kind: 'drawing',
    height: 100,
    draw: (area) =>
      chart({
        area,
        x: { name: 'Road speed', scales: speeds, from: 0, to: fastest },
        y: { name: 'Force at the rear tire', scales: pulls, from: 0, to: niceEnd(most * 1.1, pulls[0]) },
        curves: [pull, ...resistances(going, fastest, most)],
        points: forcePoints(context, going),
        bands: phaseBands(path.segments),
      }),
  };
}

/** What the level and each hill that the pull overcomes ask. */
function resistances({ ride }: Going, fastest: number, most: number): readonly ChartCurve[] {
  const ofUse = ride.use.grade;
  return [...new Set([...GRADES, ofUse])]
    .sort((a, b) => a - b)
    .map((grade) => ({ grade, forces: roadForces({ ...ride.launch.road, grade }) }))
    .filter(({ grade, forces }) => grade === 0 || forces.rolling + forces.climb < most)
    .map(({ grade, forces }): ChartCurve => {
      const at = (k: number): Point => {
        const speed = (fastest * k) / SAMPLES;
        return { x: speed, y: forces.rolling + forces.climb + forces.air * speed * speed };
      };
      const percent = gradeText(grade);
      return {
        points: Array.from({ length: SAMPLES + 1 }, (_, k) => at(k)),
        line: resistanceLine(grade, ofUse),
        label: grade === 0 ? 'level' : grade === ofUse ? `${percent}, hill of the use` : percent,
        labelAt: 0.97,
      };
    });
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

interface Run {
  readonly launch: Launch;
  readonly label: string;
  readonly line: ChartLine;
}

type Course = 'speed' | 'distance';

/** Speed and distance over time, side by side; none where it does not move off. */
export function runCharts(context: DrawingContext, going: Going): readonly Block[] {
  const { launch, onHill } = going.answers;
  if (!(launch.end.time > 0)) return [];
  const scales = axisScales.time();
  const longest = Math.max(launch.end.time, Math.min(onHill?.end.time ?? 0, HILL_RUN * launch.end.time));
  const time: ChartAxis = { name: 'Time', scales, from: 0, to: niceEnd(longest, scales[0]) };
  const runs: readonly Run[] = [
    { launch, label: 'level', line: 'solid' },
    ...(onHill
      ? [{ launch: onHill, label: `${gradeText(going.ride.use.grade)} hill`, line: 'dashed' as const }]
      : []),
  ];
  const draw = (area: PaperRect): readonly SheetItem[] => {
    const middle = (area.left + area.right) / 2;
    return [
      ...chart({
        area: { ...area, right: middle - 3 },
        x: time,
        y: courseAxis('Speed', runs, 'speed', time.to, axisScales.speed(context)),
        curves: courseCurves(runs, 'speed'),
        points: runPoints(going),
      }),
      ...chart({
        area: { ...area, left: middle + 3 },
        x: time,
        y: courseAxis('Distance', runs, 'distance', time.to, axisScales.distance(context)),
        curves: courseCurves(runs, 'distance'),
      }),
    ];
  };
  return [{ kind: 'drawing', height: 66, draw }];
}

const courseCurves = (runs: readonly Run[], of: Course): readonly ChartCurve[] =>
  runs.map(({ launch, label, line }) => ({
    points: launch.trace.map((point) => ({ x: point.time, y: point[of] })),
    line,
    label,
    labelAt: 0.7,
  }));

/** Covers what the runs reach in the time that is shown. */
function courseAxis(
  name: string,
  runs: readonly Run[],
  of: Course,
  until: number,
  scales: ChartAxis['scales'],
): ChartAxis {
  const values = runs.flatMap(({ launch }) =>
    launch.trace.filter((point) => point.time <= until).map((point) => point[of]),
  );
  return { name, scales, from: 0, to: niceEnd(1.08 * Math.max(0, ...values), scales[0]) };
}

function runPoints({ ride, answers }: Going): readonly ChartPoint[] {
  const { lockUp, end } = answers.launch;
  return [
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
}
