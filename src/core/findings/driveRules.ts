import type { Build } from '../build/index.ts';
import type {
  ChainCaution,
  DrivelineSolution,
  SolvedBelt,
  SolvedChain,
  TensionProblem,
} from '../driveline/index.ts';
import { describeIssue } from '../quantity/index.ts';
import type { Finding, Severity } from './finding.ts';
import { say, sayFine, sayLength, sayList } from './words.ts';

/** Wrap that a belt or a chain with good tension can do with [rad]. */
const LEAST_WRAP = (120 * Math.PI) / 180;

export function driveFindings(build: Build, drives: DrivelineSolution): readonly Finding[] {
  return [
    ...drives.issues.map(
      (issue, i): Finding => ({
        id: `driveline.issue:${i}`,
        severity: 'stop',
        question: 'together',
        part: 'driveline',
        path: 'driveline',
        what: `The drives cannot be set: ${describeIssue(issue)}.`,
        why: 'Without it neither link counts nor slots can be worked out.',
        source: { key: 'derived', where: 'coupled length equations' },
      }),
    ),
    ...drives.problems.map((problem) => problemFinding(problem, drives)),
    ...Object.values(drives.chains).flatMap((chain) => withPath(build, chain.stage.id, chainFindings(chain))),
    ...Object.values(drives.belts).flatMap((belt) => withPath(build, belt.stage.id, beltFindings(belt))),
    ...launchFindings(build),
  ];
}

/** Findings of a drive lead to its stage in the file, where a rule names no other place. */
function withPath(build: Build, drive: string, findings: readonly Finding[]): readonly Finding[] {
  const at = build.driveline.stages.findIndex((stage) => stage.id === drive);
  return findings.map((finding) => ({ path: `driveline.stages[${at}]`, ...finding }));
}

function problemFinding(problem: TensionProblem, drives: DrivelineSolution): Finding {
  const drive = 'drive' in problem ? problem.drive : 'driveline';
  const base = {
    id: `tension.${problem.code}:${drive}${'at' in problem ? `:${problem.at}` : ''}`,
    severity: 'stop' as const,
    question: 'together' as const,
    part: drive,
    path: 'driveline.shafts',
    why: 'A chain or belt that cannot be set is either slack or too tight, and moving one shaft for one drive upsets the other.',
    source: { key: 'derived', where: 'coupled length equations' },
  };
  switch (problem.code) {
    case 'outside-travel': {
      const needed = drives.tension?.drives.find((one) => one.id === problem.drive)?.slotNeeded?.total;
      const states = { fitting: 'to put it on', fresh: 'when new', worn: 'when worn to its limit' };
      return {
        ...base,
        severity: problem.at === 'worn' ? 'caution' : 'stop',
        what: `Drive "${problem.drive}" needs shaft "${problem.slides}" ${sayLength(problem.short)} past the end of its slot ${states[problem.at]}.`,
        value: -problem.short,
        limit: 0,
        margin: -problem.short,
        kind: 'length',
        remedy: needed
          ? `Make the slot travel at least ${sayLength(needed)}, or choose teeth or center distance for a nearer link count.`
          : 'Make the slot longer.',
      };
    }
    case 'nothing-slides':
      return {
        ...base,
        what: `Nothing slides to set drive "${problem.drive}".`,
        remedy: 'Give one of its shafts a slide, or add a tensioner.',
      };
    case 'no-order':
      return {
        ...base,
        what: `Drives ${sayList(problem.drives)} cannot all be set: each needs a shaft of its own that slides.`,
        remedy: 'Give another shaft a slide.',
      };
    case 'order-disturbs':
      return {
        ...base,
        what: `Sliding "${problem.slides}" for drive "${problem.drive}" upsets ${sayList(problem.disturbs)}, set before it.`,
        remedy: 'Change which shaft slides for which drive (`adjust`).',
      };
    case 'order-moves-both-or-none':
      return {
        ...base,
        what: `Sliding "${problem.slides}" moves both ends of drive "${problem.drive}", or neither.`,
        remedy: 'Slide one end only.',
      };
    case 'shaft-slides-twice':
      return {
        ...base,
        what: `Shaft "${problem.slides}" is to slide for two drives; "${problem.drive}" cannot be set by it as well.`,
        remedy: 'Give another shaft a slide.',
      };
    case 'bolted-shaft':
      return {
        ...base,
        what: `Shaft "${problem.slides}" should slide for drive "${problem.drive}" but is bolted.`,
        remedy: 'Give it a slide.',
      };
    case 'drive-not-ordered':
      return {
        ...base,
        what: `Nothing says which shaft slides for drive "${problem.drive}".`,
        remedy: 'Name it with `adjust`.',
      };
    case 'no-length':
      return {
        ...base,
        what: `Drive "${problem.drive}" has no position at which its length is met.`,
        remedy: 'Another link count or belt length, or move a shaft.',
      };
    case 'never-slack':
      return {
        ...base,
        what: `Sliding "${problem.slides}" never slackens drive "${problem.drive}" enough to put it on.`,
        remedy: 'Slide along the line of centers.',
      };
  }
}

const CAUTION_TEXT: Readonly<
  Record<
    ChainCaution['code'],
    { severity: Severity; what: (c: ChainCaution) => string; why: string; remedy: string }
  >
> = {
  'sprockets-touch': {
    severity: 'stop',
    what: (c) =>
      `the sprockets would touch: center distance ${sayFine(c.value)}, at least ${sayFine(c.limit)}`,
    why: 'Teeth on teeth.',
    remedy: 'Move the shafts apart or take smaller sprockets.',
  },
  'few-teeth': {
    severity: 'note',
    what: (c) => `the small sprocket has ${c.value} teeth`,
    why: 'Under 17 teeth the chain runs rough and wears; 11 or more do in practice, 9 and 10 are put up with.',
    remedy: 'More teeth on both sprockets, if the ground allows.',
  },
  'many-teeth': {
    severity: 'caution',
    what: (c) => `the large sprocket has ${c.value} teeth`,
    why: 'A worn chain climbs a large sprocket.',
    remedy: 'Two stages.',
  },
  ratio: {
    severity: 'caution',
    what: (c) => `the ratio is ${c.value.toFixed(2)} to 1`,
    why: 'Beyond 7 to 1 the small sprocket has too little wrap.',
    remedy: 'Two stages.',
  },
  wrap: {
    severity: 'caution',
    what: (c) => `the small sprocket has ${say(c.value, 'angle')} of wrap`,
    why: 'With little wrap the chain jumps teeth; 90 degrees is the least, with good tension.',
    remedy: 'A longer center distance or an idler.',
  },
  'short-center': {
    severity: 'note',
    what: (c) => `center distance ${sayFine(c.value)} is under 30 pitches`,
    why: '30 to 50 pitches run best; about 20 is taken for pulsating drives.',
    remedy: 'None needed if the layout asks for it; watch wear.',
  },
  'long-center': {
    severity: 'note',
    what: (c) => `center distance ${sayFine(c.value)} is over 50 pitches`,
    why: 'A long run whips.',
    remedy: 'An idler or guide on the slack side.',
  },
  steep: {
    severity: 'caution',
    what: (c) => `the line of centers rises ${say(c.value, 'angle')}`,
    why: 'Over 60 degrees the slack leaves the lower sprocket.',
    remedy: 'A tensioner, and half the usual play.',
  },
  hunting: {
    severity: 'note',
    what: (c) => `teeth and links share the factor ${c.value}`,
    why: 'The same links meet the same teeth again and again, and wear unevenly.',
    remedy: 'An odd number of teeth with an even number of links.',
  },
  'offset-link': {
    severity: 'caution',
    what: () => 'the link count is odd, closed with an offset link',
    why: 'An offset link is weaker; makers ask for a quarter more chain.',
    remedy: 'An even count with a longer slot.',
  },
};

function chainFindings(chain: SolvedChain): Finding[] {
  const cautions = (chain.plan?.cautions ?? []).map((caution): Finding => {
    const text = CAUTION_TEXT[caution.code];
    return {
      id: `chain.${caution.code}:${chain.stage.id}`,
      severity: text.severity,
      question: caution.code === 'sprockets-touch' ? 'together' : 'ride',
      part: chain.stage.id,
      what: `Drive "${chain.stage.id}": ${text.what(caution)}.`,
      value: caution.value,
      limit: caution.limit,
      margin: caution.bound === 'min' ? caution.value - caution.limit : caution.limit - caution.value,
      kind: caution.kind,
      why: text.why,
      remedy: text.remedy,
      source: caution.source,
    };
  });
  return [...cautions, ...widthFindings(chain), ...slackFindings(chain)];
}

function widthFindings({ chain, stage }: SolvedChain): Finding[] {
  if (!chain.halfWidthEstimated) return [];
  return [
    {
      id: `chain.width:${stage.id}`,
      severity: 'note',
      question: 'together',
      part: stage.id,
      what: `Width over the pins of ${chain.name} is an estimate: ${sayLength(2 * chain.halfWidth)}.`,
      value: 2 * chain.halfWidth,
      kind: 'length',
      why: 'Room beside tire and tubes is reckoned with it.',
      remedy: 'Measure the joining link of the chain in hand.',
      source: chain.sources.width,
    },
  ];
}

/** Bare slots cannot set slack by hand: a thumb's half inch is less than a tenth of a millimeter of center distance. */
function slackFindings({ plan, tension, stage }: SolvedChain): Finding[] {
  if (!plan || !tension.slides || tension.slackTurns !== undefined) return [];
  const { slack } = plan;
  return [
    {
      id: `chain.pusher:${stage.id}`,
      severity: 'caution',
      question: 'make',
      part: stage.id,
      path: `driveline.shafts.${tension.slides}.slide.pusherPitch`,
      what: `The slot of "${tension.slides}" has no pusher screw: ${sayLength(0.0127)} of play on this run is only ${say(slack.centerChangeOfHalfInch, 'length', 0.01)} of center distance.`,
      value: slack.centerChangeOfHalfInch,
      kind: 'length',
      why: 'No hand can set that on a bare slot.',
      remedy: 'Add a pusher screw with a locknut and say its thread pitch.',
      source: { key: 'derived', where: 'a straight run pushed to a V' },
    },
  ];
}

function beltFindings(belt: SolvedBelt): Finding[] {
  const findings: Finding[] = [];
  const wrap = belt.low.wraps?.driver;
  if (wrap !== undefined && wrap < LEAST_WRAP) {
    findings.push({
      id: `belt.wrap:${belt.stage.id}`,
      severity: 'caution',
      question: 'ride',
      part: belt.stage.id,
      what: `At launch the belt wraps the driver by ${say(wrap, 'angle')} only.`,
      value: wrap,
      limit: LEAST_WRAP,
      margin: wrap - LEAST_WRAP,
      kind: 'angle',
      why: 'With little wrap it slips and burns.',
      remedy: 'A longer center distance with a longer belt.',
      source: { key: 'practice', where: 'wrap 120 degrees or more' },
    });
  }
  if (belt.shiftEndsAt === 'driven') {
    findings.push({
      id: `belt.shift:${belt.stage.id}`,
      severity: 'note',
      question: 'ride',
      part: belt.stage.id,
      what: `The driven unit is open before the driver is closed: the shift ends at ${belt.high.ratio.toFixed(2)} to 1 with the driver at ${sayLength(belt.high.driverDiameter)}.`,
      value: belt.high.ratio,
      kind: 'ratio',
      why: 'The top of the ratio range is not reached with this belt and center distance.',
      remedy: 'A belt a little longer at the same center distance, if launch allows.',
      source: { key: 'derived', where: 'open belt of fixed length' },
    });
  }
  return findings;
}

/** A machine with neither clutch nor variable belt cannot stand still with the engine running. */
function launchFindings(build: Build): Finding[] {
  const stages = build.driveline.stages;
  if (stages.some((stage) => stage.kind !== 'chain')) return [];
  return [
    {
      id: 'driveline.no-clutch',
      severity: 'stop',
      question: 'ride',
      part: 'driveline',
      path: 'driveline.stages',
      what: 'There is neither a clutch nor a variable belt between engine and wheel.',
      why: 'The machine would drive as soon as the engine runs.',
      remedy: 'Add a clutch or a variable belt stage.',
      source: { key: 'practice', where: 'centrifugal clutch or belt between engine and wheel' },
    },
  ];
}
