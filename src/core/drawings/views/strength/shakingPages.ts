import { movedText, type SlowStrength, type Strength, shakenRange } from '../../../strength/index.ts';
import { type Block, type DraftSheet, flowPages } from '../../bookPages.ts';
import { paper } from '../../paper.ts';
import type { TableCell } from '../../table.ts';
import type { DrawingContext } from '../context.ts';
import { printed } from '../rideWords.ts';
import { caseText } from './strengthWords.ts';

/** What shakes: natural frequencies of the frame against the engine's speeds, and its buckling as a whole. */
export function shakingPages(
  context: DrawingContext,
  strength: Strength,
  shaking: SlowStrength,
): readonly DraftSheet[] {
  const blocks: readonly Block[] = [
    { kind: 'heading', text: 'What shakes it, and what would buckle it', level: 1 },
    ...shaking.flaws.map((flaw): Block => ({ kind: 'paragraph', text: `Not worked out: ${flaw}.` })),
    ...frequencyBlocks(context, shaking),
    ...bucklingBlocks(strength, shaking),
  ];
  return flowPages({
    id: 'strength-shaking',
    title: 'What shakes it',
    paper: paper(context.paper, 'portrait'),
    blocks,
  });
}

function frequencyBlocks(context: DrawingContext, shaking: SlowStrength): readonly Block[] {
  const { frequencies } = shaking;
  if (frequencies.length === 0) return [];
  const speed = (value: number | undefined): TableCell =>
    value === undefined
      ? '–'
      : { text: printed(context, value, 'angularSpeed'), weight: 'bold', tone: 'accent' };
  return [
    { kind: 'paragraph', text: openingText(context, shaking) },
    {
      kind: 'table',
      columns: [
        { title: '', align: 'right' },
        { title: 'Frequency', align: 'right' },
        { title: 'What moves most' },
        { title: 'Fires at it at', align: 'right' },
        { title: 'Turns at it at', align: 'right' },
      ],
      rows: frequencies.map(({ angularFrequency, moved, driven }, i) => [
        `${i + 1}`,
        hertz(angularFrequency),
        movedText(moved),
        speed(driven.firing),
        speed(driven.turning),
      ]),
      size: 2.8,
    },
    {
      kind: 'paragraph',
      text: 'At a speed in the table the frame answers to the engine: expect buzz there in what moves most, loose fasteners and, over time, cracks. Lock what is bolted there, look at the welds nearby, and do not hold that speed for long. Whether it is felt depends on damping and on how hard the engine shakes, which are not known: a speed in the table is no fault, and none in it is no promise.',
    },
    {
      kind: 'paragraph',
      text: 'Worked out with everything on the bike but the rider, plates and engine as stiff bodies, both axles held: a real tire gives, and so do rubber mounts, which lowers what moves the whole bike.',
      size: 2.6,
      tone: 'muted',
    },
  ];
}

const hertz = (angularFrequency: number): string => `${(angularFrequency / (2 * Math.PI)).toFixed(1)} Hz`;

function openingText(
  context: DrawingContext,
  { frequencies, engine }: Pick<SlowStrength, 'engine' | 'frequencies'>,
): string {
  const start = `The first ${frequencies.length} natural frequencies of the frame.`;
  if (!engine) return `${start} The build file tells no speed of the engine to compare them with.`;
  const driven = frequencies.filter(({ driven: { firing, turning } }) => (firing ?? turning) !== undefined);
  const [low, high] = shakenRange(engine);
  const fires = engine.fires
    ? 'A four-stroke single fires once in two turns and shakes once a turn'
    : 'A motor shakes once a turn';
  const idle = engine.isIdleGiven ? 'idle' : 'idle, taken as 0.4 of the governed speed by common practice,';
  const from = engine.fires ? `from ${idle} ${printed(context, engine.idle, 'angularSpeed')}` : 'from rest';
  return `${start} ${fires}: ${from} to ${printed(context, engine.governed, 'angularSpeed')} that is ${hertz(low)} to ${hertz(high)}. ${countText(driven.length, frequencies.length)} at some speed of the engine.`;
}

const countText = (count: number, of: number): string =>
  count === 0 ? `None of the ${of} is driven` : `${count} of the ${of} ${count === 1 ? 'is' : 'are'} driven`;

function bucklingBlocks({ cases }: Strength, { buckling }: SlowStrength): readonly Block[] {
  if (!buckling) return [];
  return [
    { kind: 'heading', text: 'Buckling of the whole frame', level: 2 },
    {
      kind: 'paragraph',
      text: `All loads of the case "${caseText(cases, buckling.case)}" would have to grow ${Number(buckling.factor.toPrecision(2))} times before the frame buckles as a whole, most at: ${movedText(buckling.moved)}. By the linear theory, which knows no crooked tubes and no yielding: a real frame gives way earlier, mostly because its tubes yield first, as the table of uses tells. Of all cases those three with the largest push were tried.`,
    },
  ];
}
