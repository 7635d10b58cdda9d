import { DROP_HEIGHT, type SprungEnd, type SuspensionOfBuild } from '../../../ride/index.ts';
import type { Block } from '../../bookPages.ts';
import { type DrawingContext, inLine } from '../context.ts';
import { printed } from '../rideWords.ts';

const BY: Readonly<Record<SprungEnd['by'], string>> = {
  fork: 'fork springs',
  'fork-by-sag': 'fork springs, rate from their sag',
  tire: 'the tire alone',
};

/** Sag, travel, bottoming and frequencies of both ends. */
export function suspensionBlocks(context: DrawingContext, suspension: SuspensionOfBuild): readonly Block[] {
  const { front, rear, bouncePitch, seat, drop } = suspension;
  const hertz = (value: number): string => `${value.toFixed(1)} Hz`;
  const [slow, fast] = bouncePitch.frequencies;
  const row = (what: string, of: (end: SprungEnd) => string): readonly string[] => [
    what,
    of(front),
    of(rear),
  ];
  return [
    { kind: 'heading', text: 'Springs', level: 2 },
    {
      kind: 'paragraph',
      text: 'Springs are taken as straight, without damping or friction, with the rider on; where an end has no springs its tire acts, at the middle of what is usual for small tires. A real tire may be half as stiff again or a third softer.',
      size: 2.8,
    },
    {
      kind: 'table',
      columns: [{ title: '' }, { title: 'Front' }, { title: 'Rear' }],
      rows: [
        row('Sprung by', ({ by }) => BY[by]),
        row('Load on it at rest', ({ end }) => printed(context, end.load, 'force')),
        row('Rate at the wheel, upright', ({ end }) => printed(context, end.wheelRate, 'stiffness')),
        row('Sag with the rider on', ({ result }) => inLine(context, result.sag)),
        row('Travel at the wheel', ({ end }) =>
          end.travel === undefined ? '–' : inLine(context, end.travel),
        ),
        row('Sag of travel', ({ result }) =>
          result.sagShare === undefined ? '–' : `${(100 * result.sagShare).toFixed(0)} %`,
        ),
        row('Bottoms at this many times the load at rest', ({ result }) =>
          result.bottomsAt === undefined ? '–' : result.bottomsAt.toFixed(1),
        ),
        row('Bump case', ({ bump }) =>
          bump === undefined
            ? '–'
            : `${bump.factor.toFixed(0)} times the load: ${bump.bottoms ? 'bottoms' : 'travel is left'}`,
        ),
        row('Natural frequency', ({ result }) => hertz(result.frequency)),
      ],
    },
    {
      kind: 'table',
      columns: [{ title: 'Whole bike' }, { title: 'Value' }],
      rows: [
        ['Slower of bounce and pitch', hertz(slow)],
        ['Faster of bounce and pitch', hertz(fast)],
        [
          `Dropped on both wheels from ${inLine(context, DROP_HEIGHT, 1)}, springs that never bottom`,
          `${drop.factor.toFixed(1)} times its weight, ${inLine(context, drop.compression, 1)} of compression`,
        ],
        ...(seat ? [['Seat springs', `sag ${inLine(context, seat.sag, 1)}, ${hertz(seat.frequency)}`]] : []),
      ],
    },
  ];
}
