import { describeIssue } from '../../quantity/index.ts';
import type { Riding } from '../../ride/index.ts';
import { type DraftSheet, flowPages } from '../bookPages.ts';
import { paper } from '../paper.ts';
import type { DrawingContext } from './context.ts';
import { brakePages } from './ride/brakePages.ts';
import { fitPages } from './ride/fitPages.ts';
import { gearingPages } from './ride/gearingPages.ts';
import { goingPages } from './ride/goingPages.ts';
import { handlingPages } from './ride/handlingPages.ts';

/** How the bike rides: pull and speed, gearing, brakes, handling and springs, fit of riders. What could not be worked out says why. */
export function rideSheets(context: DrawingContext, riding: Riding): readonly DraftSheet[] {
  const { going, gearing } = riding;
  return [
    ...(going ? goingPages(context, going) : missingPage(context, riding)),
    ...(gearing ? gearingPages(context, gearing) : []),
    ...brakePages(context, riding.braking),
    ...handlingPages(context, riding),
    ...fitPages(context, riding),
  ];
}

const missingPage = (context: DrawingContext, { issues }: Riding): readonly DraftSheet[] =>
  flowPages({
    id: 'ride-going',
    title: 'How it goes',
    paper: paper(context.paper, 'portrait'),
    blocks: [
      { kind: 'heading', text: 'How it goes', level: 1 },
      { kind: 'paragraph', text: 'Pull and speed could not be worked out:' },
      { kind: 'list', marker: 'bullet', items: issues.map((issue) => describeIssue(issue)) },
    ],
  });
