import type { Point } from '../../../geometry/index.ts';
import {
  type BrakeLimit,
  type BrakingOfBuild,
  type DiscHeat,
  idealDistribution,
  lockPoints,
  realDistribution,
  STANDARD_GRAVITY,
} from '../../../ride/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { type ChartCurve, type ChartPoint, chart } from '../../chart.ts';
import { type ChartAxis, niceEnd } from '../../chartAxis.ts';
import { paper } from '../../paper.ts';
import type { DrawingContext } from '../context.ts';
import { axisScales, printed, pullShare, pullText, riseText, wayText } from '../rideWords.ts';

const LIMITS: Readonly<Record<BrakeLimit, string>> = {
  hand: 'the force on the control',
  'front-locks': 'front wheel locks',
  'rear-locks': 'rear wheel locks',
  'both-lock': 'both wheels lock',
  lift: 'rear wheel lifts',
};
/** Decelerations drawn as slanting lines, in g. */
const PULLS = [0.2, 0.4, 0.6, 0.8, 1];

/** Distribution, stops, published figures beside them, heat. */
export function brakePages(context: DrawingContext, braking: BrakingOfBuild): readonly DraftSheet[] {
  const { input } = braking;
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'Brakes', level: 1 },
    {
      kind: 'paragraph',
      text: `From ${printed(context, input.speed, 'speed')} on a dry road, friction ${input.friction.toFixed(1)} of tire on road, ${input.reaction.toFixed(1)} s before the brakes bite; pads at the middle of their range. A worn, wet or hot brake does less.`,
      size: 2.8,
    },
    distributionChart(context, braking),
    ...stopTable(context, braking),
    ...gainTable(context, braking),
    ...referenceBlocks(context, braking),
    ...heatBlocks(context, braking),
  ];
  return flowPages({
    id: 'ride-brakes',
    title: 'Brakes',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

type Share = { readonly front: number; readonly rear: number };

const placeOf = ({ front, rear }: Share): Point => ({ x: front, y: rear });

/** Rear over front force: the curve that uses both tires alike, and the line that this bike's brakes follow. */
function distributionChart(context: DrawingContext, braking: BrakingOfBuild): Block {
  const ideal = idealDistribution(braking.input.bike).map(placeOf);
  const own = ownLine(context, braking);
  const lift = ideal.at(-1);
  const points: readonly ChartPoint[] = [
    ...(lift ? [{ at: lift, label: 'rear wheel lifts' }] : []),
    ...own.points,
  ];
  const pulls = PULLS.map(
    (pull): ChartCurve => ({
      points: [
        { x: 0, y: pull },
        { x: pull, y: 0 },
      ],
      line: 'faint',
      label: `${pull.toFixed(1)} g`,
      labelAt: 0.95,
    }),
  );
  const curves: readonly ChartCurve[] = [
    { points: ideal, line: 'solid', label: 'ideal: both tires alike', labelAt: 0.45 },
    ...own.curves,
    ...pulls,
  ];
  const scales = axisScales.share();
  const shown = [...ideal, ...points.map(({ at }) => at)];
  const axis = (name: string, of: 'x' | 'y'): ChartAxis => ({
    name,
    scales,
    from: 0,
    to: niceEnd(1.12 * Math.max(0, ...shown.map((at) => at[of])), scales[0]),
  });
  const [x, y] = [axis('Front brake force over weight', 'x'), axis('Rear brake force over weight', 'y')];
  return { kind: 'drawing', height: 92, draw: (area) => chart({ area, x, y, curves, points }) };
}

/** Both controls pulled alike, to their force and on to the first wheel that locks; past that the line no longer holds. */
function ownLine(
  context: DrawingContext,
  { input, braking }: BrakingOfBuild,
): { readonly curves: readonly ChartCurve[]; readonly points: readonly ChartPoint[] } {
  const line = realDistribution(input);
  const full = line.at(-1);
  if (!full || full.front + full.rear === 0) return { curves: [], points: [] };
  const curves: ChartCurve[] = [
    { points: line.map(placeOf), line: 'dashed', label: 'this bike', labelAt: 0.5 },
  ];
  const points: ChartPoint[] = [{ at: placeOf(full), label: controlWords(context, input) }];
  const { frontShare: share } = braking;
  if (share === undefined || share <= 0 || share >= 1) return { curves, points };
  const locks = lockPoints(input.bike, share, input.friction);
  const pull = locks.first === 'front' ? locks.front : locks.rear;
  if (pull === undefined) return { curves, points };
  const at = placeOf({ front: share * pull, rear: (1 - share) * pull });
  points.unshift({ at, label: `${locks.first} wheel locks at ${pull.toFixed(2)} g`, accent: true });
  if (pull > full.front + full.rear)
    curves.push({ points: [placeOf(full), at], line: 'dash-dot', label: 'pulled harder', labelAt: 0.5 });
  return { curves, points };
}

function controlWords(context: DrawingContext, { front, rear }: BrakingOfBuild['input']): string {
  const force = (value: number): string => printed(context, value, 'force');
  if (front && rear && front.control === rear.control) return `${force(front.control)} on each control`;
  return [front && `front ${force(front.control)}`, rear && `rear ${force(rear.control)}`]
    .filter(Boolean)
    .join(', ');
}

function stopTable(context: DrawingContext, { input, braking }: BrakingOfBuild): readonly Block[] {
  if (braking.stops.length === 0)
    return [
      {
        kind: 'paragraph',
        text: 'Neither brake is known well enough for a stop to be worked out.',
        weight: 'bold',
      },
    ];
  const control = input.front?.control ?? input.rear?.control ?? 0;
  return [
    {
      kind: 'table',
      columns: [
        { title: `Stop with ${printed(context, control, 'force')} on the control` },
        { title: 'Deceleration' },
        { title: 'Ended by' },
        { title: 'Distance with reaction', align: 'right' },
      ],
      rows: braking.stops.map((stop) => [
        stop.with === 'both' ? 'both brakes' : `${stop.with} brake alone`,
        pullText(context, stop.deceleration, STANDARD_GRAVITY),
        LIMITS[stop.limitedBy],
        stop.distance === undefined ? '–' : wayText(context, stop.distance),
      ]),
    },
  ];
}

function gainTable(context: DrawingContext, { front, rear, braking }: BrakingOfBuild): readonly Block[] {
  const ends = [
    {
      name: 'Front',
      brake: front,
      lock: braking.frontLock,
      does: braking.frontLock?.by === 'lift' ? 'lifts the rear at' : 'locks at',
    },
    { name: 'Rear', brake: rear, lock: braking.rearLock, does: 'locks at' },
  ];
  return [
    {
      kind: 'table',
      columns: [
        { title: 'Brake' },
        { title: 'Kind' },
        { title: 'Force at the ground over force on the control: worst pads, usual, best' },
        { title: 'Alone, on the control' },
      ],
      rows: ends.map(({ name, brake, lock, does }) => [
        name,
        brake.known ? brake.chain.kind : 'not known',
        brake.known
          ? [brake.gain.low, brake.gain.usual, brake.gain.high].map((gain) => gain.toFixed(1)).join(', ')
          : `not told: ${brake.missing.join(', ')}`,
        lock ? `${does} ${printed(context, lock.control, 'force')}` : '–',
      ]),
    },
  ];
}

function referenceBlocks(context: DrawingContext, { braking }: BrakingOfBuild): readonly Block[] {
  if (braking.reference.length === 0) return [];
  return [
    { kind: 'heading', text: 'Published figures, for reference only', level: 3 },
    {
      kind: 'paragraph',
      text: 'From an old directive for road vehicles; reaching a figure on paper approves nothing. Distances hold the directive’s own delay.',
      size: 2.8,
    },
    {
      kind: 'table',
      columns: [
        { title: 'Figure' },
        { title: 'Brake' },
        { title: 'From', align: 'right' },
        { title: 'Asked', align: 'right' },
        { title: 'Here', align: 'right' },
        { title: 'Allowed', align: 'right' },
        { title: 'Here', align: 'right' },
        { title: 'Reached' },
      ],
      rows: braking.reference.map((row) => [
        row.figure.vehicle,
        row.with,
        printed(context, row.figure.testSpeed, 'speed', 1),
        pullShare(row.figure.deceleration, STANDARD_GRAVITY),
        pullShare(row.deceleration, STANDARD_GRAVITY),
        wayText(context, row.allowed),
        wayText(context, row.distance),
        row.reaches ? 'yes' : { text: 'no', weight: 'bold' as const },
      ]),
      size: 2.5,
    },
  ];
}

function heatBlocks(
  context: DrawingContext,
  { frontHeat, rearHeat, interval, input }: BrakingOfBuild,
): readonly Block[] {
  const discs = (
    [
      ['Front disc', frontHeat],
      ['Rear disc', rearHeat],
    ] as const
  ).filter((one): one is readonly ['Front disc' | 'Rear disc', DiscHeat] => one[1] !== undefined);
  if (discs.length === 0) return [];
  const stops = Math.max(...discs.map(([, heat]) => heat.after.length));
  return [
    {
      kind: 'table',
      columns: [
        {
          title: `Disc, stops from ${printed(context, input.speed, 'speed')} every ${interval.toFixed(0)} s`,
        },
        { title: 'One stop', align: 'right' },
        { title: `After ${stops}`, align: 'right' },
        { title: 'After very many', align: 'right' },
      ],
      rows: discs.map(([name, heat]) => [
        `${name}, hotter than the air by`,
        riseText(context, heat.rise),
        riseText(context, heat.after.at(-1) ?? heat.rise),
        heat.limit === undefined ? 'no end' : riseText(context, heat.limit),
      ]),
    },
  ];
}
