import type { ChainLine, LadderStep, SpacerOption, TireGap } from '../../core/bike/index.ts';
import type { Finding } from '../../core/findings/index.ts';
import type { Figure, Issue } from '../../core/quantity/index.ts';
import { describeIssue } from '../../core/quantity/index.ts';
import type { ChainLineRow, ScreenFigure, ScreenFinding, ScreenIssue, TireGapRow } from './messages.ts';
import { maybePrinted, printed } from './print.ts';
import { screenSource } from './source.ts';

/** An error of the file; the path stands beside it, so the text is the rest. */
export function screenIssue(issue: Issue): ScreenIssue {
  const unplaced = { ...issue, path: '' };
  return {
    path: issue.path,
    text: describeIssue(unplaced).replace(/^the file(?: \((line \d+, column \d+)\))?: /, (_, at) =>
      at ? `${at}: ` : '',
    ),
  };
}

/** Several findings may share an id (one rule, several flaws of one part); their keys are counted on. */
export function screenFindings(findings: readonly Finding[]): readonly ScreenFinding[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const count = (seen.get(finding.id) ?? 0) + 1;
    seen.set(finding.id, count);
    return screenFinding(finding, count === 1 ? finding.id : `${finding.id} ${count}`);
  });
}

function screenFinding(finding: Finding, key: string): ScreenFinding {
  const { severity, question, part, what, why, path, remedy, kind } = finding;
  const value = maybePrinted(finding.value, kind);
  const limit = maybePrinted(finding.limit, kind);
  const margin = maybePrinted(finding.margin, kind);
  return {
    key,
    severity,
    question,
    part,
    what,
    why,
    ...(path === undefined ? {} : { path }),
    ...(remedy === undefined ? {} : { remedy }),
    ...(value ? { value } : {}),
    ...(limit ? { limit } : {}),
    ...(margin ? { margin } : {}),
    source: screenSource(finding.source),
  };
}

export const screenFigure = (figure: Figure): ScreenFigure => ({
  id: figure.id,
  name: figure.name,
  symbol: figure.symbol,
  value: printed(figure.value, figure.kind),
  formula: figure.formula,
  inputs: figure.inputs.map(({ name, value, kind }) => ({ name, value: printed(value, kind) })),
  source: screenSource(figure.source),
});

export const chainLineRow = (line: ChainLine): ChainLineRow => ({
  drive: line.drive,
  driver: printed(line.driverY, 'length'),
  driven: printed(line.drivenY, 'length'),
  offset: printed(line.offset, 'length'),
  limit: printed(line.limit, 'length'),
  angle: printed(line.angle, 'angle'),
  within: line.within,
  sides: [
    { from: 'to the driven plane', steps: line.drivenSteps.map(stepRow) },
    { from: 'to the driving plane', steps: line.driverSteps.map(stepRow) },
  ],
  options: line.options.map(optionRow),
});

const stepRow = ({ label, length, to, solved }: LadderStep) => ({
  label,
  length: printed(length, 'length'),
  to: printed(to, 'length'),
  make: solved === true,
});

const optionRow = ({ stack, item, insteadOf, length, hindrance }: SpacerOption) => ({
  text: `${item} on stack ${stack}${insteadOf === undefined ? '' : `, instead of ${insteadOf}`}`,
  length: printed(length, 'length'),
  ...(hindrance === undefined ? {} : { hindrance }),
});

export const tireGapRow = ({ against, gap, limit, within }: TireGap): TireGapRow => ({
  against,
  gap: printed(gap, 'length'),
  limit: printed(limit, 'length'),
  within,
});
