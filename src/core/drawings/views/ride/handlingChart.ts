import type { Point } from '../../../geometry/index.ts';
import type { EigenvaluesAtSpeed, Riding } from '../../../ride/index.ts';
import type { Block } from '../../bookPages.ts';
import { type ChartCurve, type ChartPoint, chart } from '../../chart.ts';
import { niceEnd } from '../../chartAxis.ts';
import type { DrawingContext } from '../context.ts';
import { axisScales, printed } from '../rideWords.ts';

export type HandlingPart = NonNullable<Riding['handling']>;

/** The picture reaches no deeper than this many times its height: castering dies away far below. */
const DEEPEST = 1.6;

/** Roots of one speed, sorted into those that swing and those that do not. */
interface Roots {
  readonly speed: number;
  /** Real roots, the largest first. */
  readonly reals: readonly number[];
  /** Re and Im > 0 of each swinging pair. */
  readonly pairs: readonly (readonly [number, number])[];
}

/** A run of speeds over which as many pairs swing. */
type Regime = readonly [Roots, ...Roots[]];

/** Real parts solid and imaginary parts dashed, over the speeds that the bike reaches. */
export function eigenvalueChart(context: DrawingContext, { handling, curve }: HandlingPart): Block {
  const regimes = regimesOf(curve);
  const curves = [...regimes.flatMap((regime, i) => regimeCurves(regimes, regime, i))];
  const fastest = curve.at(-1)?.speed ?? 1;
  const rates = axisScales.rate();
  const values = curve.flatMap(({ eigenvalues }) => eigenvalues.flat());
  const most = niceEnd(Math.max(1, ...values) * 1.05, rates[0], 5);
  const least = niceEnd(Math.max(Math.min(-1, ...values) * 1.05, -DEEPEST * most), rates[0], 5);
  const { weave, capsize, selfStable } = handling.speeds;
  const [range] = selfStable;
  const points: readonly ChartPoint[] = [
    ...(weave === undefined
      ? []
      : [{ at: { x: weave, y: 0 }, label: `weave ${printed(context, weave, 'speed')}`, accent: true }]),
    ...(capsize === undefined
      ? []
      : [{ at: { x: capsize, y: 0 }, label: `capsize ${printed(context, capsize, 'speed')}`, accent: true }]),
  ];
  return {
    kind: 'drawing',
    height: 96,
    draw: (area) =>
      chart({
        area,
        x: { name: 'Road speed', scales: axisScales.speed(context), from: 0, to: fastest },
        y: {
          name: 'Eigenvalues: real part below 0 dies away, above 0 grows',
          scales: rates,
          from: least,
          to: most,
        },
        curves,
        points,
        bands: range ? [{ from: range.from, to: range.to ?? fastest, label: 'self-stable' }] : [],
      }),
  };
}

function regimesOf(curve: readonly EigenvaluesAtSpeed[]): readonly Regime[] {
  const regimes: [Roots, ...Roots[]][] = [];
  for (const { speed, eigenvalues } of curve) {
    const roots: Roots = {
      speed,
      reals: eigenvalues
        .filter(([, im]) => im === 0)
        .map(([re]) => re)
        .sort((a, b) => b - a),
      pairs: eigenvalues.filter(([, im]) => im > 0),
    };
    const last = regimes.at(-1);
    if (last && last[0].pairs.length === roots.pairs.length) last.push(roots);
    else regimes.push([roots]);
  }
  return regimes;
}

function regimeCurves(regimes: readonly Regime[], regime: Regime, index: number): readonly ChartCurve[] {
  const [first] = regime;
  const isLast = index === regimes.length - 1;
  const joins = [meetingOf(regimes[index - 1], regime), meetingOf(regime, regimes[index + 1])] as const;
  const reals = first.reals.map(
    (_, rank): ChartCurve => ({
      points: joined(
        [
          ...carriedOver(regimes[index - 1], regime, rank, joins[0]),
          ...regime.map(({ speed, reals: own }) => ({ x: speed, y: own[rank]! })),
        ],
        joins,
        (meeting) => meeting.swings !== regime && meeting.ranks.includes(rank),
      ),
      line: 'fine',
      ...realLabel(regimes, regime, rank),
    }),
  );
  const isOwn = (meeting: Meeting, rank: number): boolean =>
    meeting.swings === regime && meeting.pair === rank;
  const still = joins.map((meeting) => meeting && { ...meeting, at: { ...meeting.at, y: 0 } });
  const pairs = first.pairs.flatMap((_, rank): ChartCurve[] => [
    {
      points: joined(
        regime.map(({ speed, pairs: own }) => ({ x: speed, y: own[rank]![0] })),
        joins,
        (meeting) => isOwn(meeting, rank),
      ),
      line: 'solid',
      ...(isLast ? { label: 'weave, real part', labelAt: 0.6 } : {}),
    },
    {
      points: joined(
        regime.map(({ speed, pairs: own }) => ({ x: speed, y: own[rank]![1] })),
        still,
        (meeting) => isOwn(meeting, rank),
      ),
      line: 'dashed',
      ...(isLast ? { label: 'weave, imaginary part: 2π times swings a second', labelAt: 0.6 } : {}),
    },
  ]);
  return [...reals, ...pairs];
}

/** Of the two real roots beside one pair the larger is capsize; castering is named where it has not yet left the picture. */
function realLabel(
  regimes: readonly Regime[],
  regime: Regime,
  rank: number,
): Pick<ChartCurve, 'label' | 'labelAt'> {
  const single = regimes.filter(([roots]) => roots.pairs.length === 1);
  if (rank === 0 && regime === single.at(-1)) return { label: 'capsize, real', labelAt: 0.75 };
  if (rank === 1 && regime === single[0]) return { label: 'castering, real', labelAt: 0.5 };
  return {};
}

/** The last point of the same real root in the regime before, for one that takes no part in the meeting between them. */
function carriedOver(
  last: Regime | undefined,
  regime: Regime,
  rank: number,
  meeting: Meeting | undefined,
): readonly Point[] {
  const roots = last?.at(-1);
  if (!roots || !meeting) return [];
  const idle = (reals: readonly number[], has: boolean): readonly number[] =>
    reals.map((_, i) => i).filter((i) => !(has && meeting.ranks.includes(i)));
  const here = meeting.swings === regime;
  const place = idle(regime[0].reals, !here).indexOf(rank);
  const same = idle(roots.reals, here)[place];
  return place < 0 || same === undefined ? [] : [{ x: roots.speed, y: roots.reals[same]! }];
}

/** Where two real roots and a pair run into each other between two regimes. */
interface Meeting {
  readonly at: Point;
  /** Ranks of the two real roots in the regime that has them, and of the pair in the other. */
  readonly ranks: readonly number[];
  readonly pair: number;
  /** Which regime has the pair. */
  readonly swings: Regime;
}

function meetingOf(before: Regime | undefined, after: Regime | undefined): Meeting | undefined {
  const [left, right] = [before?.at(-1), after?.[0]];
  if (!left || !right) return undefined;
  const [few, many] = left.pairs.length < right.pairs.length ? [left, right] : [right, left];
  if (many.pairs.length - few.pairs.length !== 1) return undefined;
  // The pair that is new lies nearest to two neighboring real roots.
  const options = many.pairs.flatMap(([re], pair) =>
    few.reals.slice(1).map((lower, rank) => ({
      pair,
      ranks: [rank, rank + 1],
      re,
      far: Math.abs((few.reals[rank]! + lower) / 2 - re) + Math.abs(few.reals[rank]! - lower),
    })),
  );
  const [best] = options.sort((a, b) => a.far - b.far);
  const swings = many === left ? before : after;
  if (!best || !swings) return undefined;
  const at = { x: (left.speed + right.speed) / 2, y: best.re };
  return { at, ranks: best.ranks, pair: best.pair, swings };
}

function joined(
  points: readonly Point[],
  [start, end]: readonly (Meeting | undefined)[],
  isPart: (meeting: Meeting) => boolean,
): readonly Point[] {
  return [...(start && isPart(start) ? [start.at] : []), ...points, ...(end && isPart(end) ? [end.at] : [])];
}
