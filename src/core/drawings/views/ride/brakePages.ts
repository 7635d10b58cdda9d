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
import { niceEnd } from '../../chartAxis.ts';
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

/** Rear over front force: the curve that uses both tires alike, and the line that this bike's brakes follow. */
function distributionChart(context: DrawingContext, { input, braking }: BrakingOfBuild): Block {
  const { bike, friction } = input;
  const ideal = idealDistribution(bike);
  const [none, full] = realDistribution(input);
  const share = braking.frontShare;
  const locks =
    share === undefined || share >= 1 || share <= 0 ? undefined : lockPoints(bike, share, friction);
  const first = locks && (locks.first === 'front' ? locks.front : locks.rear);
  const on = (pull: number): { x: number; y: number } => ({
    x: (share ?? 0) * pull,
    y: (1 - (share ?? 0)) * pull,
  });
  const flat = (points: readonly { readonly front: number; readonly rear: number }[]) =>
    points.map(({ front, rear }) => ({ x: front, y: rear }));
  const brakes = full !== undefined && full.front + full.rear > 0;
  const lift = ideal.at(-1);
  const curves: readonly ChartCurve[] = [
    { points: flat(ideal), line: 'solid', label: 'ideal: both tires alike', labelAt: 0.45 },
    ...(brakes && none
      ? [{ points: flat([none, full]), line: 'dashed' as const, label: 'this bike', labelAt: 0.5 }]
      : []),
    ...(first !== undefined && brakes && first > full.front + full.rear
      ? [
          {
            points: [...flat([full]), on(first)],
            line: 'dash-dot' as const,
            label: 'pulled harder',
            labelAt: 0.5,
          },
        ]
      : []),
    ...PULLS.map(
      (pull): ChartCurve => ({
        points: [
          { x: 0, y: pull },
          { x: pull, y: 0 },
        ],
        line: 'faint',
        label: `${pull.toFixed(1)} g`,
        labelAt: 0.95,
      }),
    ),
  ];
  const points: readonly ChartPoint[] = [
    ...(lift ? [{ at: { x: lift.front, y: lift.rear }, label: 'rear wheel lifts' }] : []),
    ...(first !== undefined && locks
      ? [{ at: on(first), label: `${locks.first} wheel locks at ${first.toFixed(2)} g`, accent: true }]
      : []),
    ...(brakes ? [{ at: { x: full.front, y: full.rear }, label: controlWords(context, input) }] : []),
  ];
  const xs = [...ideal.map((p) => p.front), ...points.map((p) => p.at.x)];
  const ys = [...ideal.map((p) => p.rear), ...points.map((p) => p.at.y)];
  const scales = axisScales.share();
  return {
    kind: 'drawing',
    height: 92,
    draw: (area) =>
      chart({
        area,
        x: {
          name: 'Front brake force over weight',
          scales,
          from: 0,
          to: niceEnd(1.1 * Math.max(...xs), scales[0]),
        },
        y: {
          name: 'Rear brake force over weight',
          scales,
          from: 0,
          to: niceEnd(1.15 * Math.max(...ys), scales[0]),
        },
        curves,
        points,
      }),
  };
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
